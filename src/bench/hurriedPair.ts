/**
 * The carriers at both diodes of an FM detector under a sweep that hurries the circuits more than the first order in its rate can tell: every limiter and every load as it stands at the moment
 * (physics/chirp.ts, blockLoads.ts). The band that is hurried is swept at the rate that stands in its middle, once up and once down, by a source that comes up before it and goes down behind it.
 */
import { createChirp } from '../physics/chirp.ts';
import { rateHzPerSecond } from '../physics/sweep.ts';
import type { HurriedBand } from '../physics/sweepLens.ts';
import { LOWEST_HZ } from '../receiver/sourceLevel.ts';
import type { LineVolts } from './conditions.ts';
import type { Moment } from './moment.ts';

/** From a node, the carrier that stands as the source passes the frequencies of `hz`, up and down. */
export interface HurriedPair {
  readonly fromHz: number;
  readonly stepHz: number;
  readonly count: number;
  carriers(node: string): { readonly up: Float64Array; readonly down: Float64Array } | null;
}

/** Of the band that is hurried; and of the narrowest circuit's at least. */
const BANDS = 3;
const NARROW_BANDS = 10;
/** Frequencies in the narrowest circuit's band, which the lag tells. */
const EACH_BAND = 8;
const LEAST_COUNT = 256;
const MOST_COUNT = 2048;
/** Of all frequencies, at either end: there the source comes up and goes down. */
const RAMP_SHARE = 0.12;

/** Null where it cannot be told so: the sweep stands still, or the diodes lie behind a mixer. */
export function hurriedPair(moment: Moment, lineVolts: LineVolts, band: HurriedBand, lag: number): HurriedPair | null {
  const { centreHz, sweepHz, state, circuit } = moment;
  const middle = (band.lowHz + band.highHz) / 2;
  const rate = rateHzPerSecond(state.controls.spanHz, sweepHz, middle - centreHz);
  if (rate === 0) return null;
  // Of one circuit the lag is 2 R / (pi B^2).
  const narrow = Math.sqrt((2 * rate) / (Math.PI * lag));
  const span = Math.max(BANDS * (band.highHz - band.lowHz), NARROW_BANDS * narrow);
  const wanted = 2 ** Math.ceil(Math.log2((EACH_BAND * span) / narrow));
  const count = Math.min(Math.max(wanted, LEAST_COUNT), MOST_COUNT);
  const stepHz = span / count;
  const fromHz = middle - span / 2;
  if (fromHz < LOWEST_HZ) return null;
  const hz = Float64Array.from({ length: count }, (_, k) => fromHz + k * stepHz);
  const along = hz.map((_, k) => rampAt(Math.min(k, count - 1 - k) / count));
  const conditions = moment.conditions(lineVolts);
  const read = [rate, -rate].map((r) => {
    const of = circuit.chirped.solveChirped(hz, conditions, along, createChirp(count, stepHz, r));
    // Both nodes before the other way is solved.
    const kept = new Map<string, Float64Array>();
    if (of === null) return kept;
    for (const { plus, minus } of pairs(moment)) {
      for (const node of [plus, minus]) {
        const carriers = of(node);
        // Feedback may outdo what the loads take: then it has no steady course along the sweep.
        if (carriers?.every(Number.isFinite)) kept.set(node, carriers);
      }
    }
    return kept;
  });
  return {
    fromHz,
    stepHz,
    count,
    carriers(node) {
      const [up, down] = read.map((kept) => kept.get(node));
      return up === undefined || down === undefined ? null : { up, down };
    },
  };
}

/** Lays the carriers of one node over a period of the sweep whose forward half stands at `hz`, by a share that falls to nothing where the source comes up and goes down. */
export function layHurried(
  { fromHz, stepHz, count }: HurriedPair,
  { up, down }: { readonly up: Float64Array; readonly down: Float64Array },
  hz: Float64Array,
  weight: number,
  out: Float64Array,
): void {
  const points = hz.length;
  for (let i = 0; i < points; i++) {
    const place = (hz[i]! - fromHz) / stepHz;
    if (!(place > 1 && place < count - 3)) continue;
    const share = weight * rampAt(Math.min(place, count - 1 - place) / count - RAMP_SHARE);
    if (share === 0) continue;
    const k = Math.floor(place);
    const back = 2 * points - 1 - i;
    out[i] = out[i]! + share * (cubic(up, k, place - k) - out[i]!);
    out[back] = out[back]! + share * (cubic(down, k, place - k) - out[back]!);
  }
}

/** From nothing at the end to all at RAMP_SHARE, smoothly. */
function rampAt(share: number): number {
  if (share <= 0) return 0;
  return share >= RAMP_SHARE ? 1 : Math.sin(((Math.PI / 2) * share) / RAMP_SHARE) ** 2;
}

function cubic(table: Float64Array, k: number, t: number): number {
  const [a, b, c, d] = [table[k - 1]!, table[k]!, table[k + 1]!, table[k + 2]!];
  return b + (t / 2) * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
}

const pairs = ({ setup }: Moment): readonly { readonly plus: string; readonly minus: string }[] =>
  setup.receiver.detectors.flatMap((one) => (one.kind === 'envelope' ? [] : [one]));
