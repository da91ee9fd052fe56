/**
 * What a measurement is. Every file of perf/cases exports `cases`; perf/main.ts finds them by itself.
 * Wall-clock figures are for reading, never for passing or failing; the checksum shows that the same work was done.
 */

export interface Sample {
  /** microseconds of each run after the warm-up */
  readonly micros: readonly number[];
  /** of the results, the same on every run of the same code */
  readonly checksum: number;
}

export interface PerfCase {
  /** short and unique: `solve-full` */
  readonly id: string;
  readonly title: string;
  /** id of the case that this one is compared with: the table shows median / median */
  readonly against?: string;
  /** `seed` is the same for all cases; a string says why the case cannot run here */
  measure(seed: number): Promise<Sample | string>;
}

export interface Timing {
  readonly warmUp: number;
  readonly runs: number;
  /** the work to be timed; `i` counts warm-up runs too */
  run(i: number): void | Promise<void>;
  checksum(): number;
}

/** Runs something again and again and keeps the times. */
export async function timed({ warmUp, runs, run, checksum }: Timing): Promise<Sample> {
  const micros: number[] = [];
  for (let i = 0; i < warmUp + runs; i++) {
    const from = process.hrtime.bigint();
    const outcome = run(i);
    if (outcome !== undefined) await outcome;
    const nanos = Number(process.hrtime.bigint() - from);
    if (i >= warmUp) micros.push(nanos / 1000);
  }
  return { micros, checksum: checksum() };
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
