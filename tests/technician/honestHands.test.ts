/** Honest hands with other habits: who rocks each slug through where it belongs, and who goes stage by stage as the sheet has it, pass as the plain technician does and lose next to nothing. */
import { describe, expect, it } from 'vitest';
import { grade } from '../../src/grading/grade.ts';
import type { Report } from '../../src/grading/report.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import type { Habits } from '../../src/technician/person/technician.ts';
import { setupOf } from './oneScenario.ts';

const HABITS: readonly (readonly [string, Habits])[] = [
  ['rocks each slug through', { rocks: true }],
  ['goes stage by stage', { byStages: true }],
];
const JOBS = ['can-examined', 'zero', 'brent-sealed'];

type Done = ReturnType<typeof demonstrate>;

const done = new Map<Habits, Map<string, Done>>();
const PLAIN: Habits = {};

/** Each job is done once with each habit. */
function doneWith(habits: Habits, id: string): Done {
  const jobs = done.get(habits) ?? new Map<string, Done>();
  done.set(habits, jobs);
  const run = jobs.get(id) ?? demonstrate(setupOf(id), habits);
  jobs.set(id, run);
  return run;
}

function turnsOf(id: string, habits: Habits): readonly number[] {
  return doneWith(habits, id).events.flatMap((event) => (event.type === 'slugTurned' ? [event.turns] : []));
}

describe.each(HABITS)('a technician who %s', (_, habits) => {
  it.each(JOBS)('passes %s with 90 points or more', (id) => {
    const setup = setupOf(id);
    const report: Report = grade(setup, doneWith(habits, id).events);
    expect([report.passed, report.total >= 90], `${report.total}`).toEqual([true, true]);
  });

  it('works otherwise than the plain one', () => {
    expect(turnsOf('can-examined', habits)).not.toEqual(turnsOf('can-examined', PLAIN));
  });
});
