/** From carriers at the diodes to volts at the Y input over one period of the sweep: diodes, loads, an FM detector's sum and difference, lead. */
import { fmOutput, fmOutputs } from '../physics/fmDetector.ts';
import { periodicOnePole } from '../physics/onePole.ts';
import type { Observation } from './observation.ts';

/** Scratch for a period of `count` samples. */
export function createDetection(count: number): {
  /**
   * Writes the volts at the Y input to `plus`, which held the carriers of the diode that counts positive; `minus` holds those of the other. Both are used up.
   */
  detect(observation: Observation, plus: Float64Array, minus: Float64Array, periodSeconds: number): void;
} {
  const held = new Float64Array(count);
  return {
    detect({ detect, sign, pair, loadSeconds, leadSeconds }, plus, minus, period) {
      if (pair === null) {
        for (let i = 0; i < count; i++) plus[i] = sign * detect(plus[i]!, i);
        periodicOnePole(plus, loadSeconds, period, plus);
      } else {
        for (let i = 0; i < count; i++) {
          plus[i] = detect(plus[i]!, i);
          minus[i] = detect(minus[i]!, i);
        }
        periodicOnePole(plus, loadSeconds, period, plus);
        periodicOnePole(minus, loadSeconds, period, minus);
        fmOutputs(pair.kind, plus, minus, pair.reservoirSeconds, period, plus, held);
        if (pair.tap === 'sum') plus.set(held);
      }
      periodicOnePole(plus, leadSeconds, period, plus);
    },
  };
}

/** Volts of an observation for carriers that stand still; `heldSum` is the reservoir's, where there is one. */
export function standingVolts(
  { detect, sign, pair }: Observation,
  plusVolts: number,
  minusVolts: number,
  heldSum?: number,
): number {
  if (pair === null) return sign * detect(plusVolts);
  const plus = detect(plusVolts);
  const minus = detect(minusVolts);
  const sum = heldSum ?? plus + minus;
  return pair.tap === 'sum' ? sum : fmOutput(pair.kind, plus, minus, sum);
}
