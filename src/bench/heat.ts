/**
 * How warm the set is. Where the scenario says `cold`, its valves and all about them begin at the room's warmth; any other set is warm from the start and stays so.
 *
 * - Heaters: h goes towards 1 with HEATER_SECONDS while the power is on, towards 0 without. A cathode gives nothing below 0.6 and all it can at 0.95, so
 *   the set is dead for nine seconds and fully there after thirty.
 * - Chassis: w goes towards 1 with some minutes, and back more slowly. A valve's input capacitance is short of its warm value by its share of
 *   `driftFarads`, times 1 - w, and its circuit stands too high: df / f = -dC / 2C (differential of f = 1 / 2 pi sqrt(LC)). After ten minutes a twentieth is left.
 * The deck is the warm set, and the true response that is graded is the warm one's. Transistors have no heater and stay as they are. Time constants:
 * common practice, no source. Reference designations: V a valve, Q a transistor (IEEE 315).
 */
import { seededRandom } from '../base/random.ts';
import { roundTo } from '../base/rounding.ts';
import type { Receiver, Stage } from '../receiver/receiver.ts';
import { lifeOf } from '../scenario/life.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { BenchState, Heat } from './benchState.ts';

export const STONE_COLD: Heat = { atSeconds: 0, heater: 0, chassis: 0 };

/** What the warmth does to the set at this moment; in steps too fine to see, so that what is solved may be kept. */
export interface Warmth {
  /** share of the emission that the cathodes give */
  readonly emission: number;
  /** how much of the way to warm is still to go, 1 to 0 */
  readonly chill: number;
}

const WARM: Warmth = { emission: 1, chill: 0 };

const HEATER_SECONDS = 10;
const NOTHING_BELOW = 0.6;
const ALL_FROM = 0.95;
const CHASSIS_SECONDS = 200;
const COOLING_SECONDS = 400;
const EMISSION_STEP = 1 / 64;
const CHILL_STEP = 1 / 512;

/** From the room's warmth to within a twentieth of warm. */
export const WARM_UP_SECONDS = 600;

export function heatNow({ heat, powered, seconds }: Pick<BenchState, 'heat' | 'powered' | 'seconds'>): Heat {
  const passed = Math.max(0, seconds - heat.atSeconds);
  const towards = (from: number, tau: number): number => {
    const end = powered ? 1 : 0;
    return end + (from - end) * Math.exp(-passed / tau);
  };
  return {
    atSeconds: seconds,
    heater: towards(heat.heater, HEATER_SECONDS),
    chassis: towards(heat.chassis, powered ? CHASSIS_SECONDS : COOLING_SECONDS),
  };
}

export function warmthOf(
  { receiver, scenario }: { readonly receiver: Receiver; readonly scenario: Scenario },
  state: Pick<BenchState, 'heat' | 'powered' | 'seconds'>,
): Warmth {
  if (!warmsUp(receiver, scenario)) return WARM;
  const { heater, chassis } = heatNow(state);
  const share = Math.min(1, Math.max(0, (heater - NOTHING_BELOW) / (ALL_FROM - NOTHING_BELOW)));
  return { emission: roundTo(share, EMISSION_STEP), chill: roundTo(1 - chassis, CHILL_STEP) };
}

/** A set with valves and mains that the scenario says is cold. */
export function warmsUp(receiver: Receiver, scenario: Scenario): boolean {
  const { mains, stages, oscillator } = receiver;
  const valves = [...stages, ...(oscillator === undefined ? [] : [oscillator])].some(isValve);
  return lifeOf(scenario).cold && mains !== null && valves;
}

/** The set is on, and its cathodes do not yet give all that they can: what is missing of the curve comes by itself. */
export function heatersComingUp(
  setup: { readonly receiver: Receiver; readonly scenario: Scenario },
  state: Pick<BenchState, 'heat' | 'powered' | 'seconds'>,
): boolean {
  return state.powered && warmthOf(setup, state).emission < 1;
}

/** The set is on and not yet warm: what is seen changes with time alone. */
export function warming(
  setup: { readonly receiver: Receiver; readonly scenario: Scenario },
  state: Pick<BenchState, 'heat' | 'powered' | 'seconds'>,
): boolean {
  return state.powered && warmthOf(setup, state).chill > 0;
}

export function isValve({ device }: Pick<Stage, 'device'>): boolean {
  return /^V\d/.test(device);
}

/** The oscillator's key among the drifts; no element of a deck can have this name. */
export const OSCILLATOR_DRIFT = ' oscillator';

/** What each stage's input capacitance lacks when cold, farads, and the oscillator's: half to one and a half times the scenario's figure, by its seed. */
export function driftsOf({ stages, oscillator }: Receiver, scenario: Scenario): ReadonlyMap<string, number> {
  const chance = seededRandom(scenario.seed);
  const { driftFarads } = lifeOf(scenario);
  const drift = (part: Pick<Stage, 'device'>): number => (isValve(part) ? driftFarads * (0.5 + chance()) : 0);
  const drifts = new Map(stages.map((stage) => [stage.element, drift(stage)]));
  // After the stages, so that theirs stay what they are in a set without one.
  if (oscillator !== undefined) drifts.set(OSCILLATOR_DRIFT, drift(oscillator));
  return drifts;
}
