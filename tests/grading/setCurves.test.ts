/** What the grader keeps of a set from run to run changes no report: in whatever order runs are graded, each has what a setup that was never seen before gives it. */
import { expect, it } from 'vitest';
import { grade, gradeUnder } from '../../src/grading/grade.ts';
import { randomActor } from '../adversaries/randomActor.ts';
import { setupOf } from '../technician/oneScenario.ts';

it.each(['off-centre', 'tired-valve'])(
  '%s: runs in any order, under rules old and new, are graded as by themselves',
  (id) => {
    const setup = setupOf(id);
    const other = setupOf('first-curve');
    const runs = [
      [],
      [{ atMs: 1000, type: 'signedOff' } as const],
      ...[1, 2, 3].map((seed) => randomActor(setup, 900 + seed)),
    ];
    const parts = setup.scenario.faults.length === 0 ? [] : ['C1', 'R1'];
    const replaced = parts.map((element, i) => ({ atMs: 5000 + i, type: 'partReplaced', element }) as const);
    const all = [...runs, ...(replaced.length > 0 ? [replaced] : [])];
    const before = all.map((events) => grade({ ...setup }, events));
    const old = all.map((events) => gradeUnder(1)({ ...setup }, events));
    for (const at of [0, 1, 2, 3, 4].flatMap((i) => [i, all.length - 1 - i])) {
      expect(grade(setup, all[at]!)).toEqual(before[at]);
      expect(gradeUnder(1)(setup, all[at]!)).toEqual(old[at]);
      grade(other, []);
    }
    // They are not all the same report, so that one kept for another would be seen.
    expect(new Set(before.map((report) => JSON.stringify([report.total, report.turns]))).size).toBeGreaterThan(2);
  },
);
