/** Runs a network through a sweep and reads peaks and edges off the swept envelope, as a person would off the tube. */

import { createFastSweep } from '../../src/physics/fastSweep.ts';
import type { Solver } from '../../src/physics/solver.ts';
import { sweepFrequencies } from '../../src/physics/sweep.ts';

export interface Sweep {
  readonly centreHz: number;
  readonly spanHz: number;
  readonly sweepHz: number;
  /** samples a half, a power of two */
  readonly points: number;
}

/** One half of a sweep in order of rising frequency: the envelope and the source's frequency at the same instant. */
export interface Half {
  readonly hz: Float64Array;
  readonly volts: Float64Array;
}

export interface Swept {
  readonly trace: Half;
  readonly retrace: Half;
}

/** Trace and retrace of a whole period, both in order of rising frequency. */
export function halves(envelope: Float64Array, { centreHz, spanHz, points }: Sweep): Swept {
  const hz = sweepFrequencies(centreHz, spanHz, points);
  return {
    trace: { hz, volts: envelope.slice(0, points) },
    retrace: { hz, volts: envelope.slice(points).reverse() },
  };
}

/** The exact swept envelope of a node. */
export function sweptExactly(solver: Solver, node: string, sweep: Sweep, gated = false): Swept {
  const fast = createFastSweep(sweep.points);
  solver.setFrequencies(fast.linesHz(sweep.centreHz, sweep.spanHz, sweep.sweepHz, 1));
  solver.solve();
  const out = new Float64Array(2 * sweep.points);
  fast.envelope(solver.real(node), solver.imag(node), gated, out);
  return halves(out, sweep);
}

/** Highest point: the parabola through the highest sample and those about `nearHz` to either side of it. */
export function topOf({ hz, volts }: Half, nearHz: number): { readonly hz: number; readonly volts: number } {
  let at = 0;
  for (let i = 1; i < volts.length; i++) if (volts[i]! > volts[at]!) at = i;
  let [below, above] = [at - 1, at + 1];
  while (hz[at]! - hz[below]! < nearHz) below--;
  while (hz[above]! - hz[at]! < nearHz) above++;
  const [a, b] = [hz[below]! - hz[at]!, hz[above]! - hz[at]!];
  const [pa, pb] = [volts[below]! - volts[at]!, volts[above]! - volts[at]!];
  const curvature = (pb / b - pa / a) / (b - a);
  const slope = pa / a - curvature * a;
  const shift = -slope / (2 * curvature);
  return { hz: hz[at]! + shift, volts: volts[at]! + (slope * shift) / 2 };
}

/** Outermost frequencies at which the envelope is at `level`, straight lines between the samples. */
export function edgesOf({ hz, volts }: Half, level: number): readonly [number, number] {
  const between = (i: number, j: number): number =>
    hz[i]! + ((hz[j]! - hz[i]!) * (level - volts[i]!)) / (volts[j]! - volts[i]!);
  let low = 1;
  while (volts[low]! < level) low++;
  let high = volts.length - 2;
  while (volts[high]! < level) high--;
  return [between(low - 1, low), between(high, high + 1)];
}

/** Volts at a frequency, straight line between the samples. */
export function sweptAt({ hz, volts }: Half, at: number): number {
  let i = 1;
  while (hz[i]! < at) i++;
  return volts[i - 1]! + ((volts[i]! - volts[i - 1]!) * (at - hz[i - 1]!)) / (hz[i]! - hz[i - 1]!);
}
