/**
 * Nobody passes by accident: a thousand random learners over the whole course, each with its own number of random acts that the bench takes, turns of slugs
 * among them. None of them passes, nor does a set that was signed off untouched; the job done as it should be is worth 100 on every receiver.
 */
import { describe, expect, test } from 'vitest';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { grade } from '../../src/grading/grade.ts';
import { PROOFS } from '../../src/scenario/proofId.ts';
import { randomActor } from '../adversaries/randomActor.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { wholeJob } from '../session/acts.ts';

const LEARNERS = 1000;

const library = shippedLibrary();
const setups = library.scenarios.map((scenario): BenchSetup => {
  return { ...library.receivers.get(scenario.receiver)!, scenario };
});

test('there is a course to walk over', () => {
  expect(setups.length).toBeGreaterThanOrEqual(50);
  expect(PROOFS.length).toBe(8);
});

test(`of ${LEARNERS} random learners none passes`, { timeout: 0 }, () => {
  const passed: string[] = [];
  let signed = 0;
  let turned = 0;
  let best = 0;
  // Those at one scenario one after the other: what its set is like is worked out once for all of them.
  const at = (n: number): number => n % setups.length;
  const inTurn = Array.from({ length: LEARNERS }, (_, n) => n).sort((a, b) => at(a) - at(b));
  for (const n of inTurn) {
    const setup = setups[at(n)]!;
    const events = randomActor(setup, 40_000 + n);
    const report = grade(setup, events);
    if (events.at(-1)?.type === 'signedOff') signed++;
    if (report.turns > 0) turned++;
    best = Math.max(best, report.total);
    if (report.passed) passed.push(`${setup.scenario.id}, seed ${40_000 + n}: ${report.total}`);
  }
  expect(passed).toEqual([]);
  expect(best).toBeLessThan(90);
  // They were learners, not statues.
  expect(signed).toBeGreaterThan(0.8 * LEARNERS);
  expect(turned).toBeGreaterThan(0.8 * LEARNERS);
});

describe('untouched', () => {
  test.each(setups.map((setup) => [setup.scenario.id, setup] as const))('%s, signed off, does not pass', (_, setup) => {
    const report = grade(setup, [{ atMs: 1000, type: 'signedOff' }]);
    expect(report.passed).toBe(false);
    expect(report.total).toBeLessThan(70);
  });
});

const firstOfEach = [...library.receivers.keys()].flatMap((id) => {
  const setup = setups.find((one) => one.scenario.receiver === id);
  return setup === undefined ? [] : [[id, setup] as const];
});

describe('done as it should be', () => {
  test('every receiver has a scenario', () => {
    expect(firstOfEach.map(([id]) => id)).toEqual([...library.receivers.keys()]);
  });

  test.each(firstOfEach)('on %s it is worth 100', (_, setup) => {
    const report = grade(
      setup,
      wholeJob(setup).map((event, i) => ({ atMs: 500 * i, ...event })),
    );
    expect(report.lines.filter((line) => line.points !== line.max)).toEqual([]);
    expect(report).toMatchObject({ total: 100, passed: true });
  });
});
