/** The paper sheet at the left of the course: what the course is, what comes next, the stacks won. */

import { Button, bandOf, Fit, Frac, Frame, targetFig } from '../../kit/theme/art.tsx';
import { C, hatch, r1, T } from '../../kit/theme/ink.ts';
import { isWon, nextCard, type Track } from '../../present/courseTracks.ts';
import type { CourseCard } from '../../present/ports.ts';
import { trackWords, courseWords as words } from '../../words/en/course.ts';
import { turnsText } from './figures.ts';

export interface NextSheetProps {
  readonly cards: readonly CourseCard[];
  readonly tracks: readonly Track[];
  readonly open: (scenarioId: string) => void;
}

export function NextSheet({ cards, tracks, open }: NextSheetProps) {
  const next = nextCard(cards);
  return (
    <section class="paper next-sheet" aria-labelledby="course-title">
      <Frame kind="sheet" />
      <div class="next-what">
        <p class="eyebrow">{words.contents}</p>
        <h1 id="course-title">{words.title}</h1>
        <p>{words.intro(tracks.length)}</p>
      </div>
      {next === null ? null : <Next card={next} open={open} />}
      <div class="next-stacks">
        <h2 class="l">{words.stacksWon}</h2>
        <ul>
          {tracks.map((track, i) => (
            <li key={track.id}>
              <button
                type="button"
                class="stack-name"
                aria-label={words.goTo(trackWords(track.id).title)}
                onClick={() => goToTrack(i)}
              >
                {trackWords(track.id).title}
              </button>
              <span class="m">{`${track.done} / ${track.cards.length}`}</span>
              <Fit
                class="stack-bar"
                of={track.done / track.cards.length}
                draw={(w, h) => stackBar(w, h, track.done / track.cards.length)}
              />
            </li>
          ))}
        </ul>
      </div>
    </section>
  );
}

/** The page's heading takes the focus, so that Tab goes on from there. */
function goToTrack(i: number): void {
  const heading = document.getElementById(`track-${i}`);
  heading?.scrollIntoView({ block: 'start' });
  heading?.focus({ preventScroll: true });
}

function Next({ card, open }: { readonly card: CourseCard; readonly open: (scenarioId: string) => void }) {
  const { scenario, onBench, best } = card;
  const par = turnsText(scenario.par.turns);
  const line =
    onBench !== null
      ? words.started(scenario.code, turnsText(onBench.turns), par)
      : best !== null
        ? words.bestOf(scenario.code, best, par)
        : words.notStarted(scenario.code, par);
  const action =
    onBench !== null ? words.backToBench : isWon(card) ? words.again(scenario.code) : words.open(scenario.code);
  return (
    <div class="next-job">
      <h2 class="l">{words.nextForYou}</h2>
      <p class="next-title">{scenario.title}</p>
      <p class="next-line">
        <Frac>{line}</Frac>
      </p>
      <Fit
        class="next-figure"
        of={card}
        label={words.nextFigure(scenario.title)}
        draw={(w, h) => nextFigure(card, w, h)}
      />
      <Button primary onClick={() => open(scenario.id)}>
        {action}
      </Button>
    </div>
  );
}

function nextFigure(card: CourseCard, w: number, h: number): string {
  const [fromHz, toHz] = bandOf([card.start, card.wanted]);
  const { svg } = targetFig({
    fromHz,
    toHz,
    x: 0,
    y: 12,
    w,
    h: h - 12,
    curve: card.start,
    wanted: card.wanted,
    axis: false,
    hayFill: false,
  });
  return (
    `<rect x=".6" y=".6" width="${w - 1.2}" height="${h - 1.2}" fill="${C.paper}" stroke="${C.ink}" stroke-width="1.2"/>${svg}` +
    `<path d="M10 16h20" stroke="${C.petrolInk}" stroke-width="1.6" stroke-dasharray="5 4"/>${T(34, 20, words.wanted, 'ls')}` +
    `<path d="M10 34h20" stroke="${C.ink}" stroke-width="2"/>${T(34, 38, words.now, 'ls')}`
  );
}

function stackBar(w: number, h: number, share: number): string {
  const filled = r1(w * share);
  const d = `M0 0H${filled}V${h}H0Z`;
  const full =
    filled > 0
      ? `<path d="${d}" fill="${C.hay}" stroke="${C.ink}"/>${hatch(d, [0, 0, filled, h], { a: 64, gap: 3.6, sw: 0.9, op: 0.9, col: C.brassInk })}`
      : '';
  return `<rect x=".5" y=".5" width="${w - 1}" height="${h - 1}" fill="${C.paper}" stroke="${C.ink}"/>${full}`;
}
