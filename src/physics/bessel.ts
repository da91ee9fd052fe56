/**
 * Modified Bessel functions I0 and I1, scaled by exp(-|x|) so that they stay finite: what a sine does to an exponential.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 9.6.10 (series) and 9.7.1 (asymptote).
 */

/** From here on the asymptotic series is used: its terms fall below 1e-16 before they grow. */
const SERIES_END = 20;

/** exp(-|x|) I0(x); relative error below 1e-14. */
export function besselI0Scaled(x: number): number {
  const size = Math.abs(x);
  return size <= SERIES_END ? (1 + besselI0LessOne(size)) * Math.exp(-size) : asymptote(size, 0);
}

/** exp(-|x|) I1(|x|); relative error below 1e-14. */
export function besselI1Scaled(x: number): number {
  const size = Math.abs(x);
  if (size > SERIES_END) return asymptote(size, 4);
  const q = (size * size) / 4;
  let term = size / 2;
  let sum = term;
  for (let k = 1; k < 200; k++) {
    term *= q / (k * (k + 1));
    sum += term;
    if (term < sum * 1e-17) break;
  }
  return sum * Math.exp(-size);
}

/** I0(x) - 1 without cancellation, by its power series; for |x| up to about 20. */
export function besselI0LessOne(x: number): number {
  const q = (x * x) / 4;
  let term = 1;
  let sum = 0;
  for (let k = 1; k < 200; k++) {
    term *= q / (k * k);
    sum += term;
    if (term < sum * 1e-17) break;
  }
  return sum;
}

/** `fourNuSquared`: 4 times the order squared. */
function asymptote(x: number, fourNuSquared: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; k < 30; k++) {
    term *= ((2 * k - 1) ** 2 - fourNuSquared) / (8 * x * k);
    sum += term;
    if (Math.abs(term) < 1e-17) break;
  }
  return sum / Math.sqrt(2 * Math.PI * x);
}
