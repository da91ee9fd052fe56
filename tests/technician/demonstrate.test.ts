/** The technician finds failed parts through the display alone; its run file is a learner's run file. That it passes the course is tried by scripts/certify-course.ts. */
import { describe, expect, it } from 'vitest';
import { good } from '../../src/base/result.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { judgeText } from '../../src/judge/judgeRun.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { NOT_YET } from './notYet.ts';
import { setupOf } from './oneScenario.ts';

/** Failures that the chart, the meter or the tool tell apart, and the part that has to go. */
const FAILURES = [
  ['lid-off', 'shield'],
  ['sagging-line', 'AGC'],
  ['upside-down', 'video'],
  ['almost-right', 'R2'],
  ['tired-valve', 'G2'],
  ['two-islands', 'L2s'],
] as const;

describe('the technician finds', { timeout: 300_000 }, () => {
  it.each(FAILURES)('what is wrong in %s: %s', (id, part) => {
    const setup = setupOf(id);
    const { events } = demonstrate(setup);
    expect(events.flatMap((event) => (event.type === 'partReplaced' ? [event.element] : []))).toContain(part);
    expect(grade(setup, events).passed).toBe(!NOT_YET.has(id));
  });
});

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
