/** A curve as samples, read at a frequency or thinned for drawing. */
import type { SheetResponse } from '../receiver/receiver.ts';

export interface Curve {
  readonly hz: Float64Array;
  /** level relative to the curve's own peak, linear; may be negative for a detector's S */
  readonly relative: Float64Array;
}

/** Frequencies, evenly across the sweep that the sheet asks for. */
export function acrossSweep({ setUp: { centreHz, spanHz } }: SheetResponse, points: number): Float64Array {
  return Float64Array.from({ length: points }, (_, i) => centreHz + spanHz * (i / (points - 1) - 0.5));
}

/** The largest of `levels`, whatever its sign; 0 where there is none. */
export const highest = (levels: Float64Array): number =>
  levels.reduce((most, level) => Math.max(most, Math.abs(level)), 0);

/** Level of a curve at one frequency, straight between its samples; outside them the nearest end. */
export function levelAt(curve: Curve, hz: number): number {
  const { hz: f, relative: a } = curve;
  const n = f.length;
  if (n === 0) return 0;
  if (hz <= f[0]!) return a[0]!;
  if (hz >= f[n - 1]!) return a[n - 1]!;
  let low = 0;
  let high = n - 1;
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (f[mid]! <= hz) low = mid;
    else high = mid;
  }
  const t = (hz - f[low]!) / (f[high]! - f[low]!);
  return a[low]! + (a[high]! - a[low]!) * t;
}

/** Samples of a curve inside a range, with both ends, thinned to about `most` points for drawing. */
export function within(
  curve: Curve,
  fromHz: number,
  toHz: number,
  most = 320,
): (readonly [hz: number, level: number])[] {
  const inside: (readonly [number, number])[] = [[fromHz, levelAt(curve, fromHz)]];
  const n = curve.hz.length;
  let count = 0;
  for (let i = 0; i < n; i++) if (curve.hz[i]! > fromHz && curve.hz[i]! < toHz) count++;
  const stride = Math.max(1, Math.ceil(count / most));
  for (let i = 0, k = 0; i < n; i++) {
    const hz = curve.hz[i]!;
    if (hz <= fromHz || hz >= toHz) continue;
    const level = curve.relative[i]!;
    // A notch is narrower than the stride: its bottom must not be thinned away.
    const bottom = i > 0 && i < n - 1 && level < curve.relative[i - 1]! && level <= curve.relative[i + 1]!;
    if (k++ % stride === 0 || bottom) inside.push([hz, level]);
  }
  inside.push([toHz, levelAt(curve, toHz)]);
  return inside;
}

/** The stretch where any of the curves stands above a share of its peak, with some room at both sides, inside what is sampled. */
export function bandOf(curves: readonly Curve[], above = 0.04, room = 0.16): readonly [fromHz: number, toHz: number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const { hz, relative } of curves)
    hz.forEach((f, i) => {
      first = Math.min(first, f);
      last = Math.max(last, f);
      if (Math.abs(relative[i]!) < above) return;
      low = Math.min(low, f);
      high = Math.max(high, f);
    });
  if (!(high > low)) return [first, last];
  const extra = (high - low) * room;
  return [Math.max(first, low - extra), Math.min(last, high + extra)];
}
