/** How far the crests of two diodes that are a pair are dented by each other's pulses (diodePulses.ts), while their block is solved frequency after frequency. */
import type { Admittance } from './admittance.ts';
import { meanOverFundamental, pulseDents } from './diodePulses.ts';

/** Of a carrier. */
const MOST_DENT = 0.3;
/** A / nVt below which there are no pulses. */
const LEAST_PULSE = 0.1;

export interface PairDents {
  /** volts, of either */
  readonly dents: Float64Array;
  /** none, as before the first frequency */
  rest(): void;
  /** goes on to frequency number `f` on the straight line through the last two */
  goAhead(f: number): void;
  /** from the carriers `v` (real and imaginary parts in turn) and what the loads draw at them, `slopes` (g, b and their slopes of either), with the dents as they have been */
  update(list: readonly (readonly Admittance[])[], v: Float64Array, slopes: Float64Array): void;
}

export function createPairDents(): PairDents {
  const dents = new Float64Array(2);
  const before = new Float64Array(2);
  const dentOhms = new Float64Array(2);
  return {
    dents,
    rest() {
      dents.fill(0);
    },
    goAhead(f) {
      for (let k = 0; k < 2; k++) {
        const now = dents[k]!;
        if (f > 1) dents[k] = 2 * now - before[k]!;
        before[k] = now;
      }
    },
    update(list, v, slopes) {
      const mutual = list[0]![0]!.mutual!;
      const first = Math.sqrt(v[0]! * v[0]! + v[1]! * v[1]!);
      const second = Math.sqrt(v[2]! * v[2]! + v[3]! * v[3]!);
      if (first === 0 || second === 0) {
        dents.fill(0);
        return;
      }
      const product = first * second;
      const x = Math.max(first + dents[0]!, 0) / list[0]![0]!.scaleVolts;
      const z = Math.max(second + dents[1]!, 0) / list[1]![0]!.scaleVolts;
      const cos = (v[0]! * v[2]! + v[1]! * v[3]!) / product;
      const sin = (v[0]! * v[3]! - v[1]! * v[2]!) / product;
      pulseDents(mutual, x, z, cos, sin, dentOhms);
      const firstAmps = x > LEAST_PULSE ? (slopes[0]! * first * meanOverFundamental(x)) / 2 : 0;
      const secondAmps = z > LEAST_PULSE ? (slopes[4]! * second * meanOverFundamental(z)) / 2 : 0;
      // No more than first order can tell.
      dents[0] = Math.max(-MOST_DENT * first, Math.min(MOST_DENT * first, secondAmps * dentOhms[0]!));
      dents[1] = Math.max(-MOST_DENT * second, Math.min(MOST_DENT * second, firstAmps * dentOhms[1]!));
    },
  };
}
