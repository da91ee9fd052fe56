/** The log: what it takes, what it refuses, how large it may grow. */
import { describe, expect, test } from 'vitest';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { initialState } from '../../src/bench/setup.ts';
import { appendEvent, createRun, gatherMs, RUN_EVENTS_LIMIT_CHARS, type Run, resumeRun } from '../../src/run/runLog.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { wholeJob } from '../session/acts.ts';
import { canSetup, stripSetup } from '../session/setups.ts';
import { runOf } from './runs.ts';

const setup = canSetup();
const level = (value: number): BenchEvent => ({ type: 'controlSet', control: 'levelDb', value });

describe('appending', () => {
  test('an act moves the bench on and is written down with its time', () => {
    const before = createRun(setup, null);
    const after = appendEvent(before, level(-20), 1234);
    expect(after).toMatchObject({
      ok: true,
      run: { events: [{ atMs: 1234, ...level(-20) }], state: { seconds: 1.234 } },
    });
    expect(before.events).toEqual([]);
    expect(before.state).toEqual(initialState(setup));
  });

  test('two acts may share a millisecond', () => {
    const run = runOf(setup, [level(-20), level(-21)], 0);
    expect(run.events.map((event) => event.atMs)).toEqual([0, 0]);
  });

  test.each([
    ['a time before the last', 999],
    ['half a millisecond', 1000.5],
    ['no number', Number.NaN],
    ['never', Number.POSITIVE_INFINITY],
  ])('%s is refused and nothing changes', (_, atMs) => {
    const run = runOf(setup, [level(-20), level(-21)], 1000);
    const copy = JSON.stringify(run);
    expect(appendEvent(run, level(-22), atMs)).toEqual({ ok: false, reason: 'badTime' });
    expect(JSON.stringify(run)).toBe(copy);
  });

  test('a negative first time is refused', () => {
    expect(appendEvent(createRun(setup, null), level(-20), -1)).toEqual({ ok: false, reason: 'badTime' });
  });

  test('what the bench refuses is not written down', () => {
    const run = createRun(setup, null);
    expect(appendEvent(run, level(-20.5), 10)).toEqual({ ok: false, reason: 'valueOutOfRange' });
    expect(run.events).toEqual([]);
  });
});

describe('resuming', () => {
  test('the kept events give the same run', () => {
    const run = runOf(setup, wholeJob(setup).slice(0, -1));
    const resumed = resumeRun(setup, run.learner, JSON.parse(JSON.stringify(run.events)));
    expect(resumed).toEqual({ run, refused: null });
  });

  test('events of another bench go through up to the first that does not fit', () => {
    const run = runOf(setup, wholeJob(setup).slice(0, -1));
    const { run: resumed, refused } = resumeRun(stripSetup(), null, run.events);
    expect(refused).not.toBeNull();
    expect(resumed.events).toEqual(run.events.slice(0, refused!.index));
    expect(resumed.events.length).toBeLessThan(run.events.length);
  });

  test('what follows an act that the bench refuses is left out, and the run goes on from there', () => {
    const whole = runOf(setup, wholeJob(setup).slice(0, -1));
    const torn = whole.events.with(7, { ...whole.events[7]!, atMs: 0 });
    const { run, refused } = resumeRun(setup, null, torn);
    expect(refused).toEqual({ index: 7, reason: 'badTime' });
    expect(run).toEqual({ ...runOf(setup, wholeJob(setup).slice(0, 7)), learner: null });
  });
});

describe('size', () => {
  /** Turns a slug to and fro without a pause, gathered as the log asks. */
  function restless(minutes: number): Run {
    let run = runOf(setup, [{ type: 'cautionsAcknowledged' }, { type: 'toolTaken', tool: 'hex' }], 0);
    let atMs = 0;
    let way = 1;
    for (let n = 0; atMs < minutes * 60_000; n++) {
      atMs += gatherMs(run, atMs);
      if (n % 40 === 0) way = -way;
      const appended = appendEvent(run, { type: 'slugTurned', slug: 'T1B', turns: (way * (1 + (n % 7))) / 128 }, atMs);
      if (!appended.ok) throw new Error(appended.reason);
      run = appended.run;
    }
    return run;
  }

  test('an hour of turning without a pause stays below 2 MB, and no act is lost', () => {
    const run = restless(60);
    const text = serialiseRunFile(toRunFile(run, null));
    expect(Buffer.byteLength(text)).toBeLessThan(2_000_000);
    expect(Buffer.byteLength(text)).toBeGreaterThan(1_000_000);
    expect(run.eventChars).toBe(run.events.reduce((sum, event) => sum + JSON.stringify(event).length + 1, 0));
  }, 120_000);

  test('a busy first minute is taken down at thirty a second', () => {
    const run = restless(1);
    expect(run.events.length).toBeGreaterThan(60 * 29);
  });

  test('a full log takes nothing but the signing off', () => {
    const full: Run = { ...runOf(setup, wholeJob(setup).slice(0, -1)), eventChars: RUN_EVENTS_LIMIT_CHARS };
    const atMs = full.events.at(-1)!.atMs;
    expect(appendEvent(full, level(-20), atMs)).toEqual({ ok: false, reason: 'logFull' });
    expect(appendEvent(full, { type: 'signedOff' }, atMs).ok).toBe(true);
  });
});
