/** The paper sheet at the left of the course: what the course is, what comes next, the stacks won. */

import { useFirstWords } from '../../kit/hooks/useWords.ts';
import { Told } from '../../kit/Told.tsx';
import { Button, Frac, Frame, Ink } from '../../kit/theme/art.tsx';
import { C, T } from '../../kit/theme/ink.ts';
import { isWon, nextCard, type Track } from '../../present/courseTracks.ts';
import { papersHash } from '../../present/papersAddress.ts';
import type { CourseCard, CoursePort } from '../../present/ports.ts';
import { GUIDED_SCENARIO } from '../../scenario/guided.ts';
import { CurveInk } from './CurveInk.tsx';
import '../../kit/links/link.css';
import './nextSheet.css';

export interface NextPanelProps {
  readonly cards: readonly CourseCard[];
  readonly tracks: readonly Track[];
  /** false while the runs are being read: what comes next is not known, but takes its room */
  readonly runsRead: boolean;
  /** false: a plain frame for now */
  readonly drawn: boolean;
  readonly open: (scenarioId: string) => void;
  readonly approach: CoursePort['approach'];
  readonly onGuide: () => void;
}

export function NextPanel({ cards, tracks, runsRead, drawn, open, approach, onGuide }: NextPanelProps) {
  const { course: words, track: wordsOf } = useFirstWords();
  const next = nextCard(cards);
  // Nobody who comes back is asked again.
  const fresh = runsRead && cards.every(({ best, onBench }) => best === null && onBench === null);
  return (
    <section class="paper next-sheet" aria-labelledby="course-title">
      {drawn ? <Frame kind="sheet" /> : <span class="frame plain" />}
      <div class="next-what">
        <p class="l eyebrow">{words.contents}</p>
        <h1 id="course-title">{words.title}</h1>
        <p>{words.intro(tracks.length)}</p>
      </div>
      {next === null ? null : (
        <Next card={next} known={runsRead} {...{ open, approach }} onGuide={fresh && isGuided(next) ? onGuide : null} />
      )}
      {runsRead && !(fresh && next !== null && isGuided(next)) ? <GuideAgain onGuide={onGuide} /> : null}
      <p class="guide-offer">
        <a class="link" href={papersHash(null)}>
          {words.papers}
        </a>
      </p>
      <div class="next-stacks">
        <h2 class="l">{words.stacksWon}</h2>
        <ul>
          {tracks.map((track, i) => (
            <li key={track.id}>
              <button
                type="button"
                class="stack-name"
                aria-label={words.goTo(wordsOf(track.id).title)}
                onClick={() => goToTrack(i)}
              >
                {wordsOf(track.id).title}
              </button>
              <span class="m">{`${track.done} / ${track.cards.length}`}</span>
              <span class="stack-bar" aria-hidden="true">
                {track.done === 0 ? null : <span style={{ width: `${(100 * track.done) / track.cards.length}%` }} />}
              </span>
            </li>
          ))}
        </ul>
      </div>
    </section>
  );
}

const isGuided = ({ scenario }: CourseCard): boolean => scenario.id === GUIDED_SCENARIO;

/** The way back, for who has been here. */
function GuideAgain({ onGuide }: { readonly onGuide: () => void }) {
  const { course: words } = useFirstWords();
  return (
    <p class="guide-offer">
      <button type="button" class="link" onClick={onGuide}>
        {words.guide.again}
      </button>
    </p>
  );
}

/** The page's heading takes the focus, so that Tab goes on from there. */
function goToTrack(i: number): void {
  const heading = document.getElementById(`track-${i}`);
  heading?.scrollIntoView({ block: 'start' });
  heading?.focus({ preventScroll: true });
}

interface NextProps {
  readonly card: CourseCard;
  readonly known: boolean;
  readonly open: (scenarioId: string) => void;
  readonly approach: CoursePort['approach'];
  /** with the guide: the first thing to do for a newcomer; null for others */
  readonly onGuide: (() => void) | null;
}

function Next({ card, known, open, approach, onGuide }: NextProps) {
  const { course: words } = useFirstWords();
  const { scenario, onBench, best } = card;
  const par = scenario.par === null || scenario.uncertified ? null : words.turns(scenario.par.turns);
  const line =
    onBench !== null
      ? words.started(scenario.code, words.turns(onBench.turns), par)
      : best !== null
        ? words.bestOf(scenario.code, best, par)
        : words.notStarted(scenario.code, par);
  const action =
    onBench !== null ? words.backToBench : isWon(card) ? words.again(scenario.code) : words.open(scenario.code);
  return (
    <div class={known ? 'next-job' : 'next-job unknown'}>
      <h2 class="l">{words.nextForYou}</h2>
      <p class="next-title">
        <Told of={scenario}>{scenario.title}</Told>
      </p>
      <p class="next-line">
        <Frac>{line}</Frac>
      </p>
      <div class="next-figure" role="img" aria-label={words.nextFigure(scenario.title)}>
        <CurveInk curve={scenario.curve} wanted />
        <Ink
          svg={keyOf(words.wanted, words.now)}
          width={keyWidth(words.wanted, words.now)}
          height={30}
          class="next-key"
        />
      </div>
      {known && onGuide !== null ? (
        <>
          <p class="guide-offer">{words.guide.offer}</p>
          <Button primary onClick={onGuide} approach={approach(scenario.id)}>
            {words.guide.begin}
          </Button>
          <p class="guide-offer">
            <button type="button" class="link" onClick={() => open(scenario.id)}>
              {words.guide.without(scenario.code)}
            </button>
          </p>
        </>
      ) : known ? (
        <Button primary onClick={() => open(scenario.id)} approach={approach(scenario.id)}>
          {action}
        </Button>
      ) : (
        <span class="button" />
      )}
    </div>
  );
}

/** px: about 7 to a letter, and the strokes before them. */
const keyWidth = (...texts: readonly string[]): number => 34 + 7 * Math.max(...texts.map((text) => text.length));

/** Which line is which. */
const keyOf = (wanted: string, now: string): string =>
  `<path d="M0 6h20" stroke="${C.petrolInk}" stroke-width="1.6" stroke-dasharray="5 4"/>${T(24, 10, wanted, 'ls')}` +
  `<path d="M0 24h20" stroke="${C.ink}" stroke-width="2"/>${T(24, 28, now, 'ls')}`;
