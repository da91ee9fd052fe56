/** Hands that do not look pass nothing: a sealed job, a search for a fault and a practice of each kind here; the whole course by `npm run adversaries`. */
import { describe, expect, it } from 'vitest';
import { grade } from '../../src/grading/grade.ts';
import { wholeJob } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { ADVERSARIES, LAZY, markOf } from './hands.ts';

describe.each(['can-examined', 'a-good-clip', 'one-of-five'])('%s', (id) => {
  it('is passed by a hand that looks', () => {
    const setup = setupOf(id);
    const events = wholeJob(setup).map((act, i) => ({ atMs: 500 * i, ...act }));
    expect(grade(setup, events).passed).toBe(true);
  });

  it.each(ADVERSARIES)('is not passed by %s', (hand) => {
    const { passed, points } = markOf(hand, id);
    expect(points).toBeGreaterThan(0);
    expect(passed).toBe(false);
  });
});

it.each(LAZY)('a sealed job that is put right is not passed by a %s, who tells proofs from memory', (hand) => {
  const { passed, points } = markOf(hand, 'can-examined');
  expect(points).toBeGreaterThan(80);
  expect(passed).toBe(false);
});
