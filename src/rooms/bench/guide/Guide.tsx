/** The guide through a first bench: one act at a time in the place of the sheet or of the strip, with the part that is meant lit where it stands. */
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { BenchState } from '../../../bench/benchState.ts';
import { firstResponse } from '../../../bench/setup.ts';
import { useKeyDown } from '../../../kit/hooks/useKeyDown.ts';
import { useLastWords } from '../../../kit/hooks/useLastWords.ts';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { place, px, type Rect } from '../../../kit/px.ts';
import { Button, Frame } from '../../../kit/theme/art.tsx';
import {
  type GuideMoment,
  type GuideSpot,
  type GuideStep,
  goesUp,
  guideStepNow,
  guideSteps,
  SMALL_PIP_DIV,
} from '../../../present/guide.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { SheetFigures } from '../../../present/sheetFigures.ts';
import { slugLetters } from '../../../receiver/slugLetters.ts';
import { PHASES } from '../../../session/phase.ts';
import type { Words } from '../../../words/words.ts';
import { isFreeKey, isPageKey } from '../pageKeys.ts';
import { SheetFigure } from '../sheet/SheetFigure.tsx';
import { GuideLight } from './GuideLight.tsx';
import { partsMeant } from './partsMeant.ts';
import '../../../kit/links/link.css';
import './guide.css';

interface GuideProps {
  readonly port: BenchPort;
  readonly rect: Rect;
  /** of the curve that is wanted */
  readonly figures: SheetFigures;
  /** no more room than a strip */
  readonly line: boolean;
  readonly onSkip: () => void;
  readonly onSheet: () => void;
}

export function Guide({ port, rect, figures, line, onSkip, onSheet }: GuideProps) {
  const words = useWords();
  const say = words.guide;
  const steps = useMemo(() => guideSteps(port.setup), [port]);
  const moment = (): GuideMoment => ({ setup: port.setup, state: port.state(), session: port.session() });
  const at = usePort(port, () => guideStepNow(steps, moment()));
  const [found, setFound] = useState('');
  const lastTurn = useLastWords();
  const turn = usePort(port, () => {
    const slug = steps[at]!.off?.(moment());
    const said =
      slug === undefined ? null : say.turn(slugLetters(port.receiver).get(slug.id)!, slug.turns < 0, found === CHOSEN);
    return lastTurn(at, said) ?? say.wait;
  });
  const up = usePort(port, () => goesUp(steps[at]!, moment()));
  const key = usePort(port, () => JSON.stringify(steps[at]!.spot(moment())));
  const shows = usePort(port, () => steps[at]!.show(moment()).length > 0);
  const working = usePort(port, () => port.session().stage === 'working');
  const step = steps[at]!;
  const paper = useRef<HTMLElement>(null);
  const [whyOpen, openWhy] = useWhy(paper, step.id);
  const spot = useMemo(() => step.spot(moment()), [step, key]);
  const find = useMemo(() => () => partsMeant(words, spot), [words, spot]);
  const onFound = useCallback((parts: readonly HTMLElement[]) => setFound(whatIsFound(parts)), []);
  const goThere = (): void => {
    const [part] = find();
    const focusable = part?.matches('button, [tabindex]') ? part : part?.querySelector<HTMLElement>('input, button');
    focusable?.focus({ preventScroll: true });
    // In a low window it may lie above or below what is seen.
    focusable?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
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
    pipDiv: SMALL_PIP_DIV,
    control: spot.kind === 'control' ? spot.control : null,
    up,
    turn,
  });
  const behind = found === '' || found === CHOSEN ? null : say.openFirst(found);
  const how = howOf(say.how, spot, port.state());
  // The card that asks has the rest of the paper, and says why itself.
  const underCard = !line && spot.kind === 'finding';
  const roomForHow = line && how !== null && behind === null && rect.width >= HOW_FROM;
  const act = shows ? showMe : goThere;
  const actWords = shows ? say.showMe : say.goThere;
  const skip = (
    <button type="button" class="link" aria-label={say.skip} title={say.skip} onClick={onSkip}>
      {line ? say.skipShort : say.skip}
    </button>
  );
  const { sheet: sheetWords } = words;
  return (
    <>
      <section
        ref={paper}
        class={`guide placed may-mark${line ? ' line' : ' paper'}`}
        style={line ? { ...place(rect), height: 'auto', minHeight: px(rect.height) } : place(rect)}
        aria-label={say.name}
      >
        <Frame kind={line ? 'card' : 'sheet'} />
        <p class="l guide-count">{say.stepOf(at + 1, steps.length)}</p>
        {/* Only what changes is spoken, not the whole of it after every turn. */}
        <div class="guide-said" role="status" aria-atomic={false}>
          <h2>{title}</h2>
          <p>{behind ?? asked}</p>
          {roomForHow ? <p class="guide-how">{how}</p> : null}
          {underCard ? null : (
            <p class={`guide-why${whyOpen ? ' asked' : ''}`}>
              {line && how !== null && !roomForHow ? `${why} ${how}` : why}
            </p>
          )}
        </div>
        <p class="guide-acts">
          <Button onClick={act}>{actWords}</Button>
          {line ? (
            <button type="button" class="link" aria-expanded={whyOpen} onClick={() => openWhy(!whyOpen)}>
              {say.why}
            </button>
          ) : null}
          {skip}
        </p>
        {line || underCard ? null : (
          <>
            <p class="si">{how === null || behind !== null ? say.seesItself : `${how} ${say.seesItself}`}</p>
            <PhaseDots steps={steps} at={at} />
            <p>
              <button type="button" class="link" data-opens="sheet" onClick={onSheet}>
                {sheetWords.open}
              </button>
            </p>
            {rect.height < FIGURE_FROM ? null : (
              <div class="guide-figure">
                <p class="l">{say.wanted}</p>
                <SheetFigure receiver={port.receiver} figures={figures} width={rect.width - 36} height={180} />
              </div>
            )}
          </>
        )}
      </section>
      {working ? <GuideLight port={port} find={find} onFound={onFound} /> : null}
    </>
  );
}

/** px of a strip whose second line has room for how the lit part is taken hold of */
const HOW_FROM = 640;

/** Once asked for, the reason stays from step to step, but it lies over the bench only until a hand goes to work or Escape puts it away. */
function useWhy(paper: { readonly current: HTMLElement | null }, step: string): [boolean, (open: boolean) => void] {
  const [asked, ask] = useState(false);
  const [leftAt, leave] = useState<string | null>(null);
  const open = asked && leftAt !== step;
  useKeyDown(({ key }) => {
    if (open && key === 'Escape') leave(step);
  });
  useEffect(() => {
    if (!open) return;
    const press = ({ target }: PointerEvent): void => {
      if (paper.current?.contains(target as Node) !== true) leave(step);
    };
    addEventListener('pointerdown', press, true);
    return () => removeEventListener('pointerdown', press, true);
  }, [open, step]);
  const set = (next: boolean): void => {
    leave(null);
    ask(next);
  };
  return [open, set];
}

/** px of paper that leave room for the figure of the sheet */
const FIGURE_FROM = 700;

function PhaseDots({ steps, at }: { readonly steps: readonly GuideStep[]; readonly at: number }) {
  const { phases } = useWords();
  return (
    <div class="guide-dots" aria-hidden="true">
      {PHASES.filter((phase) => steps.some((step) => step.phase === phase)).map((phase) => (
        <p key={phase}>
          <span class="l2">{phases[phase]}</span>
          {steps.map((step, i) =>
            step.phase === phase ? <i key={step.id} class={i < at ? 'done' : i === at ? 'now' : ''} /> : null,
          )}
        </p>
      ))}
    </div>
  );
}

/** the slug that is meant has its buttons in sight */
const CHOSEN = 'chosen';

/** The name of the tab behind which the part is, or that the slug is chosen; else nothing. */
function whatIsFound(parts: readonly HTMLElement[]): string {
  const [part, second] = parts;
  if (part?.getAttribute('role') === 'tab') return part.textContent ?? '';
  return second?.dataset.turns === undefined ? '' : CHOSEN;
}

/** How the part that is lit is taken hold of, where that is not in the words already. */
function howOf(how: Words['guide']['how'], spot: GuideSpot, { controls }: BenchState): string | null {
  if (spot.kind === 'lead') return how.lead;
  if (spot.kind === 'crystal') return how.crystal;
  if (spot.kind !== 'control') return null;
  const value = controls[spot.control];
  // The place of the trace has no figure under its knob.
  if (typeof value === 'number') return spot.control === 'yPositionDiv' ? how.plainKnob : how.knob;
  return typeof value === 'string' ? how.choice : how.switch;
}
