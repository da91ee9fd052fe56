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

/** The same attempt as runs of earlier days carry it: without a hum of its own, or with the one that was dealt then. */
export function asDealtBefore(dealt: Scenario, earlierHumVolts?: number): Scenario {
  const { life: { strapHumVolts: _, ...life } = {}, ...plain } = dealt;
  const then = earlierHumVolts === undefined ? life : { ...life, strapHumVolts: earlierHumVolts };
  return Object.keys(then).length === 0 ? plain : { ...plain, life: then };
}
