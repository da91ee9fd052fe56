/** As found: the bench keeps its state from before anything in the set was touched; what the tube showed then is read from that (tubeReadings.ts). */
import { isPartOfSet } from '../receiver/faults/cure.ts';
import { workResponses } from '../receiver/responses.ts';
import type { Applied } from './benchEvent.ts';
import { type BenchState, NO_PROOFS } from './benchState.ts';
import { done, refused } from './outcome.ts';
import type { BenchSetup } from './setup.ts';

/** May be recorded again until a slug is turned or a part replaced, but not with a spare clipped across a part; the last recording stands. */
export function recordAsFound(setup: BenchSetup, state: BenchState, response: string): Applied {
  if (!workResponses(setup.receiver, setup.scenario).some(({ id }) => id === response))
    return refused('valueOutOfRange');
  if (!isAsFound(state)) return refused('notAsFound');
  const bench: BenchState = { ...state, proofs: NO_PROOFS, asFound: {} };
  return done({ ...state, asFound: { ...state.asFound, [response]: bench } });
}

export function isAsFound({
  turnsMade,
  replaced,
  bridged,
}: Pick<BenchState, 'turnsMade' | 'replaced' | 'bridged'>): boolean {
  // The marks of leads that were put on again stand there too: a lead is no part of the set.
  return turnsMade === 0 && bridged === null && !replaced.some(isPartOfSet);
}
