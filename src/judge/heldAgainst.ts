/** What a run is held against: the scenario of the course that it names, or, where that is dealt afresh for each attempt, the same attempt made again from its number. */
import type { RulesVersion } from '../base/engine.ts';
import { attemptSetup, NO_ROOM } from '../certify/attempt.ts';
import { earlierHumVolts } from '../certify/dealt.ts';
import { type KnownSet, knownOf } from '../certify/knownSet.ts';
import { scenarioHash } from '../files/scenarioFile.ts';
import { asDealtBefore, isDealtAfresh } from '../scenario/attempt.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { FoundBench } from './judgeRun.ts';

/** The last rules of the days when attempts had no hum of their own, or the same on every receiver. */
const DEALT_BEFORE: RulesVersion = 5;

/** `own`: the scenario of that name as it is known here, null where there is none. `known`: the set of its certificate. */
export function heldAgainst(
  { receiver, deck }: Omit<FoundBench, 'scenarioHash'>,
  own: Scenario | null,
  { attempt, life, set }: Scenario,
  known: KnownSet | null,
): FoundBench {
  const design = { receiver, deck };
  if (own === null) return { ...design, scenarioHash: null };
  if (attempt === undefined || !isDealtAfresh(own)) return { ...design, scenarioHash: scenarioHash(own), known };
  const today = attemptSetup(design, own, attempt);
  // Of a number that was dealt a set without room to work in, which is dealt another now, what was done on the first stands.
  const isAnother = today.ok && today.value.scenario.set !== set;
  const first = isAnother ? attemptSetup(design, own, attempt, () => {}, NO_ROOM) : today;
  const made = first.ok && first.value.scenario.set === set ? first : today;
  // A number that makes no attempt is that of a scenario from somewhere else.
  if (!made.ok) return { ...design, scenarioHash: scenarioHash(own) };
  const { scenario } = made.value;
  const dealt =
    life?.strapHumVolts === scenario.life?.strapHumVolts
      ? scenario
      : asDealtBefore(scenario, life?.strapHumVolts === undefined ? undefined : earlierHumVolts(scenario));
  const before = dealt === scenario ? {} : { lastRules: DEALT_BEFORE };
  return { ...design, scenarioHash: scenarioHash(dealt), known: knownOf(made.value), ...before };
}
