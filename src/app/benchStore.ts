/**
 * The run on the bench: takes acts from the page, feeds log, bench and session, tells the page once a frame, keeps everything in the logbook.
 * Live, every act goes the same way that replay and grading take later.
 */

import { createBench } from '../bench/bench.ts';
import type { Applied, BenchEvent, BenchSound, Refusal } from '../bench/benchEvent.ts';
import type { BenchState } from '../bench/benchState.ts';
import type { BenchDisplay } from '../bench/display.ts';
import type { BenchSetup } from '../bench/setup.ts';
import type { BenchPort } from '../present/ports.ts';
import { appendEvent, createRun, gatherMs, type Run, resumeRun } from '../run/runLog.ts';
import type { OpenRun } from '../services/store/keptRuns.ts';
import { createSession } from '../session/session.ts';
import type { Frames } from './frames.ts';
import { createGatherer } from './gatherer.ts';

export interface BenchStoreParts {
  readonly setup: BenchSetup;
  readonly runId: string;
  readonly frames: Frames;
  /** milliseconds of a clock that never runs backwards */
  readonly now: () => number;
  readonly request: (callback: () => void) => unknown;
  /** calls back again and again; returns what stops it */
  readonly every: (milliseconds: number, callback: () => void) => () => void;
  readonly after: (milliseconds: number, callback: () => void) => unknown;
  readonly save: (run: OpenRun) => Promise<void>;
  /** as `save`, for a page that is going away */
  readonly saveLast: (run: OpenRun) => void;
  readonly heard: (sounds: readonly BenchSound[]) => void;
  /** the run is over, signed off or stopped: its report is wanted */
  readonly finished: (run: Run) => void;
  readonly left: () => void;
}

export interface BenchStore extends BenchPort {
  /** writes what is not yet kept; for a page that is being hidden or closed */
  flush(): void;
  close(): void;
}

const SAVE_AFTER_MS = 150;
const TICK_MS = 500;
/** how often the elapsed time alone is worth a write */
const TIME_SAVE_TICKS = 10;

export function createBenchStore(parts: BenchStoreParts, open: OpenRun | null): BenchStore {
  const { setup, frames } = parts;
  const bench = createBench(setup);
  const session = createSession(setup);
  const taken = open === null ? null : resumeRun(setup, null, open.events);
  let run: Run = taken ?? createRun(setup, null);
  let restMs = taken === null || open === null ? 0 : open.elapsedMs;
  let runningSinceMs: number | null = null;
  let over = false;
  let shown: { readonly state: BenchState; readonly display: BenchDisplay } | null = null;
  let saveWaiting = false;
  let flushWaiting = false;
  let lastFlushMs = Number.NEGATIVE_INFINITY;
  let ticks = 0;
  const refusedListeners = new Set<(reason: Refusal, event: BenchEvent) => void>();

  const elapsedMs = (): number => restMs + (runningSinceMs === null ? 0 : parts.now() - runningSinceMs);
  const atMs = (): number => Math.max(Math.round(elapsedMs()), run.events.at(-1)?.atMs ?? 0);

  /** The clock runs while the session works or asks to sign, and stands otherwise. */
  const minuteClock = (): void => {
    const { stage } = session.view();
    const runs = stage === 'working' || stage === 'signing';
    if (runs && runningSinceMs === null) runningSinceMs = parts.now();
    if (!runs && runningSinceMs !== null) {
      restMs = elapsedMs();
      runningSinceMs = null;
    }
  };
  const asKept = (): OpenRun => ({
    scenarioId: setup.scenario.id,
    runId: parts.runId,
    scenario: setup.scenario,
    events: run.events,
    elapsedMs: Math.round(elapsedMs()),
    session: session.snapshot(),
    turns: run.state.turnsMade,
  });
  const save = (): void => {
    saveWaiting = false;
    if (!over) void parts.save(asKept());
  };
  const saveSoon = (): void => {
    if (saveWaiting) return;
    saveWaiting = true;
    parts.after(SAVE_AFTER_MS, () => {
      if (saveWaiting) save();
    });
  };
  const changed = (): void => {
    minuteClock();
    saveSoon();
    frames.invalidate();
  };
  const tell = (): void => {
    session.send({ type: 'FACTS', facts: bench.facts(run.state), atSeconds: atMs() / 1000 });
  };
  const finish = (): void => {
    over = true;
    restMs = elapsedMs();
    runningSinceMs = null;
    parts.finished(run);
  };
  const take = (event: BenchEvent): Applied => {
    const appended = appendEvent(run, event, atMs());
    if (!appended.ok) {
      for (const listener of refusedListeners) listener(appended.reason, event);
      return appended;
    }
    run = appended.run;
    tell();
    parts.heard(appended.heard);
    changed();
    return { ok: true, state: appended.state, heard: appended.heard };
  };
  const gatherer = createGatherer(take);
  const flushSoon = (): void => {
    if (flushWaiting) return;
    flushWaiting = true;
    parts.request(function look() {
      const now = parts.now();
      if (now - lastFlushMs < gatherMs(run, elapsedMs())) {
        parts.request(look);
        return;
      }
      flushWaiting = false;
      lastFlushMs = now;
      gatherer.flush();
    });
  };
  const send = (event: Parameters<typeof session.send>[0]): boolean => {
    const meant = session.send(event);
    if (meant) changed();
    return meant;
  };

  if (taken !== null && open !== null) session.restore(open.session);
  tell();
  minuteClock();
  const stopTicking = parts.every(TICK_MS, () => {
    if (runningSinceMs === null) return;
    session.send({ type: 'TICK', elapsedSeconds: elapsedMs() / 1000 });
    minuteClock();
    ticks++;
    if (ticks % TIME_SAVE_TICKS === 0) saveSoon();
    frames.invalidate();
  });

  return {
    receiver: setup.receiver,
    scenario: setup.scenario,
    setup,
    state: () => run.state,
    display() {
      if (shown === null || shown.state !== run.state) shown = { state: run.state, display: bench.display(run.state) };
      return shown.display;
    },
    facts: () => bench.facts(run.state),
    session: () => session.view(),
    elapsedSeconds: () => elapsedMs() / 1000,
    act(event) {
      gatherer.flush();
      return take(event);
    },
    actSoon(event) {
      gatherer.add(event);
      flushSoon();
    },
    begin: () => void send({ type: 'BEGIN' }),
    askToSign() {
      gatherer.flush();
      send({ type: 'ASK_TO_SIGN' });
    },
    keepWorking: () => void send({ type: 'KEEP_WORKING' }),
    sign() {
      gatherer.flush();
      if (session.view().stage === 'stopped') {
        send({ type: 'REPORT' });
        finish();
      } else if (take({ type: 'signedOff' }).ok) finish();
    },
    abandon() {
      if (send({ type: 'ABANDON' })) {
        over = true;
        parts.left();
      }
    },
    suspend() {
      gatherer.flush();
      send({ type: 'SUSPEND' });
    },
    resume: () => void send({ type: 'RESUME' }),
    subscribe: (listener) => frames.subscribe(listener),
    onRefused(listener) {
      refusedListeners.add(listener);
      return () => {
        refusedListeners.delete(listener);
      };
    },
    flush() {
      if (over) return;
      gatherer.flush();
      saveWaiting = false;
      parts.saveLast(asKept());
    },
    close() {
      stopTicking();
      if (!over) {
        gatherer.flush();
        save();
      }
    },
  };
}
