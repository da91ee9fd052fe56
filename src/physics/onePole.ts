/**
 * Periodic steady state of a one-pole filter, exact for a signal that runs straight between its samples.
 *
 * tau dy/dt + y = x. Over a step h with x going straight from x0 to x1 (m = (x1 - x0) / h):
 * y1 = x1 - m tau (1 - e) + e (y0 - x0), e = exp(-h / tau). The starting value makes the end of the period its beginning.
 * Low-pass: corner 1 / (2 pi tau) hertz. High-pass: x less the low-pass. Source: elementary circuit theory.
 */

/**
 * Low-pass. `samples` are uniform over one period (the last one is a step before the first); `out` has the same length and may be the same array.
 * tau 0 copies. Seconds.
 */
export function periodicOnePole(
  samples: Float64Array,
  tauSeconds: number,
  periodSeconds: number,
  out: Float64Array,
): void {
  const n = samples.length;
  if (out.length !== n) throw new RangeError('out must be as long as samples');
  if (!(tauSeconds >= 0) || !(periodSeconds > 0))
    throw new RangeError('tau must not be negative and the period must be above zero');
  if (n === 0) return;
  const step = periodSeconds / n;
  const oneLessE = tauSeconds === 0 ? 1 : -Math.expm1(-step / tauSeconds);
  const e = 1 - oneLessE;
  const lag = (tauSeconds / step) * oneLessE;
  const first = samples[0]!;
  let y = 0;
  for (let i = 0; i < n; i++) {
    const x0 = samples[i]!;
    const x1 = i + 1 < n ? samples[i + 1]! : first;
    y = x1 - (x1 - x0) * lag + e * (y - x0);
  }
  y /= tauSeconds === 0 ? 1 : -Math.expm1(-periodSeconds / tauSeconds);
  for (let i = 0; i < n; i++) {
    const x0 = samples[i]!;
    const x1 = i + 1 < n ? samples[i + 1]! : first;
    out[i] = y;
    y = x1 - (x1 - x0) * lag + e * (y - x0);
  }
}

/** High-pass (AC coupling): same arguments, and `low`, of the same length, for what is taken away; the mean over the period comes out as zero. */
export function periodicHighPass(
  samples: Float64Array,
  tauSeconds: number,
  periodSeconds: number,
  out: Float64Array,
  low: Float64Array,
): void {
  periodicOnePole(samples, tauSeconds, periodSeconds, low);
  for (let i = 0; i < samples.length; i++) out[i] = samples[i]! - low[i]!;
}
