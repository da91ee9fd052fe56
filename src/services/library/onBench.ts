/** From a receiver's design and a scenario to the bench: at once where the design itself stands on it, beside the page where a set has to be dealt. */
import { good, type Result } from '../../base/result.ts';
import type { BenchSetup } from '../../bench/setup.ts';
import type { LoadedReceiver } from '../../files/library.ts';
import type { Scenario } from '../../scenario/scenario.ts';

export async function onBench(design: LoadedReceiver, scenario: Scenario): Promise<Result<BenchSetup>> {
  if (scenario.set === undefined) return good({ ...design, scenario });
  const { beside } = await import('../jobs/pageJobs.ts');
  return beside('setUp', { design, scenario });
}
