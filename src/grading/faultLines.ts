/** Failed parts: found and replaced, or not. A lead without contact has its own lines (G24, G26), slugs that were screwed in theirs (G3 to G11). */
import type { BenchSetup } from '../bench/setup.ts';
import { cureOf, isCured, leadMark } from '../receiver/faults/cure.ts';
import type { StatedResponse } from '../receiver/statedResponse.ts';
import { symptomOfPart } from './partSymptom.ts';
import type { Subjects } from './rules/rule.ts';

/** Each part that has to be replaced. With the responses of the sound set each says its part's symptom. */
export function failedParts(
  setup: BenchSetup,
  replaced: readonly string[],
  sound: readonly StatedResponse[] | null,
): readonly Subjects['failedPart'][] {
  const open = uncured(setup, replaced);
  return curableParts(setup).map((part) => ({
    part,
    cured: !open.includes(part),
    ...(sound === null ? {} : { symptom: symptomOfPart(setup, part, sound) }),
  }));
}

/** Parts that have failed and still stand in the set. */
export function uncured({ receiver, deck, scenario }: BenchSetup, replaced: readonly string[]): readonly string[] {
  const parts = scenario.faults
    .filter((fault) => !isCured(fault, receiver, deck, replaced))
    .flatMap((fault) => {
      const cure = cureOf(fault, receiver, deck);
      return cure.kind === 'replace' ? [cure.part] : [];
    });
  return [...new Set(parts)];
}

/** Everything that could be done about the faults. */
export function allCures(setup: BenchSetup): readonly string[] {
  return [...curableParts(setup), leadMark('earth'), leadMark('rf')];
}

function curableParts(setup: BenchSetup): readonly string[] {
  return uncured(setup, []);
}
