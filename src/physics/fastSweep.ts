/**
 * Exact answer of a linear network to a sine-shaped sweep: the periodic steady state.
 *
 * f(t) = f_c + (S/2) sin(theta), theta = 2 pi f_s t - pi/2. Over one period the carrier's complex envelope about f_c is u(t) = exp(j phi),
 * phi = -(S / (2 f_s)) cos(theta); its spectrum is lines c_n at f_c + n f_s. The network's envelope is  e(t) = sum c_n H(f_c + n f_s) exp(j 2 pi n f_s t),
 * and |e| is what a quick detector follows. With the carrier off in the retrace (`gated`), u is zero there and the network rings on into it.
 * Validity: linear network. H is taken at the lines from edge to edge of the sweep and a margin. Without the gate what lies beyond is below 1e-6 of the whole.
 * The edges of the gate make lines without end: beyond the margin 1/H is carried on as a straight line, which is exact for one tuned circuit. Error left with
 * the gate at mains rate, of the highest point: 0.1 % and less on a strip of tuned circuits; where a trap or a flat coupling lies outside the sweep up to a quarter in
 * the first samples after an edge of the gate, 1 % eight samples on.
 * Source: Fourier series of a frequency-modulated carrier, e.g. Carson and Fry, BSTJ 1937 (from memory). The transform is the package fft.js.
 */
import FFT from 'fft.js';
import { createSweptLoad, type LineLoad } from './sweptLoad.ts';

/** More lines than this do not fit into a frame; `gentleSweep.ts` serves then. */
export const MOST_LINES = 4096;
/** Lines beyond either edge of the sweep: an FM spectrum falls off within some multiples of the cube root of its index. */
const MARGIN_LINES = 24;
const MARGIN_SHARE = 0.06;
/** A jump sampled N times a period has its n-th line wrong by (pi n / N)^2 / 3 of itself: 0.3 % at the edges of the sweep. */
const GATED_SAMPLES = 32;
const LEAST_GATED = 1 << 14;

/** How many lines a sweep needs on either side of its centre. */
export function sideLines(spanHz: number, sweepHz: number): number {
  const index = spanHz / (2 * sweepHz);
  return Math.ceil(index * (1 + MARGIN_SHARE)) + MARGIN_LINES;
}

/** The largest S / (2 f) whose lines fit. */
export const MOST_INDEX = ((MOST_LINES - 1) / 2 - MARGIN_LINES - 1) / (1 + MARGIN_SHARE);

export function linesFit(spanHz: number, sweepHz: number): boolean {
  return 2 * sideLines(spanHz, sweepHz) + 1 <= MOST_LINES;
}

export interface FastSweep {
  /** the frequencies at which the network must be known, rising; those at or below zero stand at `lowestHz`. One buffer, valid until the next call */
  linesHz(centreHz: number, spanHz: number, sweepHz: number, lowestHz: number): Float64Array;
  /**
   * |e| at the bench's 2 * points instants (sweep.ts), trace then retrace, into `out`. `re`, `im`: the network at `linesHz` of the same sweep, which must
   * have been asked for last.
   */
  envelope(re: Float64Array, im: Float64Array, gated: boolean, out: Float64Array): void;
  /** the same where the node's diode follows the envelope in its own time, and the envelope the diode: see sweptLoad.ts; `re`, `im` as they are with the load that each line would have standing still */
  loadedEnvelope(
    re: Float64Array,
    im: Float64Array,
    gated: boolean,
    load: Omit<LineLoad, 'index' | 'firstAt'>,
    out: Float64Array,
  ): void;
}

/** The source's own lines c_n for n from -far to far, interleaved, each turned to the bench's first instant. */
interface Source {
  readonly index: number;
  readonly gated: boolean;
  readonly sides: number;
  readonly far: number;
  readonly lines: Float64Array;
}

/** `points` samples a half, a power of two. */
export function createFastSweep(points: number): FastSweep {
  const size = 2 * points;
  const inverse = new FFT(size);
  const plain = new Float64Array(2 * size);
  let answer: Float64Array = plain;
  const swept = new Float64Array(2 * size);
  let fine: Float64Array = new Float64Array(0);
  const sweptLoad = createSweptLoad();
  let source: Source | null = null;
  let lines = new Float64Array(0);
  let sides = 0;
  let index = 0;

  /** Adds c_n H to the lines of a period of `size` samples, on which lines `size` apart fall together. */
  const add = (from: Source, n: number, hr: number, hi: number): void => {
    const at = 2 * (n & (answer.length / 2 - 1));
    const cr = from.lines[2 * (n + from.far)]!;
    const ci = from.lines[2 * (n + from.far) + 1]!;
    answer[at] = answer[at]! + cr * hr - ci * hi;
    answer[at + 1] = answer[at + 1]! + cr * hi + ci * hr;
  };

  /** The lines beyond the margin on one side, from the outermost value of H and its inner neighbour. */
  const addBeyond = (from: Source, side: 1 | -1, er: number, ei: number, nr: number, ni: number): void => {
    const end = er * er + ei * ei;
    const inner = nr * nr + ni * ni;
    if (end === 0 || inner === 0) return;
    const yr = er / end;
    const yi = -ei / end;
    const dr = yr - nr / inner;
    const di = yi + ni / inner;
    for (let k = 1; k <= from.far - sides; k++) {
      const qr = yr + k * dr;
      const qi = yi + k * di;
      const q = qr * qr + qi * qi;
      // No resonance is made up out there: H never gets larger than at its outermost known place.
      if (q * end < 1) add(from, side * (sides + k), er, ei);
      else add(from, side * (sides + k), qr / q, -qi / q);
    }
  };

  /** Gathers c_n H of the whole period in `answer`. */
  const gather = (
    into: Float64Array,
    re: Float64Array,
    im: Float64Array,
    gated: boolean,
    out: Float64Array,
  ): Source => {
    if (sides === 0 || re.length !== lines.length || im.length !== lines.length) {
      throw new RangeError('the network must be known at each line');
    }
    if (out.length !== size) throw new RangeError('out must hold a whole period');
    if (source === null || source.index !== index || source.sides !== sides || source.gated !== gated) {
      source = makeSource(index, gated, sides, size);
    }
    answer = into;
    answer.fill(0);
    for (let n = -sides; n <= sides; n++) add(source, n, re[n + sides]!, im[n + sides]!);
    if (gated) {
      const last = 2 * sides;
      addBeyond(source, 1, re[last]!, im[last]!, re[last - 1]!, im[last - 1]!);
      addBeyond(source, -1, re[0]!, im[0]!, re[1]!, im[1]!);
    }
    return source;
  };

  return {
    linesHz(centreHz, spanHz, sweepHz, lowestHz) {
      sides = sideLines(spanHz, sweepHz);
      index = spanHz / (2 * sweepHz);
      if (lines.length !== 2 * sides + 1) lines = new Float64Array(2 * sides + 1);
      for (let n = -sides; n <= sides; n++) lines[n + sides] = Math.max(centreHz + n * sweepHz, lowestHz);
      return lines;
    },
    envelope(re, im, gated, out) {
      gather(plain, re, im, gated, out);
      inverse.inverseTransform(swept, plain);
      for (let i = 0; i < size; i++) out[i] = Math.hypot(swept[2 * i]!, swept[2 * i + 1]!);
    },
    loadedEnvelope(re, im, gated, load, out) {
      let length = size;
      while (length <= 2 * sides) length *= 2;
      if (fine.length !== 2 * length) fine = new Float64Array(2 * length);
      const { lines: c, far } = gather(fine, re, im, gated, out);
      // The lines are scaled for a transform of `size`.
      const scale = length / size;
      for (let i = 0; i < fine.length; i++) fine[i] = fine[i]! * scale;
      const own = c.slice(2 * (far - sides), 2 * (far + sides + 1)).map((v) => v * scale);
      sweptLoad.follow(fine, re, im, own, { ...load, index, firstAt: 0.5 / size });
      for (let i = 0; i < size; i++) out[i] = Math.hypot(fine[2 * scale * i]!, fine[2 * scale * i + 1]!);
    },
  };
}

/** `size`: bench samples a period; the lines are scaled so that an inverse transform of that size gives volts. */
function makeSource(index: number, gated: boolean, sides: number, size: number): Source {
  let samples = gated ? LEAST_GATED : 64;
  while (samples < (gated ? GATED_SAMPLES : 4) * sides) samples *= 2;
  const envelope = new Float64Array(2 * samples);
  for (let k = 0; k < samples; k++) {
    const theta = (2 * Math.PI * k) / samples - Math.PI / 2;
    const phi = -index * Math.cos(theta);
    const on = gated ? gateAt(k, samples) : 1;
    envelope[2 * k] = on * Math.cos(phi);
    envelope[2 * k + 1] = on * Math.sin(phi);
  }
  const spectrum = new Float64Array(2 * samples);
  new FFT(samples).transform(spectrum, envelope);
  const far = gated ? samples / 2 - 1 : sides;
  const lines = new Float64Array(2 * (2 * far + 1));
  const scale = size / samples;
  for (let n = -far; n <= far; n++) {
    const at = 2 * (n < 0 ? n + samples : n);
    // The bench's first instant lies half a sample into the period.
    const c = scale * Math.cos((Math.PI * n) / size);
    const s = scale * Math.sin((Math.PI * n) / size);
    lines[2 * (n + far)] = spectrum[at]! * c - spectrum[at + 1]! * s;
    lines[2 * (n + far) + 1] = spectrum[at]! * s + spectrum[at + 1]! * c;
  }
  return { index, gated, sides, far, lines };
}

/** On in the trace, off in the retrace, half on at the two edges, where the series of a jump goes through the middle. */
function gateAt(k: number, samples: number): number {
  if (k === 0 || 2 * k === samples) return 0.5;
  return 2 * k < samples ? 1 : 0;
}
