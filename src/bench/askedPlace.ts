/**
 * Where on the graticule the card asks for a height. In practice the whole trace with the level down, and the skirts four divisions left of the middle. An attempt at a
 * sealed job asks at a place that is picked by chance of the run's own, among those where the trace can be read: what was said at another attempt is of another place.
 */
import { seededRandom } from '../base/random.ts';
import type { ProofId } from '../scenario/proofId.ts';
import { atOscillatorLoop } from './beatSeen.ts';
import type { Bench } from './bench.ts';
import type { BenchState, ProofWatch } from './benchState.ts';
import { chanceOf } from './finding.ts';
import { bare } from './pipWitness.ts';
import { heightNear, READ_WITHIN_DIV } from './readOffFace.ts';
import type { BenchSetup } from './setup.ts';

type Act = NonNullable<ProofWatch['act']>;

/** Where the skirts are read in practice, divisions from the middle. */
export const SKIRT_AT_DIV = -4;
/** At the small divisions of the graticule, five to each. */
const SMALL_DIVS = 5;
const SKIRTS_FROM_DIV = 1;
const OUTERMOST_DIV = 4.6;
const WHOLE_PLACES = Array.from(
  { length: 2 * SMALL_DIVS * OUTERMOST_DIV + 1 },
  (_, i) => i / SMALL_DIVS - OUTERMOST_DIV,
);
const SKIRT_PLACES = WHOLE_PLACES.filter((x) => Math.abs(x) >= SKIRTS_FROM_DIV);
/** Where the trace is read it stands at least so tall, and within a place it falls or rises by at most so much, divisions. */
const LEAST_DIV = 0.7;
const MOST_SLOPE_DIV = 2;
const FEWEST = 2;

/** Divisions from the middle; null: no place, but the whole trace or a pip. */
export function askedPlace(
  setup: BenchSetup,
  bench: Bench,
  state: BenchState,
  { away }: Act,
  proof: ProofId,
): number | null {
  const { attempt } = setup.scenario;
  if (proof === 'skirts') {
    if (attempt === undefined) return SKIRT_AT_DIV;
    const both = (x: number): boolean => isPlain(bench, away, -x, 0) && isPlain(bench, away, x);
    return picked(setup, state, SKIRT_PLACES.filter(both), 1) ?? SKIRT_AT_DIV;
  }
  if (proof !== 'halveLevel' || attempt === undefined || atOscillatorLoop(setup, away)) return null;
  const plain = bare(away);
  const places = WHOLE_PLACES.filter((x) => isPlain(bench, plain, x));
  return picked(setup, state, places, 2);
}

function isPlain(bench: Bench, shown: BenchState, xDiv: number, least = LEAST_DIV): boolean {
  const read = heightNear(bench.display(shown), shown, xDiv);
  if (read === null) return false;
  const middle = (read.low + read.high) / 2;
  return middle >= least && read.high - read.low <= 2 * (READ_WITHIN_DIV + 0.04 * read.high) + MOST_SLOPE_DIV;
}

function picked(setup: BenchSetup, state: BenchState, places: readonly number[], which: number): number | null {
  if (places.length < FEWEST) return null;
  const at = places[Math.floor(seededRandom(chanceOf(setup, state) + which)() * places.length)]!;
  return Math.round(SMALL_DIVS * at) / SMALL_DIVS + 0;
}
