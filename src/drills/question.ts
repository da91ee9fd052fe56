/** One look of a drill from a seed: the same seed gives the same question everywhere. */
import type { SetParts } from '../receiver/individualSet.ts';
import { type Chance, chanceOf, pick } from './chance.ts';
import type { DrillId, Question } from './drill.ts';
import { findTheTrap } from './looks/findTheTrap.ts';
import type { DrillMaker } from './looks/look.ts';
import { overload } from './looks/overload.ts';
import { perCent } from './looks/perCent.ts';
import { phaseIt } from './looks/phaseIt.ts';
import { whatLiesHere } from './looks/whatLiesHere.ts';
import { whichPart } from './looks/whichPart.ts';
import { whichWay } from './looks/whichWay.ts';
import { zero } from './looks/zero.ts';

export const MAKERS: Readonly<Record<DrillId, DrillMaker>> = {
  'phase-it': phaseIt,
  'which-way': whichWay,
  'per-cent': perCent,
  'find-the-trap': findTheTrap,
  overload,
  zero,
  'which-part': whichPart,
  'what-lies-here': whatLiesHere,
};

/** The seed of one look of a series. */
export const lookSeed = (drill: DrillId, series: string, look: number): string => `${drill}/${series}/${look}`;

/** The receiver that a look is shown on. */
export const receiverOf = (drill: DrillId, seed: string): string =>
  pick(MAKERS[drill].receivers, chanceOf(`${seed} receiver`));

/** Place of the right answer among so many. */
export const rightPlace = (seed: string, count: number): number => Math.floor(chanceOf(`${seed} right`)() * count);

/** More throws than any seed met so far has wanted. */
const MOST_THROWS = 60;

/** `set`: of the receiver that the seed names. Throws where no throw is fair, which is a programmer's error. */
export function question(drill: DrillId, seed: string, set: SetParts): Question {
  const rightOf = (count: number): number => rightPlace(seed, count);
  for (let thrown = 0; thrown < MOST_THROWS; thrown++) {
    const chance: Chance = chanceOf(`${seed} ${thrown}`);
    const made = MAKERS[drill].make({ set, chance, rightOf });
    if (made !== null) return made;
  }
  throw new Error(`${drill}: no fair look of ${seed}`);
}
