/**
 * Reading a sampled S-curve: zero, peaks, straightness. Values have a sign; between samples they are interpolated by the cubic through the four nearest.
 *
 * Validity: spacing small against the distance of the peaks (a hundredth of it gives about 1e-6 of the height).
 */
import type { CurvePoint, ResponseCurve } from './curveReading.ts';

/** Value at `hz`, which must lie inside the curve. */
export function valueAt({ hz: f, volts: v }: ResponseCurve, hz: number): number {
  const n = f.length;
  const slack = 1e-9 * hz;
  if (n < 4 || hz < f[0]! - slack || hz > f[n - 1]! + slack) throw new Error(`${hz} Hz lies outside the curve`);
  let low = 0;
  let high = n - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (f[middle]! <= hz) low = middle;
    else high = middle - 1;
  }
  const start = Math.min(Math.max(low - 1, 0), n - 4);
  let value = 0;
  for (let a = start; a < start + 4; a++) {
    let share = v[a]!;
    for (let b = start; b < start + 4; b++) if (b !== a) share *= (hz - f[b]!) / (f[a]! - f[b]!);
    value += share;
  }
  return value;
}

export interface SCurve {
  /** highest and lowest value, wherever they lie */
  readonly top: CurvePoint;
  readonly bottom: CurvePoint;
  /** half the distance from top to bottom */
  readonly height: number;
  /** the crossing nearest to the centre; null where the curve never changes its sign */
  readonly zeroHz: number | null;
}

export function readSCurve(curve: ResponseCurve, centreHz: number, fromHz: number, toHz: number): SCurve {
  const top = extreme(curve, fromHz, toHz, 1);
  const bottom = extreme(curve, fromHz, toHz, -1);
  return { top, bottom, height: (top.volts - bottom.volts) / 2, zeroHz: nearestZero(curve, centreHz, fromHz, toHz) };
}

/**
 * Greatest distance of the curve from the straight line through its values at `centreHz - withinHz` and `centreHz + withinHz`, as a share of half the
 * distance between those two values; 1 where they are equal.
 */
export function nonLinearity(curve: ResponseCurve, centreHz: number, withinHz: number): number {
  const low = valueAt(curve, centreHz - withinHz);
  const high = valueAt(curve, centreHz + withinHz);
  const half = Math.abs(high - low) / 2;
  if (half === 0) return 1;
  let worst = 0;
  for (let i = 0; i < curve.hz.length; i++) {
    const away = (curve.hz[i]! - centreHz) / withinHz;
    if (Math.abs(away) > 1) continue;
    const line = (low + high) / 2 + ((high - low) / 2) * away;
    worst = Math.max(worst, Math.abs(curve.volts[i]! - line));
  }
  return Math.min(worst / half, 1);
}

function nearestZero(curve: ResponseCurve, centreHz: number, fromHz: number, toHz: number): number | null {
  const { hz: f, volts: v } = curve;
  let best: number | null = null;
  for (let i = 1; i < f.length; i++) {
    if (f[i - 1]! < fromHz || f[i]! > toHz || v[i - 1]! * v[i]! > 0) continue;
    if (v[i - 1] === 0 && v[i] === 0) continue;
    let low = f[i - 1]!;
    let high = f[i]!;
    const falling = v[i - 1]! > v[i]!;
    for (let k = 0; k < 50; k++) {
      const middle = (low + high) / 2;
      if (valueAt(curve, middle) > 0 === falling) low = middle;
      else high = middle;
    }
    const at = (low + high) / 2;
    if (best === null || Math.abs(at - centreHz) < Math.abs(best - centreHz)) best = at;
  }
  return best;
}

function extreme({ hz: f, volts: v }: ResponseCurve, fromHz: number, toHz: number, sign: 1 | -1): CurvePoint {
  let at = -1;
  for (let i = 0; i < f.length; i++) {
    if (f[i]! < fromHz || f[i]! > toHz) continue;
    if (at < 0 || sign * (v[i]! - v[at]!) > 0) at = i;
  }
  if (at < 0) return { hz: fromHz, volts: 0 };
  if (at === 0 || at === f.length - 1) return { hz: f[at]!, volts: v[at]! };
  // Top of the parabola through the three.
  const a = f[at - 1]! - f[at]!;
  const b = f[at + 1]! - f[at]!;
  const pa = v[at - 1]! - v[at]!;
  const pb = v[at + 1]! - v[at]!;
  const curvature = (pb / b - pa / a) / (b - a);
  const slope = pa / a - curvature * a;
  const shift = curvature === 0 ? 0 : -slope / (2 * curvature);
  if (shift < a || shift > b) return { hz: f[at]!, volts: v[at]! };
  return { hz: f[at]! + shift, volts: v[at]! + (slope * shift) / 2 };
}
