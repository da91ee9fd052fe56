/**
 * A diode detector whose tuned circuit and load are no short circuits to the carrier's harmonics.
 *
 * The diode's current comes in pulses. Where the circuit that feeds it and the capacitor of its load are no short circuits to them (the last coil of a wide vision strip
 * has 12 pF, the halves of an FM detector's secondary have leakage inductance), each pulse dents the voltage that drives it: it grows longer and lower, comes late or
 * early, and so detunes as well as damps. Periodic steady state with the carrier's fundamental at the node held at A cos wt:
 *   v(t) = A cos wt - sum over h of Re(Z_h I_h e^{jhwt}),  i = Is (exp(v / nVt) - 1),
 * v across the diode, Z_0 = R, Z_1 that of the load (R, C, and the lead that hangs on it), Z_h beyond that of the load and of the circuit at h w, up to HARMONICS. Newton's rule on SAMPLES samples
 * of v. Of the current the node sees I_1 = (g + j b) A, the load I_0 = V / R.
 * Validity: w at the middle of the band (on 12 pF at 44 MHz a tenth beside it changes g by 4 to 5 %, the volts by 2 to 3 %); another diode on the same coils is met at the fundamental only.
 * Source: harmonic balance, e.g. Nakhla and Vlach, IEEE Trans. Circuits and Systems 1976 (from memory); held against time runs of ngspice in the tests.
 */
import type { Diode } from './diode.ts';
import { eliminate } from './eliminate.ts';
import { HARMONICS, type HarmonicCircuit } from './harmonicCircuit.ts';

/** A lead with a resistor in its tip, on the load beside what the load itself is: it takes no direct current. */
export interface HungLead {
  readonly ohms: number;
  readonly farads: number;
}

export interface DiodeCircuit extends Diode {
  readonly loadFarads: number;
  readonly harmonics: HarmonicCircuit;
  /** left out: none */
  readonly lead?: HungLead | undefined;
}

export interface DiodeState {
  /** fundamental current over the carrier at the node, siemens */
  readonly g: number;
  readonly b: number;
  /** volts on the load */
  readonly volts: number;
}

const SAMPLES = 64;
const ROUNDS = 200;
/** Less conductance than this part of 1/R does not count in a step. */
const BLOCKED = 1e-9;

/** One after the other for rising amplitudes: each starts from the last. */
export function createDiodeBalance(circuit: DiodeCircuit): (amplitudeVolts: number) => DiodeState {
  const { saturationAmps, emissionVolts, loadOhms } = circuit;
  const kernel = twice(impedanceKernel(circuit));
  const cos = Float64Array.from({ length: SAMPLES }, (_, k) => Math.cos((2 * Math.PI * k) / SAMPLES));
  const sin = Float64Array.from({ length: SAMPLES }, (_, k) => Math.sin((2 * Math.PI * k) / SAMPLES));
  const v = new Float64Array(SAMPLES);
  const amps = new Float64Array(SAMPLES);
  const slope = new Float64Array(SAMPLES);
  const off = new Float64Array(SAMPLES);
  const step = new Float64Array(SAMPLES);
  const matrix = new Float64Array(SAMPLES * (SAMPLES + 1));
  let before = 0;

  const measure = (amplitude: number): void => {
    for (let k = 0; k < SAMPLES; k++) {
      const e = Math.exp(v[k]! / emissionVolts);
      amps[k] = saturationAmps * (e - 1);
      slope[k] = (saturationAmps * e) / emissionVolts;
    }
    // Four side by side: each sum has to wait for its own last term.
    for (let j = 0; j < SAMPLES; j += 4) {
      let s0 = v[j]! - amplitude * cos[j]!;
      let s1 = v[j + 1]! - amplitude * cos[j + 1]!;
      let s2 = v[j + 2]! - amplitude * cos[j + 2]!;
      let s3 = v[j + 3]! - amplitude * cos[j + 3]!;
      for (let k = 0, at = SAMPLES + j; k < SAMPLES; k++, at--) {
        const i = amps[k]!;
        s0 += kernel[at]! * i;
        s1 += kernel[at + 1]! * i;
        s2 += kernel[at + 2]! * i;
        s3 += kernel[at + 3]! * i;
      }
      off[j] = s0;
      off[j + 1] = s1;
      off[j + 2] = s2;
      off[j + 3] = s3;
    }
  };

  return (amplitude) => {
    // The load has followed the amplitude by then, so the crests stay about where they were.
    for (let k = 0; k < SAMPLES; k++) v[k] = v[k]! + (amplitude - before) * (cos[k]! - 1) * 0.9;
    before = amplitude;
    for (let round = 0; round < ROUNDS; round++) {
      measure(amplitude);
      newtonStep(kernel, slope, off, loadOhms, matrix, step);
      let most = 0;
      let size = 0;
      for (let k = 0; k < SAMPLES; k++) {
        most = Math.max(most, step[k]!);
        size = Math.max(size, Math.abs(step[k]!));
      }
      // An exponential that is overshot takes long to come back.
      const share = most > 2 * emissionVolts ? (2 * emissionVolts) / most : 1;
      for (let k = 0; k < SAMPLES; k++) v[k] = v[k]! + share * step[k]!;
      if (size < 1e-13 + 1e-11 * amplitude) break;
    }
    measure(amplitude);
    let mean = 0;
    let re = 0;
    let im = 0;
    for (let k = 0; k < SAMPLES; k++) {
      mean += amps[k]! / SAMPLES;
      re += (2 * amps[k]! * cos[k]!) / SAMPLES;
      im -= (2 * amps[k]! * sin[k]!) / SAMPLES;
    }
    return { g: re / amplitude, b: im / amplitude, volts: mean * loadOhms };
  };
}

/** A carrier so small that the diode is its conductance Is / nVt; `volts` is the output over the amplitude squared. */
export function smallDiode(circuit: DiodeCircuit): DiodeState {
  const { saturationAmps, emissionVolts, loadOhms, harmonics } = circuit;
  const own = saturationAmps / emissionVolts;
  const load = loadImpedance(circuit, 2 * Math.PI * harmonics.hz);
  const re = 1 + own * load.re;
  const im = own * load.im;
  const size = re * re + im * im;
  // Of the carrier the diode has 1 / (1 + g Z); the square of that makes the mean current g a^2 / (4 nVt).
  const volts = own / (4 * emissionVolts) / size / (1 / loadOhms + own);
  return { g: (own * re) / size, b: (-own * im) / size, volts };
}

function loadImpedance(
  { loadOhms: ohms, loadFarads: farads, lead }: DiodeCircuit,
  w: number,
): { readonly re: number; readonly im: number } {
  if (lead === undefined) {
    const x = w * ohms * farads;
    return { re: ohms / (1 + x * x), im: (-ohms * x) / (1 + x * x) };
  }
  const reactance = 1 / (w * lead.farads);
  const drawn = lead.ohms ** 2 + reactance ** 2;
  const g = 1 / ohms + lead.ohms / drawn;
  const b = w * farads + reactance / drawn;
  const size = g * g + b * b;
  return { re: g / size, im: -b / size };
}

/** v at a sample for one amp in the sample `k` before it. */
function impedanceKernel(circuit: DiodeCircuit): Float64Array {
  const { loadOhms, harmonics } = circuit;
  const w = 2 * Math.PI * harmonics.hz;
  const kernel = new Float64Array(SAMPLES).fill(loadOhms / SAMPLES);
  for (let h = 1; h <= HARMONICS; h++) {
    const load = loadImpedance(circuit, h * w);
    const re = load.re + (harmonics.re[h - 2] ?? 0);
    const im = load.im + (harmonics.im[h - 2] ?? 0);
    for (let k = 0; k < SAMPLES; k++) {
      const angle = (2 * Math.PI * h * k) / SAMPLES;
      kernel[k] = kernel[k]! + (2 * (re * Math.cos(angle) - im * Math.sin(angle))) / SAMPLES;
    }
  }
  return kernel;
}

/** Two periods one after the other: the sample `k` before sample j stands at SAMPLES + j - k. */
function twice(period: Float64Array): Float64Array {
  const both = new Float64Array(2 * SAMPLES);
  both.set(period);
  both.set(period, SAMPLES);
  return both;
}

/** step = -(1 + K diag(slope))^-1 off, K of two periods; only samples that conduct need solving, the others follow. */
function newtonStep(
  kernel: Float64Array,
  slope: Float64Array,
  off: Float64Array,
  loadOhms: number,
  matrix: Float64Array,
  step: Float64Array,
): void {
  const on: number[] = [];
  for (let k = 0; k < SAMPLES; k++) if (slope[k]! * loadOhms > BLOCKED) on.push(k);
  const n = on.length;
  const width = n + 1;
  for (let a = 0; a < n; a++) {
    for (let c = 0; c < n; c++) {
      const k = on[c]!;
      matrix[a * width + c] = (a === c ? 1 : 0) + kernel[SAMPLES + on[a]! - k]! * slope[k]!;
    }
    matrix[a * width + n] = -off[on[a]!]!;
  }
  eliminate(matrix, n);
  for (let j = 0; j < SAMPLES; j += 4) {
    let s0 = -off[j]!;
    let s1 = -off[j + 1]!;
    let s2 = -off[j + 2]!;
    let s3 = -off[j + 3]!;
    for (let c = 0; c < n; c++) {
      const k = on[c]!;
      const at = SAMPLES + j - k;
      const own = slope[k]!;
      const answer = matrix[c * width + n]!;
      s0 -= kernel[at]! * own * answer;
      s1 -= kernel[at + 1]! * own * answer;
      s2 -= kernel[at + 2]! * own * answer;
      s3 -= kernel[at + 3]! * own * answer;
    }
    step[j] = s0;
    step[j + 1] = s1;
    step[j + 2] = s2;
    step[j + 3] = s3;
  }
}
