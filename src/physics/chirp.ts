/**
 * A linear circuit under a sweep of one rate: from what stands at a line's own frequency to what stands at the instant when the source passes it, and back.
 *
 * The source is a(t) exp(j phi), phi'' = 2 pi R. With h the impulse response,  e(t) = int h(s) a(t - s) exp(-j w s + j pi R s^2) ds,  w the frequency of the moment. So with F the Fourier transform
 * and C = F^-1 exp(j pi R s^2) F along the frequency, e = C (H C^-1 a): between C^-1 and C a circuit is a factor at each frequency, as at rest, and outside them a limiter or a diode goes by the
 * amplitude of the moment. First order in R this is gentleSweep.ts.
 * Validity: one rate over the band that counts; what rings on is over within half of 1 / step, and the signal is nothing at both ends of the frequencies.
 * Source: Carson and Fry, BSTJ 1937; the factor is Fresnel's, any text on chirp radar (from memory). The transform is the package fft.js.
 */
import FFT from 'fft.js';

export interface Chirp {
  /** of evenly spaced frequencies, a power of two */
  readonly count: number;
  readonly stepHz: number;
  /** hertz a second, below zero where the sweep falls */
  readonly rate: number;
  /** from lines to instants, in place */
  toTime(re: Float64Array, im: Float64Array): void;
  /** from instants to lines, in place */
  toLines(re: Float64Array, im: Float64Array): void;
}

export function createChirp(count: number, stepHz: number, rate: number): Chirp {
  const fft = new FFT(count);
  const cos = new Float64Array(count);
  const sin = new Float64Array(count);
  for (let n = 0; n < count; n++) {
    const s = (n < count / 2 ? n : n - count) / (count * stepHz);
    cos[n] = Math.cos(Math.PI * rate * s * s);
    sin[n] = Math.sin(Math.PI * rate * s * s);
  }
  const along = new Float64Array(2 * count);
  const back = new Float64Array(2 * count);
  const turn = (re: Float64Array, im: Float64Array, sense: 1 | -1): void => {
    for (let k = 0; k < count; k++) {
      along[2 * k] = re[k]!;
      along[2 * k + 1] = im[k]!;
    }
    fft.inverseTransform(back, along);
    for (let n = 0; n < count; n++) {
      const c = cos[n]!;
      const s = sense * sin[n]!;
      const r = back[2 * n]!;
      const i = back[2 * n + 1]!;
      back[2 * n] = r * c - i * s;
      back[2 * n + 1] = r * s + i * c;
    }
    fft.transform(along, back);
    for (let k = 0; k < count; k++) {
      re[k] = along[2 * k]!;
      im[k] = along[2 * k + 1]!;
    }
  };
  return {
    count,
    stepHz,
    rate,
    toTime: (re, im) => turn(re, im, 1),
    toLines: (re, im) => turn(re, im, -1),
  };
}
