/** From a receiver's design and a scenario to the bench: at once where the design stands on it or its set is known, beside the page where a set has to be dealt. */
import { good, type Result } from '../../base/result.ts';
import type { BenchSetup } from '../../bench/setup.ts';
import type { KnownSet } from '../../certify/knownSet.ts';
import type { LoadedReceiver } from '../../files/library.ts';
import type { Scenario } from '../../scenario/scenario.ts';

export async function onBench(
  design: LoadedReceiver,
  scenario: Scenario,
  known: KnownSet | null,
): Promise<Result<BenchSetup>> {
  if (scenario.set === undefined) return good({ ...design, scenario });
  if (known !== null) {
    const { knownBench } = await import('../../certify/knownSet.ts');
    const laid = knownBench(design, scenario, known);
    if (laid !== null) return laid;
  }
  const { beside } = await import('../jobs/pageJobs.ts');
  return beside('setUp', { design, scenario });
}
