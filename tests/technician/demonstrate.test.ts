/** The technician passes one scenario of each kind of work, through the display alone; its run file is a learner's run file. */
import { describe, expect, it } from 'vitest';
import { good } from '../../src/base/result.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { judgeText } from '../../src/judge/judgeRun.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { demonstrated, setupOf } from './oneScenario.ts';

const KINDS = [
  ['an IF can', 'first-curve'],
  ['AM with the slow sweep', 'slow-down'],
  ['an S-curve', 'zero'],
  ['sound at intercarrier', 'buzz'],
  ['chroma', 'three-of-colour'],
  ['a video sweep', 'carrier-and-sweep'],
  ['a tuner', 'gannet-sealed'],
  ['from antenna to detector', 'it-all-moved'],
  ['AFT', 'hill-and-ditch'],
  ['a wide vision IF with traps', 'traps-astray'],
  ['an early vision IF', 'one-of-five'],
  ['50 Hz mains', 'fifty-cycles'],
  ['a lead without contact', 'a-good-plug'],
  ['a strap without contact', 'a-good-clip'],
  ['slugs screwed in', 'screwed-in'],
  ['a job against the clock', 'trust-nothing'],
] as const;

describe('the technician passes', () => {
  it.each(KINDS)('%s (%s)', (_kind, id) => {
    const { passed, total } = demonstrated(id);
    expect(passed, `${id}: ${total}`).toBe(true);
  });
});

/** Failures that the chart, the meter or the tool tell apart, and the part that has to go. */
const FAILURES = [
  ['lid-off', 'shield'],
  ['sagging-line', 'AGC'],
  ['upside-down', 'video'],
  ['almost-right', 'R2'],
  ['tired-valve', 'G2'],
  ['two-islands', 'L2s'],
] as const;

describe('the technician finds', () => {
  it.each(FAILURES)('what is wrong in %s: %s', (id, part) => {
    const setup = setupOf(id);
    const { events } = demonstrate(setup);
    expect(events.flatMap((event) => (event.type === 'partReplaced' ? [event.element] : []))).toContain(part);
    expect(grade(setup, events).passed).toBe(true);
  });
});

describe('a demonstrated run', () => {
  it('is the same each time, and is verified as a learner’s run would be', () => {
    const setup = setupOf('zero');
    const run = demonstrate(setup);
    expect(demonstrate(setup).events).toEqual(run.events);
    const text = serialiseRunFile(toRunFile(run, claimOf(grade(setup, run.events))));
    const verdict = judgeText(text, 'run.json', () => good({ ...setup, scenarioHash: null })).verdict;
    expect(verdict.kind).toBe('verified');
  });
});
