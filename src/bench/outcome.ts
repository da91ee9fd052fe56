/** The two ways in which an act can end. */
import type { Applied, BenchSound, Refusal } from './benchEvent.ts';
import type { BenchState } from './benchState.ts';

export function done(state: BenchState, ...heard: readonly BenchSound[]): Applied {
  return { ok: true, state, heard };
}

export function refused(reason: Refusal): Applied {
  return { ok: false, reason };
}
