/** Reads a curve as a person does from the tube: peaks, dips, widths and crossings, finer than its samples. */

export interface Point {
  readonly hz: number;
  readonly level: number;
}

/** Local highest points, with a parabola through three neighbours (from memory); ends do not count. */
export function peaks(hz: Float64Array, y: ArrayLike<number>, sign: 1 | -1 = 1): Point[] {
  const found: Point[] = [];
  for (let i = 1; i < hz.length - 1; i++) {
    const [a, b, c] = [sign * y[i - 1]!, sign * y[i]!, sign * y[i + 1]!];
    if (!(b > a && b >= c)) continue;
    const bend = a - 2 * b + c;
    const shift = bend === 0 ? 0 : (a - c) / (2 * bend);
    found.push({ hz: hz[i]! + shift * (hz[i + 1]! - hz[i]!), level: sign * (b - ((a - c) * shift) / 4) });
  }
  return found;
}

export function highest(hz: Float64Array, y: ArrayLike<number>, sign: 1 | -1 = 1): Point {
  const all = peaks(hz, y, sign);
  if (all.length > 0) return all.reduce((best, one) => (sign * one.level > sign * best.level ? one : best));
  const end = sign * y[0]! > sign * y[hz.length - 1]! ? 0 : hz.length - 1;
  return { hz: hz[end]!, level: y[end]! };
}

/** Where the curve passes through a level, in order. */
export function crossings(hz: Float64Array, y: ArrayLike<number>, level: number): number[] {
  const found: number[] = [];
  for (let i = 1; i < hz.length; i++) {
    const [a, b] = [y[i - 1]! - level, y[i]! - level];
    if (a < 0 === b < 0) continue;
    found.push(hz[i - 1]! + ((hz[i]! - hz[i - 1]!) * a) / (a - b));
  }
  return found;
}

/** Between the outermost places where the curve stands at the level; null where it does not come down on both sides. */
export function widthAt(hz: Float64Array, y: ArrayLike<number>, level: number): number | null {
  const found = crossings(hz, y, level);
  return found.length < 2 ? null : found.at(-1)! - found[0]!;
}

/** 3 dB below the highest point. */
export const halfPower = (top: number): number => top / Math.SQRT2;
