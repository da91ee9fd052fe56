/** The technician's run file is a learner's run file. That it passes the course, and which parts it replaces, is tried by `scripts/certify-course.ts`, which has every run of it. */
import { describe, expect, it } from 'vitest';
import { good } from '../../src/base/result.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { judgeText } from '../../src/judge/judgeRun.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { setupOf } from './oneScenario.ts';

describe('a demonstrated run', () => {
  it('is the same each time, and is verified as a learner’s run would be', () => {
    const setup = setupOf('zero');
    const run = demonstrate(setup);
    expect(demonstrate(setup).events).toEqual(run.events);
    const text = serialiseRunFile(toRunFile(run, claimOf(grade(setup, run.events))));
    const verdict = judgeText(text, 'run.json', () => good({ ...setup.design!, scenarioHash: null })).verdict;
    expect(verdict.kind).toBe('verified');
  });
});
