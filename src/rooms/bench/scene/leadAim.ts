/** Walking over the points that take a lead, and finding the one under its tip. */
import type { LeadEnd } from '../../../bench/benchState.ts';
import type { Rect } from '../../../kit/px.ts';

/** px that a tip may be off its point */
export const REACH = 22;
/** px */
const ROUND_LABEL = 4;

/** The next legal point for an arrow key; from nowhere, the first or the last. Null where there is none. */
export function nextEnd(legal: readonly LeadEnd[], from: LeadEnd | null, by: 1 | -1): LeadEnd | null {
  if (legal.length === 0) return null;
  const at = from === null ? -1 : legal.indexOf(from);
  if (at < 0) return by === 1 ? legal[0]! : legal[legal.length - 1]!;
  return legal[(at + by + legal.length) % legal.length]!;
}

/** Whose name lies under (x, y), with a finger's breadth round it. */
export function labelUnder(labels: ReadonlyMap<LeadEnd, Rect>, x: number, y: number): LeadEnd | null {
  for (const [id, box] of labels) {
    const across = x >= box.x - ROUND_LABEL && x <= box.x + box.width + ROUND_LABEL;
    if (across && y >= box.y - ROUND_LABEL && y <= box.y + box.height + ROUND_LABEL) return id;
  }
  return null;
}

/** Which end lies under a tip that is let go at (x, y): the nearest within reach, legal or not, so that a wrong try gets its reason. */
export function endUnder(
  ends: ReadonlyMap<LeadEnd, { readonly x: number; readonly y: number }>,
  x: number,
  y: number,
  reach: number,
): LeadEnd | null {
  let best: LeadEnd | null = null;
  let least = reach;
  for (const [id, p] of ends) {
    const d = Math.hypot(p.x - x, p.y - y);
    if (d <= least) {
      least = d;
      best = id;
    }
  }
  return best;
}
