/** The drill that is open: its question, the tube, the answer, and what comes of it. */
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { DRILLS, type DrillId } from '../../drills/drill.ts';
import { halfOf } from '../../drills/looks/overload.ts';
import { useWords } from '../../kit/hooks/useWords.ts';
import { Told } from '../../kit/Told.tsx';
import { Button, Frame } from '../../kit/theme/art.tsx';
import { Choices } from './Choices.tsx';
import { LastLooks } from './LastLooks.tsx';
import { LookTube, type PlayCurves } from './LookTube.tsx';
import { askedSlug } from './said.ts';
import { TurnPanel } from './TurnPanel.tsx';
import { useDrillKeys } from './useDrillKeys.ts';
import { type FetchQuestion, type LookActs, type Looked, useLook } from './useLook.ts';
import { Verdict } from './Verdict.tsx';

export interface OpenDrillProps {
  readonly drill: DrillId;
  readonly series: string;
  readonly looks: readonly boolean[];
  readonly fetch: FetchQuestion;
  readonly onMarked: (right: boolean) => void;
  readonly pageTitle: string;
  readonly play: PlayCurves;
}

export function OpenDrill({ drill, series, looks, fetch, onMarked, pageTitle, play }: OpenDrillProps) {
  const { drills: words } = useWords();
  const { looked, acts } = useLook({ drill, series, fetch, onMarked });
  const title = useRef<HTMLHeadingElement>(null);
  const here = looked !== 'making' && !('error' in looked) ? looked : null;
  // Thrown where the room's boundary hears it.
  if (looked !== 'making' && 'error' in looked) throw looked.error;
  const set = here === null ? '' : here.question.scene.setup.receiver.setName;
  const next = (): void => {
    acts.next();
    title.current?.focus({ preventScroll: true });
  };
  return (
    <article class="paper open-drill" aria-busy={here === null}>
      <Frame kind="sheet" />
      <header class="drill-head">
        <p class="l eyebrow">{words.eyebrow(DRILLS.indexOf(drill) + 1, DRILLS.length, set)}</p>
        <h2 ref={title} tabIndex={-1}>
          {words.names[drill]}
        </h2>
        <LastLooks looks={looks} answered={here?.answer != null} />
      </header>
      {here === null ? (
        <p class="drill-making" role="status">
          {words.making}
        </p>
      ) : (
        <OneLook key={here.no} looked={here} acts={{ ...acts, next }} pageTitle={pageTitle} play={play} />
      )}
    </article>
  );
}

interface LookProps {
  readonly looked: Looked;
  readonly acts: LookActs;
  readonly pageTitle: string;
  readonly play: PlayCurves;
}

function OneLook({ looked, acts, pageTitle, play }: LookProps) {
  const all = useWords();
  const { drills: words } = all;
  const { question, state, halved, hasHalved, answer } = looked;
  const { scene, subject } = question;
  const nextButton = useRef<HTMLButtonElement>(null);
  const full = useMemo(() => ({ setup: scene.setup, state }), [scene, state]);
  const isOverload = question.drill === 'overload';
  const half = useMemo(() => (isOverload ? halfOf(scene) : null), [isOverload, scene]);
  const locked = isOverload && !hasHalved;
  const choose = (at: number): void => {
    if (!locked) acts.answer({ kind: 'choice', at });
  };
  useDrillKeys({ looked, acts, choose, half: half !== null });
  useLayoutEffect(() => {
    if (answer !== null) nextButton.current?.focus({ preventScroll: true });
  }, [answer !== null]);
  const adjuster = scene.setup.receiver.adjusters.find((one) => one.id === subject.slug);
  return (
    <>
      <LookTube
        drill={question.drill}
        scene={halved && half !== null ? half : full}
        wax={halved ? scene : question.wax}
        nameless={question.unnamedPips}
        play={play}
      />
      <div class="drill-ask">
        <p class="drill-question">{words.questions[question.drill](askedSlug(all, question))}</p>
        {question.drill !== 'which-way' || adjuster === undefined ? null : (
          <p class="drill-aid">
            <Told of={scene.setup.receiver}>{adjuster.does}</Told>
          </p>
        )}
        {half === null ? null : (
          <p class="drill-halve">
            <Button onClick={() => acts.halve()} pressed={halved}>
              <span class="key" aria-hidden="true">
                {words.halveKey}
              </span>
              {words.halve}
            </Button>
            {locked ? <span>{words.halveFirst}</span> : null}
          </p>
        )}
        <Choices looked={looked} locked={locked} onChoose={choose} />
        <TurnPanel looked={looked} acts={acts} />
      </div>
      <div class="verdict-place" aria-live="polite">
        {answer === null ? null : (
          <Verdict looked={looked} pageTitle={pageTitle} onNext={acts.next} nextRef={nextButton} />
        )}
      </div>
    </>
  );
}
