/** From carriers at the diodes to volts at the Y input over one period of the sweep: diodes, loads, an FM detector's sum and difference, lead. */
import { chargingDiode } from '../physics/chargingDiode.ts';
import { fmOutput, fmOutputs } from '../physics/fmDetector.ts';
import type { SweepMode } from '../physics/gentleSweep.ts';
import { periodicOnePole } from '../physics/onePole.ts';
import { modelOf } from './benchModel.ts';
import type { Observation } from './observation.ts';
import type { BenchSetup } from './setup.ts';

/** Scratch for a period of `count` samples. */
export function createDetection(count: number): {
  /**
   * Writes the volts at the Y input to `plus`, which held the carriers of the diode that counts positive; `minus` holds those of the other. Both are used up. `hurried`: the sweep is so fast that
   * loads are to charge and discharge as they do; else each is one pole behind the law.
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
    { detect, law, sign, pair, loadSeconds, leadFarads }: Observation,
    carriers: Float64Array,
    period: number,
  ): void => {
    let most = 0;
    for (let i = 0; i < count; i++) most = Math.max(most, carriers[i]!);
    // Of two diodes the lead sees the difference.
    chargingDiode(law, most, pair === null ? leadFarads : 0).charge(carriers, period, charged.fill(0));
    if (detect === law.detect) carriers.fill(0);
    else {
      for (let i = 0; i < count; i++) carriers[i] = detect(carriers[i]!, i) - law.detect(carriers[i]!);
      periodicOnePole(carriers, loadSeconds, period, carriers);
    }
    for (let i = 0; i < count; i++) carriers[i] = sign * (charged[i]! + carriers[i]!);
  };

  const rectify = (observation: Observation, carriers: Float64Array, period: number, hurried: boolean): void => {
    if (hurried) {
      charge(observation, carriers, period);
      return;
    }
    const { detect, sign, loadSeconds } = observation;
    for (let i = 0; i < count; i++) carriers[i] = sign * detect(carriers[i]!, i);
    periodicOnePole(carriers, loadSeconds, period, carriers);
  };

  return {
    detect(observation, plus, minus, period, hurried) {
      const { pair, leadSeconds } = observation;
      rectify(observation, plus, period, hurried);
      if (pair !== null) {
        rectify(observation, minus, period, hurried);
        fmOutputs(pair.kind, plus, minus, pair.reservoirSeconds, period, plus, held);
        if (pair.tap === 'sum') plus.set(held);
      }
      periodicOnePole(plus, leadSeconds, period, plus);
    },
  };
}

/** Whether loads are to charge and discharge as they do. */
export function hurries(mode: SweepMode, { pair }: Observation, { engine }: BenchSetup): boolean {
  if (pair === null) return mode === 'exact';
  return mode !== 'quasiStatic' && modelOf(engine).pairsCharge;
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
