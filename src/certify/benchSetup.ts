/** What a scenario puts on the bench: the set that its seed deals, or the design itself where it names none. The one way from receiver and scenario to a bench. */
import { bad, good, type Result } from '../base/result.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { type SetParts, spreadsOf } from '../receiver/individualSet.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { type Deal, dealSet } from './dealSet.ts';
import { type KnownSet, knownBench, onBenchWith } from './knownSet.ts';

/** Dealing takes a good part of a second, and the same set is wanted again and again. */
const dealt = new WeakMap<SetParts['receiver'], Map<number, Deal>>();

/** `known`: the set of the project's own certificate, which is dealt anew where it does not hold. `file` is the name by which the problem of a set that cannot be aligned is told. */
export function benchSetup(
  { receiver, deck }: SetParts,
  scenario: Scenario,
  known: KnownSet | null = null,
  file = scenario.id,
): Result<BenchSetup> {
  const design = { receiver, deck };
  if (scenario.set === undefined) return good({ ...design, scenario });
  const laid = knownBench(design, scenario, known, file);
  if (laid !== null) return laid;
  const deals = dealt.get(receiver) ?? new Map<number, Deal>();
  dealt.set(receiver, deals);
  const deal = deals.get(scenario.set) ?? dealSet(design, scenario.set, spreadsOf(receiver));
  deals.set(scenario.set, deal);
  if (deal.ok) return onBenchWith(design, scenario, deal.dealt.set, deal.dealt.draw, file);
  const { response, item } = deal.narrowest;
  return bad({
    file,
    place: '/set',
    found: ['setMisses', scenario.set, deal.draws, item.kind, item.hz, item.toHz, response],
    wanted: ['setThatAligns'],
  });
}
