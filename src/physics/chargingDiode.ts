/**
 * A diode whose carrier moves while its load charges: volts on the load, and what the diode presents, by the carrier's amplitude and the volts that stand at the moment.
 *
 * For a carrier of A the law of means has the diode's mean current Is (I0(A/nVt) e^(-V/nVt) - 1) and a fundamental in proportion to I1 e^(-V/nVt). Where A stands still the load
 * has Vs(A), the diode g + jb. With q = e^((Vs - V) / nVt) the Bessel functions cancel:  mean q (Vs/R + Is) - Is,  admittance q (g + jb),  C dV/dt = mean - V/R.
 * So a load that lags draws more while the carrier rises, and nothing once it has fallen away beneath the volts, which then go with R C alone (diagonal clipping).
 * The steps are backward differences of the second order round the period, which do not ring however fast the diode charges.
 * Validity: the amplitude moves little in a cycle of the carrier; with a balance of harmonics Vs, g and b are its own, and Is is taken as it is.
 * Source: Clarke and Hess, Communication Circuits, 1971 (from memory); held against time runs in tests/oracles/loadedFastSweep.test.ts.
 */
import { type Admittance, admittanceAt, admittanceAtHz } from './admittance.ts';
import type { Diode } from './diode.ts';

/** Of a diode's law what its charging asks for (diodeLaw.ts). */
export interface ChargedLaw {
  readonly diode: Diode & { readonly loadFarads: number };
  detect(amplitudeVolts: number, hz?: number): number;
  readonly admittance: Admittance;
}

export interface ChargingDiode {
  /**
   * volts on the load over a whole period of evenly spaced amplitudes, the steady state; `volts` holds those of a period before, or zeros. `still`: what the load would come to for a sample, where
   * that depends on more than its amplitude, nought for no carrier. Returns what it would come to, by sample, a view until the next call
   */
  charge(
    amplitudes: Float64Array,
    periodSeconds: number,
    volts: Float64Array,
    still?: (amplitudeVolts: number, sample: number) => number,
  ): Float64Array;
  /** admittance for an amplitude while `volts` stand, siemens, to the first two places of `out`; `hz` left out: at the middle of the band */
  presents(amplitudeVolts: number, volts: number, out: Float64Array, hz?: number): void;
}

const INTERVALS = 1024;
const ROUNDS = 30;
/** Of the emission voltage. */
const CLOSE = 1e-5;
/** A period is gone through again until its ends meet within this, of the emission voltage. */
const MEET = 1e-3;
const MOST_PERIODS = 4;

const known = new WeakMap<
  ChargedLaw,
  { readonly end: number; readonly farads: number; readonly charging: ChargingDiode }
>();

/** For amplitudes up to `mostVolts`; `leadFarads` hang on the load besides its own capacitor. */
export function chargingDiode(law: ChargedLaw, mostVolts: number, leadFarads: number): ChargingDiode {
  const farads = law.diode.loadFarads + leadFarads;
  const found = known.get(law);
  if (found?.farads === farads && found.end >= mostVolts && found.end <= 4 * mostVolts) return found.charging;
  const end = Math.max(2 * mostVolts, law.diode.emissionVolts / 16);
  const charging = create(law, farads, end);
  known.set(law, { end, farads, charging });
  return charging;
}

function create(law: ChargedLaw, farads: number, end: number): ChargingDiode {
  const { saturationAmps, emissionVolts, loadOhms } = law.diode;
  const still = new Float64Array(INTERVALS + 2);
  const g = new Float64Array(INTERVALS + 2);
  const b = new Float64Array(INTERVALS + 2);
  const y = new Float64Array(4);
  for (let k = 0; k < still.length; k++) {
    const amplitude = (end * k) / INTERVALS;
    still[k] = law.detect(amplitude);
    admittanceAt(law.admittance, amplitude, y);
    g[k] = y[0]!;
    b[k] = y[1]!;
  }
  const perVolt = INTERVALS / end;
  /** what the load would come to, by sample */
  let standing = new Float64Array(0);
  const stillAt = (amplitude: number): number => {
    const at = Math.min(amplitude * perVolt, INTERVALS);
    const k = Math.floor(at);
    return still[k]! + (at - k) * (still[k + 1]! - still[k]!);
  };

  return {
    charge(amplitudes, periodSeconds, volts, own) {
      const drifts = own !== undefined && law.admittance.drift !== null;
      const n = amplitudes.length;
      if (standing.length < n) standing = new Float64Array(n);
      if (drifts) for (let i = 0; i < n; i++) standing[i] = amplitudes[i] === 0 ? 0 : own(amplitudes[i]!, i);
      else for (let i = 0; i < n; i++) standing[i] = stillAt(amplitudes[i]!);
      const seconds = loadOhms * farads;
      if (seconds === 0) {
        for (let i = 0; i < n; i++) volts[i] = standing[i]!;
        return standing;
      }
      const share = periodSeconds / n / seconds;
      const back = loadOhms * saturationAmps;
      // 3/2 V - 2 V1 + V2 / 2 = share (q (Vs + R Is) - R Is - V)
      const slope = 1.5 + share;
      for (let period = 0; period < MOST_PERIODS; period++) {
        const begun = volts[n - 1]!;
        let before = volts[n - 2]!;
        let last = begun;
        let lastStill = standing[n - 1]!;
        for (let i = 0; i < n; i++) {
          const vs = standing[i]!;
          const given = 2 * last - before / 2 - share * back;
          const pull = share * (vs + back);
          let v = Math.max(last + vs - lastStill, given / slope);
          for (let round = 0; round < ROUNDS; round++) {
            const q = pull * Math.exp((vs - v) / emissionVolts);
            const move = (given + q - slope * v) / (slope + q / emissionVolts);
            v += move;
            if (Math.abs(move) < CLOSE * emissionVolts) break;
          }
          before = last;
          last = v;
          lastStill = vs;
          volts[i] = v;
        }
        if (Math.abs(last - begun) < MEET * emissionVolts) break;
      }
      return standing;
    },
    presents(amplitude, volts, out, hz) {
      if (hz !== undefined && law.admittance.drift !== null) {
        const q = Math.exp((law.detect(amplitude, hz) - volts) / emissionVolts);
        admittanceAtHz(law.admittance, hz, amplitude, y);
        out[0] = q * y[0]!;
        out[1] = q * y[1]!;
        return;
      }
      const at = Math.min(amplitude * perVolt, INTERVALS);
      const k = Math.floor(at);
      const t = at - k;
      const q = Math.exp((still[k]! + t * (still[k + 1]! - still[k]!) - volts) / emissionVolts);
      out[0] = q * (g[k]! + t * (g[k + 1]! - g[k]!));
      out[1] = q * (b[k]! + t * (b[k + 1]! - b[k]!));
    },
  };
}
