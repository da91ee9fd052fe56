/** After an act of proof: what was seen, and the number read off the graticule. It stands beside the tube and blocks nothing. */
import type { CSSProperties } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { choicesOffered } from '../../../bench/finding.ts';
import { findingsOf, pipAskedFor, placeAskedFor, unreadable } from '../../../bench/witness.ts';
import { useKeyDown } from '../../../kit/hooks/useKeyDown.ts';
import { usePort } from '../../../kit/hooks/usePort.ts';
import { useWords } from '../../../kit/hooks/useWords.ts';
import { px, type Rect } from '../../../kit/px.ts';
import { Button, Frame } from '../../../kit/theme/art.tsx';
import { findingComesFolded, findingDue } from '../../../present/findingDue.ts';
import type { BenchPort } from '../../../present/ports.ts';
import type { SeenAnswer } from '../../../scenario/findingAnswer.ts';
import type { ProofId } from '../../../scenario/proofId.ts';
import type { BenchLayout } from '../layoutTypes.ts';
import { isFreeKey, isPageKey, isWriting } from '../pageKeys.ts';
import './finding.css';

/** The first proof whose finding is still to be said, or may be said once more. */
function proofAsked({ setup, scenario, state }: BenchPort): ProofId | null {
  const findings = findingsOf(setup, state());
  return scenario.proofs.find((proof) => findings[proof] === 'asked') ?? null;
}

/** As high as its words, as far as the window goes. Beside the tube, never over it: on the service sheet (low down where the guide stands there), or where that folds away below the tube or right of it. */
function beside(layout: BenchLayout, guided: boolean): CSSProperties {
  const { form, sheet, sheetFolds, tube, header, strip, page } = layout;
  const onto = ({ x, y, width }: Rect) => ({
    left: px(x),
    top: px(y),
    width: px(width),
    maxHeight: px(page.height - y - GAP),
  });
  if (!sheetFolds) {
    const { top, ...low } = onto(sheet);
    if (!guided) return { ...low, top };
    return { ...low, maxHeight: px(sheet.height - GUIDE_ABOVE), bottom: px(page.height - sheet.y - sheet.height) };
  }
  if (form === 'upright') return onto({ ...sheet, y: tube.y + tube.height + GAP });
  // What the strip says stays in sight where the card has room below it.
  const above = strip !== null && page.height >= ROOMY_FROM ? strip : header;
  return onto({ ...sheet, x: tube.x + tube.width + GAP, y: above.y + above.height + GAP, width: WIDTH });
}

const GAP = 8;
/** px of the guide's paper that keep its sentence and its buttons in sight above the card */
const GUIDE_ABOVE = 202;
const WIDTH = 352;
/** px of a window that has room for the card below the strip */
const ROOMY_FROM = 740;

interface FindingCardProps {
  readonly port: BenchPort;
  readonly layout: BenchLayout;
  /** the guide stands where the sheet is */
  readonly guided: boolean;
}

export function FindingCard({ port, layout, guided }: FindingCardProps) {
  const at = useMemo(() => beside(layout, guided), [layout, guided]);
  // Once it has come it stays: the next proof may undo the set-up for a while.
  const came = useRef<ProofId | null>(null);
  const asked = usePort(port, () => {
    const session = port.session();
    const proof = session.stage === 'working' ? proofAsked(port) : null;
    return proof === null || proof === came.current || findingDue(session, port.facts()) ? proof : null;
  });
  came.current = asked;
  const rested = useHandRested(port, asked !== null);
  const said = usePort(port, () => (asked === null ? 0 : (port.state().proofs[asked].finding?.said ?? 0)));
  if (asked === null || !rested) return null;
  return <Card key={`${asked} ${said}`} port={port} proof={asked} at={at} again={said > 0} />;
}

/** Whose knob is still being turned is not to find a card over it: the first one comes when the hand has rested, and one that follows another stands where that stood. */
function useHandRested(port: BenchPort, asked: boolean): boolean {
  const [rested, setRested] = useState(false);
  useEffect(() => {
    if (!asked) return setRested(false);
    let { controls } = port.state();
    const rest = (): void => setRested(true);
    let timer = setTimeout(rest, REST_MS);
    const stop = port.subscribe(() => {
      if (port.state().controls === controls) return;
      controls = port.state().controls;
      clearTimeout(timer);
      timer = setTimeout(rest, REST_MS);
    });
    return () => {
      clearTimeout(timer);
      stop();
    };
  }, [port, asked]);
  return rested;
}

const REST_MS = 600;

interface CardProps {
  readonly port: BenchPort;
  readonly proof: ProofId;
  readonly at: CSSProperties;
  /** it did not fit the first time */
  readonly again: boolean;
}

function Card({ port, proof, at, again }: CardProps) {
  const { finding: say } = useWords();
  const [choices] = useState(() => choicesOffered(port.setup, port.state(), proof));
  const [pip] = useState(() => pipAskedFor(port.setup, port.state(), proof));
  const [place] = useState(() => placeAskedFor(port.setup, port.state(), proof));
  const [nothing] = useState(() => {
    const why = unreadable(port.setup, port.state(), proof);
    // How tall the hum was has to be looked at: whoever was told that it was too small, or ran off, would know it from that alone.
    return why === 'humSmall' || why === 'humOff' ? null : why;
  });
  const [answer, choose] = useState<SeenAnswer | null>(null);
  const [figure, setWritten] = useState('');
  const [folded, fold] = useState(() => findingComesFolded(port.session(), port.facts()));
  const card = useRef<HTMLElement>(null);
  useKeyDown((event) => {
    if (!isPageKey(event, 'whatYouSaw') || !isFreeKey(event)) return;
    event.preventDefault();
    fold(false);
    card.current?.focus();
  });
  const words = say.proofs[proof];
  const number = numberIn(figure);
  const write = (as: SeenAnswer | 'notLooked' | 'again'): void => {
    const read = as === 'notLooked' || as === 'again' ? null : number;
    port.act({ type: 'findingStated', proof, answer: as, figure: read });
  };
  const choiceKey = (event: KeyboardEvent): void => {
    const choice = choices[['1', '2', '3', '4'].indexOf(event.key)];
    if (choice === undefined || isWriting(event.target)) return;
    choose(choice);
    // The number comes next.
    card.current?.querySelector<HTMLElement>('input[type=text]')?.focus();
    event.preventDefault();
    event.stopPropagation();
  };
  const aside = (
    <button type="button" class="link" onClick={() => fold(true)}>
      {say.fold}
    </button>
  );
  if (folded) {
    return (
      <section class="finding folded may-mark" style={at}>
        <Button onClick={() => fold(false)}>{say.unfold(firstSentence(words.act))}</Button>
      </section>
    );
  }
  if (nothing !== null) {
    return (
      <section ref={card} class="paper finding may-mark" style={at} aria-labelledby="finding-title" tabIndex={-1}>
        <Frame kind="sheet" />
        <p class="l eyebrow">{say.eyebrow}</p>
        <h2 id="finding-title">{say.nothingToRead}</h2>
        <p>{firstSentence(words.act)}</p>
        <p role="status">{say.unreadableOf[proof]?.[nothing] ?? say.unreadable[nothing]}</p>
        <Button primary onClick={() => write('again')}>
          {say.again}
        </Button>
        <p class="finding-links">{aside}</p>
      </section>
    );
  }
  return (
    <section
      ref={card}
      class="paper finding may-mark"
      style={at}
      aria-labelledby="finding-title"
      tabIndex={-1}
      onKeyDown={choiceKey}
    >
      <Frame kind="sheet" />
      <div class="finding-asked">
        <p class="l eyebrow">{say.eyebrow}</p>
        <h2 id="finding-title">{say.title}</h2>
        <p>{words.act}</p>
        {again ? (
          <p class="finding-again" role="status">
            {say.asksAgain}
          </p>
        ) : null}
        <fieldset class="finding-choices" aria-label={say.title}>
          {choices.map((choice, i) => (
            <label key={choice} class={choice === answer ? 'chosen' : ''}>
              <input type="radio" name="finding" checked={choice === answer} onChange={() => choose(choice)} />
              <span>{say.answers[choice]}</span>
              <kbd>{i + 1}</kbd>
            </label>
          ))}
        </fieldset>
        <label class="finding-figure">
          <span class="l">{words.figure({ pip, place })}</span>
          <span class="finding-read">
            <input
              type="text"
              inputMode="decimal"
              value={figure}
              onInput={(event) => setWritten(event.currentTarget.value)}
              onKeyDown={(event) => {
                if (event.key === 'Enter' && answer !== null && number !== null) write(answer);
              }}
            />{' '}
            {words.unit}
          </span>
        </label>
        <p class="si">{words.howNear}</p>
        {proof === 'touchEarth' && port.scenario.sealed ? <p class="si">{say.humCounts}</p> : null}
      </div>
      <Button primary disabled={answer === null || number === null} onClick={() => answer !== null && write(answer)}>
        {say.write}
      </Button>
      <p class="finding-links">
        <button type="button" class="link" onClick={() => write('again')}>
          {say.again}
        </button>
        <button type="button" class="link" onClick={() => write('notLooked')}>
          {say.notLooked}
        </button>
        {aside}
      </p>
    </section>
  );
}

/** What was done, without what the bench says of it. */
const firstSentence = (act: string): string => act.replace(/(?<=\.) .*/, '');

/** With a point or a comma; null where it is no number. */
function numberIn(text: string): number | null {
  const trimmed = text.trim().replace(',', '.');
  return /^\d{1,2}(\.\d{1,3})?$/.test(trimmed) ? Number(trimmed) : null;
}
