/**
 * Whether hands can have worked as fast as a run says. The limits lie far beyond what anybody does at the page, so that quick hands are safe: the page itself sends
 * a turning knob thirty times a second, a trembling hand a few times that, and ten fingers reach ten things. Each limit counts within a stretch of time.
 */
import type { TimedEvent } from '../files/runFile.ts';

export type PaceLimit =
  /** acts of any kind */
  | 'acts'
  /** turns of slugs, either way */
  | 'turns'
  /** different knobs, slugs, leads, crystals and tools */
  | 'things'
  /** acts on a thing that was let alone for a while before */
  | 'moves';

export interface TooFast {
  readonly limit: PaceLimit;
  /** of the event by which it is too much */
  readonly index: number;
  readonly atMs: number;
  readonly found: number;
  readonly most: number;
  readonly withinMs: number;
}

export const PACE_LIMITS: Readonly<Record<PaceLimit, { readonly most: number; readonly withinMs: number }>> = {
  acts: { most: 300, withinMs: 1000 },
  turns: { most: 40, withinMs: 1000 },
  things: { most: 12, withinMs: 1000 },
  moves: { most: 60, withinMs: 10_000 },
};
/** A thing that was let alone for so long is moved to anew. */
const LET_ALONE_MS = 2000;

/** The first stretch that no hand can have done; null: all of it may have been done by hand. */
export function tooFast(events: readonly TimedEvent[]): TooFast | null {
  const meters = (Object.keys(PACE_LIMITS) as PaceLimit[]).map((limit) => meterOf(limit));
  const lastAt = new Map<string, number>();
  for (let index = 0; index < events.length; index++) {
    const event = events[index]!;
    const thing = thingOf(event);
    if (thing === null) continue;
    const before = lastAt.get(thing);
    lastAt.set(thing, event.atMs);
    const act = { event, thing, moved: before === undefined || event.atMs - before > LET_ALONE_MS };
    for (const meter of meters) {
      const found = meter.take(act);
      const { most, withinMs } = PACE_LIMITS[meter.limit];
      if (found > most) return { limit: meter.limit, index, atMs: event.atMs, found, most, withinMs };
    }
  }
  return null;
}

interface Act {
  readonly event: TimedEvent;
  readonly thing: string;
  readonly moved: boolean;
}

/** Keeps the acts of the last stretch and tells what they come to. */
function meterOf(limit: PaceLimit) {
  const { withinMs } = PACE_LIMITS[limit];
  const kept: Act[] = [];
  const counts = new Map<string, number>();
  let first = 0;
  let sum = 0;
  const weigh = (act: Act, sign: 1 | -1): void => {
    counts.set(act.thing, (counts.get(act.thing) ?? 0) + sign);
    if (counts.get(act.thing) === 0) counts.delete(act.thing);
    if (limit === 'turns') sum += act.event.type === 'slugTurned' ? sign * Math.abs(act.event.turns) : 0;
    else if (limit === 'moves') sum += act.moved ? sign : 0;
    else sum += sign;
  };
  return {
    limit,
    take(act: Act): number {
      kept.push(act);
      weigh(act, 1);
      while (kept[first]!.event.atMs <= act.event.atMs - withinMs) weigh(kept[first++]!, -1);
      return limit === 'things' ? counts.size : sum;
    },
  };
}

/** What a hand is laid on; null: nothing (reading, signing, what the page does by itself). */
function thingOf(event: TimedEvent): string | null {
  switch (event.type) {
    case 'controlSet':
      return `control ${event.control}`;
    case 'slugTurned':
      return `slug ${event.slug}`;
    case 'leadConnected':
    case 'leadRemoved':
      return `lead ${event.lead}`;
    case 'crystalPlugged':
    case 'crystalPulled':
      return `crystal ${event.hz}`;
    case 'toolTaken':
    case 'toolPlaced':
      return 'tool';
    case 'isolationSwitched':
    case 'powerSwitched':
      return event.type;
    case 'partReplaced':
    case 'partBridged':
    case 'partMetered':
      return `part ${event.element}`;
    case 'cautionsAcknowledged':
    case 'readingTaken':
    case 'findingStated':
    case 'asFoundRecorded':
    case 'diagnosisStated':
    case 'hintAsked':
    case 'setUpByHelper':
    case 'signedOff':
      return null;
  }
}
