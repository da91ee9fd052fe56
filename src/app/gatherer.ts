/** Gathers continuous turning and dragging, so that the log gets at most some thirty acts a second and none is lost. */
import type { BenchEvent } from '../bench/benchEvent.ts';
import { MOST_TURNS_PER_EVENT } from '../bench/slugTurning.ts';
import type { FrameLoop } from '../kit/frameLoop.ts';

export interface Gatherer {
  add(event: BenchEvent): void;
  /** hands on what has been gathered, in the order in which each thing was first touched */
  flush(): void;
}

export function createGatherer(hand: (event: BenchEvent) => void): Gatherer {
  const waiting = new Map<string, BenchEvent>();
  return {
    add(event) {
      const key = keyOf(event);
      const before = waiting.get(key);
      if (event.type === 'slugTurned' && before?.type === 'slugTurned') {
        const turns = before.turns + event.turns;
        // Turning back is another act: the thread's play is taken up anew.
        const sameWay = Math.sign(before.turns) === Math.sign(event.turns);
        if (sameWay && Math.abs(turns) <= MOST_TURNS_PER_EVENT) {
          waiting.set(key, { ...event, turns });
          return;
        }
        waiting.delete(key);
        hand(before);
      }
      waiting.set(key, event);
    },
    flush() {
      const events = [...waiting.values()];
      waiting.clear();
      for (const event of events) hand(event);
    },
  };
}

/** Hands on what has been gathered in a frame, when that is due. */
export interface Pace {
  /** something has been gathered */
  ask(): void;
  stop(): void;
}

export interface PaceGiven {
  readonly loop: Pick<FrameLoop, 'ask' | 'drop'>;
  /** milliseconds of a clock that never runs backwards */
  readonly now: () => number;
  /** how far apart they are handed on at this moment, milliseconds */
  readonly gatherMs: () => number;
  readonly flush: () => void;
}

/** An act that takes longer than this to solve and tell leaves the next frame to the hand: with what the browser then lays and paints it is a frame of sixty a second. */
const LONG_ACT_MS = 5;

export function createPace({ loop, now, gatherMs, flush }: PaceGiven): Pace {
  let lastMs = Number.NEGATIVE_INFINITY;
  let begunMs = 0;
  let handsMs = Number.NEGATIVE_INFINITY;
  const flushWhenDue = (frameMs: number): void => {
    if (frameMs === handsMs || frameMs - lastMs < gatherMs()) {
      loop.ask('act', flushWhenDue);
      return;
    }
    lastMs = frameMs;
    begunMs = now();
    flush();
    loop.ask('paint', lookHowLong);
  };
  // On a slow machine every frame would have an act, and what follows the hand by itself would come as late as the acts.
  const lookHowLong = (): void => {
    if (now() - begunMs > LONG_ACT_MS) loop.ask('act', leaveToHand);
  };
  // Asked for before anything can be gathered for that frame, so it comes before its flush.
  const leaveToHand = (frameMs: number): void => {
    handsMs = frameMs;
  };
  return {
    ask: () => loop.ask('act', flushWhenDue),
    stop() {
      for (const step of [flushWhenDue, lookHowLong, leaveToHand]) loop.drop(step);
    },
  };
}

function keyOf(event: BenchEvent): string {
  if (event.type === 'slugTurned') return `slug ${event.slug}`;
  if (event.type === 'controlSet') return `control ${event.control}`;
  return event.type;
}
