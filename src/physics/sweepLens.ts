/**
 * A sweep too wide for its lines to be reckoned one by one, looked at where it hurries the circuits.
 *
 * What a circuit does while the sweep runs through its band hangs on the rate at which it does so, and on nothing that lies far off. So the band is run through by another sine-shaped sweep, as wide as its
 * lines allow, which at the middle of the band has the very rate of the true one: R = pi f_m S cos(theta) there, so S' f' = R / pi, and S' / f' lines are needed. fastSweep.ts reckons
 * that one exactly, and each sample of the true sweep takes what stands at its frequency. Outside the lens the gentle sweep's value stands; the two go over into each other at its edges.
 * Validity: the band that is hurried lies within BAND_SHARE of the lens, where the two rates differ by 1 - sqrt(1 - BAND_SHARE^2) at most; what rings on longer than a quarter of the lens's period is not seen.
 * Source: the same stationary-phase argument as the quasi-stationary expansion, Carson and Fry, BSTJ 1937 (from memory); held against time runs (docs/model.md).
 */
import { rateHzPerSecond } from './sweep.ts';

export interface Lens {
  readonly centreHz: number;
  readonly spanHz: number;
  readonly sweepHz: number;
}

export interface HurriedBand {
  readonly lowHz: number;
  readonly highHz: number;
}

/** Of the half span of a lens. */
const BAND_SHARE = 0.7;
/** A lens is three times the band where its lines allow more. */
const BANDS = 3;
/** Widths and middles in steps of so many to the doubling and to the span, so that a turning slug does not have the source's lines made anew for each picture. */
const STEPS = 8;
const MIDDLES = 256;
/** From here to the edge the lens goes over into what stands outside. */
const WHOLE_TO = 0.8;

/**
 * Null where no lens holds the band. `mostIndex`: the largest S / (2 f) whose lines fit. `lag`: see gentleSweep.ts; the slowest circuit rings for about sqrt(pi lag / (2 R)) seconds times some.
 */
export function lensFor(band: HurriedBand, whole: Lens, lag: number, mostIndex: number): Lens | null {
  const { centreHz, spanHz, sweepHz } = whole;
  const cell = spanHz / MIDDLES;
  const middle = centreHz + cell * Math.round(((band.lowHz + band.highHz) / 2 - centreHz) / cell);
  const half = Math.max(band.highHz - middle, middle - band.lowHz);
  const rate = rateHzPerSecond(spanHz, sweepHz, middle - centreHz);
  if (rate === 0) return null;
  const most = Math.sqrt((2 * mostIndex * rate) / Math.PI);
  // A quarter of its period, pi S' / (4 R), is to hold ten time constants 1 / (pi B), B from the lag 2 R / (pi B^2).
  const rings = ((40 * rate) / Math.PI ** 2) * Math.sqrt((Math.PI * lag) / (2 * rate));
  const wanted = Math.max(BANDS * 2 * half, rings);
  const stepped = 2 ** (Math.ceil(STEPS * Math.log2(wanted)) / STEPS);
  const span = Math.min(stepped, 2 ** (Math.floor(STEPS * Math.log2(most)) / STEPS));
  if (half > (BAND_SHARE * span) / 2) return null;
  return { centreHz: middle, spanHz: span, sweepHz: rate / (Math.PI * span) };
}

/** Lays what the lens has seen (a whole period of it, trace then retrace) over a period of the true sweep, whose forward half stands at `hz`. */
export function throughLens(lens: Lens, seen: Float64Array, hz: Float64Array, out: Float64Array): void {
  const points = hz.length;
  const last = seen.length / 2 - 1;
  for (let i = 0; i < points; i++) {
    const x = (2 * (hz[i]! - lens.centreHz)) / lens.spanHz;
    if (Math.abs(x) >= 1) continue;
    const at = Math.min(Math.max((Math.asin(x) / Math.PI + 0.5) * (last + 1) - 0.5, 0), last);
    const k = Math.min(Math.floor(at), last - 1);
    const t = at - k;
    const share = Math.min(1, (1 - Math.abs(x)) / (1 - WHOLE_TO));
    const back = 2 * points - 1 - i;
    const behind = 2 * last + 1 - k;
    const trace = seen[k]! + t * (seen[k + 1]! - seen[k]!);
    const retrace = seen[behind]! + t * (seen[behind - 1]! - seen[behind]!);
    out[i] = out[i]! + share * (trace - out[i]!);
    out[back] = out[back]! + share * (retrace - out[back]!);
  }
}
