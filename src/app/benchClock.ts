/** Time on the bench: it runs while somebody works and stands otherwise. Ticks on the second, each second or more rarely as it is told, and not at all while it stands. */

import type { Run } from '../run/runLog.ts';
import type { Scenario } from '../scenario/scenario.ts';

export interface BenchClock {
  elapsedMs(): number;
  /** starts or stops it; what it is already, it stays */
  run(on: boolean): void;
  /** something has been done: a tick that was ordered for later comes as soon as `stepSeconds` now says */
  stir(): void;
  close(): void;
}

export interface ClockGiven {
  /** milliseconds of a clock that never runs backwards */
  readonly now: () => number;
  readonly after: (milliseconds: number, callback: () => void) => unknown;
  readonly ticked: () => void;
  /** whole seconds between ticks, which come on multiples of it; asked whenever the next one is ordered */
  readonly stepSeconds: () => number;
}

const SECOND_MS = 1000;
/** Timers may come a little early, and the second must be over when it is read. */
const PAST_MS = 5;

/** Without an act for so long, seconds, time goes on in steps, seconds: a picture each second for the clock alone is most of what a bench at rest costs. */
const RESTS_AFTER = 15;
const REST_STEP = 5;
/** With so little left, seconds, somebody may be watching the clock run out. */
const NEAR_THE_END = 600;

/** Seconds from one tick to the next while nothing is done: of the clock, and of all that time alone brings about. */
export function stepAtRest(
  { timeLimitSeconds }: Pick<Scenario, 'timeLimitSeconds'>,
  elapsedMs: number,
  { events }: Pick<Run, 'events'>,
): number {
  const lastActMs = events.at(-1)?.atMs ?? 0;
  const second = Math.floor(elapsedMs / SECOND_MS);
  const left = (timeLimitSeconds ?? Number.POSITIVE_INFINITY) - second;
  return left <= NEAR_THE_END || second - lastActMs / SECOND_MS < RESTS_AFTER ? 1 : REST_STEP;
}

export function createBenchClock({ now, after, ticked, stepSeconds }: ClockGiven, fromMs: number): BenchClock {
  let restMs = fromMs;
  let runningSinceMs: number | null = null;
  /** counts the times that it was started or stopped: a tick that was ordered before is none */
  let spell = 0;

  const elapsedMs = (): number => restMs + (runningSinceMs === null ? 0 : now() - runningSinceMs);
  let stepMs = SECOND_MS;
  const orderTick = (): void => {
    const mine = spell;
    stepMs = SECOND_MS * stepSeconds();
    after(stepMs - (elapsedMs() % stepMs) + PAST_MS, () => {
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
    stir() {
      if (runningSinceMs === null || SECOND_MS * stepSeconds() >= stepMs) return;
      spell++;
      orderTick();
    },
    close() {
      spell++;
    },
  };
}
