/**
 * Geometry of a sine-shaped sweep over one mains period.
 *
 * f(t) = f_c + (S / 2) sin(theta), theta = 2 pi f_m t from -90 degrees; the forward half (trace) is -90..+90 degrees, the
 * retrace its mirror. X drive: sin(theta + p), p the phase error. Rate at an offset d from the centre:
 * pi f_m S sqrt(1 - (2 d / S)^2) hertz per second. Source: elementary calculus (check: centre rate pi/2 of a triangle's).
 *
 * A half has `points` samples, uniform in time, in the middle of equal intervals of 180 / points degrees; so a whole period is
 * 2 * points uniform samples, and retrace sample i has the frequency of trace sample points - 1 - i.
 */

/** theta of forward sample i, radians; `i` from `points` to 2 * points - 1 gives the retrace. */
export function sweepAngle(i: number, points: number): number {
  return (Math.PI * (i + 0.5)) / points - Math.PI / 2;
}

/** Frequencies of the forward half, hertz, rising. `out`, if given, must have `points` elements. */
export function sweepFrequencies(
  centreHz: number,
  spanHz: number,
  points: number,
  out: Float64Array = new Float64Array(points),
): Float64Array {
  if (out.length !== points) throw new RangeError('out must have one element a point');
  for (let i = 0; i < points; i++) out[i] = centreHz + (spanHz / 2) * Math.sin(sweepAngle(i, points));
  return out;
}

/** Mirrors a forward half into a whole period: out[0..n-1] = forward, out[n..2n-1] = forward reversed. */
export function wholePeriod(
  forward: Float64Array,
  out: Float64Array = new Float64Array(2 * forward.length),
): Float64Array {
  const n = forward.length;
  for (let i = 0; i < n; i++) {
    out[i] = forward[i]!;
    out[2 * n - 1 - i] = forward[i]!;
  }
  return out;
}

/** X drive over a whole period (2 * points samples), -1..1; `phaseRadians` 0 retraces exactly over the trace. */
export function xDrive(
  points: number,
  phaseRadians: number,
  out: Float64Array = new Float64Array(2 * points),
): Float64Array {
  for (let i = 0; i < 2 * points; i++) out[i] = Math.sin(sweepAngle(i, points) + phaseRadians);
  return out;
}

/** Where a frequency stands on the X drive, -1..1 (outside that range: not swept). */
export function xOfFrequency(hz: number, centreHz: number, spanHz: number): number {
  return (2 * (hz - centreHz)) / spanHz;
}

/** Sweep rate, hertz per second, `offsetHz` away from the centre; zero at and beyond the ends. */
export function rateHzPerSecond(spanHz: number, mainsHz: number, offsetHz = 0): number {
  const d = (2 * offsetHz) / spanHz;
  return Math.PI * mainsHz * spanHz * Math.sqrt(Math.max(0, 1 - d * d));
}
