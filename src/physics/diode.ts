/**
 * Envelope detector: exponential diode into a resistive load with a large smoothing capacitor.
 *
 * V from I0(A / nVt) = (1 + V / (R Is)) exp(V / nVt); A the peak of the radio-frequency voltage (V), n Vt the diode's
 * emission voltage (V), R the load (ohm, may be Infinity: unloaded), Is the saturation current (A).
 * Square law V ~ A^2 when small, A less an offset when large. Valid while the load keeps V steady over a carrier cycle.
 * Source: D. W. Knight, Diode detectors for RF measurement; the loaded form follows from equal mean currents.
 */
import { cubicAt } from './admittance.ts';
import { besselI0LessOne, besselI0Scaled, besselI1Scaled } from './bessel.ts';

export interface Diode {
  readonly saturationAmps: number;
  /** n times kT/q, volts */
  readonly emissionVolts: number;
  readonly loadOhms: number;
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
 * The conductance, siemens, that the diode presents to a carrier of `amplitudeVolts` peak at its circuit: fundamental current over amplitude,
 * G = (2 / A) (Is + V / R) I1(A / nVt) / I0(A / nVt). A small carrier sees Is / nVt, a large one 2 / R. Valid where circuit and load are short circuits to the
 * carrier's harmonics; diodeHarmonics.ts says what is left otherwise. Source: Clarke and Hess, Communication Circuits, 1971 (from memory).
 */
export function diodeConductance(amplitudeVolts: number, diode: Diode): number {
  const { emissionVolts, saturationAmps, loadOhms } = diode;
  const x = Math.abs(amplitudeVolts) / emissionVolts;
  // The next term of the series is x^2 / 8.
  if (x < 1e-8) return saturationAmps / emissionVolts;
  const amps = saturationAmps + detectEnvelope(amplitudeVolts, diode) / loadOhms;
  return (2 * amps * besselI1Scaled(x)) / (besselI0Scaled(x) * x * emissionVolts);
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
    const q = cubicAt(table, at);
    return (q * amplitude * amplitude) / (emissionVolts + amplitude);
  };
}
