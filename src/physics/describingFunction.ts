/**
 * Gain of a saturating stage for the fundamental.
 *
 * A stage i = Is tanh(v / Vs) with small-signal gm = Is / Vs and a sine of peak A at its input gives the fundamental current
 * gm A N(a), a = A / Vs, N(a) = (2 / (pi a)) * integral over 0..pi of tanh(a sin t) sin t dt. N(0) = 1, N falls as 4 / (pi a).
 * Valid for a memoryless stage whose tuned load takes out the harmonics.
 * Source: describing function, e.g. Gelb and Vander Velde, Multiple-Input Describing Functions, 1968 (from memory).
 */
import type { Chirp } from './chirp.ts';

const TABLE_END = 16;
const STEP = 1 / 32;
let table: Float64Array | null = null;

/** N(|a|), dimensionless, 0 < N <= 1; relative error below 1e-7. Not finite input gives 0 for infinity and NaN for NaN. */
export function fundamentalGain(a: number): number {
  const size = Math.abs(a);
  if (size >= TABLE_END) return asymptoticGain(size);
  table ??= makeTable();
  // Cubic through four neighbours; N is even, so the point before zero is the one after it.
  const at = size / STEP;
  const i = Math.floor(at);
  const t = at - i;
  const p0 = table[i]!;
  const p1 = table[i + 1]!;
  const p2 = table[i + 2]!;
  const p3 = table[i + 3]!;
  return (
    (-t * (t - 1) * (t - 2) * p0) / 6 +
    ((t + 1) * (t - 1) * (t - 2) * p1) / 2 -
    ((t + 1) * t * (t - 2) * p2) / 2 +
    ((t + 1) * t * (t - 1) * p3) / 6
  );
}

/** dN/da at |a|, 0 or below. */
export function fundamentalGainSlope(a: number): number {
  const size = Math.abs(a);
  if (size >= TABLE_END) return asymptoticSlope(size);
  table ??= makeTable();
  const at = size / STEP;
  const i = Math.floor(at);
  const t = at - i;
  const p0 = table[i]!;
  const p1 = table[i + 1]!;
  const p2 = table[i + 2]!;
  const p3 = table[i + 3]!;
  const cube = (p3 - 3 * p2 + 3 * p1 - p0) / 6;
  return ((p2 - p0) / 2 - cube + t * (p2 - 2 * p1 + p0 + 3 * t * cube)) / STEP;
}

/**
 * N(a) by the trapezoidal rule, which converges geometrically on this smooth periodic integrand; a from 0 to about 20.
 */
export function fundamentalGainByQuadrature(a: number, points = 400): number {
  if (a === 0) return 1;
  let sum = 0;
  for (let i = 0; i < points; i++) {
    const s = Math.sin((Math.PI * (i + 0.5)) / points);
    sum += Math.tanh(a * s) * s;
  }
  return (2 * sum) / (points * a);
}

const C1 = Math.PI ** 2 / 24;
const C3 = (0.75 * 7 * Math.PI ** 4) / 720;
const C5 = (3.75 * 31 * Math.PI ** 6) / 30240;

/** Expansion for large a: 1 - tanh u decays as exp(-2u), so each term is a moment of it over the zero crossing. */
function asymptoticGain(a: number): number {
  const q = 1 / (a * a);
  return (4 / (Math.PI * a)) * (1 - q * (C1 + q * (C3 / 2 + (q * 3 * C5) / 8)));
}

function asymptoticSlope(a: number): number {
  const q = 1 / (a * a);
  return (-4 * q * (1 - q * (3 * C1 + q * ((5 * C3) / 2 + (q * 21 * C5) / 8)))) / Math.PI;
}

function makeTable(): Float64Array {
  const count = TABLE_END / STEP + 4;
  return Float64Array.from({ length: count }, (_, i) => fundamentalGainByQuadrature(Math.abs(i - 1) * STEP, 256));
}

/** Under a swept source (chirp.ts): from the lines of a stage's control voltage, v between two nodes, those of its current  gm N(|v| / limit) v,  the amplitude that of the moment. */
export function sweepStage(
  chirp: Chirp,
  plusRe: Float64Array,
  plusIm: Float64Array,
  minusRe: Float64Array,
  minusIm: Float64Array,
  gm: number,
  limit: number,
): readonly [re: Float64Array, im: Float64Array] {
  const re = plusRe.map((v, f) => v - minusRe[f]!);
  const im = plusIm.map((v, f) => v - minusIm[f]!);
  chirp.toTime(re, im);
  for (let f = 0; f < re.length; f++) {
    const gain = gm * fundamentalGain(Math.hypot(re[f]!, im[f]!) / limit);
    re[f] = gain * re[f]!;
    im[f] = gain * im[f]!;
  }
  chirp.toLines(re, im);
  return [re, im];
}
