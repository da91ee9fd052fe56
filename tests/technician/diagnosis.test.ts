/**
 * What the technician says was wrong, held against what was so: the set as it was made, before anybody turned a slug. The scenario's faults and the depths of the deal are the
 * answer; the technician sees neither.
 */
import { describe, expect, it } from 'vitest';
import { judgeDiagnosis } from '../../src/grading/diagnosis.ts';
import type { JudgedDiagnosis } from '../../src/grading/judgedDiagnosis.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { setupOf } from './oneScenario.ts';

function diagnosisOf(id: string): JudgedDiagnosis {
  const setup = setupOf(id);
  const stated = demonstrate(setup).events.findLast((event) => event.type === 'diagnosisStated');
  return judgeDiagnosis(setup, stated ?? null);
}

describe('the technician’s diagnosis', () => {
  it('of a set with a part, a contact and slugs gone names the part, the contact and no slug that stood right', () => {
    const said = diagnosisOf('not-a-word');
    expect([said.unnamed, said.blamed, said.slugsBlamed]).toEqual([[], [], []]);
    expect(said.stated?.slugs.length).toBeGreaterThan(0);
  });

  it.each(['one-hump-gone', 'half-a-loaf', 'it-turns-freely'])('of %s names the part alone', (id) => {
    const said = diagnosisOf(id);
    expect([said.unnamed, said.blamed, said.slugsBlamed, said.stated?.setUp]).toEqual([[], [], [], []]);
    expect(said.stated?.parts.length).toBe(1);
  });
});
