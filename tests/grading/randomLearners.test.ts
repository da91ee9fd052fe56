/**
 * Nobody passes by accident: a thousand random learners over the whole course, each with its own number of random acts that the bench takes, turns of slugs
 * among them. None of them passes. What comes of a set that nobody touched, and of a job done as it should be: `shipped.test.ts`.
 */
import { expect, test } from 'vitest';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { grade } from '../../src/grading/grade.ts';
import { PROOFS } from '../../src/scenario/proofId.ts';
import { randomActor } from '../adversaries/randomActor.ts';
import { shippedLibrary } from '../files/shipped.ts';

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
