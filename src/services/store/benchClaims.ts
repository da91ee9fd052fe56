/**
 * One tab at a time works on the bench of a scenario. Whoever comes second waits in the queue of the Web Locks API, and may ask for the bench: the tab that has it
 * writes what it has and lets go. A tab that does not answer (frozen, or stuck) has it taken away.
 */
import type { TabChannel } from './tabChannel.ts';

export type ClaimState =
  /** asked for, and nobody has said yet that it is taken */
  | 'asking'
  | 'held'
  /** another tab has it; this one gets it as soon as that one leaves */
  | 'elsewhere'
  /** this tab had it, and another took it over */
  | 'lost'
  /** the browser cannot tell: go on, and say so */
  | 'unguarded';

export interface BenchClaim {
  state(): ClaimState;
  /** asks the other tab for the bench; after a while takes it */
  takeOver(): void;
  release(): void;
  subscribe(listener: () => void): () => void;
}

type Locks = Pick<LockManager, 'request'>;

export interface ClaimGiven {
  /** null: the browser has no such thing */
  readonly locks: Locks | null;
  readonly channel: TabChannel | null;
  /** calls back once; returns what stops it */
  readonly after: (milliseconds: number, callback: () => void) => () => void;
}

/** A tab that is being left lets go within this time, and so the answer "elsewhere" waits for it. */
const LEAVING_MS = 400;
/** How long a tab may take to write what it has before the bench is taken from it. */
const HANDING_OVER_MS = 2_000;

/** `handOver` writes what is not yet written and touches the run no more. */
export function claimBench(given: ClaimGiven, scenarioId: string, handOver: () => Promise<void>): BenchClaim {
  const { locks, channel, after } = given;
  const name = `haystack-bench-${scenarioId}`;
  const listeners = new Set<() => void>();
  let state: ClaimState = 'asking';
  let letGo: () => void = () => {};
  let leaveQueue: () => void = () => {};
  let stopWaiting: () => void = () => {};
  let over = false;

  const set = (next: ClaimState): void => {
    if (state === next || over) return;
    state = next;
    for (const listener of [...listeners]) listener();
  };
  const hold = (): Promise<void> => {
    stopWaiting();
    if (over) return Promise.resolve();
    set('held');
    return new Promise((resolve) => {
      letGo = resolve;
    });
  };
  /** Only the last request counts: that of a queue that was left may still be answered. */
  let last = 0;
  const request = (all: Locks, options: LockOptions): void => {
    const mine = ++last;
    // It rejects where the lock is stolen, where the queue is left before the turn came, and where a page may have no locks at all.
    all.request(name, options, hold).catch((error: unknown) => {
      if (mine !== last) return;
      if (state === 'held') set('lost');
      else if ((error as { name?: unknown } | null)?.name !== 'AbortError') set('unguarded');
    });
  };
  const queue = (all: Locks): void => {
    const leaving = new AbortController();
    leaveQueue = () => leaving.abort();
    stopWaiting = after(LEAVING_MS, () => {
      if (state === 'asking') set('elsewhere');
    });
    request(all, { signal: leaving.signal });
  };
  const seize = (all: Locks): void => {
    const leave = leaveQueue;
    request(all, { steal: true });
    leave();
  };

  const stopListening = channel?.listen((message) => {
    if (!isAsked(message, name) || state !== 'held') return;
    const done = (): void => {
      set('lost');
      letGo();
    };
    // What could not be written is told by whoever tried.
    void handOver().then(done, done);
  });
  if (locks === null) state = 'unguarded';
  else queue(locks);

  return {
    state: () => state,
    takeOver() {
      if (locks === null || state === 'held' || state === 'asking') return;
      const wasLost = state === 'lost';
      set('asking');
      if (wasLost) queue(locks);
      stopWaiting();
      channel?.post({ handOver: name });
      stopWaiting = after(channel === null ? 0 : HANDING_OVER_MS, () => seize(locks));
    },
    release() {
      over = true;
      stopWaiting();
      stopListening?.();
      leaveQueue();
      letGo();
      listeners.clear();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}

function isAsked(message: unknown, name: string): boolean {
  return typeof message === 'object' && message !== null && (message as { handOver?: unknown }).handOver === name;
}
