/** What an attempt is dealt by its number alone, without a set being made: light enough for the page that takes up a run again. */
import { seededRandom } from '../base/random.ts';
import { bad, type Result } from '../base/result.ts';
import { mixed } from '../receiver/individualSet.ts';
import { MOST_SEED } from '../scenario/attempt.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** An attempt whose first idea cannot be certified has so many more. */
export const IDEAS_OF_ATTEMPT = 24;

/** A number for a set or for a seed. */
export function seedDealt(chance: () => number): number {
  return Math.floor(chance() * (MOST_SEED + 1));
}

/** The hum that an attempt was dealt before it was dealt by the divisions of the face: the same on every receiver. */
const EARLIER_HUM_VOLTS = { least: 0.025, most: 0.25 };

export function earlierHumVolts({ attempt, set }: Pick<Scenario, 'attempt' | 'set'>): number | undefined {
  if (attempt === undefined) return undefined;
  const ideas = Array.from({ length: IDEAS_OF_ATTEMPT }, (_, idea) => idea);
  const idea = ideas.find((one) => seedDealt(seededRandom(mixed(attempt, one))) === set);
  if (idea === undefined) return undefined;
  const { least, most } = EARLIER_HUM_VOLTS;
  return Math.round(1000 * least * (most / least) ** seededRandom(mixed(attempt, IDEAS_OF_ATTEMPT + idea))()) / 1000;
}

/** What is said of an attempt none of whose ideas can be certified. */
export function noIdea(scenario: Scenario, attempt: number): Result<never> {
  return bad({
    file: scenario.id,
    place: '/attempt',
    found: ['attemptFails', attempt, IDEAS_OF_ATTEMPT],
    wanted: ['anotherNumber'],
  });
}
