/** Hands that do not look pass nothing: a sealed job, a search for a fault and a practice of each kind here; the whole course by `npm run adversaries`. */
import { describe, expect, it } from 'vitest';
import { grade, gradeUnder } from '../../src/grading/grade.ts';
import { wholeJob } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { ADVERSARIES, attempt, darkRun, LAZY, markOf, sieveRun } from './hands.ts';

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

it.each(['can-examined', 'a-good-clip', 'one-of-five'].flatMap((id) => LAZY.map((hand) => ({ id, hand }))))(
  '$id that is put right is not passed by a $hand, who does not look while he proves it',
  ({ id, hand }) => {
    const { passed, points } = markOf(hand, id);
    expect(points).toBeGreaterThan(80);
    expect(passed).toBe(false);
  },
);

it('a proof made on a picture that shows nothing, or more than the face holds, has proved nothing since rules 6', () => {
  const setup = attempt(setupOf('not-a-word').scenario, 1);
  const { events, refused } = darkRun(setup);
  expect(refused).toEqual([]);
  expect(gradeUnder(5)(setup, events).passed).toBe(true);
  const { passed, verdicts } = grade(setup, events);
  expect(passed).toBe(false);
  const dark = ['G64:halveLevel', 'G64:markersOffOn', 'G64:touchEarth', 'G64:skirts'];
  expect([...verdicts.proved.lacks].sort()).toEqual([...dark].sort());
});

it('a proof made again and again until the card takes it has proved nothing since rules 7', () => {
  const setup = attempt(setupOf('can-examined').scenario, 2);
  const { events } = sieveRun(setup, 6);
  expect(gradeUnder(6)(setup, events).passed).toBe(true);
  for (const { passed, verdicts } of [grade(setup, events), grade(setup, sieveRun(setup).events)]) {
    expect(passed).toBe(false);
    expect(verdicts.proved.lacks).toContain('G64:markersOffOn');
  }
});
