/** How near the slugs alone come to the sheet while a part has failed: what a certificate says of a fault that no slug can make good. */
import { roundTo } from '../base/rounding.ts';
import type { Deck } from '../physics/deck.ts';
import type { Adjuster } from '../receiver/receiver.ts';
import type { CoreTurns } from '../receiver/statedResponse.ts';
import { crowdSearch, ROUGH_POINTS } from './crowdSearch.ts';
import type { Demands, Standing } from './demands.ts';
import { lowestWorst } from './lowestWorst.ts';
import type { Found } from './search.ts';

const TRIES_UNCURED = 4;
/** Leaps from the best end before it is said that no slug cures a fault of what an endless name makes. */
const LEAPS_NAMED = 40;
/** Places nearer to each other than this are one, turns. */
const LEAST_STEP = 0.02;

interface Searcher {
  readonly demands: Demands;
  /** read at so many even points */
  readAt(evenPoints: number): Demands;
  readonly deck: Deck;
  find(start: CoreTurns, mostTries: number): Found;
}

/**
 * The nearest that slugs alone come while the failed parts stand in the set. Laying the curve on the printed one, from where the slugs are found and from the set's own
 * best place, gives two starts more; from each the worst line is brought down, which laying does not ask for.
 */
export function lowestUncured(
  { demands, readAt, deck, find }: Searcher,
  found: CoreTurns,
  best: CoreTurns,
  free: readonly Adjuster[],
  {
    trapsHz,
    scenarioSeed,
    spot,
    asNamed,
    enough,
  }: {
    readonly trapsHz: readonly number[];
    readonly scenarioSeed: number;
    readonly spot: boolean;
    /** what an endless name makes: looked at as it was when the names were given */
    readonly asNamed: boolean;
    readonly enough: number;
  },
): Standing {
  // What is stuck stays where it is found.
  const fromBest = { ...found, ...Object.fromEntries(free.map(({ id }) => [id, best[id]!])) };
  const near = find(fromBest, 1);
  // Nobody asks for less than this any more.
  if (near.met || roundTo(near.worst.excess, 0.001) < enough) return near.worst;
  const laid = [near, find(found, spot ? 1 : TRIES_UNCURED)];
  const met = laid.find((end) => end.met);
  if (met !== undefined) return met.worst;
  // For somebody who waits the file's own certificate has searched far; here what lies near is enough.
  if (spot) return laid.toSorted((a, b) => a.worst.excess - b.worst.excess)[0]!.worst;
  const apart = (one: CoreTurns, other: CoreTurns): boolean =>
    free.some(({ id }) => Math.abs(one[id]! - other[id]!) > LEAST_STEP);
  const starts = [fromBest, ...laid.map((end) => end.turns), found];
  const own = starts.filter((one, i) => starts.slice(0, i).every((earlier) => apart(one, earlier)));
  const task = { demands, deck, adjusters: free, trapsHz, starts: own, seed: scenarioSeed };
  return asNamed ? lowestWorst({ ...task, leaps: LEAPS_NAMED }) : crowdSearch({ ...task, rough: readAt(ROUGH_POINTS) });
}
