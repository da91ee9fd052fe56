/**
 * The law of a slug: how much inductance the coil has when the core has gone in by so many turns.
 *
 *   u = turns / travel (0 = outer stop, 1 = inner stop)
 *   L(u) = Lmin + (Lmax - Lmin) * S(u),   S(u) = (1 + tanh(k (2u - 1)) / tanh k) / 2,   k = 1.2
 *
 * S-shaped: a core that only just meets the winding, or has all but left it, moves the inductance little; half way in it moves it most
 * (1.44 times the mean rate; 0.44 at the stops). Monotone, smooth, exact at the stops, and it can be inverted in closed form.
 * The shape is a plain model of ours (from the picture of a core entering a coil), not a measured coil; k was chosen, not fitted.
 * With 40 per cent of range over 20 turns, 1/32 turn in the middle is 0.09 per cent of L.
 *
 * Where a core can be screwed right through (`twoPeaks`), L rises to the middle of the travel and falls again:
 *   S(u) = (1 - cos(2 pi u)) / 2
 * and beyond the middle the coupling to the other winding grows to 1 + share times its value, as w^2 (3 - 2 w), w = 2u - 1. Nominal is on the outer side. A plain model too.
 */
import { clamp } from '../base/rounding.ts';
import type { Adjuster } from './receiver.ts';

const STEEPNESS = 1.2;
const EDGE = Math.tanh(STEEPNESS);

/** S(u): how much of the range between least and greatest inductance the coil has with the core at the share `u` of its travel; beyond a stop as at the stop. */
export function slugShare({ twoPeaks }: Pick<Adjuster, 'twoPeaks'>, u: number): number {
  const at = clamp(u, 0, 1);
  // The two-sided sum is exact at both ends, where Lmin + (Lmax - Lmin) need not be.
  return twoPeaks === undefined
    ? (1 + Math.tanh(STEEPNESS * (2 * at - 1)) / EDGE) / 2
    : (1 - Math.cos(2 * Math.PI * at)) / 2;
}

/** Henries of the first winding with the core `coreTurns` from the outer stop; beyond a stop the core stands at the stop. */
export function slugHenries(adjuster: Adjuster, coreTurns: number): number {
  const s = slugShare(adjuster, coreTurns / adjuster.travelTurns);
  return adjuster.minHenries * (1 - s) + adjuster.maxHenries * s;
}

/** The turns that give `henries`, on the outer side where there are two; null when the slug cannot reach them. */
export function turnsForHenries(adjuster: Adjuster, henries: number): number | null {
  const { minHenries, maxHenries, travelTurns } = adjuster;
  if (!(henries >= minHenries && henries <= maxHenries)) return null;
  const s = (henries - minHenries) / (maxHenries - minHenries);
  if (adjuster.twoPeaks !== undefined) return (travelTurns * Math.acos(clamp(1 - 2 * s, -1, 1))) / (2 * Math.PI);
  // Rounding may carry the quotient a hair past the ends, where atanh would be infinite or not a number.
  const t = clamp((2 * s - 1) * EDGE, -EDGE, EDGE);
  return clamp((travelTurns * (1 + Math.atanh(t) / STEEPNESS)) / 2, 0, travelTurns);
}

/** The turns at which the coil has its nominal inductance. */
export function nominalTurns(adjuster: Adjuster): number {
  const turns = turnsForHenries(adjuster, adjuster.nominalHenries);
  if (turns === null) throw new Error(`slug ${adjuster.id} cannot reach its nominal inductance`);
  return turns;
}

/** dL/dturn, henries per turn, with the core `coreTurns` from the outer stop; zero beyond the stops. */
export function henriesPerTurn(adjuster: Adjuster, coreTurns: number): number {
  const u = coreTurns / adjuster.travelTurns;
  if (u < 0 || u > 1) return 0;
  const range = adjuster.maxHenries - adjuster.minHenries;
  if (adjuster.twoPeaks !== undefined) return (range * Math.PI * Math.sin(2 * Math.PI * u)) / adjuster.travelTurns;
  const t = Math.tanh(STEEPNESS * (2 * u - 1));
  return (range * STEEPNESS * (1 - t * t)) / (EDGE * adjuster.travelTurns);
}

/** What the core's place makes of the coupling of its can; 1 on the outer side and for slugs with one peak. */
export function couplingFactor({ twoPeaks, travelTurns }: Adjuster, coreTurns: number): number {
  if (twoPeaks === undefined) return 1;
  const w = clamp((2 * coreTurns) / travelTurns - 1, 0, 1);
  return 1 + twoPeaks.share * w * w * (3 - 2 * w);
}
