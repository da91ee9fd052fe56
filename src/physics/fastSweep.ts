/**
 * Exact answer of a linear network to a sine-shaped sweep: the periodic steady state.
 *
 * f(t) = f_c + (S/2) sin(theta), theta = 2 pi f_s t - pi/2. Over one period the carrier's complex envelope about f_c is u(t) = exp(j phi),
 * phi = -(S / (2 f_s)) cos(theta); its spectrum is lines c_n at f_c + n f_s. The network's envelope is  e(t) = sum c_n H(f_c + n f_s) exp(j 2 pi n f_s t),
 * and |e| is what a quick detector follows. With the carrier off in the retrace (`gated`), u is zero there and the network rings on into it.
 * Validity: linear network; H taken at each line, lines beyond the sweep's edge by a margin left out (their share is below 1e-6 of the whole without the
 * gate, below 2e-3 with it, where the edges of the gate make lines without end).
 * Source: Fourier series of a frequency-modulated carrier, e.g. Carson and Fry, BSTJ 1937 (from memory). The transform is the package fft.js.
 */
import FFT from 'fft.js';

/** More lines than this do not fit into a frame; `gentleSweep.ts` serves then. */
export const MOST_LINES = 4096;
/** Lines beyond either edge of the sweep: an FM spectrum falls off within some multiples of the cube root of its index. */
const MARGIN_LINES = 24;
const MARGIN_SHARE = 0.06;

/** How many lines a sweep needs on either side of its centre. */
export function sideLines(spanHz: number, sweepHz: number): number {
  const index = spanHz / (2 * sweepHz);
  return Math.ceil(index * (1 + MARGIN_SHARE)) + MARGIN_LINES;
}

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
}

/** `points` samples a half, a power of two. */
export function createFastSweep(points: number): FastSweep {
  let size = 0;
  let fft: FFT | null = null;
  let input = new Float64Array(0);
  /** the source's own lines, kept while neither the sweep nor the gate changes */
  let source = new Float64Array(0);
  let sourceOf = { index: Number.NaN, gated: false };
  let spectrum = new Float64Array(0);
  let answer = new Float64Array(0);
  let lines = new Float64Array(0);
  let sides = 0;
  let index = 0;

  return {
    linesHz(centreHz, spanHz, sweepHz, lowestHz) {
      sides = sideLines(spanHz, sweepHz);
      index = spanHz / (2 * sweepHz);
      // The bench's instants lie on every second sample of the smallest size, and the lines must fit twice over.
      let wanted = 4 * points;
      while (wanted < 4 * sides) wanted *= 2;
      if (wanted !== size) {
        size = wanted;
        fft = new FFT(size);
        input = new Float64Array(2 * size);
        source = new Float64Array(2 * size);
        sourceOf = { index: Number.NaN, gated: false };
        spectrum = new Float64Array(2 * size);
        answer = new Float64Array(2 * size);
      }
      if (lines.length !== 2 * sides + 1) lines = new Float64Array(2 * sides + 1);
      for (let n = -sides; n <= sides; n++) lines[n + sides] = Math.max(centreHz + n * sweepHz, lowestHz);
      return lines;
    },
    envelope(re, im, gated, out) {
      if (fft === null || re.length !== lines.length || im.length !== lines.length) {
        throw new RangeError('the network must be known at each line');
      }
      if (out.length !== 2 * points) throw new RangeError('out must hold a whole period');
      if (sourceOf.index !== index || sourceOf.gated !== gated) {
        fillSource(input, index, gated);
        fft.transform(source, input);
        sourceOf = { index, gated };
      }
      answer.fill(0);
      for (let n = -sides; n <= sides; n++) {
        const at = 2 * (n < 0 ? n + size : n);
        const hr = re[n + sides]!;
        const hi = im[n + sides]!;
        answer[at] = source[at]! * hr - source[at + 1]! * hi;
        answer[at + 1] = source[at]! * hi + source[at + 1]! * hr;
      }
      fft.inverseTransform(spectrum, answer);
      const step = size / (4 * points);
      for (let i = 0; i < out.length; i++) {
        const k = 2 * (2 * i + 1) * step;
        out[i] = Math.hypot(spectrum[k]!, spectrum[k + 1]!);
      }
    },
  };
}

/** The carrier's complex envelope over one period, interleaved. */
function fillSource(out: Float64Array, index: number, gated: boolean): void {
  const size = out.length / 2;
  for (let k = 0; k < size; k++) {
    const theta = (2 * Math.PI * k) / size - Math.PI / 2;
    const phi = -index * Math.cos(theta);
    const on = gated ? gateAt(k, size) : 1;
    out[2 * k] = on * Math.cos(phi);
    out[2 * k + 1] = on * Math.sin(phi);
  }
}

/** On in the trace, off in the retrace, half on at the two edges, where the series of a jump goes through the middle. */
function gateAt(k: number, size: number): number {
  if (k === 0 || 2 * k === size) return 0.5;
  return 2 * k < size ? 1 : 0;
}
