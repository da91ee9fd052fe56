/** Where a lead may be put: the bench's own rule, less the point where the other bias output already is. */

import type { BenchState, LeadEnd, LeadId } from '../../../bench/benchState.ts';
import { accepts } from '../../../bench/leads.ts';
import { type BenchSetup, TUBE_X } from '../../../bench/setup.ts';

/** In the order of the receiver's list of points. */
export function legalEnds(setup: BenchSetup, leads: BenchState['leads'], lead: LeadId): LeadEnd[] {
  const twin = lead === 'biasA' ? leads.biasB : lead === 'biasB' ? leads.biasA : null;
  return [TUBE_X, ...setup.receiver.testPoints.map((p) => p.id)].filter(
    (end) => end !== twin && accepts(setup, lead, end),
  );
}

/** The next legal point for an arrow key; from nowhere, the first or the last. Null where there is none. */
export function nextEnd(legal: readonly LeadEnd[], from: LeadEnd | null, by: 1 | -1): LeadEnd | null {
  if (legal.length === 0) return null;
  const at = from === null ? -1 : legal.indexOf(from);
  if (at < 0) return by === 1 ? legal[0]! : legal[legal.length - 1]!;
  return legal[(at + by + legal.length) % legal.length]!;
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
