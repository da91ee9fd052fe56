/**
 * Envelope detection beyond the small time constant: a load that discharges slowly, and the beat of two carriers.
 *
 * Slow load: the diode charges the load at once, the load alone discharges it, so y = max(x, y_before exp(-h / tau)). It follows an envelope of
 * modulation depth m at w rad/s as long as  tau <= sqrt(1 - m^2) / (m w); beyond that it cuts straight across the troughs (diagonal clipping).
 * Valid for a diode whose forward resistance is small against the load.
 * Two carriers: the envelope of a + b e^{jt} has the fundamental  a r F(-1/2, 1/2; 2; r^2) = a r (1 - r^2 / 8 - ...),  r = b / a the weaker over
 * the stronger: to the first order only the weaker one counts, which is why an intercarrier sound does not follow the vision.
 * Sources: diagonal clipping, Terman (from memory) and public notes on peak detectors; the beat is the Fourier series of the envelope, its closed form by the
 * complete elliptic integrals, Abramowitz and Stegun 17.6 (from memory).
 */

/**
 * Load voltage over one period in the steady state. `samples` (volts, none below zero) are uniform over the period; `out` has the same length and may be
 * the same array. tau 0 copies. Seconds.
 */
export function periodicPeakDetector(
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
  let top = 0;
  for (let i = 1; i < n; i++) if (samples[i]! > samples[top]!) top = i;
  const decay = tauSeconds === 0 ? 0 : Math.exp(-periodSeconds / (n * tauSeconds));
  // At the highest sample the load cannot hold more than that sample: the one place where the steady state is known beforehand.
  let y = samples[top]!;
  for (let k = 0; k < n; k++) {
    const i = top + k < n ? top + k : top + k - n;
    y = Math.max(samples[i]!, y * decay);
    out[i] = y;
  }
}

/** Below this ratio the series is used, whose terms fall as its square; above it the elliptic form, which loses figures when the ratio is small. */
const SERIES_END = 0.5;

/** Fundamental (volts peak) of the beat in the envelope of two carriers of `a` and `b` volts peak. Relative error below 1e-13. */
export function envelopeOfTwo(a: number, b: number): number {
  const strong = Math.max(Math.abs(a), Math.abs(b));
  const weak = Math.min(Math.abs(a), Math.abs(b));
  if (weak === 0) return 0;
  const r = weak / strong;
  return r <= SERIES_END ? weak * series(r * r) : byEllipticIntegrals(strong, weak);
}

/** F(-1/2, 1/2; 2; q). */
function series(q: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 0; n < 60; n++) {
    term *= ((n - 0.5) * (n + 0.5) * q) / ((n + 2) * (n + 1));
    sum += term;
    if (Math.abs(term) < 1e-17) break;
  }
  return sum;
}

/** (4 s / (3 pi m)) ((2 - m) E(m) - 2 (1 - m) K(m)), s = a + b, m = 4 a b / s^2; K and E by the arithmetic-geometric mean. */
function byEllipticIntegrals(a: number, b: number): number {
  const s = a + b;
  const m = (4 * a * b) / (s * s);
  let mean = 1;
  let geometric = (a - b) / s;
  // With equal carriers (1 - m) K is 0 and E is 1.
  if (geometric === 0) return (4 * s) / (3 * Math.PI);
  let half = 0.5;
  let c2 = half * m;
  for (let i = 0; i < 40; i++) {
    const difference = (mean - geometric) / 2;
    const next = (mean + geometric) / 2;
    geometric = Math.sqrt(mean * geometric);
    mean = next;
    half *= 2;
    c2 += half * difference * difference;
    if (difference < 1e-17 * mean) break;
  }
  const k = Math.PI / (2 * mean);
  const e = k * (1 - c2);
  return ((4 * s) / (3 * Math.PI * m)) * ((2 - m) * e - 2 * (1 - m) * k);
}
