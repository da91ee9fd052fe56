/** A sealed scenario from one attempt to the next: what a copy of an earlier one is worth, and how far the technician's points scatter. */
import type { Hand } from '../../src/certify/goodHand.ts';
import { worstOf } from '../../src/certify/search.ts';
import { demonstrate } from '../../src/technician/atBench.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { aCopy, attempt, demandsOf, goodRun, type Mark, marked, toldAs } from './hands.ts';

export interface Copies {
  readonly pairs: number;
  /** pairs in which the copied turns bring the sheet's lines inside their limits */
  readonly met: number;
  readonly passed: number;
  /** pairs in which the set is put right and its faults are named, and the proofs are told as at the other attempt, that pass */
  readonly parroted: number;
}

/** Everything done at each of so many attempts, done again at every other. */
export function copiesOf(id: string, attempts: number): Copies {
  const setups = Array.from({ length: attempts }, (_, i) => attempt(setupOf(id).scenario, i + 1));
  const runs = setups.map((setup) => goodRun(setup).events);
  let [pairs, met, passed, parroted] = [0, 0, 0, 0];
  setups.forEach((setup, to) => {
    const demands = demandsOf(setup);
    runs.forEach((events, from) => {
      if (from === to) return;
      pairs++;
      if (toldAs(setup, setups[from]!, events, true).passed) parroted++;
      const hand = aCopy(setup, events);
      if (worstOf(demands.standings(coresOf(hand))).excess > 0) return;
      met++;
      if (marked(setup, hand.events).passed) passed++;
    });
  });
  return { pairs, met, passed, parroted };
}

function coresOf({ state }: Hand): Readonly<Record<string, number>> {
  return Object.fromEntries(Object.entries(state.slugs).map(([id, { coreTurns }]) => [id, coreTurns]));
}

/** The technician at one attempt. */
export function technicianAt(id: string, number: number): Mark {
  const setup = attempt(setupOf(id).scenario, number);
  return marked(setup, demonstrate(setup).events);
}

export interface Scatter {
  readonly mean: number;
  /** of a sample: over one less than the count */
  readonly deviation: number;
}

export function scatterOf(points: readonly number[]): Scatter {
  const mean = points.reduce((sum, one) => sum + one, 0) / points.length;
  const squares = points.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  return { mean, deviation: Math.sqrt(squares / (points.length - 1)) };
}
