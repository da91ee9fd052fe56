/**
 * What the technician is to say at signing, held against what was so: the set as it was made, before anybody turned a slug. The scenario's faults and the depths of the deal are the
 * answer; the technician sees neither. `scripts/certify-course.ts`, which has every run of the technician, asks it.
 */
import type { BenchSetup } from '../../src/bench/setup.ts';
import { judgeDiagnosis } from '../../src/grading/diagnosis.ts';
import type { Diagnosis } from '../../src/scenario/diagnosis.ts';

/** Sets in which one part has failed, and nothing else is to be named. */
const PART_ALONE = ['one-hump-gone', 'half-a-loaf', 'it-turns-freely'];
/** A set with a part, a contact and slugs gone: the part and the contact are to be named, slugs too, but none that stood right. */
const OF_EACH = ['not-a-word'];

export const DIAGNOSES: readonly string[] = [...PART_ALONE, ...OF_EACH];

/** What is wrong with what was said; null where nothing is, or where nothing of it is asked. */
export function diagnosisProblem(setup: BenchSetup, said: Diagnosis | null): string | null {
  const { id } = setup.scenario;
  if (!DIAGNOSES.includes(id)) return null;
  if (said === null) return 'the technician states no diagnosis';
  const { unnamed, blamed, slugsBlamed } = judgeDiagnosis(setup, said);
  const wrong = [
    ...unnamed.map((one) => `${one} unnamed`),
    ...[...blamed, ...slugsBlamed].map((one) => `${one} blamed`),
  ];
  const alone = said.setUp.length === 0 && said.parts.length === 1;
  if (PART_ALONE.includes(id) ? !alone : said.slugs.length === 0) wrong.push(`names ${JSON.stringify(said)}`);
  return wrong.length === 0 ? null : `the technician’s diagnosis: ${wrong.join(', ')}`;
}
