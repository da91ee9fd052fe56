/** Attempts at sealed scenarios: each has a number, and by it a set and a start of its own. */
import { readEndlessId } from './endlessId.ts';
import type { Scenario } from './scenario.ts';

/** Attempts and sets are numbered up to here. */
export const MOST_SEED = 2 ** 31 - 1;

/** Whether each attempt at a scenario is dealt afresh: of a sealed one whose set is dealt, and of a sealed one that its name makes. What was made for one attempt is not dealt again. */
export function isDealtAfresh({
  id,
  sealed,
  set,
  attempt,
}: Pick<Scenario, 'id' | 'sealed' | 'set' | 'attempt'>): boolean {
  return sealed && attempt === undefined && (set !== undefined || readEndlessId(id) !== null);
}

/**
 * The same attempt as it was dealt before the Y gain and the hum without the strap were: runs of those days carry it so. `earlierHumVolts`: the hum of a run that has one
 * and no Y gain of its own.
 */
export function asDealtBefore(dealt: Scenario, earlierHumVolts?: number): Scenario {
  const { life: { strapHumVolts: _, yGainError: __, ...life } = {}, ...plain } = dealt;
  const then = earlierHumVolts === undefined ? life : { ...life, strapHumVolts: earlierHumVolts };
  return Object.keys(then).length === 0 ? plain : { ...plain, life: then };
}
