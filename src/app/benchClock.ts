/** Time on the bench: it runs while somebody works and stands otherwise. Ticks once a second, on the second, and not at all while it stands. */

import type { Scenario } from '../scenario/scenario.ts';

export interface BenchClock {
  elapsedMs(): number;
  /** starts or stops it; what it is already, it stays */
  run(on: boolean): void;
  close(): void;
}

export interface ClockGiven {
  /** milliseconds of a clock that never runs backwards */
  readonly now: () => number;
  readonly after: (milliseconds: number, callback: () => void) => unknown;
  readonly ticked: () => void;
}

const SECOND_MS = 1000;
/** Timers may come a little early, and the second must be over when it is read. */
const PAST_MS = 5;

/** Without an act for so long, seconds, the time is told in steps, seconds: a picture each second for the clock alone is three quarters of what a bench at rest costs. */
const RESTS_AFTER = 15;
const REST_STEP = 5;

/** Whether the second that has just gone by is shown: where time runs out, each. */
export function isSecondTold(
  { timeLimitSeconds }: Pick<Scenario, 'timeLimitSeconds'>,
  elapsedMs: number,
  lastActMs: number,
): boolean {
  if (timeLimitSeconds !== null) return true;
  const second = Math.floor(elapsedMs / SECOND_MS);
  return second - lastActMs / SECOND_MS <= RESTS_AFTER || second % REST_STEP === 0;
}

export function createBenchClock({ now, after, ticked }: ClockGiven, fromMs: number): BenchClock {
  let restMs = fromMs;
  let runningSinceMs: number | null = null;
  /** counts the times that it was started or stopped: a tick that was ordered before is none */
  let spell = 0;

  const elapsedMs = (): number => restMs + (runningSinceMs === null ? 0 : now() - runningSinceMs);
  const orderTick = (): void => {
    const mine = spell;
    after(SECOND_MS - (elapsedMs() % SECOND_MS) + PAST_MS, () => {
      if (mine !== spell || runningSinceMs === null) return;
      ticked();
      if (mine === spell) orderTick();
    });
  };
  return {
    elapsedMs,
    run(on) {
      if (on === (runningSinceMs !== null)) return;
      restMs = elapsedMs();
      runningSinceMs = on ? now() : null;
      spell++;
      if (on) orderTick();
    },
    close() {
      spell++;
    },
  };
}
