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
 */
import { clamp } from '../base/rounding.ts';
import type { Adjuster } from './receiver.ts';

const STEEPNESS = 1.2;
const EDGE = Math.tanh(STEEPNESS);

/** Henries of the first winding with the core `coreTurns` from the outer stop; beyond a stop the core stands at the stop. */
export function slugHenries(adjuster: Adjuster, coreTurns: number): number {
  const u = clamp(coreTurns / adjuster.travelTurns, 0, 1);
  // The two-sided sum is exact at both ends, where Lmin + (Lmax - Lmin) need not be.
  const s = (1 + Math.tanh(STEEPNESS * (2 * u - 1)) / EDGE) / 2;
  return adjuster.minHenries * (1 - s) + adjuster.maxHenries * s;
}

/** The turns that give `henries`; null when the slug cannot reach them. */
export function turnsForHenries(adjuster: Adjuster, henries: number): number | null {
  const { minHenries, maxHenries, travelTurns } = adjuster;
  if (!(henries >= minHenries && henries <= maxHenries)) return null;
  const s = (henries - minHenries) / (maxHenries - minHenries);
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
  const t = Math.tanh(STEEPNESS * (2 * u - 1));
  const range = adjuster.maxHenries - adjuster.minHenries;
  return (range * STEEPNESS * (1 - t * t)) / (EDGE * adjuster.travelTurns);
}
