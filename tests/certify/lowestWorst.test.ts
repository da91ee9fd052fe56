/** The least worst line: on sheets whose answer is known, and where two coils must do each other's work. */
import { describe, expect, it } from 'vitest';
import { designOf } from '../../src/bench/setup.ts';
import { certifyScenario } from '../../src/certify/certifyScenario.ts';
import { crowdSearch } from '../../src/certify/crowdSearch.ts';
import { createDemands } from '../../src/certify/demands.ts';
import { lowestWorst } from '../../src/certify/lowestWorst.ts';
import { worstOf } from '../../src/certify/search.ts';
import type { Fault } from '../../src/receiver/faults/fault.ts';
import { workResponses } from '../../src/receiver/responses.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { setupOf } from '../technician/oneScenario.ts';

function demandsOf(id: string) {
  const setup = setupOf(id);
  const { receiver, deck, scenario } = setup;
  const slugs = receiver.adjusters.map((a) => a.id);
  const responses = workResponses(receiver, scenario);
  const demands = createDemands(receiver, deck, responses, scenario.toleranceFactor, slugs, designOf(setup));
  const best = Object.fromEntries(receiver.adjusters.map((a) => [a.id, nominalTurns(a)]));
  return { demands, deck, adjusters: receiver.adjusters, best };
}

describe('the least worst line', () => {
  it('its slopes are those of small steps of each slug', () => {
    const { demands, adjusters, best } = demandsOf('one-of-five');
    const turns = { ...best, [adjusters[0]!.id]: best[adjusters[0]!.id]! + 0.8 };
    const { r, jacobian } = demands.excessSlopes(turns);
    const excess = (at: typeof turns): number[] => demands.standings(at).map((one) => one.excess);
    expect([...r]).toEqual(excess(turns));
    const step = 1e-3;
    let compared = 0;
    for (const [j, { id }] of adjusters.entries()) {
      const up = excess({ ...turns, [id]: turns[id]! + step });
      const down = excess({ ...turns, [id]: turns[id]! - step });
      for (const [i, v] of up.entries()) {
        // Where the window's end or the nearer limit changes over there is no slope.
        if (Math.abs(v - 2 * r[i]! + down[i]!) > 1e-4) continue;
        const slope = (v - down[i]!) / (2 * step);
        expect(Math.abs(jacobian[i * adjusters.length + j]! - slope)).toBeLessThan(0.01 * Math.max(1, Math.abs(slope)));
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(50);
  });

  it('a sound set meets its sheet from slugs that stand far off', () => {
    const { demands, deck, adjusters, best } = demandsOf('one-of-five');
    const start = Object.fromEntries(adjusters.map(({ id }, i) => [id, best[id]! + (i % 2 ? 2 : -2)]));
    expect(worstOf(demands.standings(start)).excess).toBeGreaterThan(3);
    const task = { demands, deck, adjusters, trapsHz: [], starts: [start], seed: 1 };
    expect(lowestWorst({ ...task, leaps: 9 }).excess).toBeLessThanOrEqual(0);
    expect(crowdSearch({ ...task, rough: demands }).excess).toBeLessThanOrEqual(0);
  });

  it('traps whose capacitors are all exchanged are seen to do each other’s work', () => {
    const setup = setupOf('changed-places');
    const pair = (first: string, second: string): Fault => ({ kind: 'swappedTraps', first, second });
    const faults = [pair('C39a', 'C47a'), pair('C39b', 'C47b')];
    const outcome = certifyScenario({ ...setup, scenario: { ...setup.scenario, faults } });
    expect(outcome.ok).toBe(false);
    if (!outcome.ok) expect(outcome.problems.map((p) => p.code)).toContain('nothingToSee');
  });

  it('a trap whose core is stuck near another trap’s frequency is seen to do that one’s work, and the other its own', () => {
    const setup = setupOf('changed-places');
    const start = { ...setup.scenario.start, slugs: { A2: 8.5 } };
    const outcome = certifyScenario({ ...setup, scenario: { ...setup.scenario, start } });
    // Another search meets the sheet there; where no two traps are exchanged, the notch of the stuck one stays five tolerances outside.
    const least = outcome.ok ? outcome.certificate.uncured!.excess : 0;
    expect(least).toBeLessThan(1);
  });
});
