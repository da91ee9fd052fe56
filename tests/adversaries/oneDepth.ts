/** A hand that never looks: it puts every slug at one and the same share of its travel, and has the best of so many shares. */
import type { BenchSetup } from '../../src/bench/setup.ts';
import { initialState } from '../../src/bench/setup.ts';
import { createDemands } from '../../src/certify/demands.ts';
import { worstOf } from '../../src/certify/search.ts';
import { faultEffects } from '../../src/receiver/faults/faultEffects.ts';
import { workResponses } from '../../src/receiver/responses.ts';

const SHARES = 20;

/** How far the worst line of the sheet is outside at the best of the shares, in tolerances, with the failed parts still in the set. */
export function oneDepth(setup: BenchSetup): number {
  return bestDepth(setup).excess;
}

export interface Depth {
  readonly excess: number;
  /** where every core would stand */
  readonly turns: Readonly<Record<string, number>>;
}

export function bestDepth(setup: BenchSetup): Depth {
  const { receiver, deck, scenario } = setup;
  const standing = faultEffects(receiver, deck, scenario.faults, []).deck;
  const responses = workResponses(receiver, scenario);
  const slugs = receiver.adjusters.map((a) => a.id);
  const printed = setup.design ?? { receiver, deck };
  const demands = createDemands(receiver, standing, responses, scenario.toleranceFactor, slugs, printed);
  const start = initialState(setup).slugs;
  let best: Depth = { excess: Number.POSITIVE_INFINITY, turns: {} };
  for (let i = 0; i < SHARES; i++) {
    const share = (i + 0.5) / SHARES;
    const turns = Object.fromEntries(
      // A core that no longer turns stays where it is.
      receiver.adjusters.map((a) => [a.id, start[a.id]!.cracked ? start[a.id]!.coreTurns : share * a.travelTurns]),
    );
    const { excess } = worstOf(demands.standings(turns));
    if (excess < best.excess) best = { excess, turns };
  }
  return best;
}
