/**
 * The bench of a demonstration: the technician's acts go through the same store, log and reducer as a learner's. While he is at it the page's own acts are refused; after
 * that the bench is the learner's, and goes on from where it stands. None of it goes to the logbook, so nothing of it can be counted.
 */
import type { BenchSound } from '../bench/benchEvent.ts';
import type { BenchSetup } from '../bench/setup.ts';
import type { TimedEvent } from '../files/runFile.ts';
import type { FrameLoop } from '../kit/frameLoop.ts';
import type { BenchPort } from '../present/ports.ts';
import type { ShownPort } from '../present/shownPort.ts';
import { resumeRun } from '../run/runLog.ts';
import { type BenchStore, createBenchStore } from './benchStore.ts';
import { type Caption, createDemonstrationPlayer } from './demonstrationPlayer.ts';
import { createShownClock, type RealTime, type ShownClock } from './shownClock.ts';

export interface ShownBenchGiven extends RealTime {
  readonly setup: BenchSetup;
  readonly events: readonly TimedEvent[];
  readonly captions: readonly Caption[];
  readonly loop: FrameLoop;
  readonly wantsNoMotion?: () => boolean;
  /** what the learner's own acts sound like, once he has taken over: the technician's come too close on one another */
  readonly heard?: (sounds: readonly BenchSound[]) => void;
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

export function createShownBench(given: ShownBenchGiven): ShownBench {
  const { setup } = given;
  const clock = createShownClock(given);
  let watching = true;
  // Where somebody steps back another bench takes the place of this one, and the page goes on asking the same port.
  let store = storeAt(0, clock);
  let letGo = clock.letGo;
  let moveTo = clock.moveTo;
  const swapped = new Set<(now: BenchStore) => void>();
  store.begin();

  function storeAt(done: number, time: ShownClock): BenchStore {
    const events = given.events.slice(0, done);
    const elapsedMs = events.at(-1)?.atMs ?? 0;
    time.moveTo(elapsedMs);
    return createBenchStore(
      {
        setup,
        runId: 'shown',
        loop: given.loop,
        now: time.now,
        after: time.after,
        ...(given.wantsNoMotion === undefined ? {} : { wantsNoMotion: given.wantsNoMotion }),
        save: async () => {},
        saveLast: () => {},
        heard: (sounds) => {
          if (!watching) given.heard?.(sounds);
        },
        finished: given.finished,
        left: given.left,
      },
      done === 0 ? null : { run: resumeRun(setup, null, events).run, elapsedMs, session: null },
    );
  }
  const goTo = (done: number): void => {
    const before = store;
    const time = createShownClock(given);
    store = storeAt(done, time);
    ({ letGo, moveTo } = time);
    store.begin();
    void before.close();
    for (const tell of [...swapped]) tell(store);
  };
  /** Heard of whichever bench stands there; `now` is called where it has been changed for another. */
  const hear = (listen: (to: BenchStore) => () => void, now: () => void): (() => void) => {
    let stop = listen(store);
    const again = (to: BenchStore): void => {
      stop();
      stop = listen(to);
      now();
    };
    swapped.add(again);
    return () => {
      swapped.delete(again);
      stop();
    };
  };
  const refusals = new Set<Parameters<BenchPort['onRefused']>[0]>();
  const refuse: BenchPort['act'] = (event) => {
    for (const listener of refusals) listener('technicianAtBench', event);
    return { ok: false, reason: 'technicianAtBench' };
  };
  const shown = createDemonstrationPlayer({
    events: given.events,
    captions: given.captions,
    act(event, atMs) {
      moveTo(atMs);
      store.act(event);
    },
    goTo,
    after: given.after,
    takeOver() {
      watching = false;
      letGo();
      given.taken();
    },
    fromStart: given.fromStart,
  });
  const port: BenchPort = {
    receiver: store.receiver,
    scenario: store.scenario,
    setup: store.setup,
    state: () => store.state(),
    display: () => store.display(),
    facts: () => store.facts(),
    partReading: (part) => store.partReading(part),
    session: () => store.session(),
    elapsedSeconds: () => store.elapsedSeconds(),
    begin: () => store.begin(),
    tickStep: (step) => store.tickStep(step),
    keepWorking: () => store.keepWorking(),
    sign: () => store.sign(),
    abandon: () => store.abandon(),
    suspend: () => store.suspend(),
    resume: () => store.resume(),
    act: (event) => (watching ? refuse(event) : store.act(event)),
    actSoon: (event) => {
      if (watching) refuse(event);
      else store.actSoon(event);
    },
    askToSign() {
      if (watching) refuse({ type: 'signedOff' });
      else store.askToSign();
    },
    subscribe: (listener) => hear((to) => to.subscribe(listener), listener),
    onSecond: (listener) => hear((to) => to.onSecond(listener), listener),
    onRefused(listener) {
      refusals.add(listener);
      const stop = hear(
        (to) => to.onRefused(listener),
        () => {},
      );
      return () => {
        refusals.delete(listener);
        stop();
      };
    },
  };
  return { port, shown, close: () => void store.close() };
}
