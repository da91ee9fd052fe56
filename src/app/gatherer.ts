/** Gathers continuous turning and dragging, so that the log gets at most some thirty acts a second and none is lost. */
import type { BenchEvent } from '../bench/benchEvent.ts';
import { MOST_TURNS_PER_EVENT } from '../bench/slugTurning.ts';

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

function keyOf(event: BenchEvent): string {
  if (event.type === 'slugTurned') return `slug ${event.slug}`;
  if (event.type === 'controlSet') return `control ${event.control}`;
  return event.type;
}
