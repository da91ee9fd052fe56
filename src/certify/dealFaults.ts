/**
 * What has failed at one attempt of a sealed scenario that deals it: for each fault of the file another of its sort, or none, so that neither the report of an earlier
 * attempt nor the file's own text tells what lies inside. A part for a part, a bad contact for a bad contact; what slugs cure stands as the file has it.
 */
import { cureOf } from '../receiver/faults/cure.ts';
import type { Fault } from '../receiver/faults/fault.ts';
import { plausibleFaults } from '../receiver/faults/faultsThatFit.ts';
import type { SetParts } from '../receiver/individualSet.ts';
import { readEndlessId } from '../scenario/endlessId.ts';
import type { Scenario } from '../scenario/scenario.ts';

/** One fault of four is not there. */
const LEFT_OUT = 0.25;
const BAD_CONTACTS: readonly Fault[] = [{ kind: 'looseEarth' }, { kind: 'unmatchedLead' }];

export function dealFaults(
  { receiver, deck }: SetParts,
  { id, dealsFaults, faults }: Pick<Scenario, 'id' | 'dealsFaults' | 'faults'>,
  chance: () => number,
): readonly Fault[] {
  // What its name made once says nothing of the next attempt.
  if (readEndlessId(id) !== null) return mayHaveFailed({ receiver, deck }, chance);
  if (dealsFaults !== true) return faults;
  const partly = plausibleFaults(receiver, deck).filter((one) => cureOf(one, receiver, deck).kind === 'replace');
  const dealt: Fault[] = [];
  for (const fault of faults) {
    const { kind } = cureOf(fault, receiver, deck);
    if (kind === 'turn') dealt.push(fault);
    else if (chance() >= LEFT_OUT) dealt.push(oneOf(kind === 'replace' ? partly : BAD_CONTACTS, chance));
  }
  return dealt;
}

/** Of a scenario that is made of its name: in two of five a part has failed. */
export function mayHaveFailed({ receiver, deck }: SetParts, chance: () => number): readonly Fault[] {
  return chance() < 0.4 ? [oneOf(plausibleFaults(receiver, deck), chance)] : [];
}

function oneOf<T>(list: readonly T[], chance: () => number): T {
  return list[Math.floor(chance() * list.length)]!;
}
