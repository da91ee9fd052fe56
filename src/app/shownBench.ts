/**
 * The bench of a demonstration: the technician's acts go through the same store, log and reducer as a learner's. While he is at it the page's own acts are refused; after
 * that the bench is the learner's, and goes on from where it stands. None of it goes to the logbook, so nothing of it can be counted.
 */
import type { BenchSetup } from '../bench/setup.ts';
import type { TimedEvent } from '../files/runFile.ts';
import type { FrameLoop } from '../kit/frameLoop.ts';
import type { BenchPort } from '../present/ports.ts';
import type { ShownPort } from '../present/shownPort.ts';
import { createBenchStore } from './benchStore.ts';
import { type Caption, createDemonstrationPlayer } from './demonstrationPlayer.ts';
import { createShownClock, type RealTime } from './shownClock.ts';

export interface ShownBenchParts extends RealTime {
  readonly setup: BenchSetup;
  readonly events: readonly TimedEvent[];
  readonly captions: readonly Caption[];
  readonly loop: FrameLoop;
  readonly wantsNoMotion?: () => boolean;
  readonly taken: () => void;
  /** the learner has signed off what was taken over, or the bench was stopped */
  readonly finished: () => void;
  readonly left: () => void;
  readonly fromStart: () => void;
}

export interface ShownBench {
  readonly port: BenchPort;
  readonly shown: ShownPort;
  close(): void;
}

export function createShownBench(parts: ShownBenchParts): ShownBench {
  const clock = createShownClock(parts);
  let watching = true;
  const store = createBenchStore(
    {
      setup: parts.setup,
      runId: 'shown',
      loop: parts.loop,
      now: clock.now,
      after: clock.after,
      ...(parts.wantsNoMotion === undefined ? {} : { wantsNoMotion: parts.wantsNoMotion }),
      save: async () => {},
      saveLast: () => {},
      heard: () => {},
      finished: parts.finished,
      left: parts.left,
    },
    null,
  );
  store.begin();
  const refusals = new Set<Parameters<BenchPort['onRefused']>[0]>();
  const refuse: BenchPort['act'] = (event) => {
    for (const listener of refusals) listener('technicianAtBench', event);
    return { ok: false, reason: 'technicianAtBench' };
  };
  const shown = createDemonstrationPlayer({
    events: parts.events,
    captions: parts.captions,
    act(event, atMs) {
      clock.moveTo(atMs);
      store.act(event);
    },
    after: parts.after,
    takeOver() {
      watching = false;
      clock.letGo();
      parts.taken();
    },
    fromStart: parts.fromStart,
  });
  const port: BenchPort = {
    ...store,
    act: (event) => (watching ? refuse(event) : store.act(event)),
    actSoon: (event) => {
      if (watching) refuse(event);
      else store.actSoon(event);
    },
    askToSign() {
      if (watching) refuse({ type: 'signedOff' });
      else store.askToSign();
    },
    onRefused(listener) {
      refusals.add(listener);
      const stop = store.onRefused(listener);
      return () => {
        refusals.delete(listener);
        stop();
      };
    },
  };
  return { port, shown, close: () => void store.close() };
}
