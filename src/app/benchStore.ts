/**
 * The run on the bench: takes acts from the page, feeds log, bench and session, tells the page once a frame, keeps everything in the logbook.
 * An act goes into the log at once and is solved in the next frame, or when somebody asks before that: many acts in one frame are solved once.
 * Live, every act goes the same way that replay and grading take later.
 */

import { createBench } from '../bench/bench.ts';
import type { Applied, BenchEvent, BenchSound, Refusal } from '../bench/benchEvent.ts';
import type { BenchDisplay } from '../bench/display.ts';
import type { Facts } from '../bench/facts.ts';
import { keepLast } from '../bench/kept.ts';
import type { BenchSetup } from '../bench/setup.ts';
import { findingsOf } from '../bench/witness.ts';
import { scenarioHash } from '../files/scenarioFile.ts';
import type { FrameLoop } from '../kit/frameLoop.ts';
import type { BenchPort } from '../present/ports.ts';
import { sealedDisplay } from '../present/sealedDisplay.ts';
import { appendEvent, createRun, gatherMs, type Run } from '../run/runLog.ts';
import type { OpenRun } from '../services/store/keptRuns.ts';
import { type Alignment, createAlignmentWatch } from '../session/alignment.ts';
import { missingPicture, SETTLE_SECONDS } from '../session/missing.ts';
import { createProving } from '../session/proving.ts';
import { createSession } from '../session/session.ts';
import { createBenchClock, stepAtRest } from './benchClock.ts';
import { createBenchMoment } from './benchMoment.ts';
import { createFrames } from './frames.ts';
import { createGatherer, createPace } from './gatherer.ts';

export interface BenchStoreGiven {
  readonly setup: BenchSetup;
  readonly runId: string;
  /** elapsed time at which the run is over and can only be signed; left out: none but the scenario's own */
  readonly endsAtMs?: number | null;
  readonly loop: FrameLoop;
  /** milliseconds of a clock that never runs backwards */
  readonly now: () => number;
  readonly after: (milliseconds: number, callback: () => void) => unknown;
  /** left out: nobody wants any */
  readonly wantsNoMotion?: () => boolean;
  /** settles when the run is written, or is known not to be; never rejects */
  readonly save: (run: OpenRun) => Promise<unknown>;
  /** as `save`, for a page that is going away */
  readonly saveLast: (run: OpenRun) => void;
  readonly heard: (sounds: readonly BenchSound[]) => void;
  /** the run is over, signed off or stopped: its report is wanted */
  readonly finished: (run: Run) => void;
  readonly left: () => void;
}

/** A run that lay open, as far as it could be replayed. */
export interface TakenUp {
  readonly run: Run;
  readonly elapsedMs: number;
  /** what the session machine left; a session that cannot be restored begins with the briefing */
  readonly session: unknown;
}

const same = <T>(value: T): T => value;

export interface BenchStore extends BenchPort {
  /** writes what is not yet kept; for a page that is being hidden or closed */
  flush(): void;
  /** writes what is not yet kept and lets the bench stand still: another tab goes on with the run */
  handOver(): Promise<void>;
  /** lets the bench stand still and writes nothing: another tab has the run already */
  freeze(): void;
  /** writes what is not yet kept; settles when that is done */
  close(): Promise<void>;
}

const SAVE_AFTER_MS = 150;
/** how often the elapsed time alone is worth a write: a multiple of the longest step of the clock */
const TIME_SAVE_SECONDS = 5;

export function createBenchStore(given: BenchStoreGiven, taken: TakenUp | null): BenchStore {
  const { setup, loop } = given;
  const frames = createFrames(loop);
  const bench = createBench(setup);
  const session = createSession(setup);
  /** A sealed run says nothing of what it holds: not on the tube, not by ear, not in storage. */
  const { sealed } = setup.scenario;
  const shownOf = sealed ? keepLast((display: BenchDisplay) => [display], sealedDisplay) : same;
  const scenarioKept = sealed
    ? { scenario: null, scenarioHash: scenarioHash(setup.scenario) }
    : { scenario: setup.scenario, scenarioHash: null };
  const slugWatch = createAlignmentWatch(setup);
  let run: Run = taken?.run ?? createRun(setup, null);
  const stepSeconds = (): number => (moment.warms(run.state) ? 1 : stepAtRest(setup.scenario, clock.elapsedMs(), run));
  const clock = createBenchClock({ ...given, ticked, stepSeconds }, taken?.elapsedMs ?? 0);
  const moment = createBenchMoment(setup, () => clock.elapsedMs(), given.wantsNoMotion);
  /** nothing happens any more: the run is signed off or thrown away, or another tab has it */
  let over = false;
  /** the session has not yet heard of the latest act */
  let untold = false;
  let saveWaiting = false;
  const secondListeners = new Set<() => void>();
  const refusedListeners = new Set<(reason: Refusal, event: BenchEvent) => void>();

  const endsAtMs = given.endsAtMs ?? Number.POSITIVE_INFINITY;
  const atMs = (): number => Math.max(Math.min(Math.round(clock.elapsedMs()), endsAtMs), run.events.at(-1)?.atMs ?? 0);

  /** The clock runs while the session works or asks to sign, and stands otherwise. */
  const minuteClock = (): void => {
    const { stage } = session.view();
    clock.run(!over && (stage === 'working' || stage === 'signing'));
  };
  /** Nobody may know in a sealed run, and nothing can be seen of the slugs without a curve. */
  const slugsSeen = (facts: Facts, atRest: boolean): Alignment | null =>
    sealed || missingPicture(facts).length > 0 ? null : slugWatch.of(run.state, atRest);
  const tell = (toldAtMs: number): void => {
    untold = false;
    const facts = bench.facts(moment.of(run.state));
    const { lastSlugTurnSeconds: turned } = run.state;
    const atRest = turned === null || toldAtMs / 1000 - turned >= SETTLE_SECONDS;
    // A sealed run is told nothing of what was seen.
    const findings = sealed ? {} : findingsOf(setup, run.state);
    session.send({ type: 'FACTS', facts, atSeconds: toldAtMs / 1000, slugs: slugsSeen(facts, atRest), findings });
    minuteClock();
  };
  /** Whatever the session is asked, it has heard of every act. */
  const told = (): typeof session => {
    if (untold) tell(run.events.at(-1)!.atMs);
    return session;
  };
  const shownStanding = createProving(setup.scenario.proofs);
  const asKept = (): OpenRun => ({
    scenarioId: setup.scenario.id,
    runId: given.runId,
    learner: run.learner,
    ...scenarioKept,
    attempt: setup.scenario.attempt ?? null,
    events: run.events,
    elapsedMs: Math.round(clock.elapsedMs()),
    session: told().snapshot(),
    turns: run.state.turnsMade,
  });
  const save = (): void => {
    saveWaiting = false;
    if (!over) void given.save(asKept());
  };
  const saveSoon = (): void => {
    if (saveWaiting) return;
    saveWaiting = true;
    given.after(SAVE_AFTER_MS, () => {
      if (saveWaiting) save();
    });
  };
  const changed = (): void => {
    saveSoon();
    frames.invalidate();
  };
  const standStill = (): void => {
    over = true;
    clock.run(false);
  };
  const finish = (): void => {
    standStill();
    given.finished(run);
  };
  const take = (event: BenchEvent): Applied => {
    // A hand that was on a knob when the run ended may still be turning it.
    if (over || (clock.elapsedMs() > endsAtMs && event.type !== 'signedOff')) return { ok: false, reason: 'runIsOver' };
    const appended = appendEvent(run, event, atMs());
    if (!appended.ok) {
      for (const listener of refusedListeners) listener(appended.reason, event);
      return appended;
    }
    run = appended.run;
    untold = true;
    clock.stir();
    // An act that ends the run stops the clock, and that does not wait.
    if (appended.state.stopped !== null || appended.state.signedOff) told();
    given.heard(sealed ? appended.heard.filter(({ kind }) => kind !== 'proof') : appended.heard);
    changed();
    return { ok: true, state: appended.state, heard: appended.heard };
  };
  const gatherer = createGatherer(take);
  const pace = createPace({ ...given, gatherMs: () => gatherMs(run, clock.elapsedMs()), flush: gatherer.flush });
  const send = (event: Parameters<typeof session.send>[0]): boolean => {
    if (over || !told().send(event)) return false;
    minuteClock();
    changed();
    return true;
  };
  function ticked(): void {
    const before = told().view();
    session.send({ type: 'TICK', elapsedSeconds: clock.elapsedMs() / 1000 });
    const goesOn = !over && (moment.turns(run.state) || moment.warms(run.state));
    if (goesOn) tell(atMs());
    const moves = moment.stirs(bench.display(moment.of(run.state))) || goesOn;
    const { stage, alignment } = session.view();
    // Only now is it worth a look how the slug stands that has come to rest.
    if (alignment === 'settled' && before.alignment === 'turning') {
      const slugs = slugsSeen(bench.facts(moment.of(run.state)), true);
      if (slugs !== null) session.send({ type: 'LOOKED', slugs });
    }
    minuteClock();
    if (Math.floor(clock.elapsedMs() / 1000) % TIME_SAVE_SECONDS === 0) saveSoon();
    // Time alone brings a slug to rest, a run to its limit, a set to its warmth and a bad joint to open; of the rest nothing can have changed.
    if (moves || stage !== before.stage || alignment !== before.alignment) frames.invalidate();
    loop.ask('tell', tellSecond);
  }
  function tellSecond(): void {
    for (const listener of [...secondListeners]) listener();
  }
  const leave = async (): Promise<void> => {
    if (over) return;
    gatherer.flush();
    standStill();
    await given.save(asKept());
  };

  if (taken !== null) session.restore(taken.session);
  tell(atMs());
  // The first to hear of a frame: what the others then ask has been solved.
  frames.subscribe(() => void told());

  return {
    receiver: setup.receiver,
    scenario: setup.scenario,
    setup,
    state: () => run.state,
    display: () => shownOf(bench.display(moment.of(run.state))),
    facts: () => bench.facts(moment.of(run.state)),
    partReading: (part) => bench.partReading(moment.of(run.state), part),
    session: () => shownStanding(run.state, told().view()),
    elapsedSeconds: () => clock.elapsedMs() / 1000,
    act(event) {
      gatherer.flush();
      return take(event);
    },
    actSoon(event) {
      gatherer.add(event);
      pace.ask();
    },
    begin: () => void send({ type: 'BEGIN' }),
    tickStep: (step) => void send({ type: 'TICK_STEP', step }),
    askToSign() {
      gatherer.flush();
      send({ type: 'ASK_TO_SIGN' });
    },
    keepWorking: () => void send({ type: 'KEEP_WORKING' }),
    sign() {
      gatherer.flush();
      // Grading takes its time, and the page may be gone before the signed run is kept.
      save();
      if (told().view().stage === 'stopped') {
        if (send({ type: 'REPORT' })) finish();
      } else if (take({ type: 'signedOff' }).ok) finish();
    },
    abandon() {
      if (send({ type: 'ABANDON' })) {
        standStill();
        given.left();
      }
    },
    suspend() {
      gatherer.flush();
      send({ type: 'SUSPEND' });
    },
    resume: () => void send({ type: 'RESUME' }),
    subscribe: (listener) => frames.subscribe(listener),
    onSecond(listener) {
      secondListeners.add(listener);
      return () => {
        secondListeners.delete(listener);
      };
    },
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
      given.saveLast(asKept());
    },
    handOver: leave,
    freeze() {
      if (!over) standStill();
    },
    close() {
      clock.close();
      pace.stop();
      loop.drop(tellSecond);
      return leave();
    },
  };
}
