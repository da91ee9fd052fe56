/** Which bench a run is done again on. */
import { ENGINE, ENGINES } from '../base/engine.ts';
import type { BenchSetup } from '../bench/setup.ts';

/** The bench on which a run is done again that names its engine; of one that is not known here the bench is today's. */
export function onBenchOf(engine: string, setup: BenchSetup): BenchSetup {
  const known = ENGINES.find((one) => one === engine);
  return known === undefined || known === ENGINE ? setup : { ...setup, engine: known };
}
