/** How a saturating stage gives way to small changes of its control voltage, at every frequency: the part of a followed change that is the same whatever brought it about. */
import { fundamentalGain, fundamentalGainSlope } from './describingFunction.ts';

export interface StageBend {
  /** the control voltage */
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly gm: Float64Array;
  /** slope of the gain times gm, and what it is divided by: the saturation times the control voltage's size */
  readonly fall: Float64Array;
  readonly over: Float64Array;
}

/** `p`, `m`: voltages of the control nodes, parts real and imaginary; `limit`: saturation, volts peak. */
export function stageBend(
  gm: number,
  limit: number,
  p: { readonly re: Float64Array; readonly im: Float64Array },
  m: { readonly re: Float64Array; readonly im: Float64Array },
): StageBend {
  const none = (): Float64Array => new Float64Array(p.re.length);
  const bend: StageBend = { re: none(), im: none(), gm: none(), fall: none(), over: none() };
  for (let f = 0; f < p.re.length; f++) {
    const vr = p.re[f]! - m.re[f]!;
    const vi = p.im[f]! - m.im[f]!;
    const size = Math.sqrt(vr * vr + vi * vi);
    bend.re[f] = vr;
    bend.im[f] = vi;
    bend.gm[f] = gm * fundamentalGain(size / limit);
    // The gain falls with the size of the control voltage.
    bend.fall[f] = size > 0 ? gm * fundamentalGainSlope(size / limit) : 0;
    bend.over[f] = size > 0 ? limit * size : 1;
  }
  return bend;
}
