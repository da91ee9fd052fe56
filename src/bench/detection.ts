/** From carriers at the diodes to volts at the Y input over one period of the sweep: diodes, loads, an FM detector's sum and difference, lead. */
import { chargingDiode } from '../physics/chargingDiode.ts';
import { fmOutput, fmOutputs } from '../physics/fmDetector.ts';
import { periodicOnePole } from '../physics/onePole.ts';
import type { Observation } from './observation.ts';

/** Scratch for a period of `count` samples. */
export function createDetection(count: number): {
  /**
   * Writes the volts at the Y input to `plus`, which held the carriers of the diode that counts positive; `minus` holds those of the other. Both are used up. `hurried`: the sweep is so fast that a
   * single diode's load is to charge and discharge as it does; else it is one pole behind the law.
   */
  detect(
    observation: Observation,
    plus: Float64Array,
    minus: Float64Array,
    periodSeconds: number,
    hurried: boolean,
  ): void;
} {
  const held = new Float64Array(count);
  const charged = new Float64Array(count);

  /** What is added to the law's output (noise) goes through the pole by itself. */
  const charge = (
    { detect, law, sign, loadSeconds, leadFarads }: Observation,
    carriers: Float64Array,
    period: number,
  ): void => {
    let most = 0;
    for (let i = 0; i < count; i++) most = Math.max(most, carriers[i]!);
    chargingDiode(law, most, leadFarads).charge(carriers, period, charged.fill(0));
    if (detect === law.detect) carriers.fill(0);
    else {
      for (let i = 0; i < count; i++) carriers[i] = detect(carriers[i]!, i) - law.detect(carriers[i]!);
      periodicOnePole(carriers, loadSeconds, period, carriers);
    }
    for (let i = 0; i < count; i++) carriers[i] = sign * (charged[i]! + carriers[i]!);
  };

  return {
    detect(observation, plus, minus, period, hurried) {
      const { detect, sign, pair, loadSeconds, leadSeconds } = observation;
      if (pair === null && hurried) charge(observation, plus, period);
      else if (pair === null) {
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
