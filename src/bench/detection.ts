/** From carriers at the diodes to volts at the Y input over one period of the sweep: diodes, loads, an FM detector's sum and difference, lead. */
import { chargingDiode } from '../physics/chargingDiode.ts';
import { fmOutput, fmOutputs } from '../physics/fmDetector.ts';
import type { SweepMode } from '../physics/gentleSweep.ts';
import { periodicOnePole } from '../physics/onePole.ts';
import { modelOf } from './benchModel.ts';
import { frequenciesAt, type Moment } from './moment.ts';
import { atFrequencies, type Crests, crestsOf, type Half, type Observation } from './observation.ts';

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
  const crest = new Float64Array(2);

  /** What is added to the law's output (noise) goes through the pole by itself. */
  const charge = (
    { plain, lift, law, loadSeconds }: Half,
    sign: 1 | -1,
    leadFarads: number,
    carriers: Float64Array,
    period: number,
  ): void => {
    let most = 0;
    for (let i = 0; i < count; i++) most = Math.max(most, carriers[i]!);
    const still = chargingDiode(law, most, leadFarads).charge(carriers, period, charged.fill(0), plain);
    if (lift === null) carriers.fill(0);
    else {
      // With a law that goes by the frequency the load would come to what `plain` says, else to its own table's.
      const known = law.admittance.drift === null ? null : still;
      for (let i = 0; i < count; i++) {
        const a = carriers[i]!;
        const bare = known === null ? plain(a, i) : known[i]!;
        // What `detect` gives less what `plain` does, rounded as that is: graded figures stand on it.
        carriers[i] = bare + lift(a, i) - bare;
      }
      periodicOnePole(carriers, loadSeconds, period, carriers);
    }
    for (let i = 0; i < count; i++) carriers[i] = sign * (charged[i]! + carriers[i]!);
  };

  const rectify = (
    half: Half,
    { sign, pair, leadFarads }: Observation,
    carriers: Float64Array,
    period: number,
    hurried: boolean,
  ): void => {
    if (hurried) {
      // Of two diodes the lead sees the difference.
      charge(half, sign, pair === null ? leadFarads : 0, carriers, period);
      return;
    }
    const { detect, loadSeconds } = half;
    for (let i = 0; i < count; i++) carriers[i] = sign * detect(carriers[i]!, i);
    periodicOnePole(carriers, loadSeconds, period, carriers);
  };

  return {
    detect(observation, plus, minus, period, hurried) {
      const { pair, leadSeconds, crests } = observation;
      if (pair !== null && crests !== null) {
        for (let i = 0; i < count; i++) {
          crests(plus[i]!, minus[i]!, i, crest);
          plus[i] = crest[0]!;
          minus[i] = crest[1]!;
        }
      }
      rectify(observation, observation, plus, period, hurried);
      if (pair !== null) {
        rectify(observation.minus ?? observation, observation, minus, period, hurried);
        fmOutputs(pair.kind, plus, minus, pair.reservoirSeconds, period, plus, held);
        if (pair.tap === 'sum') plus.set(held);
      }
      periodicOnePole(plus, leadSeconds, period, plus);
    },
  };
}

/** An observation as the moment's full scan, just solved, has it: at which frequencies the carriers stand, and how two diodes' pulses meet. */
export function observedAt(moment: Moment, observation: Observation): Observation {
  const { full, connections } = moment;
  const { node, minusNode } = observation;
  const at = atFrequencies(observation, frequenciesAt(moment, full, node));
  if (minusNode === null || connections.rf === null) return at;
  return { ...at, crests: crestsOf(full.solvers.crestAt(node), full.solvers.crestAt(minusNode)) };
}

/** Whether loads are to charge and discharge as they do. The steep middle of an S-curve shows it long before the circuits are hurried: two loads do so under every sweep. */
export function hurries(mode: SweepMode, { pair }: Observation, { setup, swept }: Moment): boolean {
  const { ownDiodes, pairsCharge } = modelOf(setup.engine);
  if (pair === null) return mode === 'exact';
  return ownDiodes ? swept : mode !== 'quasiStatic' && pairsCharge;
}

/** Volts of an observation for carriers that stand still; `heldSum` is the reservoir's, where there is one. */
export function standingVolts(
  { detect, sign, pair, minus: other, crests }: Observation,
  plusVolts: number,
  minusVolts: number,
  heldSum?: number,
  sample?: number,
): number {
  if (pair === null) return sign * detect(plusVolts, sample);
  const crest = [plusVolts, minusVolts] as const;
  const [a, b] = crests === null || sample === undefined ? crest : dented(crests, crest, sample);
  const plus = detect(a, sample);
  const minus = (other?.detect ?? detect)(b, sample);
  const sum = heldSum ?? plus + minus;
  return pair.tap === 'sum' ? sum : fmOutput(pair.kind, plus, minus, sum);
}

function dented(crests: Crests, [plus, minus]: readonly [number, number], sample: number): readonly [number, number] {
  const out = new Float64Array(2);
  crests(plus, minus, sample, out);
  return [out[0]!, out[1]!];
}
