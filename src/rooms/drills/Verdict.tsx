/** What was right, why, where more is said of it, and the curves side by side; then the next look. */

import type { Ref } from 'preact';
import { useMemo } from 'preact/hooks';
import { DRILL_PAGES } from '../../drills/drill.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Button, Fit, Ink } from '../../kit/theme/art.tsx';
import { handbookHash } from '../../present/handbook/address.ts';
import { afterCurves, afterFigure, INKS } from './afterFigure.ts';

import { toldNames } from './said.ts';
import type { Looked } from './useLook.ts';

export interface VerdictProps {
  readonly looked: Looked;
  readonly pageTitle: string;
  readonly onNext: () => void;
  readonly nextRef: Ref<HTMLButtonElement>;
}

export function Verdict({ looked, pageTitle, onNext, nextRef }: VerdictProps) {
  const all = useWords();
  const { drills: words } = all;
  const { question, answer } = looked;
  const { head, reason } = words.why(question.told, toldNames(all, question));
  const curves = useMemo(() => afterCurves(question), [question]);
  const half = question.drill === 'overload' ? words.halvedLook : words.looks.half;
  return (
    <section class="verdict">
      <div class="verdict-said">
        <h3>
          <b class={answer!.right ? 'good' : 'bad'}>{answer!.right ? words.right : words.wrong}</b> {head}
        </h3>
        <p>{reason}</p>
      </div>
      <a class="verdict-page" href={handbookHash(DRILL_PAGES[question.drill])}>
        {words.handbook(pageTitle)}
      </a>
      <Fit class="verdict-figure" of={curves} label={words.figure} draw={(w, h) => afterFigure(w, h, curves)} />
      <div class="verdict-side">
        <ul class="verdict-legend">
          {curves.curves.map(({ look }) => (
            <li key={look}>
              <Ink svg={`<path d="M0 6h30" ${INKS[look]}/>`} width={30} height={12} />
              {look === 'half' ? half : words.looks[look]}
            </li>
          ))}
        </ul>
        <p class="verdict-next">
          <span class="key" aria-hidden="true">
            {words.nextKey}
          </span>
          <Button primary onClick={onNext} innerRef={nextRef}>
            {words.next}
          </Button>
        </p>
      </div>
    </section>
  );
}
