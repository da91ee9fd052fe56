/** Attempts at sealed scenarios: each has a number, and by it a set and a start of its own. */
import type { Scenario } from './scenario.ts';

/** Attempts and sets are numbered up to here. */
export const MOST_SEED = 2 ** 31 - 1;

/** Whether each attempt at a scenario of the course is dealt afresh. What was made for one attempt is not dealt again. */
export function isDealtAfresh({ sealed, set, attempt }: Pick<Scenario, 'sealed' | 'set' | 'attempt'>): boolean {
  return sealed && set !== undefined && attempt === undefined;
}

/** The same attempt as it was dealt before the hum without the strap was dealt: runs of those days carry it so. */
export function asDealtBefore(dealt: Scenario): Scenario {
  const { life: { strapHumVolts: _, ...life } = {}, ...plain } = dealt;
  return Object.keys(life).length === 0 ? plain : { ...plain, life };
}
