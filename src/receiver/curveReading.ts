/**
 * Reading a sampled response curve: level at a frequency, peak, extremes of a stretch, notches, crossings of a level.
 *
 * Samples are magnitudes in volts at rising frequencies in hertz, evenly spaced or not. Between samples the *power* |H|^2 is interpolated
 * (cubic through the four nearest), because |H|^2 of a lumped network is a smooth rational function of frequency even where |H| itself has a
 * sharp null. Validity: spacing small against the narrowest resonance (a tenth of its width gives about 1e-4).
 */

export interface ResponseCurve {
  readonly hz: Float64Array;
  readonly volts: Float64Array;
}

export interface CurvePoint {
  readonly hz: number;
  readonly volts: number;
}

/** Level in volts at `hz`, which must lie inside the curve. */
export function voltsAt(curve: ResponseCurve, hz: number): number {
  const { hz: f, volts: v } = curve;
  const n = f.length;
  const slack = 1e-9 * hz;
  if (n < 4 || hz < f[0]! - slack || hz > f[n - 1]! + slack) throw new Error(`${hz} Hz lies outside the curve`);
  const i = lastAtOrBelow(f, hz);
  if (Math.abs(f[i]! - hz) <= slack) return v[i]!;
  if (i + 1 < n && Math.abs(f[i + 1]! - hz) <= slack) return v[i + 1]!;
  const start = Math.min(Math.max(i - 1, 0), n - 4);
  let power = 0;
  for (let a = start; a < start + 4; a++) {
    let share = v[a]! * v[a]!;
    for (let b = start; b < start + 4; b++) if (b !== a) share *= (hz - f[b]!) / (f[a]! - f[b]!);
    power += share;
  }
  // Beside a deep null the cubic may dip a hair below zero.
  return Math.sqrt(Math.max(power, 0));
}

/** The highest level in a stretch, its ends included. */
export function highest(curve: ResponseCurve, fromHz: number, toHz: number): CurvePoint {
  return extreme(curve, fromHz, toHz, 1);
}

/** The lowest level in a stretch, its ends included. */
export function lowest(curve: ResponseCurve, fromHz: number, toHz: number): CurvePoint {
  return extreme(curve, fromHz, toHz, -1);
}

/** The local minimum nearest to `hz` strictly inside a stretch; null when the level only rises or falls there. */
export function nearestNotch(curve: ResponseCurve, hz: number, fromHz: number, toHz: number): CurvePoint | null {
  const { hz: f, volts: v } = curve;
  let best: CurvePoint | null = null;
  for (let i = 1; i + 1 < f.length; i++) {
    if (f[i]! <= fromHz || f[i]! >= toHz) continue;
    if (!(v[i]! < v[i - 1]! && v[i]! <= v[i + 1]!)) continue;
    const point = vertex(curve, i) ?? { hz: f[i]!, volts: v[i]! };
    if (best === null || Math.abs(point.hz - hz) < Math.abs(best.hz - hz)) best = point;
  }
  return best;
}

/**
 * The lowest and the highest frequency at which the curve passes `volts`, as one would measure a width on the tube from its outside. Where the curve is
 * still above the level at an end of the stretch, that end is returned; null when it never reaches the level.
 */
export function outerCrossings(
  curve: ResponseCurve,
  volts: number,
  fromHz: number,
  toHz: number,
): { readonly lowHz: number; readonly highHz: number } | null {
  const { hz: f, volts: v } = curve;
  let first = -1;
  let last = -1;
  for (let i = 0; i < f.length; i++) {
    if (f[i]! < fromHz || f[i]! > toHz || v[i]! < volts) continue;
    if (first < 0) first = i;
    last = i;
  }
  if (first < 0) return null;
  const lowHz = first === 0 || f[first - 1]! < fromHz ? f[first]! : crossing(curve, volts, f[first - 1]!, f[first]!);
  const highHz =
    last === f.length - 1 || f[last + 1]! > toHz ? f[last]! : crossing(curve, volts, f[last + 1]!, f[last]!);
  return { lowHz, highHz };
}

function extreme(curve: ResponseCurve, fromHz: number, toHz: number, sign: 1 | -1): CurvePoint {
  const { hz: f, volts: v } = curve;
  let bestHz = fromHz;
  let best = voltsAt(curve, fromHz);
  const end = voltsAt(curve, toHz);
  if (sign * (end - best) > 0) {
    bestHz = toHz;
    best = end;
  }
  for (let i = 0; i < f.length; i++) {
    const hz = f[i]!;
    if (hz < fromHz || hz > toHz) continue;
    const volts = v[i]!;
    if (sign * (volts - best) > 0) {
      bestHz = hz;
      best = volts;
    }
    if (i === 0 || i + 1 === f.length) continue;
    if (sign * (volts - v[i - 1]!) < 0 || sign * (volts - v[i + 1]!) < 0) continue;
    const point = vertex(curve, i);
    if (point !== null && point.hz >= fromHz && point.hz <= toHz && sign * (point.volts - best) > 0) {
      bestHz = point.hz;
      best = point.volts;
    }
  }
  return { hz: bestHz, volts: best };
}

/** Top or bottom of the parabola of power through samples i-1, i, i+1; null where they lie on a line. */
function vertex(curve: ResponseCurve, i: number): CurvePoint | null {
  const { hz: f, volts: v } = curve;
  const a = f[i - 1]! - f[i]!;
  const b = f[i + 1]! - f[i]!;
  const p = v[i]! * v[i]!;
  const pa = v[i - 1]! * v[i - 1]! - p;
  const pb = v[i + 1]! * v[i + 1]! - p;
  const curvature = (pb / b - pa / a) / (b - a);
  const slope = pa / a - curvature * a;
  if (curvature === 0) return null;
  const shift = -slope / (2 * curvature);
  if (shift < a || shift > b) return null;
  return { hz: f[i]! + shift, volts: Math.sqrt(Math.max(p + (slope * shift) / 2, 0)) };
}

function crossing(curve: ResponseCurve, volts: number, belowHz: number, aboveHz: number): number {
  let below = belowHz;
  let above = aboveHz;
  for (let k = 0; k < 40; k++) {
    const middle = (below + above) / 2;
    if (voltsAt(curve, middle) < volts) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}

function lastAtOrBelow(f: Float64Array, hz: number): number {
  let low = 0;
  let high = f.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (f[middle]! <= hz) low = middle;
    else high = middle - 1;
  }
  return low;
}
