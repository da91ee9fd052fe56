/**
 * What the current pulses of one diode of a pair do to the crest that the other one catches.
 *
 * The diodes of an FM detector sit on the ends of one coil, and at the carrier's harmonics that coil is far from a short circuit: the pulse of one is seen at the other's end as a dent, at its own
 * crest or beside it as their carriers lie apart in phase. A diode that conducts in short pulses asks of the circuit what stands at its crest. With I_0 the mean current of the other,
 * w_h = exp(-h^2 (1/x_1 + 1/x_2) / 2), x = A / nVt (of a narrow pulse the share of its h-th harmonic, for both), Z_h the impedance from one end to the other and t the phase of the other's carrier less one's own:
 *   dent = -2 I_0 sum w_h Re(Z_h e^{jht}),  h from 2 to HARMONICS.
 * The diode then goes by A + dent.
 * Validity: first order, dent small against A; pulses as under a carrier without dents. That a dent with a slope moves the pulse in time is left out: what a diode's own dent leaves of that is little, and
 * reckoned without it the volts lie up to 1.5 % beside a time run's. Source: superposition of the harmonics, I_h(x) / I_0(x) for large x (Abramowitz and Stegun 9.7.1); held against time
 * runs in docs/model.md.
 */
import { HARMONICS, type HarmonicCircuit } from './harmonicCircuit.ts';

/** Volts of emission over volts of carrier, of both together, above which no harmonic is left. */
const NO_PULSES = 8;

/** Mean current over g A / 2: what of the pulse is in the fundamental, for A / nVt. */
export function meanOverFundamental(x: number): number {
  return Math.exp(0.5 / x);
}

/** Of one pulse's whole: what is left out when the series is ended. */
const ENDS = 1e-4;

/**
 * Writes to `out` what each diode's crest is dented by for an amp of mean current of the other, ohms: of the first, of the second. `x`: A / nVt of either; `cos`, `sin`: of the phase of the second's
 * carrier less the first's.
 */
export function pulseDents(
  { re, im }: HarmonicCircuit,
  x: number,
  otherX: number,
  cos: number,
  sin: number,
  out: Float64Array,
): void {
  let even = 0;
  let odd = 0;
  const spread = 1 / x + 1 / otherX;
  if (spread < NO_PULSES) {
    // w_(h+1) = w_h r_h with r_(h+1) = r_h q, q = exp(-spread).
    const root = Math.exp(-0.5 * spread);
    const q = root * root;
    let ratio = root * q;
    let weight = root;
    let cr = cos;
    let ci = sin;
    for (let h = 2; h <= HARMONICS && weight > ENDS; h++) {
      const nr = cr * cos - ci * sin;
      ci = cr * sin + ci * cos;
      cr = nr;
      weight *= ratio;
      ratio *= q;
      even += weight * re[h - 2]! * cr;
      odd += weight * im[h - 2]! * ci;
    }
  }
  out[0] = -2 * (even - odd);
  out[1] = -2 * (even + odd);
}
