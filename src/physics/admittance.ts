/**
 * What a nonlinear load presents to the carrier at its node, by the carrier's amplitude: a table of g + j b, siemens, with its slope.
 *
 * Samples are even in log(1 + A / scale), cubic interpolation between them; the last one holds for all larger amplitudes. They are worked out in their order and only as far as
 * amplitudes have been asked for: a table may cost more than all that is read from it.
 *
 * Where the load is another a little beside its carrier's frequency, `drift` says by how much: a parabola through three frequencies, straight lines between amplitudes, at every COARSE-th sample.
 */
import type { HarmonicCircuit } from './harmonicCircuit.ts';

export interface Admittance {
  readonly scaleVolts: number;
  readonly step: number;
  /** sample i stands at place i + 1: one more before zero (both are even in A) and two beyond the last */
  readonly g: Float64Array;
  readonly b: Float64Array;
  /** the same at every amplitude */
  readonly still: boolean;
  /** so many samples stand */
  known: number;
  /** has the first `samples` of them stand */
  reach(samples: number): void;
  /** null: the same at every frequency */
  readonly drift: Drift | null;
  /** a diode whose pulses reach another one of its kind in the block: from one's node to the other's at the harmonics (diodePulses.ts); null: none */
  readonly mutual: HarmonicCircuit | null;
  /** of evenly spaced crests over a period, which begins as it ends: how much more the load draws of each, as it charges, than where that stands; null: no more */
  readonly pull: ((crests: Float64Array, periodSeconds: number, out: Float64Array) => void) | null;
}

/** What is added beside the middle frequency, x a share of the way to where the parabola was taken, -1 to 1: x times the first of two, x^2 times the second. */
export interface Drift {
  readonly hz: number;
  /** from there to the upper of the two; the lower lies as far below, by frequency or by period */
  readonly reachHz: number;
  readonly byPeriod: boolean;
  readonly g: readonly [Float64Array, Float64Array];
  readonly b: readonly [Float64Array, Float64Array];
  /** of a third quantity that goes with them, the volts' shape */
  readonly volts: readonly [Float64Array, Float64Array];
  /** so many coarse samples stand, the first at zero */
  known: number;
  reach(samples: number): void;
}

/** Samples of a table to one of its drift. */
export const COARSE = 4;

/** x of a frequency; beyond its ends the drift stands still. */
export function driftPlace({ hz, reachHz, byPeriod }: Drift, atHz: number): number {
  const x = byPeriod ? ((atHz - hz) / reachHz) * ((hz + reachHz) / atHz) : (atHz - hz) / reachHz;
  return Math.min(1, Math.max(-1, x));
}

/** `at` gives g and b for an amplitude of zero or more, volts; it is asked for one sample after the other. */
export function tabulateAdmittance(
  scaleVolts: number,
  endVolts: number,
  intervals: number,
  at: (amplitudeVolts: number) => readonly [g: number, b: number],
  drift: Drift | null = null,
  mutual: HarmonicCircuit | null = null,
  pull: Admittance['pull'] = null,
): Admittance {
  const step = Math.log1p(endVolts / scaleVolts) / intervals;
  const g = new Float64Array(intervals + 4);
  const b = new Float64Array(intervals + 4);
  return {
    scaleVolts,
    step,
    g,
    b,
    still: false,
    known: 0,
    reach(samples) {
      for (let i = this.known; i < samples; i++) {
        const [re, im] = at(Math.abs(scaleVolts * Math.expm1((i - 1) * step)));
        g[i] = re;
        b[i] = im;
        this.known = i + 1;
      }
    },
    drift,
    mutual,
    pull,
  };
}

/** A table of such samples at the place `at`, 0 for an amplitude of zero; up to its last sample but one. */
export function cubicAt(table: Float64Array, at: number): number {
  const i = Math.floor(at);
  const t = at - i;
  return (
    (-t * (t - 1) * (t - 2) * table[i]!) / 6 +
    ((t + 1) * (t - 1) * (t - 2) * table[i + 1]!) / 2 -
    ((t + 1) * t * (t - 2) * table[i + 2]!) / 2 +
    ((t + 1) * t * (t - 1) * table[i + 3]!) / 6
  );
}

/** The same at every amplitude. */
export function constantAdmittance(g: number, b: number): Admittance {
  const [all, allB] = [new Float64Array(4).fill(g), new Float64Array(4).fill(b)];
  const rest = { drift: null, mutual: null, pull: null };
  return { scaleVolts: 1, step: 1, g: all, b: allB, still: true, known: 4, reach() {}, ...rest };
}

/** What stands while the amplitude does, however small a change on top of it: the nearest sample. */
export function standingAdmittance(law: Admittance, amplitudeVolts: number): Admittance {
  const { scaleVolts, step, g, b } = law;
  const place = Math.min(Math.max(0, Math.round(Math.log1p(amplitudeVolts / scaleVolts) / step)), g.length - 4);
  law.reach(place + 2);
  return constantAdmittance(g[place + 1]!, b[place + 1]!);
}

/** Writes g, b and their slopes by the amplitude (siemens per volt) to the four places of `out`. */
export function admittanceAt(law: Admittance, amplitudeVolts: number, out: Float64Array): void {
  // Of a place in the table the absolute error counts.
  readAt(law, amplitudeVolts, Math.log(1 + amplitudeVolts / law.scaleVolts) / law.step, out);
}

function readAt(law: Admittance, amplitudeVolts: number, at: number, out: Float64Array): void {
  const { scaleVolts, step, g, b } = law;
  const i = Math.floor(at);
  const last = g.length - 4;
  if (!(i < last)) {
    if (law.known < g.length) law.reach(g.length);
    out[0] = g[last + 1]!;
    out[1] = b[last + 1]!;
    out[2] = 0;
    out[3] = 0;
    return;
  }
  if (law.known < i + 4) law.reach(i + 4);
  const g0 = g[i]!;
  const g1 = g[i + 1]!;
  const g2 = g[i + 2]!;
  const g3 = g[i + 3]!;
  const b0 = b[i]!;
  const b1 = b[i + 1]!;
  const b2 = b[i + 2]!;
  const b3 = b[i + 3]!;
  // The cubic through the four, by powers of t.
  const t = at - i;
  const gA = (g2 - g0) / 2 - (g3 - 3 * g2 + 3 * g1 - g0) / 6;
  const gB = (g2 - 2 * g1 + g0) / 2;
  const gC = (g3 - 3 * g2 + 3 * g1 - g0) / 6;
  const bA = (b2 - b0) / 2 - (b3 - 3 * b2 + 3 * b1 - b0) / 6;
  const bB = (b2 - 2 * b1 + b0) / 2;
  const bC = (b3 - 3 * b2 + 3 * b1 - b0) / 6;
  const perVolt = 1 / ((scaleVolts + amplitudeVolts) * step);
  out[0] = g1 + t * (gA + t * (gB + t * gC));
  out[1] = b1 + t * (bA + t * (bB + t * bC));
  out[2] = (gA + t * (2 * gB + 3 * t * gC)) * perVolt;
  out[3] = (bA + t * (2 * bB + 3 * t * bC)) * perVolt;
}

/** The same at a frequency. */
export function admittanceAtHz(law: Admittance, hz: number, amplitudeVolts: number, out: Float64Array): void {
  const { drift, scaleVolts, step } = law;
  const place = Math.log(1 + amplitudeVolts / scaleVolts) / step;
  readAt(law, amplitudeVolts, place, out);
  if (drift === null) return;
  const x = driftPlace(drift, hz);
  const x2 = x * x;
  const at = place / COARSE;
  const i = Math.min(Math.floor(at), drift.g[0].length - 2);
  const t = Math.min(at - i, 1);
  if (drift.known < i + 2) drift.reach(i + 2);
  const g = x * drift.g[0][i]! + x2 * drift.g[1][i]!;
  const b = x * drift.b[0][i]! + x2 * drift.b[1][i]!;
  const dg = x * drift.g[0][i + 1]! + x2 * drift.g[1][i + 1]! - g;
  const db = x * drift.b[0][i + 1]! + x2 * drift.b[1][i + 1]! - b;
  out[0] = out[0]! + g + t * dg;
  out[1] = out[1]! + b + t * db;
  if (t === 1) return;
  const perVolt = 1 / ((scaleVolts + amplitudeVolts) * COARSE * step);
  out[2] = out[2]! + dg * perVolt;
  out[3] = out[3]! + db * perVolt;
}

/** The same of several side by side. */
export function admittanceOf(
  laws: readonly Admittance[],
  hz: number,
  amplitudeVolts: number,
  out: Float64Array,
  scratch: Float64Array,
): void {
  admittanceAtHz(laws[0]!, hz, amplitudeVolts, out);
  for (let k = 1; k < laws.length; k++) {
    admittanceAtHz(laws[k]!, hz, amplitudeVolts, scratch);
    for (let j = 0; j < 4; j++) out[j] = out[j]! + scratch[j]!;
  }
}
