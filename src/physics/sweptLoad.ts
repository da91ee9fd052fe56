/**
 * A diode on its circuit under a sweep that is fast against both: the periodic steady state in which circuit and load each follow the other in its own time.
 *
 * Begun from what would be while the diode stood at each line as it stands under a resting carrier: lines c_n V_n, V_n the loaded voltages. What the diode really draws at each instant,
 * (g + jb)(|e|, V) e with V the volts that its load has by then (chargingDiode.ts), less what was taken for it, y_n e_n, goes back through the loaded circuit:
 *   e_n = c_n V_n + T_n (i_n - y_n e_n),  T_n = U_n / (1 - U_n y_n),  -U_n the circuit's own impedance.
 * Gone round until the envelope rests; the share that is left falls by a third or less in each round while the load's capacitor is small against the circuit's. Where it falls too little
 * less of each round is taken; after MOST_ROUNDS it stays as it is.
 * Validity: one diode on the node and none other in its block; stages ahead as they stand at each frequency. Source: waveform relaxation in the frequency domain, any text on harmonic balance (from memory).
 */
import FFT from 'fft.js';
import { admittanceAtHz } from './admittance.ts';
import { chargingDiode } from './chargingDiode.ts';
import type { DiodeLaw } from './diodeLaw.ts';

/** What hangs on the node, and what one amp drawn there brings about at each line without it. */
export interface LineLoad {
  readonly law: DiodeLaw;
  /** on its load, besides the load's own */
  readonly leadFarads: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly periodSeconds: number;
  /** at which frequencies these lines are, behind a mixer others than the source's */
  readonly hz: Float64Array;
  /** lines beside the middle one to which the sweep goes */
  readonly index: number;
  /** of the first sample of a period: so much of a period after the sweep's lowest frequency */
  readonly firstAt: number;
}

const MOST_ROUNDS = 14;
/** Of the highest. */
const RESTS = 3e-4;
/** What is taken of a round that has not helped. */
const HALF = 0.5;
const LEAST_SHARE = 0.1;

/** Scratch for periods of so many samples. */
export function createSweptLoad(): {
  /**
   * `spectrum`: the lines of a period without their correction, line n at n modulo the period's length, of as many complex samples as there are lines and more. `re`, `im`: the loaded
   * voltages at the lines from -sides to sides; `source`: c_n of each, interleaved. Writes the corrected envelope's samples over `spectrum`, complex.
   */
  follow(spectrum: Float64Array, re: Float64Array, im: Float64Array, source: Float64Array, load: LineLoad): void;
} {
  let size = 0;
  let fft: FFT | null = null;
  let at = new Float64Array(0);
  let sum = new Float64Array(0);
  let drawn = new Float64Array(0);
  let amplitudes = new Float64Array(0);
  let volts = new Float64Array(0);
  const y = new Float64Array(4);

  const resize = (complex: number): FFT => {
    if (complex !== size || fft === null) {
      size = complex;
      fft = new FFT(size);
      at = new Float64Array(2 * size);
      sum = new Float64Array(2 * size);
      drawn = new Float64Array(2 * size);
      amplitudes = new Float64Array(size);
      volts = new Float64Array(size);
    }
    return fft;
  };

  return {
    follow(spectrum, re, im, source, { law, leadFarads, re: unitRe, im: unitIm, periodSeconds, hz, index, firstAt }) {
      const transform = resize(spectrum.length / 2);
      const count = re.length;
      const sides = (count - 1) / 2;
      const yRe = new Float64Array(count);
      const yIm = new Float64Array(count);
      const tRe = new Float64Array(count);
      const tIm = new Float64Array(count);
      let mostVolts = 0;
      for (let k = 0; k < count; k++) {
        const amplitude = Math.hypot(re[k]!, im[k]!);
        mostVolts = Math.max(mostVolts, amplitude);
        admittanceAtHz(law.admittance, hz[k]!, amplitude, y);
        const g = y[0]!;
        const b = y[1]!;
        const ur = unitRe[k]!;
        const ui = unitIm[k]!;
        const dr = 1 - (ur * g - ui * b);
        const di = -(ur * b + ui * g);
        const d = dr * dr + di * di;
        yRe[k] = g;
        yIm[k] = b;
        tRe[k] = (ur * dr + ui * di) / d;
        tIm[k] = (ui * dr - ur * di) / d;
      }
      const corrRe = new Float64Array(count);
      const corrIm = new Float64Array(count);
      const sampleHz = new Float64Array(size);
      for (let i = 0; i < size; i++) {
        const line = sides - index * Math.cos(2 * Math.PI * (i / size + firstAt));
        sampleHz[i] = hz[Math.min(Math.max(Math.round(line), 0), count - 1)]!;
      }
      const standing = (amplitude: number, sample: number): number => law.detect(amplitude, sampleHz[sample]!);
      const diode = chargingDiode(law, mostVolts, leadFarads);
      transform.inverseTransform(at, spectrum);
      volts.fill(0);
      let movedBefore = Number.POSITIVE_INFINITY;
      let share = 1;
      for (let round = 0; round < MOST_ROUNDS; round++) {
        for (let i = 0; i < size; i++) amplitudes[i] = Math.hypot(at[2 * i]!, at[2 * i + 1]!);
        diode.charge(amplitudes, periodSeconds, volts, standing);
        let most = 0;
        for (let i = 0; i < size; i++) {
          const a = amplitudes[i]!;
          if (a > most) most = a;
          diode.presents(a, volts[i]!, y, sampleHz[i]!);
          const er = at[2 * i]!;
          const ei = at[2 * i + 1]!;
          at[2 * i] = y[0]! * er - y[1]! * ei;
          at[2 * i + 1] = y[0]! * ei + y[1]! * er;
        }
        transform.transform(drawn, at);
        sum.set(spectrum);
        let moved = 0;
        for (let k = 0; k < count; k++) {
          const n = k - sides;
          const place = 2 * (n < 0 ? n + size : n);
          const cr = source[2 * k]!;
          const ci = source[2 * k + 1]!;
          const er = cr * re[k]! - ci * im[k]! + corrRe[k]!;
          const ei = cr * im[k]! + ci * re[k]! + corrIm[k]!;
          const ir = drawn[place]! - (yRe[k]! * er - yIm[k]! * ei);
          const ii = drawn[place + 1]! - (yRe[k]! * ei + yIm[k]! * er);
          const wr = tRe[k]! * ir - tIm[k]! * ii - corrRe[k]!;
          const wi = tRe[k]! * ii + tIm[k]! * ir - corrIm[k]!;
          moved += wr * wr + wi * wi;
          corrRe[k] = corrRe[k]! + share * wr;
          corrIm[k] = corrIm[k]! + share * wi;
          sum[place] = sum[place]! + corrRe[k]!;
          sum[place + 1] = sum[place + 1]! + corrIm[k]!;
        }
        transform.inverseTransform(at, sum);
        // Root of the mean square, by Parseval; the transform has its length in it.
        const rms = Math.sqrt(moved) / size;
        if (rms < RESTS * most) break;
        if (rms > 0.7 * movedBefore) share = Math.max(share * HALF, LEAST_SHARE);
        movedBefore = rms;
      }
      spectrum.set(at);
    },
  };
}
