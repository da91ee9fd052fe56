/**
 * A gently swept network: first order in the sweep rate.
 *
 * |e| = |H - j pi R d2H/dw2| at the instantaneous frequency, R the rate in hertz a second with its sign (trace +, retrace -), w in radians a second.
 * The lag |pi R H''| / max |H| tells how far the slow picture is from the truth: for one tuned circuit at its peak it is 2 R / (pi B^2), which is also the
 * shift of the peak in bandwidths. From R/B^2 = 0.02 on |H(f(t))| is no longer taken as exact enough: there the lag is 0.0127.
 * Validity: lag up to about 0.1 (the error left is one to four times its square, of the highest point); beyond it fastSweep.ts.
 * Source: quasi-stationary expansion, Carson and Fry, Variable frequency electric circuit theory, BSTJ 1937 (from memory).
 */
import { rateHzPerSecond, sweepAngle } from './sweep.ts';
import type { HurriedBand } from './sweepLens.ts';

/** 2 * 0.02 / pi: below it |H(f(t))| is exact enough. */
export const LAG_LIMIT = 0.04 / Math.PI;

export type SweepMode = 'quasiStatic' | 'gentle' | 'exact';

/** Which way of reckoning a lag asks for. */
export function sweepMode(lag: number, linesFit: boolean): SweepMode {
  if (lag < LAG_LIMIT) return 'quasiStatic';
  return linesFit ? 'exact' : 'gentle';
}

export interface GentleSweep {
  /** the lag of a forward half: `re`, `im` of a node at sweep.ts's frequencies of this sweep */
  lag(re: Float64Array, im: Float64Array, hz: Float64Array, spanHz: number, sweepHz: number): number;
  /** between which frequencies the sweep hurries that node by more than this share of its highest; null where nowhere */
  hurried(share: number): HurriedBand | null;
  /** |e| over a whole period, trace then retrace, of the half whose lag was asked for last */
  envelope(re: Float64Array, im: Float64Array, out: Float64Array): void;
}

/** Second differences are taken over at least this share of the span, for near the ends the samples crowd. */
const BASE_SHARE = 1 / 700;

export function createGentleSweep(points: number): GentleSweep {
  /** pi R H'' of each forward sample */
  const bentRe = new Float64Array(points);
  const bentIm = new Float64Array(points);
  let swept: Float64Array = new Float64Array(0);
  let highest = 0;

  return {
    hurried(share) {
      const least = share * highest;
      const out = (i: number): boolean => Math.hypot(bentRe[i]!, bentIm[i]!) > least;
      let [low, high] = [0, points - 1];
      while (low < points && !out(low)) low++;
      while (high > low && !out(high)) high--;
      return low < points ? { lowHz: swept[low]!, highHz: swept[high]! } : null;
    },
    lag(re, im, hz, spanHz, sweepHz) {
      swept = hz;
      const base = spanHz * BASE_SHARE;
      let first = points;
      let last = -1;
      let below = 0;
      let above = 0;
      for (let i = 0; i < points; i++) {
        const f = hz[i]!;
        while (below + 1 < i && f - hz[below + 1]! >= base) below++;
        if (above < i) above = i;
        while (above < points - 1 && hz[above]! - f < base) above++;
        const a = hz[below]! - f;
        const b = hz[above]! - f;
        if (a > -base / 2 || b < base / 2) continue;
        if (first === points) first = i;
        last = i;
        // Second derivative of the parabola through the three samples.
        bentRe[i] = (2 / (b - a)) * ((re[above]! - re[i]!) / b - (re[below]! - re[i]!) / a);
        bentIm[i] = (2 / (b - a)) * ((im[above]! - im[i]!) / b - (im[below]! - im[i]!) / a);
      }
      // Samples too near an end to have neighbours on both sides bend as the nearest one that has.
      bentRe.fill(bentRe[first] ?? 0, 0, first).fill(bentRe[last] ?? 0, last + 1);
      bentIm.fill(bentIm[first] ?? 0, 0, first).fill(bentIm[last] ?? 0, last + 1);
      let top = 0;
      let most = 0;
      for (let i = 0; i < points; i++) {
        const rate = rateHzPerSecond(spanHz, sweepHz, (spanHz / 2) * Math.sin(sweepAngle(i, points)));
        // d2H/dw2 is d2H/df2 over (2 pi)^2.
        bentRe[i] = (bentRe[i]! * rate) / (4 * Math.PI);
        bentIm[i] = (bentIm[i]! * rate) / (4 * Math.PI);
        const size = Math.hypot(re[i]!, im[i]!);
        if (size > top) top = size;
        const bent = Math.hypot(bentRe[i]!, bentIm[i]!);
        if (bent > most) most = bent;
      }
      highest = top;
      return top === 0 ? 0 : most / top;
    },
    envelope(re, im, out) {
      if (out.length !== 2 * points) throw new RangeError('out must hold a whole period');
      for (let i = 0; i < points; i++) {
        // -j (x + j y) = y - j x
        out[i] = Math.hypot(re[i]! + bentIm[i]!, im[i]! - bentRe[i]!);
        out[2 * points - 1 - i] = Math.hypot(re[i]! - bentIm[i]!, im[i]! + bentRe[i]!);
      }
    },
  };
}
