/** Failed parts (G62): found and replaced, or not. A lead without contact has its own lines (G24, G26), slugs that were screwed in theirs (G3 to G11). */
import type { BenchSetup } from '../bench/setup.ts';
import { cureOf, isCured, leadMark } from '../receiver/faults/faultEffects.ts';
import type { StatedResponse } from '../receiver/statedResponse.ts';
import type { DraftLine } from './draft.ts';
import { symptomOfPart } from './partSymptom.ts';

const WEIGHT = 6;

/** One line for each part that has to be replaced; it counts with the response. With the responses of the sound set each says its part's symptom. */
export function faultLines(
  setup: BenchSetup,
  replaced: readonly string[],
  sound: readonly StatedResponse[] | null,
): readonly DraftLine[] {
  const open = uncured(setup, replaced);
  return curableParts(setup).map((part) => {
    const measured = open.includes(part) ? 0 : 1;
    return {
      ...(sound === null ? {} : { symptom: symptomOfPart(setup, part, sound) }),
      ...{ id: `G62:${part}`, rule: 'G62', block: 'response', weight: WEIGHT, earned: measured },
      ...{ measured, low: 1, high: null, unit: 'yes', subject: part },
    };
  });
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
