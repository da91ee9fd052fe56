/** What is said of a faint curve: never to raise the level to where it stands. From memory: a pair tuned far apart gives a fraction of what it gives when it is right. */
import { expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import { type BenchSetup, firstResponse, initialState } from '../../src/bench/setup.ts';
import { lackStages } from '../../src/describe/lack.ts';
import { en } from '../../src/words/en/index.ts';
import { connectionActs, safetyActs, setUpActs, stateAfter } from '../session/acts.ts';
import { setupOf } from '../technician/oneScenario.ts';

function saidAt(setup: BenchSetup, levelDb: number): string {
  const acts = [...safetyActs(setup), ...connectionActs(setup), ...setUpActs(setup)];
  const level = { type: 'controlSet', control: 'levelDb', value: levelDb } as const;
  const state = stateAfter(setup, [...acts, level], initialState(setup));
  const facts = createBench(setup).facts(state);
  // It is faint at the sheet's own level, and at any below it: what is to be said of it comes up.
  expect(facts.detectedPeakVolts).toBeLessThan(facts.sheetPeakVolts / 4);
  return lackStages(en, setup, facts, state, { code: 'tooWeak' })[0]!;
}

it('speaks of the level while it stands below the sheet’s, and of the slugs once it stands there', () => {
  const setup = setupOf('both-ways');
  const { levelDb } = firstResponse(setup).setUp;
  expect(saidAt(setup, levelDb - 6)).toContain(`to about \u2212${-levelDb} dB`);
  const there = saidAt(setup, levelDb);
  expect(there).not.toContain('to about');
  expect(there).toContain('slugs');
});
