/**
 * What a diode makes of a carrier with noise on it: the mean that its load holds, and how far the load's volts stray.
 *
 * The law D of the diode over the envelope R is taken at two places, mean and deviation of R apart: (D(m + s) + D(m - s)) / 2 and (D(m + s) - D(m - s)) / 2. That is
 * exact for a square law (small carriers: the noise's power adds) and for a straight one (large carriers). Valid while the load follows the noise. What comes after the
 * diode is slower: one pole at f_p leaves of noise that came through a band B the share sqrt(2 f_p / B atan(B / 2 f_p)) of its rms.
 * Sources: rice.ts; two-point Gauss rule and one pole's noise, elementary (from memory).
 */
import { riceDeviation, riceMean } from './rice.ts';

export interface NoisyDetector {
  /** what the noise adds to the diode's volts for a carrier, and how far they stray, rms; written to the two places of `out`. `quiet`: so much of the noise is there, 1 = all */
  at(amplitudeVolts: number, out: Float64Array, quiet?: number): void;
  /** how far they stray alone, for less work */
  stray(amplitudeVolts: number, quiet?: number): number;
}

/** Samples are even in log(1 + A / sigma). */
const STEP = 0.05;
/** exp(12) or 160,000 times the noise: from there on nothing more is added. */
const INTERVALS = 240;

/** The envelope's mean less the carrier, and its deviation, at the samples, for noise of 1 V a side. */
const lift = new Float64Array(INTERVALS + 2);
const deviation = new Float64Array(INTERVALS + 2);
for (let i = 0; i < lift.length; i++) {
  const ratio = Math.expm1(i * STEP);
  lift[i] = riceMean(ratio, 1) - ratio;
  deviation[i] = riceDeviation(ratio, 1);
}

/** `sigmaVolts` a side, above 0; carriers up to `mostVolts`. */
export function noisyDetector(
  detect: (amplitudeVolts: number) => number,
  sigmaVolts: number,
  mostVolts: number,
): NoisyDetector {
  const last = Math.min(INTERVALS, Math.ceil(Math.log1p(mostVolts / sigmaVolts) / STEP));
  /** the diode's volts at either end of what the noise makes of a carrier */
  let high = 0;
  let low = 0;
  /** Without the table, which is for all of the noise. */
  const quietly = (amplitudeVolts: number, sigma: number): void => {
    const place = Math.min(Math.log(1 + amplitudeVolts / sigma) / STEP, INTERVALS);
    const i = Math.floor(place);
    const t = place - i;
    const mean = amplitudeVolts + sigma * (lift[i]! + t * (lift[i + 1]! - lift[i]!));
    const away = sigma * (deviation[i]! + t * (deviation[i + 1]! - deviation[i]!));
    high = detect(mean + away);
    low = detect(Math.max(0, mean - away));
  };
  const added = new Float64Array(last + 2);
  const strays = new Float64Array(last + 2);
  for (let i = 0; i < added.length; i++) {
    const amplitude = sigmaVolts * Math.expm1(i * STEP);
    const mean = amplitude + sigmaVolts * lift[i]!;
    high = detect(mean + sigmaVolts * deviation[i]!);
    low = detect(Math.max(0, mean - sigmaVolts * deviation[i]!));
    added[i] = (high + low) / 2 - detect(amplitude);
    strays[i] = (high - low) / 2;
  }
  return {
    at(amplitudeVolts, out, quiet = 1) {
      if (quiet < 1) {
        quietly(amplitudeVolts, sigmaVolts * quiet);
        out[0] = (high + low) / 2 - detect(amplitudeVolts);
        out[1] = (high - low) / 2;
        return;
      }
      const place = Math.min(Math.log(1 + amplitudeVolts / sigmaVolts) / STEP, last);
      const i = Math.floor(place);
      const t = place - i;
      out[0] = added[i]! + t * (added[i + 1]! - added[i]!);
      out[1] = strays[i]! + t * (strays[i + 1]! - strays[i]!);
    },
    stray(amplitudeVolts, quiet = 1) {
      if (quiet < 1) {
        quietly(amplitudeVolts, sigmaVolts * quiet);
        return (high - low) / 2;
      }
      const place = Math.min(Math.log(1 + amplitudeVolts / sigmaVolts) / STEP, last);
      const i = Math.floor(place);
      return strays[i]! + (place - i) * (strays[i + 1]! - strays[i]!);
    },
  };
}

/** Share of the noise's rms that one pole of `poleSeconds` leaves, of noise that came through a band `bandHz` wide. */
export function shareBehindPole(bandHz: number, poleSeconds: number): number {
  if (!(bandHz > 0) || poleSeconds <= 0) return 1;
  const across = bandHz * Math.PI * poleSeconds;
  return Math.sqrt(Math.atan(across) / across);
}
