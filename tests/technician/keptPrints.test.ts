/** The sheet printed from what is kept of a design: whoever works second at a set of it has the very digits that a bench of his own would give. */
import { expect, it } from 'vitest';
import { type BenchSetup, designOf } from '../../src/bench/setup.ts';
import { printSheet } from '../../src/technician/printSheet.ts';
import { setupOf } from './oneScenario.ts';

it('is that of a bench of one’s own, whoever had it drawn before', () => {
  const setup = setupOf('almost-right');
  const another = { ...setup, scenario: { ...setup.scenario, seed: setup.scenario.seed + 1 } };
  const { deck, receiver } = designOf(setup);
  const printed = (of: BenchSetup) => {
    // What is a function is the same rule, made anew.
    const { responses, ...sheet } = printSheet(of);
    return { ...sheet, responses: responses.map(({ judge: _, ...response }) => response) };
  };
  const first = printed(setup);
  const second = printed(another);
  // Of a receiver that is not the very same nothing was kept.
  const anew = printed({ ...another, design: { deck, receiver: { ...receiver } } });
  expect(second.chart.length).toBeGreaterThan(10);
  expect(second).toEqual(anew);
  // Each tube has noise of its own.
  expect(second.chart).not.toEqual(first.chart);
  expect(second.curves).not.toEqual(first.curves);
});
