/** What the course page shows, worked out from the cards: tracks in order, what is done, what comes next. Pure. */

import type { CourseCard } from './ports.ts';

/** The order in which the course goes through its tracks; a track from elsewhere comes after them. */
const TRACK_ORDER: readonly string[] = [
  'first-sweep',
  'sound-fm',
  'am',
  'vision-if',
  'colour',
  'front-end',
  'set-ups',
  'fault-finding',
];

export interface Track {
  readonly id: string;
  readonly cards: readonly CourseCard[];
  readonly done: number;
}

/** A pass, whatever its points; points without a pass win nothing. */
export const isWon = (card: CourseCard): boolean => card.passed;

/** Tracks in the order of the course, others after them in the order of their first cards; cards by their order in the track. */
export function tracksOf(cards: readonly CourseCard[]): readonly Track[] {
  const byTrack = new Map<string, CourseCard[]>();
  for (const card of cards) {
    const held = byTrack.get(card.scenario.track);
    if (held === undefined) byTrack.set(card.scenario.track, [card]);
    else held.push(card);
  }
  const place = (id: string): number => (TRACK_ORDER.includes(id) ? TRACK_ORDER.indexOf(id) : TRACK_ORDER.length);
  const inOrder = [...byTrack].sort(([a], [b]) => place(a) - place(b));
  return inOrder.map(([id, held]) => ({
    id,
    cards: [...held].sort(
      (a, b) => a.scenario.order - b.scenario.order || a.scenario.code.localeCompare(b.scenario.code, 'en'),
    ),
    done: held.filter(isWon).length,
  }));
}

/** What to do next: the job on the bench, else the first that waits, else the one with most to gain. */
export function nextCard(cards: readonly CourseCard[]): CourseCard | null {
  const ordered = tracksOf(cards).flatMap((t) => t.cards);
  const open = ordered.filter((c) => !c.early);
  return (
    open.find((c) => c.onBench !== null) ??
    open.find((c) => !isWon(c)) ??
    open.reduce<CourseCard | null>(
      (least, c) => (least === null || (c.best ?? 0) < (least.best ?? 0) ? c : least),
      null,
    )
  );
}

/** Sealed jobs that are not begun, in the order in which an attempt at them is likely to be wanted: those that the course says can be done now, then the others. */
export function sealedInTurn(cards: readonly CourseCard[]): readonly string[] {
  const sealed = tracksOf(cards)
    .flatMap((track) => track.cards)
    .filter(({ scenario, onBench }) => scenario.sealed && onBench === null);
  const [now, later] = [sealed.filter((card) => !card.early), sealed.filter((card) => card.early)];
  return [...now, ...later].map(({ scenario }) => scenario.id);
}

/**
 * What a report leads on to: as the course says, without the scenario that has just been done, for that one can be tried again beside it. After a run
 * that has not passed nobody is sent off to another track: what is missing is learnt here.
 */
export function leadsOnTo(cards: readonly CourseCard[], doneId: string, passed: boolean): CourseCard | null {
  const next = nextCard(cards.filter(({ scenario }) => scenario.id !== doneId));
  const done = cards.find(({ scenario }) => scenario.id === doneId);
  const elsewhere = done !== undefined && next?.scenario.track !== done.scenario.track;
  return !passed && elsewhere && next?.onBench === null ? null : next;
}

export interface TrackPlace {
  /** index of the track */
  readonly track: number;
  /** columns that it takes */
  readonly span: number;
}

/**
 * Rows of tracks on the page. Short tracks share a row, so that few places stay empty; what is left of a row goes to its
 * widest track, whose cards then grow.
 */
export function arrangeTracks(counts: readonly number[], columns: number): readonly (readonly TrackPlace[])[] {
  const rows: { track: number; span: number }[][] = [];
  const used = (row: readonly TrackPlace[]): number => row.reduce((sum, t) => sum + t.span, 0);
  counts.forEach((count, track) => {
    const span = Math.min(Math.max(count, 1), columns);
    const row = rows.find((r) => used(r) + span <= columns);
    if (row === undefined) rows.push([{ track, span }]);
    else row.push({ track, span });
  });
  for (const row of rows) {
    const widest = row.reduce((a, b) => (b.span > a.span ? b : a));
    widest.span += columns - used(row);
  }
  return rows;
}

/** How many cards of a track stand side by side in `span` columns: as many as fit, fewer where that leaves no place empty (four make two and two). */
export function cardsPerRow(count: number, span: number): number {
  if (count <= span) return Math.max(1, count);
  const empty = (n: number): number => (n - (count % n)) % n;
  let best = span;
  for (let n = span - 1; n >= 2; n--) if (empty(n) < empty(best)) best = n;
  return best;
}

export const cardRows = (count: number, span: number): number => Math.ceil(count / cardsPerRow(count, span));
