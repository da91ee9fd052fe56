/** Every shipped scenario on the real bench: the job done as it should be is worth 100 and is verified from its own file; left alone it does not pass. */
import { describe, expect, test } from 'vitest';
import { certifiedSet } from '../../scripts/makeCourseIndex.ts';
import { good } from '../../src/base/result.ts';
import { designOf } from '../../src/bench/setup.ts';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { claimOf, grade } from '../../src/grading/grade.ts';
import { judgeText } from '../../src/judge/judgeRun.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { runOf } from '../run/runs.ts';
import { wholeJob } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';

/** From act to act: time enough for heaters to come up before the picture is made to fill the tube. */
const STEP_MS = 2000;

const setups = shippedLibrary().scenarios.map((scenario) => scenario.id);

test('there are some', () => {
  expect(setups.length).toBeGreaterThan(3);
});

test('every receiver has a scenario', () => {
  const { receivers, scenarios } = shippedLibrary();
  expect(new Set(scenarios.map(({ receiver }) => receiver))).toEqual(new Set(receivers.keys()));
});

describe.each(setups)('%s', (id) => {
  const setup = setupOf(id);

  test('done well it is worth 100, and its file is verified', () => {
    const run = runOf(setup, wholeJob(setup, STEP_MS / 1000), STEP_MS);
    const report = grade(setup, run.events);
    expect(report.lines.filter((line) => line.points !== line.max)).toEqual([]);
    expect(report).toMatchObject({ total: 100, passed: true, word: 'haystack' });
    const text = serialiseRunFile(toRunFile(run, claimOf(report)));
    const known = { ...designOf(setup), scenarioHash: scenarioHash(setup.scenario), known: certifiedSet(id) };
    expect(judgeText(text, 'run.json', () => good(known)).verdict.kind).toBe('verified');
  });

  test.each([
    ['left alone', []],
    ['signed off untouched', [{ atMs: 1000, type: 'signedOff' }]],
  ] as const)('%s it does not pass, and nothing is paid for care or economy', (_, events) => {
    const report = grade(setup, events);
    expect(report.passed).toBe(false);
    expect(report.total).toBeLessThan(70);
    expect([report.blocks.care.points, report.blocks.economy.points]).toEqual([0, 0]);
  });
});
