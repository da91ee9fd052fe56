/** The replay's timeline in ink: band of phases, a lane for each slug with its wedges, flags of incidents, axis of time. */
import type { Incident } from '../../bench/benchState.ts';
import { axisMarks } from '../../kit/theme/figures.ts';
import { C, callout, hatch, line, r1, T } from '../../kit/theme/ink.ts';
import type { PhaseSpan, Spell } from '../../present/runTimeline.ts';

export interface TimelineWords {
  readonly clock: (seconds: number) => string;
  readonly turns: (turns: number) => string;
  readonly phase: (phase: PhaseSpan['phase']) => string;
}

export interface Timeline {
  readonly lengthSeconds: number;
  readonly slugs: readonly { readonly id: string; readonly letter: string }[];
  readonly spells: readonly Spell[];
  readonly phases: readonly PhaseSpan[];
  readonly incidents: readonly Incident[];
}

/** Where the scale of time lies in the drawing; the scrubber lies over it. */
export const TIMELINE_LEFT = 42;
export const TIMELINE_RIGHT = 34;
const TIMELINE_BOTTOM = 36;
const BAND_TOP = 8;
const LANES_TOP = 46;
const LABEL_HEIGHT = 12;
const BAND_HEIGHT = 24;

const laneHeight = (h: number, lanes: number): number => (h - TIMELINE_BOTTOM - 8 - LANES_TOP) / Math.max(1, lanes);
const discRadius = (lane: number): number => Math.min(9.5, lane / 2 - 0.5);

export const timelineX =
  (w: number, lengthSeconds: number) =>
  (seconds: number): number =>
    TIMELINE_LEFT +
    (Math.min(seconds, lengthSeconds) / Math.max(1, lengthSeconds)) * (w - TIMELINE_LEFT - TIMELINE_RIGHT);

export function timelineArt(
  w: number,
  h: number,
  { lengthSeconds, slugs, spells, phases, incidents }: Timeline,
  words: TimelineWords,
): string {
  const X = timelineX(w, lengthSeconds);
  const right = w - TIMELINE_RIGHT;
  const base = h - TIMELINE_BOTTOM;
  const lane = laneHeight(h, slugs.length);
  let s = '';
  for (const { phase, fromSeconds, toSeconds } of phases) {
    const x0 = X(fromSeconds);
    const room = X(toSeconds) - x0;
    s += `<rect x="${r1(x0)}" y="${BAND_TOP}" width="${r1(room)}" height="${BAND_HEIGHT}" fill="${phase === 'align' ? '#f0d9c3' : C.sheet}" stroke="${C.ink}" stroke-width="1.2"/>`;
    const name = words.phase(phase);
    if (room > name.length * 6.6 + 8)
      s += T(x0 + room / 2, BAND_TOP + 17, name, 'ls', { anchor: 'middle', size: 14, weight: 600 });
  }
  const placed: { readonly from: number; readonly to: number; readonly y: number }[] = [];
  slugs.forEach(({ id, letter }, i) => {
    const y = LANES_TOP + lane * (i + 0.5);
    s += callout(18, r1(y), letter, { r: discRadius(lane) });
    s += `<path d="M${TIMELINE_LEFT} ${r1(y)}H${right}" stroke="${C.ink}" stroke-width=".6" stroke-dasharray="1.5 4" opacity=".8"/>`;
    const mine = spells.filter((p) => p.slug === id);
    let free = Number.NEGATIVE_INFINITY;
    mine.forEach((spell, k) => {
      s += wedge(X, y, spell, lane);
      const x = Math.max(X(spell.toSeconds), X(spell.fromSeconds) + 5) + 5;
      const label = words.turns(spell.turns);
      const end = x + label.length * 6.4;
      const next = mine[k + 1];
      // A figure that would lie on its neighbour is left out: the list below the timeline has it.
      if (X(spell.fromSeconds) < free || end > right + 30 || (next !== undefined && end > X(next.fromSeconds) - 2))
        return;
      const top = y + (spell.turns >= 0 ? -1 : Math.min(13, lane / 2 + 2));
      if (placed.some((p) => Math.abs(p.y - top) < LABEL_HEIGHT && p.from < end && x < p.to)) return;
      placed.push({ from: x, to: end, y: top });
      s += T(x, top, label, 'ls', {
        size: 14,
        weight: 600,
        tracking: 'none',
      });
      free = end;
    });
  });
  for (const { atSeconds } of incidents) s += flag(X(atSeconds), base);
  return s + timeAxis(X, lengthSeconds, right, base, words);
}

/** Up = in, down = out; long turns are higher. */
function wedge(
  X: (seconds: number) => number,
  y: number,
  { fromSeconds, toSeconds, turns, harmed }: Spell,
  lane: number,
): string {
  const a = X(fromSeconds);
  const b = Math.max(X(toSeconds), a + 5);
  const k = Math.min(14, lane / 2 + 1, 4 + Math.abs(turns) * 8) * (turns >= 0 ? -1 : 1);
  const d = `M${r1(a)} ${r1(y)}L${r1(b)} ${r1(y)}L${r1(b)} ${r1(y + k)}Z`;
  return (
    `<path d="${d}" fill="${harmed ? '#ecc9b8' : '#cfe0d6'}" stroke="${C.ink}" stroke-width="1.3" stroke-linejoin="round"/>` +
    hatch(d, [a, y - 15, b - a, 30], { a: 90, gap: 2.6, sw: 0.7, op: 0.6, col: harmed ? C.rust : C.petrol })
  );
}

function flag(x: number, base: number): string {
  const y = BAND_TOP + BAND_HEIGHT - 2;
  return (
    `<path d="M${r1(x)} ${y}V${r1(base)}" stroke="${C.rust}" stroke-dasharray="3 3"/>` +
    `<path d="M${r1(x)} ${y}l9 15h-18z" fill="${C.sheet}" stroke="${C.rust}" stroke-width="1.8" stroke-linejoin="round"/>` +
    T(x, y + 13, '!', 'ls', { anchor: 'middle', fill: C.rustInk, weight: 700 })
  );
}

function timeAxis(
  X: (seconds: number) => number,
  lengthSeconds: number,
  right: number,
  base: number,
  words: TimelineWords,
): string {
  const minutes = lengthSeconds / 60;
  const room = right - TIMELINE_LEFT;
  const big = axisMarks(0, minutes, Math.max(1, Math.floor(room / 110)));
  const small = axisMarks(0, minutes, Math.max(2, Math.floor(room / 22)));
  let ticks = '';
  for (const m of small) ticks += `M${r1(X(m * 60))} ${r1(base)}v4`;
  let s = line(TIMELINE_LEFT, base, right, base, { sw: 1.4 });
  for (const m of big) {
    ticks += `M${r1(X(m * 60))} ${r1(base)}v8`;
    s += T(X(m * 60), base + 24, words.clock(m * 60), 'm', { anchor: 'middle' });
  }
  return `${s}<path d="${ticks}" stroke="${C.ink}" stroke-width="1.1"/>`;
}

export interface Moment {
  readonly seconds: number;
  /** index of the slug turned last, -1 before the first */
  readonly slug: number;
}

/** The moment shown: a rust line with its time, and the slug that is in hand; drawn apart from the rest because it moves. */
export function cursorArt(
  w: number,
  h: number,
  { lengthSeconds, slugs }: Timeline,
  { seconds, slug }: Moment,
  words: TimelineWords,
): string {
  const x = r1(timelineX(w, lengthSeconds)(seconds));
  const base = h - TIMELINE_BOTTOM;
  const lane = laneHeight(h, slugs.length);
  const held = slugs[slug];
  return (
    (held === undefined
      ? ''
      : callout(18, r1(LANES_TOP + lane * (slug + 0.5)), held.letter, {
          r: discRadius(lane),
          fill: C.rust,
          txt: '#fff',
        })) +
    `<path d="M${TIMELINE_LEFT} ${r1(base)}H${x}" stroke="${C.rust}" stroke-width="4"/>` +
    `<path d="M${x} 2V${r1(base)}" stroke="${C.rust}" stroke-width="2.2"/>` +
    `<rect x="${r1(x - 31)}" y="${r1(base - 12)}" width="62" height="24" rx="3" fill="${C.rustInk}" stroke="${C.ink}" stroke-width="1.3"/>` +
    T(x, base + 4.5, words.clock(seconds), 'm', { anchor: 'middle', fill: '#fff' })
  );
}
