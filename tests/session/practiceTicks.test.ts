/**
 * Ticks of practice against the score, in every practice job of the course: at many moments of the whole job a phase is ticked exactly where a run that was signed there would have its
 * lines. The score measures the true response and the bench anew from the events; the ticks come from the session. What counts as so is the sheet itself; no other source.
 */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { initialState } from '../../src/bench/setup.ts';
import { inPieces } from '../../src/bench/slugTurning.ts';
import { toolFor } from '../../src/bench/tools.ts';
import { findingsOf } from '../../src/bench/witness.ts';
import { lackStages } from '../../src/describe/lack.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { grade } from '../../src/grading/grade.ts';
import { lineIsMet, type Report } from '../../src/grading/report.ts';
import { lackOfStep, stepMarks } from '../../src/present/steps.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { createAlignmentWatch } from '../../src/session/alignment.ts';
import type { SessionView } from '../../src/session/phase.ts';
import { createSession } from '../../src/session/session.ts';
import { en } from '../../src/words/en/index.ts';
import { goodRun } from '../adversaries/hands.ts';
import { shippedLibrary } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { stateAfter } from './acts.ts';

const REST = 10;
const MOMENTS = 8;

const PRACTICE = shippedLibrary().scenarios.filter(({ sealed }) => !sealed);

function stateOf(setup: BenchSetup, events: readonly TimedEvent[]): BenchState {
  let state = initialState(setup);
  for (const { atMs, ...event } of events) state = stateAfter(setup, [event], state, atMs / 1000 - state.seconds);
  return state;
}

interface Seat {
  readonly setup: BenchSetup;
  /** as the page sees it, with everything at rest */
  view(state: BenchState): SessionView;
}

function seatOf(setup: BenchSetup): Seat {
  const bench = createBench(setup);
  const watch = createAlignmentWatch(setup);
  return {
    setup,
    view(state) {
      const session = createSession(setup);
      session.send({ type: 'BEGIN' });
      const slugs = watch.of(state, true);
      const findings = findingsOf(setup, state);
      session.send({ type: 'FACTS', facts: bench.facts(state), atSeconds: state.seconds, slugs, findings });
      session.send({ type: 'TICK', elapsedSeconds: state.seconds + REST });
      return session.view();
    },
  };
}

/** The run so far, signed. */
function scoreAt(setup: BenchSetup, events: readonly TimedEvent[]): Report {
  return grade(setup, [...events, { atMs: (events.at(-1)?.atMs ?? 0) + 100, type: 'signedOff' }]);
}

const turned = (slug: string, turns: number): BenchEvent[] =>
  inPieces(turns).map((piece): BenchEvent => ({ type: 'slugTurned', slug, turns: piece }));

/** The first slug that an eighth of a turn after the other, up to eight turns, takes a line of the sheet outside of which it is the cause. */
function turnedAway({ setup, view }: Seat, from: BenchState) {
  for (const { id, head, travelTurns } of setup.receiver.adjusters) {
    if (from.slugs[id]!.cracked) continue;
    const way = from.slugs[id]!.screwTurns > travelTurns / 2 ? -1 : 1;
    let away = stateAfter(setup, [{ type: 'toolTaken', tool: toolFor(head) }], from);
    for (let turns = way / 2; Math.abs(turns) <= 6; turns += way / 2) {
      away = stateAfter(setup, turned(id, way / 2), away);
      const { slugs } = view(away);
      if (slugs!.off.some(({ cause }) => cause?.slug === id)) return { slug: id, turns, away };
    }
  }
  throw new Error('no slug takes a line outside');
}

/** Each after some more acts: before the first, after the last, and between. */
function momentsOf(count: number): readonly number[] {
  return Array.from({ length: MOMENTS + 1 }, (_, i) => Math.round((i * count) / MOMENTS));
}

/** Lines of the sheet that the run as it stands would be told of. */
function missedIn({ lines }: Report): readonly string[] {
  // A part that has failed is no line of the sheet: no step asks for it.
  return lines
    .filter((line) => line.block === 'response' && line.rule !== 'G62' && !lineIsMet(line))
    .map(({ id }) => id);
}

/** What the score says of each phase at this moment; null where ticks ask for more than it does. */
function asScored({ receiver }: BenchSetup, state: BenchState, report: Report) {
  const isolated = receiver.mains === null || state.isolated;
  const unproved = report.verdicts.proved.lacks.filter((id) => !id.startsWith('G65'));
  return {
    safe: state.cautionsAcknowledged && isolated,
    align: missedIn(report).length === 0,
    prove: unproved.length === 0,
    picture: report.verdicts.true.stands,
  };
}

interface Job {
  readonly seat: Seat;
  readonly events: readonly TimedEvent[];
  readonly end: BenchState;
}

const jobs = new Map<string, Job>();

/** The whole job as it should be done, but for the signature. */
function jobOf(id: string): Job {
  const known = jobs.get(id);
  if (known !== undefined) return known;
  const setup = setupOf(id);
  const events = goodRun(setup).events.filter(({ type }) => type !== 'signedOff');
  const job = { seat: seatOf(setup), events, end: stateOf(setup, events) };
  jobs.set(id, job);
  return job;
}

describe.each(PRACTICE.map(({ id }) => [id] as const))('the ticks of %s', (id) => {
  const { seat, events, end } = jobOf(id);
  const { setup, view } = seat;
  const { receiver } = setup;
  const steps = receiver.procedure;

  it('say what the score says, from the first act to the last', () => {
    for (const count of momentsOf(events.length)) {
      const sofar = events.slice(0, count);
      const state = stateOf(setup, sofar);
      const report = scoreAt(setup, sofar);
      const scored = asScored(setup, state, report);
      const { done, missing } = view(state);
      const blank = missing.align.includes('nothingOnTube');
      const where = `after ${count} of ${events.length}: ${missedIn(report).join(' ')}`;
      expect([done.safe, done.align, done.prove], where).toEqual([
        scored.safe,
        scored.align && !blank,
        scored.prove && !blank,
      ]);
      if (done.connect && done.setUp) expect(scored.picture, report.verdicts.true.lacks.join(' ')).toBe(true);
    }
    expect(stepMarks(receiver, view(end)).filter((mark) => mark !== 'done')).toEqual([]);
  });

  it('go with a slug that is turned away, name it and the way back, and come again with it', () => {
    const { slug, turns, away } = turnedAway(seat, end);
    const lack = steps.flatMap((step, i) =>
      step.phase === 'align' && step.slugs.includes(slug) ? [lackOfStep(receiver, i, view(away))] : [],
    );
    expect(lack.length).toBeGreaterThan(0);
    for (const one of lack) {
      expect(one?.slug?.id).toBe(slug);
      const told = lackStages(en, setup, createBench(setup).facts(away), away, one!);
      expect(told).toHaveLength(3);
      expect(told[2]).toMatch(turns > 0 ? /^Turn .* out\.$/ : /^Turn .* in\.$/);
    }
    expect(view(away).done.prove).toBe(false);
    // Past the place and up to it from the same side: the thread has some play.
    const { backlashTurns } = receiver.adjusters.find((one) => one.id === slug)!;
    const back = stateAfter(setup, turned(slug, -turns - Math.sign(turns) * backlashTurns), away);
    expect(view(back).done.align).toBe(true);
  });
});

const FAULTY = PRACTICE.filter(({ faults }) => faults.length > 0);

describe.each(FAULTY.map(({ id }) => [id] as const))('with its failed part still in, the ticks of %s', (id) => {
  const { seat, events } = jobOf(id);
  const { setup, view } = seat;
  const { receiver } = setup;
  const steps = receiver.procedure;

  it('stay away from what a failed part spoils, and blame no slug for it', () => {
    // A core that has cracked will not turn before its coil is replaced.
    const stuck = receiver.adjusters.filter((one) => initialState(setup).slugs[one.id]!.cracked).map((one) => one.id);
    const unmended = events.filter(
      (event) => event.type !== 'partReplaced' && !(event.type === 'slugTurned' && stuck.includes(event.slug)),
    );
    const state = stateOf(setup, unmended);
    const missed = missedIn(scoreAt(setup, unmended));
    const seen = view(state);
    expect(seen.done.align).toBe(missed.length === 0 && !seen.missing.align.includes('nothingOnTube'));
    for (const [i, { phase }] of steps.entries()) {
      const named = phase === 'align' ? lackOfStep(receiver, i, seen)?.slug : undefined;
      if (named === undefined) continue;
      // One that stands far from its place is named, whatever else is wrong.
      const adjuster = receiver.adjusters.find((one) => one.id === named.id)!;
      expect(Math.abs(state.slugs[named.id]!.coreTurns - nominalTurns(adjuster))).toBeGreaterThan(0.5);
    }
  });
});
