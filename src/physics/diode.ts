/**
 * Envelope detector: exponential diode into a resistive load with a large smoothing capacitor.
 *
 * V from I0(A / nVt) = (1 + V / (R Is)) exp(V / nVt); A the peak of the radio-frequency voltage (V), n Vt the diode's
 * emission voltage (V), R the load (ohm, may be Infinity: unloaded), Is the saturation current (A).
 * Square law V ~ A^2 when small, A less an offset when large. Valid while the load keeps V steady over a carrier cycle.
 * Source: D. W. Knight, Diode detectors for RF measurement; the loaded form follows from equal mean currents.
 */

export interface Diode {
  readonly saturationAmps: number;
  /** n times kT/q, volts */
  readonly emissionVolts: number;
  readonly loadOhms: number;
}

/** exp(-|x|) I0(x): the modified Bessel function of order zero, scaled. Relative error below 1e-14. */
export function besselI0Scaled(x: number): number {
  const size = Math.abs(x);
  if (size <= 20) return (1 + besselI0LessOne(size)) * Math.exp(-size);
  // Asymptotic series (Abramowitz and Stegun 9.7.1): at 20 and above its terms fall below 1e-16 before they grow.
  let term = 1;
  let sum = 1;
  for (let k = 1; k < 30; k++) {
    term *= (2 * k - 1) ** 2 / (8 * size * k);
    sum += term;
    if (term < 1e-17) break;
  }
  return sum / Math.sqrt(2 * Math.PI * size);
}

/** The detector's output, volts, for a carrier of `amplitudeVolts` peak. Solved to rounding error by Newton's rule. */
export function detectEnvelope(amplitudeVolts: number, diode: Diode): number {
  const { emissionVolts, saturationAmps, loadOhms } = diode;
  const x = Math.abs(amplitudeVolts) / emissionVolts;
  if (x === 0) return 0;
  const target = x <= 1 ? Math.log1p(besselI0LessOne(x)) : x + Math.log(besselI0Scaled(x));
  // In u = V / nVt: u + ln(1 + g u) = target. The left side rises and is concave, so Newton from below never overshoots.
  const g = emissionVolts / (loadOhms * saturationAmps);
  let u = target / (1 + g);
  for (let i = 0; i < 100; i++) {
    const step = (target - u - Math.log1p(g * u)) / (1 + g / (1 + g * u));
    u += step;
    if (Math.abs(step) <= 1e-15 * u) break;
  }
  return u * emissionVolts;
}

/**
 * A fast detector for one diode: cubic interpolation of V (nVt + A) / A^2, which is smooth and bounded from square law to linear,
 * over log(1 + A / nVt). Relative error below 1e-8; beyond 100 V the equation itself is solved.
 */
export function createDetector(diode: Diode): (amplitudeVolts: number) => number {
  const { emissionVolts } = diode;
  const intervals = 1024;
  const end = Math.log1p(100 / emissionVolts);
  const step = end / intervals;
  // V / A^2 is even in A, so the shape has a smooth continuation to the one table point below zero.
  const shape = (signed: number): number => (detectEnvelope(signed, diode) / signed ** 2) * (emissionVolts + signed);
  const table = Float64Array.from({ length: intervals + 3 }, (_, i) => {
    if (i === 1) return (detectEnvelope(1e-6 * emissionVolts, diode) / (1e-6 * emissionVolts) ** 2) * emissionVolts;
    return shape(emissionVolts * Math.expm1((i - 1) * step));
  });
  return (amplitudeVolts) => {
    const amplitude = Math.abs(amplitudeVolts);
    const at = Math.log1p(amplitude / emissionVolts) / step;
    const i = Math.floor(at);
    if (!(i < intervals - 1)) return detectEnvelope(amplitude, diode);
    const t = at - i;
    const q =
      (-t * (t - 1) * (t - 2) * table[i]!) / 6 +
      ((t + 1) * (t - 1) * (t - 2) * table[i + 1]!) / 2 -
      ((t + 1) * t * (t - 2) * table[i + 2]!) / 2 +
      ((t + 1) * t * (t - 1) * table[i + 3]!) / 6;
    return (q * amplitude * amplitude) / (emissionVolts + amplitude);
  };
}

/** I0(x) - 1 without cancellation, by its power series; for |x| up to about 20. */
function besselI0LessOne(x: number): number {
  const q = (x * x) / 4;
  let term = 1;
  let sum = 0;
  for (let k = 1; k < 200; k++) {
    term *= q / (k * k);
    sum += term;
    if (term < sum * 1e-17) break;
  }
  return sum;
}
