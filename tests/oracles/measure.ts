/** Reads peaks and edges off a solver by zooming in, as a person would with a finer and finer sweep. */

import type { Solver } from '../../src/physics/solver.ts';
import { grid } from '../physics/decks.ts';

export interface Peak {
  readonly hz: number;
  readonly volts: number;
}

export function voltsAt(solver: Solver, node: string, hz: number): number {
  solver.setFrequencies(Float64Array.of(hz));
  solver.solve();
  return solver.magnitude(node)[0]!;
}

/** The highest point between two frequencies; `sign` -1 finds the lowest. */
export function peakBetween(solver: Solver, node: string, fromHz: number, toHz: number, sign: 1 | -1 = 1): Peak {
  let [from, to] = [fromHz, toHz];
  for (let zoom = 0; zoom < 5; zoom++) {
    const hz = grid(from, to, 201);
    solver.setFrequencies(hz);
    solver.solve();
    const volts = solver.magnitude(node);
    let best = 0;
    for (let i = 1; i < volts.length; i++) if (sign * volts[i]! > sign * volts[best]!) best = i;
    from = hz[Math.max(0, best - 2)]!;
    to = hz[Math.min(200, best + 2)]!;
  }
  const hz = (from + to) / 2;
  return { hz, volts: voltsAt(solver, node, hz) };
}

/** Where the level passes through `volts`, which it must do once between the two frequencies. */
export function crossingBetween(solver: Solver, node: string, volts: number, fromHz: number, toHz: number): number {
  let [low, high] = [fromHz, toHz];
  const rising = voltsAt(solver, node, high) > voltsAt(solver, node, low);
  if (rising ? voltsAt(solver, node, low) > volts : voltsAt(solver, node, low) < volts)
    throw new Error('no crossing here');
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (voltsAt(solver, node, middle) > volts === rising) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Number of local maxima on a grid. */
export function humps(solver: Solver, node: string, hz: Float64Array): number {
  solver.setFrequencies(hz);
  solver.solve();
  const v = solver.magnitude(node);
  let count = 0;
  for (let i = 1; i < v.length - 1; i++) if (v[i]! > v[i - 1]! && v[i]! >= v[i + 1]!) count++;
  return count;
}

/** Deck lines of a parallel tuned circuit: resonance, Q and coil given; C and R follow. */
export function tank(name: string, node: string, hz: number, q: number, henries: number): string {
  const w = 2 * Math.PI * hz;
  return [
    `L${name} ${node} 0 ${henries}`,
    `C${name} ${node} 0 ${1 / (w * w * henries)}`,
    `R${name} ${node} 0 ${q * w * henries}`,
  ].join('\n');
}
