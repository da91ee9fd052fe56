/** Model-based: the shortest paths over the session machine, walked on the machine alone and on the real bench; the states must coincide at every step. */
import { describe, expect, test } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import { findingsOf, trueFinding } from '../../src/bench/witness.ts';
import { appendEvent, createRun, type Run, resumeRun } from '../../src/run/runLog.ts';
import { createSession, type Session } from '../../src/session/session.ts';
import { IN_LIMITS, NOTHING_RIGHT } from './fakeFacts.ts';
import { ACT_NAMES, type SessionPath, shortestPaths, standsAt, TIME_LIMIT_SECONDS } from './paths.ts';
import { stripSetup } from './setups.ts';

const setup = stripSetup({ timeLimitSeconds: TIME_LIMIT_SECONDS });
const paths = shortestPaths(setup);
const bench = createBench(setup);
const stands = (session: Session): unknown => standsAt(session.view());

/** The same path with a bench under it: acts through the log, facts measured, time as it passes. */
function walkOnBench(path: SessionPath): void {
  let session = createSession(setup);
  let run: Run = createRun(setup, null);
  let seconds = 0;
  const tellFacts = (): void => {
    const findings = findingsOf(setup, run.state);
    session.send({ type: 'FACTS', facts: bench.facts(run.state), atSeconds: seconds, slugs: IN_LIMITS, findings });
  };
  tellFacts();
  path.steps.forEach(({ act, value }, i) => {
    // Half way the page is killed: what was kept, log and snapshot, must go on as if nothing had happened.
    if (i === Math.floor(path.steps.length / 2)) {
      const kept = JSON.parse(JSON.stringify({ events: run.events, session: session.snapshot() })) as {
        events: Run['events'];
        session: unknown;
      };
      const resumed = resumeRun(setup, null, kept.events);
      expect(resumed).toEqual({ run, refused: null });
      run = resumed.run;
      session = createSession(setup);
      expect(session.restore(kept.session)).toBe(true);
    }
    for (const planned of act.bench) {
      // Which pip is asked about, and how tall what is seen stands, goes by where the slugs have come to.
      const event = planned.type === 'findingStated' ? trueFinding(setup, run.state, planned.proof) : planned;
      const appended = appendEvent(run, event, Math.round(seconds * 1000));
      if (appended.ok) run = appended.run;
      else if (
        appended.reason !== 'alreadySo' &&
        appended.reason !== 'crystalAlreadyIn' &&
        run.state.stopped === null
      ) {
        throw new Error(`step ${i}, ${act.name}: ${appended.reason} ${JSON.stringify(event)}`);
      }
    }
    if (act.bench.length > 0) tellFacts();
    if (act.session !== null) session.send({ type: act.session });
    if (act.restSeconds > 0) {
      if (stands(session) !== 'suspended') seconds = Math.min(seconds + act.restSeconds, TIME_LIMIT_SECONDS);
      session.send({ type: 'TICK', elapsedSeconds: seconds });
    }
    expect(stands(session), `step ${i}, ${act.name}`).toEqual(value);
  });
}

test('the paths reach every stage, every region both ways, and use every act', () => {
  const values = paths.flatMap((path) => path.steps.map((step) => JSON.stringify(step.value)));
  for (const stage of ['working', 'signing', 'suspended', 'stopped', 'graded', 'abandoned']) {
    expect(
      values.some((value) => value === `"${stage}"` || value.startsWith(`{"${stage}"`)),
      stage,
    ).toBe(true);
  }
  for (const part of ['sweep', 'phasing', 'blanking', 'bias', 'level', 'markers', 'trace']) {
    for (const state of ['wrong', 'right'])
      expect(values.some((value) => value.includes(`"${part}":"${state}"`))).toBe(true);
  }
  for (const mark of [
    ...[
      '"safety":"open"',
      '"safety":"made"',
      '"connection":"open"',
      '"connection":"made"',
      '"proof":"open"',
      '"proof":"proved"',
    ],
    ...['"alignment":"idle"', '"alignment":"turning"', '"alignment":"settled"', '"timeUp"'],
  ]) {
    expect(
      values.some((value) => value.includes(mark)),
      mark,
    ).toBe(true);
  }
  const used = new Set(paths.flatMap((path) => path.steps.map((step) => step.act.name)));
  expect(ACT_NAMES.filter((name) => !used.has(name))).toEqual([]);
  expect(paths.length).toBeGreaterThan(30);
});

describe('without a bench', () => {
  test.each(paths.map((path) => [path.name, path] as const))('%s', (_, path) => {
    const session = createSession(setup);
    session.send({ type: 'FACTS', facts: NOTHING_RIGHT, atSeconds: 0 });
    for (const { act, event, value } of path.steps) {
      session.send(event);
      expect(stands(session), act.name).toEqual(value);
    }
    // And what was kept half way goes on to the same end.
    const half = Math.floor(path.steps.length / 2);
    const first = createSession(setup);
    first.send({ type: 'FACTS', facts: NOTHING_RIGHT, atSeconds: 0 });
    for (const { event } of path.steps.slice(0, half)) first.send(event);
    const second = createSession(setup);
    expect(second.restore(JSON.parse(JSON.stringify(first.snapshot())))).toBe(true);
    for (const { event } of path.steps.slice(half)) second.send(event);
    expect(second.snapshot()).toEqual(session.snapshot());
    expect(second.view()).toEqual(session.view());
  });
});

describe('on the real bench', () => {
  test.each(paths.map((path) => [path.name, path] as const))('%s', (_, path) => walkOnBench(path));
});

test('a path is plain data', () => {
  expect(JSON.parse(JSON.stringify(paths))).toEqual(paths);
});
