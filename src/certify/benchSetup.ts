/** What a scenario puts on the bench: the set that its seed deals, or the design itself where it names none. The one way from receiver and scenario to a bench. */
import { bad, good, type Result } from '../base/result.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { checkScenario } from '../files/checkScenario.ts';
import { type SetParts, spreadsOf } from '../receiver/individualSet.ts';
import type { Scenario } from '../scenario/scenario.ts';
import { type Deal, dealSet } from './dealSet.ts';

/** A deal takes a good part of a second, and the same set is wanted again and again. */
const dealt = new WeakMap<SetParts['receiver'], Map<number, Deal>>();

/** `file` is the name by which the problem of a set that cannot be aligned is told. */
export function benchSetup({ receiver, deck }: SetParts, scenario: Scenario, file = scenario.id): Result<BenchSetup> {
  if (scenario.set === undefined) return good({ receiver, deck, scenario });
  const known = dealt.get(receiver) ?? new Map<number, Deal>();
  dealt.set(receiver, known);
  const deal = known.get(scenario.set) ?? dealSet({ receiver, deck }, scenario.set, spreadsOf(receiver));
  known.set(scenario.set, deal);
  if (deal.ok) {
    // Where its slugs are right is this set's own, so the scenario's turns are held against them.
    const problems = checkScenario(scenario, deal.dealt.set, file);
    return problems.length > 0 ? bad(...problems) : good({ ...deal.dealt.set, scenario, design: { receiver, deck } });
  }
  const { response, item } = deal.narrowest;
  return bad({
    file,
    place: '/set',
    found: `set ${scenario.set}, of which ${deal.draws} draws miss ${item.id} of "${response}"`,
    wanted: 'the number of a set that can be aligned',
  });
}
