/** Replay: the same state as live, at the end and at every moment between. */
import { describe, expect, test } from 'vitest';
import { initialState } from '../../src/bench/setup.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { createReplayer, replay } from '../../src/run/replay.ts';
import { appendEvent, createRun } from '../../src/run/runLog.ts';
import { wholeJob } from '../session/acts.ts';
import { canSetup, stripSetup } from '../session/setups.ts';
import { runOf } from './runs.ts';

describe.each([
  ['two slugs', canSetup],
  ['nine slugs', stripSetup],
])('%s', (_, make) => {
  const setup = make();
  const run = runOf(setup, wholeJob(setup));

  test('replaying gives the state of the live run', () => {
    expect(replay(setup, run.events)).toEqual({ state: run.state, taken: run.events.length, refused: null });
  });

  test('after JSON and back, too', () => {
    expect(replay(make(), JSON.parse(JSON.stringify(run.events)) as TimedEvent[]).state).toEqual(run.state);
  });

  test('up to any moment: the events at that moment are in', () => {
    let live = createRun(setup, null);
    expect(replay(setup, run.events, -1).state).toEqual(initialState(setup));
    for (const { atMs, ...event } of run.events) {
      const appended = appendEvent(live, event, atMs);
      if (!appended.ok) throw new Error(appended.reason);
      live = appended.run;
      expect(replay(setup, run.events, atMs).state).toEqual(live.state);
      expect(replay(setup, run.events, atMs + 699).state).toEqual(live.state);
    }
  });
});

describe('a scrubber', () => {
  const setup = canSetup();
  const turns: TimedEvent[] = Array.from({ length: 1500 }, (_, i) => ({
    atMs: 1000 + 40 * i,
    type: 'slugTurned',
    slug: i % 3 === 0 ? 'T1B' : 'T1T',
    turns: (i % 5 < 3 ? 1 : -1) / 64,
  }));
  const events: TimedEvent[] = [
    { atMs: 0, type: 'cautionsAcknowledged' },
    { atMs: 500, type: 'toolTaken', tool: 'hex' },
    ...turns,
  ];

  test('any order of moments gives what a replay gives', () => {
    const replayer = createReplayer(setup, events);
    // A walk that jumps about: multiples of a number prime to the length.
    for (let k = 0; k < 60; k++) {
      const seconds = ((k * 37) % 61) * 1.013 - 0.4;
      expect(replayer.at(seconds)).toEqual(replay(setup, events, seconds * 1000).state);
    }
    expect(replayer.refused()).toBeNull();
  });

  test('the same moment is the same object, so that a picture of it need not be made again', () => {
    const replayer = createReplayer(setup, events);
    expect(replayer.at(20)).toBe(replayer.at(20));
    expect(replayer.at(20.01)).toBe(replayer.at(20));
  });

  test('counts events up to a moment', () => {
    const replayer = createReplayer(setup, events);
    expect([
      replayer.countAt(-1),
      replayer.countAt(0),
      replayer.countAt(0.5),
      replayer.countAt(1),
      replayer.countAt(1e6),
    ]).toEqual([0, 1, 2, 3, 1502]);
  });

  test('stops at an impossible event and stays there', () => {
    const broken: TimedEvent[] = [
      ...events.slice(0, 200),
      { atMs: events[199]!.atMs, type: 'crystalPulled', hz: 1 },
      ...events.slice(200),
    ];
    const replayer = createReplayer(setup, broken);
    const before = replay(setup, events.slice(0, 200)).state;
    expect(replayer.at(1e6)).toEqual(before);
    expect(replayer.refused()).toEqual({ index: 200, reason: 'noSuchCrystal' });
    expect(replayer.at(50)).toEqual(before);
    expect(replayer.at(0.1)).toEqual(replay(setup, events.slice(0, 1)).state);
    expect(replay(setup, broken)).toEqual({
      state: before,
      taken: 200,
      refused: { index: 200, reason: 'noSuchCrystal' },
    });
  });

  test('times that run back, or are no whole milliseconds, are impossible', () => {
    const back: TimedEvent[] = [events[0]!, { ...events[1]!, atMs: 500 }, { ...events[2]!, atMs: 499 }];
    expect(replay(setup, back).refused).toEqual({ index: 2, reason: 'badTime' });
    expect(replay(setup, [{ ...events[0]!, atMs: 0.5 }]).refused).toEqual({ index: 0, reason: 'badTime' });
    expect(replay(setup, [{ ...events[0]!, atMs: -1 }]).refused).toEqual({ index: 0, reason: 'badTime' });
  });
});
