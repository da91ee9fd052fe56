/** What two versions of the code say of one case, measured turn by turn. */
import { median, type Sample } from './case.ts';

export interface OneRound extends Sample {
  /** of the whole measurement, its warm-up and making ready included; other work on the machine hardly changes it */
  readonly processorSeconds: number;
}

export interface Compared {
  /** microseconds of one run, of all rounds together */
  readonly here: Spread;
  readonly there: Spread;
  /** time here over time there, round by round: what slowed the machine slowed both */
  readonly ratio: Spread;
  /** the same of the processor's time */
  readonly processorRatio: Spread;
  /** both did the same work, in every round */
  readonly sameWork: boolean;
}

export interface Spread {
  readonly median: number;
  readonly least: number;
  readonly most: number;
}

const spreadOf = (values: readonly number[]): Spread => ({
  median: median(values),
  least: Math.min(...values),
  most: Math.max(...values),
});

/** `here[i]` and `there[i]` were measured one after the other. */
export function compared(here: readonly OneRound[], there: readonly OneRound[]): Compared {
  if (here.length === 0 || here.length !== there.length) throw new Error('the rounds do not pair');
  const pairs = here.map((mine, i) => [mine, there[i]!] as const);
  return {
    here: spreadOf(here.flatMap(({ micros }) => micros)),
    there: spreadOf(there.flatMap(({ micros }) => micros)),
    ratio: spreadOf(pairs.map(([mine, other]) => median(mine.micros) / median(other.micros))),
    processorRatio: spreadOf(pairs.map(([mine, other]) => mine.processorSeconds / other.processorSeconds)),
    sameWork: pairs.every(([mine, other]) => mine.checksum === other.checksum && mine.checksum === here[0]!.checksum),
  };
}
