/**
 * The envelope of a carrier that has Gaussian noise with it: R = |A + n|, n with sigma a side (in phase and across).
 *
 * mean = sigma sqrt(pi/2) L(-A^2 / 2 sigma^2),  L(-x) = exp(-x/2) ((1 + x) I0(x/2) + x I1(x/2)),  mean square = A^2 + 2 sigma^2.
 * So a carrier of nothing has an envelope of 1.25331 sigma, and one far above the noise stands higher by sigma^2 / 2A.
 * Source: S. O. Rice, Mathematical analysis of random noise, BSTJ 23 and 24, 1944-45, 3.10.
 */
import { besselI0Scaled, besselI1Scaled } from './bessel.ts';

/** Beyond this the series in sigma / A says the same. */
const FAR_ABOVE = 200;

/** Mean of the envelope, in the unit of both arguments; `sigma` 0 gives the amplitude. */
export function riceMean(amplitude: number, sigma: number): number {
  const size = Math.abs(amplitude);
  if (sigma <= 0) return size;
  const ratio = size / sigma;
  if (ratio > FAR_ABOVE) return size + (sigma * sigma) / (2 * size);
  const x = (ratio * ratio) / 2;
  return sigma * Math.sqrt(Math.PI / 2) * ((1 + x) * besselI0Scaled(x / 2) + x * besselI1Scaled(x / 2));
}

/** How far the envelope strays from its mean, root mean square. */
export function riceDeviation(amplitude: number, sigma: number): number {
  if (sigma <= 0) return 0;
  if (Math.abs(amplitude) > FAR_ABOVE * sigma) return sigma;
  const mean = riceMean(amplitude, sigma);
  return Math.sqrt(Math.max(0, amplitude * amplitude + 2 * sigma * sigma - mean * mean));
}
