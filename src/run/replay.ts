/** Runs a list of events through the bench's own reducer: the whole of it, or up to a moment, or to and fro for a scrubber. */
import { applyEvent } from '../bench/applyEvent.ts';
import type { Refusal } from '../bench/benchEvent.ts';
import type { BenchState } from '../bench/benchState.ts';
import { type BenchSetup, initialState } from '../bench/setup.ts';
import type { TimedEvent } from '../files/runFile.ts';

export interface Replayed {
  /** the state after the last event that was taken */
  readonly state: BenchState;
  /** how many events were taken */
  readonly taken: number;
  /** the event that could not be: nothing after it was looked at; null = all went through */
  readonly refused: { readonly index: number; readonly reason: Refusal } | null;
}

/** Replays `events` in order, those up to and including `untilMs` where it is given. */
export function replay(setup: BenchSetup, events: readonly TimedEvent[], untilMs = Number.POSITIVE_INFINITY): Replayed {
  let state = initialState(setup);
  for (let index = 0; index < events.length; index++) {
    const event = events[index]!;
    if (event.atMs > untilMs) return { state, taken: index, refused: null };
    const step = takeEvent(setup, state, events, index);
    if (typeof step === 'string') return { state, taken: index, refused: { index, reason: step } };
    state = step;
  }
  return { state, taken: events.length, refused: null };
}

/** A run that can be looked at, at any moment, in any order; a jump costs at most `CHECKPOINT_EVERY` events. */
export interface Replayer {
  /** the bench as it stood at `atSeconds` */
  at(atSeconds: number): BenchState;
  /** how many of the events had happened by then */
  countAt(atSeconds: number): number;
  /** the first event that the bench refuses, once the replay has come so far; it and all after it are left out */
  refused(): Replayed['refused'];
}

const CHECKPOINT_EVERY = 64;

export function createReplayer(setup: BenchSetup, events: readonly TimedEvent[]): Replayer {
  // checkpoints[k] is the state after k * CHECKPOINT_EVERY events; filled as far as anybody has looked.
  const checkpoints: BenchState[] = [initialState(setup)];
  let last = { count: 0, state: checkpoints[0]! };
  let usable = events.length;
  let refused: Replayed['refused'] = null;

  const stateAfter = (wanted: number): BenchState => {
    const nearest = Math.min(Math.floor(wanted / CHECKPOINT_EVERY), checkpoints.length - 1);
    let count = nearest * CHECKPOINT_EVERY;
    let state = checkpoints[nearest]!;
    if (last.count <= wanted && last.count > count) ({ count, state } = last);
    while (count < Math.min(wanted, usable)) {
      const step = takeEvent(setup, state, events, count);
      if (typeof step === 'string') {
        refused = { index: count, reason: step };
        usable = count;
        break;
      }
      state = step;
      count++;
      if (count === checkpoints.length * CHECKPOINT_EVERY) checkpoints.push(state);
    }
    last = { count, state };
    return state;
  };
  const countAt = (atSeconds: number): number => countUpTo(events, Math.round(atSeconds * 1000));
  return {
    at: (atSeconds) => stateAfter(Math.min(countAt(atSeconds), usable)),
    countAt,
    refused: () => refused,
  };
}

function takeEvent(
  setup: BenchSetup,
  state: BenchState,
  events: readonly TimedEvent[],
  index: number,
): BenchState | Refusal {
  const { atMs, ...event } = events[index]!;
  const previousMs = index === 0 ? 0 : events[index - 1]!.atMs;
  if (!Number.isSafeInteger(atMs) || atMs < previousMs) return 'badTime';
  const applied = applyEvent(setup, state, event, atMs / 1000);
  return applied.ok ? applied.state : applied.reason;
}

/** Number of events at or before `atMs`: a binary search, the times never decrease. */
function countUpTo(events: readonly TimedEvent[], atMs: number): number {
  let low = 0;
  let high = events.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (events[middle]!.atMs <= atMs) low = middle + 1;
    else high = middle;
  }
  return low;
}
