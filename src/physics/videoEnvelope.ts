/**
 * What an envelope detector makes of a carrier with two unequal sidebands.
 *
 * A carrier at f_p, modulated by cos(2 pi f_v t) with unit depth, has sidebands of half its size. After the network H the detected envelope is modulated by
 * M(f_v) = ( H(f_p + f_v) e^{-ja} + conj(H(f_p - f_v) e^{-ja}) ) / 2,  a = arg H(f_p):  |M| its size, arg M its phase. The part of the sidebands in quadrature
 * with the carrier is lost in the first order.
 * Validity: small depth, linear detection, a load that follows f_v. Where one sideband is gone M is half of the other; where the slope is such that both add to
 * a constant, M is flat (the rule of the vestigial sideband).
 * Source: envelope of a carrier with two unequal sidebands, Nyquist, Trans. AIEE 1928, and Terman (from memory).
 */

/**
 * Writes `scale` * M. `bandsRe`, `bandsIm` hold the network at the upper sidebands and then, in the same order, at the lower ones: twice as many as `outRe`
 * and `outIm`, which must not be the same arrays. A carrier of nothing counts as in phase.
 */
export function envelopeModulation(
  carrierRe: number,
  carrierIm: number,
  bandsRe: Float64Array,
  bandsIm: Float64Array,
  scale: number,
  outRe: Float64Array,
  outIm: Float64Array,
): void {
  const n = outRe.length;
  if (outIm.length !== n || bandsRe.length !== 2 * n || bandsIm.length !== 2 * n)
    throw new RangeError('each modulation needs two sidebands');
  const size = Math.hypot(carrierRe, carrierIm);
  const c = size === 0 ? 1 : carrierRe / size;
  const s = size === 0 ? 0 : carrierIm / size;
  for (let i = 0; i < n; i++) {
    const ur = bandsRe[i]!;
    const ui = bandsIm[i]!;
    const lr = bandsRe[n + i]!;
    const li = bandsIm[n + i]!;
    outRe[i] = (scale * ((ur + lr) * c + (ui + li) * s)) / 2;
    outIm[i] = (scale * ((ui - li) * c - (ur - lr) * s)) / 2;
  }
}
