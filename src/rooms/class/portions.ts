/**
 * Rows of a table that come a few at a time. A list that is sorted anew has fifty other rows on the page, and to draw them in one go would hold the page up; so the first few come
 * at once, and until the others have had their turn those that stood in their places stay.
 */
import { useLayoutEffect, useReducer, useRef } from 'preact/hooks';

export interface Numbered {
  readonly no: number;
}

/** Rows that are not on the page yet, at most, in one task: some 2 ms each. */
const PORTION = 10;

/** `wanted` as far as it needs no more than `most` rows that were not drawn before; behind that what stood there, each row once. */
export function portionOf<T extends Numbered>(drawn: readonly T[], wanted: readonly T[], most: number): readonly T[] {
  const there = new Set(drawn.map(({ no }) => no));
  let fresh = 0;
  const end = wanted.findIndex(({ no }) => !there.has(no) && ++fresh > most);
  if (end < 0) return wanted;
  const first = wanted.slice(0, end);
  const taken = new Set(first.map(({ no }) => no));
  return [...first, ...drawn.slice(end).filter(({ no }) => !taken.has(no))].slice(0, wanted.length);
}

/** What is to be drawn now; the rest follows by itself. */
export function useInPortions<T extends Numbered>(wanted: readonly T[]): readonly T[] {
  const drawn = useRef<readonly T[]>([]);
  const [, drawMore] = useReducer<number, void>((n) => n + 1, 0);
  // Once for each list and turn: a page that is drawn for another reason meanwhile brings no further portion in the same task.
  const turn = useRef<{ readonly of: readonly T[]; due: boolean } | null>(null);
  if (turn.current?.of !== wanted) turn.current = { of: wanted, due: true };
  if (turn.current.due) {
    turn.current.due = false;
    drawn.current = portionOf(drawn.current, wanted, PORTION);
  }
  const whole = drawn.current === wanted;
  useLayoutEffect(() => {
    if (whole) return;
    const timer = setTimeout(() => {
      turn.current = { of: wanted, due: true };
      drawMore();
    });
    return () => clearTimeout(timer);
  });
  return drawn.current;
}
