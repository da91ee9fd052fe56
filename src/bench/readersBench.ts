/**
 * The bench that is asked about a run after the act: by the witness of its proofs, by grading, by the certifier. One for each setup, so that they do not each solve the set from the
 * beginning; no page's, for whoever shows the tube keeps the beam that is shown.
 */
import { type Bench, createBench } from './bench.ts';
import type { BenchSetup } from './setup.ts';

const benches = new WeakMap<BenchSetup, Bench>();

export function readersBench(setup: BenchSetup): Bench {
  const bench = benches.get(setup) ?? createBench(setup);
  benches.set(setup, bench);
  return bench;
}

/** The same bench for a setup that differs in nothing but what a run is worth: its par. */
export function shareBench(setup: BenchSetup, { from }: { readonly from: BenchSetup }): void {
  benches.set(setup, readersBench(from));
}
