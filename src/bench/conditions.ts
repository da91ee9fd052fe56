/**
 * The values that the circuit's elements take at this moment, besides what the leads add to it: slugs, bias, power, and a missing capacitor.
 *
 * - A bare RF lead (no isolating capacitor) is a path of 75 ohm for direct current. On the grid of a controlled stage it holds that stage at 0 V
 *   whatever the line says. On a point that carries direct volts it pulls them down, and every stage that has its control or its
 *   output there stops working.
 * - A set that has just been switched on cold (heat.ts): its valves give what their heaters allow, and their inputs are not yet what they will be.
 * - A mains set that is switched off has no gain left in any stage.
 */
import { type Deck, findElement, nodeKey } from '../physics/deck.ts';
import { deckValue, type ElementValue, slugValues, stageValues } from '../receiver/elementValues.ts';
import { tankValues } from '../receiver/oscillator.ts';
import type { Receiver, Stage, TestPoint } from '../receiver/receiver.ts';
import type { BenchState } from './benchState.ts';
import type { Connections } from './connections.ts';
import { driftsOf, isValve, OSCILLATOR_DRIFT, type Warmth, warmthOf } from './heat.ts';
import { STEEL_INDUCTANCE } from './instruments.ts';
import type { BenchSetup } from './setup.ts';

/** Direct volts that a 75 ohm path would pull down. */
const CARRIES_VOLTS = 0.3;

/** The windings that a slug tunes, with the steel blade that may stand in it. */
export function slugElementValues(
  { receiver, deck }: BenchSetup,
  slug: string,
  coreTurns: number,
  steel: boolean,
): ElementValue[] {
  const adjuster = receiver.adjusters.find((a) => a.id === slug);
  if (adjuster === undefined) throw new Error(`the receiver has no slug ${slug}`);
  const values = slugValues(adjuster, deck, coreTurns);
  if (!steel) return values;
  // Steel is more inductance; the coupling is the core's business.
  const windings = [adjuster.element, ...adjuster.ganged];
  return values.map((v) => (windings.includes(v.element) ? { ...v, value: v.value * STEEL_INDUCTANCE } : v));
}

export type LineVolts = Readonly<Record<string, number>>;

export interface StageConditions {
  /** volts on each bias line, by its test point */
  readonly lineVolts: LineVolts;
  readonly running: boolean;
  /** the point that a bare RF lead stands on */
  readonly bareAt: TestPoint | null;
  readonly warmth: Warmth;
  readonly fineTuning: number;
  /** by stage: what a set that sings leaves of it; left out: all */
  readonly takenUp?: ReadonlyMap<string, number>;
}

export function stageConditions(
  setup: BenchSetup,
  state: BenchState,
  { rf }: Connections,
  lineVolts: LineVolts,
): StageConditions {
  const { receiver } = setup;
  const bare = rf !== null && rf.inject?.kind === 'node' && !state.controls.rfCapacitor;
  return {
    lineVolts,
    running: receiver.mains === null || state.powered,
    bareAt: bare ? rf : null,
    warmth: warmthOf(setup, state),
    fineTuning: state.controls.fineTuning,
  };
}

/** Transconductances, input capacitors and input resistors of every stage, and the oscillator's capacitor. */
export function stageElementValues(
  { receiver, deck, scenario }: BenchSetup,
  conditions: StageConditions,
): ElementValue[] {
  const { emission, chill } = conditions.warmth;
  const drifts = chill > 0 ? driftsOf(receiver, scenario) : null;
  const leftOf = ({ element }: Stage): number => conditions.takenUp?.get(element) ?? 1;
  const tank = tankValues(receiver, deck, conditions.fineTuning, chill * (drifts?.get(OSCILLATOR_DRIFT) ?? 0));
  const stages = receiver.stages.flatMap((stage) => {
    const values = oneStage(receiver, deck, stage, conditions).map((v) =>
      v.element === stage.element ? { ...v, value: v.value * (isValve(stage) ? emission : 1) * leftOf(stage) } : v,
    );
    return drifts === null ? values : withChill(stage, deck, values, chill * (drifts.get(stage.element) ?? 0));
  });
  return [...stages, ...tank];
}

/** A cold valve's input capacitance is smaller. */
function withChill({ inputCapacitor }: Stage, deck: Deck, values: ElementValue[], farads: number): ElementValue[] {
  if (inputCapacitor === null) return values;
  const warm = values.find((v) => v.element === inputCapacitor)?.value ?? deckValue(deck, inputCapacitor);
  const rest = values.filter((v) => v.element !== inputCapacitor);
  return [...rest, { element: inputCapacitor, value: Math.max(LEAST_FARADS, warm - farads) }];
}

/** Never below this, however small the capacitor and large the drift. */
const LEAST_FARADS = 1e-15;

function oneStage(receiver: Receiver, deck: Deck, stage: Stage, conditions: StageConditions): ElementValue[] {
  const { lineVolts, running, bareAt } = conditions;
  const touched = bareAt !== null && bareAt.node !== null ? touches(deck, stage, bareAt.node) : null;
  const grounded = touched === 'control' && Math.abs(bareAt?.dcVolts ?? 0) < CARRIES_VOLTS;
  const law = receiver.biasLines.find((l) => l.at === stage.agc);
  const volts = law === undefined ? null : grounded ? 0 : (lineVolts[law.at] ?? law.unclampedRestVolts);
  const pulledDown = touched !== null && Math.abs(bareAt?.dcVolts ?? 0) >= CARRIES_VOLTS;
  const factor = running && !pulledDown ? 1 : 0;
  if (law === undefined || volts === null)
    return [{ element: stage.element, value: deckValue(deck, stage.element) * factor }];
  return stageValues(law, stage, deck, volts).map((v) =>
    v.element === stage.element ? { ...v, value: v.value * factor } : v,
  );
}

function touches(deck: Deck, stage: Stage, node: string): 'control' | 'output' | null {
  const element = findElement(deck, stage.element);
  if (element?.kind !== 'G') throw new Error(`stage ${stage.element} is no transconductance of the deck`);
  const at = (name: string) => nodeKey(name) === nodeKey(node);
  if (element.control.some(at)) return 'control';
  return element.nodes.some(at) ? 'output' : null;
}
