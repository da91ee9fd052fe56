/** The guide through a first bench: one act at a time in the place of the sheet or of the strip, with the part that is meant lit where it stands. */
import { useLayoutEffect, useMemo, useState } from 'preact/hooks';
import { firstResponse } from '../../../bench/setup.ts';
import { useKeyDown } from '../../../kit/hooks/useKeyDown.ts';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { place, px, type Rect } from '../../../kit/px.ts';
import { Button, Frame } from '../../../kit/theme/art.tsx';
import { type GuideMoment, guideStepNow, guideSteps } from '../../../present/guide.ts';
import type { BenchPort } from '../../../present/ports.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';
import { isFreeKey, isPageKey } from '../pageKeys.ts';
import { GuideLight } from './GuideLight.tsx';
import { partsMeant } from './partsMeant.ts';
import '../../../kit/links/link.css';
import './guide.css';

interface GuideProps {
  readonly port: BenchPort;
  readonly rect: Rect;
  /** no more room than a strip */
  readonly line: boolean;
  readonly onSkip: () => void;
  readonly onSheet: () => void;
}

export function Guide({ port, rect, line, onSkip, onSheet }: GuideProps) {
  const words = useWords();
  const say = words.guide;
  const steps = useMemo(() => guideSteps(port.setup), [port]);
  const moment = (): GuideMoment => ({ setup: port.setup, state: port.state(), session: port.session() });
  const at = usePort(port, () => guideStepNow(steps, moment()));
  const turn = usePort(port, () => {
    const slug = steps[at]!.off?.(moment());
    return slug === undefined ? say.wait : say.turn(slugLetters(port.receiver).get(slug.id)!, slug.turns < 0);
  });
  const key = usePort(port, () => JSON.stringify(steps[at]!.spot(moment())));
  const shows = usePort(port, () => steps[at]!.show(moment()).length > 0);
  const working = usePort(port, () => port.session().stage === 'working');
  const [whyOpen, openWhy] = useState(false);
  const step = steps[at]!;
  const spot = useMemo(() => step.spot(moment()), [step, key]);
  const find = useMemo(() => () => partsMeant(words, spot), [words, spot]);
  const goThere = (): void => {
    const [part] = find();
    const focusable = part?.matches('button, [tabindex]') ? part : part?.querySelector<HTMLElement>('input, button');
    focusable?.focus({ preventScroll: true });
  };
  const showMe = (): void => {
    for (const event of step.show(moment())) port.act(event);
  };
  useKeyDown((event) => {
    if (!isPageKey(event, 'onward') || !isFreeKey(event)) return;
    event.preventDefault();
    goThere();
  });
  // On a shelf that slides the part comes to where it can be seen; the page itself stays.
  useLayoutEffect(() => {
    const [part] = find();
    const shelf = part?.closest('.shelf-slide');
    if (part === undefined || shelf === null || shelf === undefined) return;
    const [box, room] = [part.getBoundingClientRect(), shelf.getBoundingClientRect()];
    if (box.left < room.left + 50 || box.right > room.right - 50)
      shelf.scrollBy({ left: (box.left + box.right - room.left - room.right) / 2 });
  }, [find, working]);

  const { title, what, why } = say.steps[step.words];
  const { setUp } = firstResponse(port.setup);
  const asked = what({
    point: spot.kind === 'lead' ? spot.to : '',
    hz: spot.kind === 'crystal' ? spot.hz : 0,
    centreHz: setUp.centreHz,
    spanHz: setUp.spanHz,
    levelDb: setUp.levelDb,
    turn,
  });
  const act = shows ? showMe : goThere;
  const actWords = shows ? say.showMe : say.goThere;
  const skip = (
    <button type="button" class="link short" title={say.skip} onClick={onSkip}>
      {say.skip}
    </button>
  );
  const { sheet: sheetWords } = words;
  return (
    <>
      <section
        class={`guide placed${line ? ' line' : ' paper'}`}
        style={line ? { ...place(rect), height: 'auto', minHeight: px(rect.height) } : place(rect)}
        aria-label={say.name}
      >
        <Frame kind={line ? 'card' : 'sheet'} />
        <p class="l guide-count">{say.stepOf(at + 1, steps.length)}</p>
        <div class="guide-said" role="status">
          <h2>{title}</h2>
          <p>{asked}</p>
          <p class={`guide-why${whyOpen ? ' asked' : ''}`}>{why}</p>
        </div>
        <p class="guide-acts">
          <Button onClick={act}>{actWords}</Button>
          {line ? (
            <button
              type="button"
              class="link short"
              title={say.why}
              aria-expanded={whyOpen}
              onClick={() => openWhy(!whyOpen)}
            >
              {say.why}
            </button>
          ) : null}
          {skip}
        </p>
        {line ? null : (
          <>
            <p class="si">{say.seesItself}</p>
            <ol class="guide-dots" aria-hidden="true">
              {steps.map(({ id }, i) => (
                <li key={id} class={i < at ? 'done' : i === at ? 'now' : ''} />
              ))}
            </ol>
            <button type="button" class="link guide-sheet" onClick={onSheet}>
              {sheetWords.open}
            </button>
          </>
        )}
      </section>
      {working ? <GuideLight port={port} find={find} /> : null}
    </>
  );
}
