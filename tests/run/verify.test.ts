/** The verdicts on run files, told apart: each kind of damage, and each kind of forgery with a fresh seal. */

import { describe, expect, test } from 'vitest';
import { good as found } from '../../src/base/result.ts';
import type { RunFile, TimedEvent } from '../../src/files/runFile.ts';
import { readRunFile } from '../../src/files/runFileSchema.ts';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { sealEvents, sealRun } from '../../src/files/seal.ts';
import { judgeText } from '../../src/judge/judgeRun.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { type Verdict, verifyRun } from '../../src/run/verify.ts';
import { wholeJob } from '../session/acts.ts';
import { canSetup, stripSetup } from '../session/setups.ts';
import { finishedFile, knownBench, recompute, runOf } from './runs.ts';

const setup = stripSetup();
const good = finishedFile(setup);
const judge = (file: RunFile): Verdict => verifyRun(file, knownBench(setup), recompute);
const withEvents = (events: readonly TimedEvent[], fresh: boolean): RunFile => ({
  ...good,
  events,
  seal: fresh ? sealRun(good, events) : good.seal,
});
const without = (index: number): TimedEvent[] => good.events.filter((_, i) => i !== index);
const swapped = (i: number, j: number): TimedEvent[] => {
  const events = [...good.events];
  [events[i], events[j]] = [events[j]!, events[i]!];
  return events;
};
const firstTurn = good.events.findIndex((event) => event.type === 'slugTurned');

describe('whole and true', () => {
  test('verified, with the score', () => {
    expect(judge(good)).toEqual({ kind: 'verified', score: good.claimed });
  });

  test('verified from text', () => {
    const judgement = judgeText(serialiseRunFile(good), 'run.json', (scenario) => {
      expect(scenario).toEqual(setup.scenario);
      return found(knownBench(setup, scenarioHash(setup.scenario)));
    });
    expect(judgement).toMatchObject({
      verdict: { kind: 'verified' },
      scenarioKnown: true,
      run: { learner: good.learner },
    });
    expect(judgeText(serialiseRunFile(good), 'run.json', () => found(knownBench(setup))).scenarioKnown).toBe(false);
  });

  test('unclaimed: in order but not signed off', () => {
    const half = runOf(setup, wholeJob(setup).slice(0, 12));
    const verdict = judge(toRunFile(half, null));
    expect(verdict).toMatchObject({ kind: 'unclaimed', score: { passed: false } });
  });

  test('signed off, and the claim taken out, which no seal covers', () => {
    const half = runOf(setup, [...wholeJob(setup).slice(0, 12), { type: 'signedOff' }]);
    expect(judge(toRunFile(half, null))).toEqual({ kind: 'claimMissing', score: recompute(setup, half.events) });
  });

  test('a stopped run may claim its score without being signed off', () => {
    const run = runOf(setup, [{ type: 'cautionsAcknowledged' }, { type: 'powerSwitched', on: true }]);
    const file = toRunFile(run, recompute(setup, run.events));
    expect(judge(file).kind).toBe('verified');
  });
});

describe('the score', () => {
  test('a raised line is named with both figures', () => {
    const half = runOf(setup, [...wholeJob(setup).slice(0, 30), { type: 'signedOff' }]);
    const file = toRunFile(half, recompute(setup, half.events));
    const claimed = file.claimed!;
    const index = claimed.lines.findIndex((line) => line.points === 0);
    const lines = claimed.lines.map((line, i) => (i === index ? { ...line, points: 3 } : line));
    expect(judge({ ...file, claimed: { ...claimed, lines } })).toMatchObject({
      kind: 'scoreDiffers',
      lines: [{ id: claimed.lines[index]!.id, claimed: 3, recomputed: 0 }],
    });
    expect(judge({ ...file, claimed: { ...claimed, total: claimed.total + 1 } })).toMatchObject({
      kind: 'scoreDiffers',
      lines: [],
    });
    expect(judge({ ...file, claimed: { ...claimed, passed: !claimed.passed } }).kind).toBe('scoreDiffers');
  });

  test('a line that is not there, and one that is missing', () => {
    const claimed = good.claimed!;
    const lines = [{ id: 'G99:luck', points: 5 }, ...claimed.lines.slice(1)];
    expect(judge({ ...good, claimed: { ...claimed, lines } })).toMatchObject({
      kind: 'scoreDiffers',
      lines: [
        { id: 'G99:luck', claimed: 5, recomputed: null },
        { id: claimed.lines[0]!.id, claimed: null, recomputed: claimed.lines[0]!.points },
      ],
    });
  });

  test('acts forged with a fresh seal: possible, but they earn another score', () => {
    const turn = good.events[firstTurn] as TimedEvent & { type: 'slugTurned' };
    const forged = good.events.map((event, i) => (i === firstTurn ? { ...turn, turns: turn.turns / 2 } : event));
    const verdict = judge(withEvents(forged, true));
    expect(verdict.kind).toBe('scoreDiffers');
    if (verdict.kind === 'scoreDiffers') expect(verdict.recomputed.total).toBeLessThan(100);
  });
});

describe('damage to the events', () => {
  test('one figure changed', () => {
    const turn = good.events[firstTurn] as TimedEvent & { type: 'slugTurned' };
    const changed = good.events.map((event, i) => (i === firstTurn ? { ...turn, turns: turn.turns + 1 / 64 } : event));
    expect(judge(withEvents(changed, false))).toEqual({ kind: 'eventsChanged' });
  });

  test('one event added', () => {
    const added = [
      ...good.events.slice(0, -1),
      { ...good.events.at(-2)!, type: 'toolTaken', tool: null } as TimedEvent,
      good.events.at(-1)!,
    ];
    expect(judge(withEvents(added, false))).toEqual({ kind: 'eventsChanged' });
  });

  test('cut short at the end, or in the middle', () => {
    const n = good.events.length;
    expect(judge(withEvents(good.events.slice(0, -5), false))).toEqual({
      kind: 'truncated',
      found: n - 5,
      recorded: n,
    });
    expect(judge(withEvents(without(4), false))).toEqual({ kind: 'truncated', found: n - 1, recorded: n });
    expect(judge(withEvents([], false))).toEqual({ kind: 'truncated', found: 0, recorded: n });
  });

  test('cut short with a fresh seal: the claim gives it away', () => {
    const cut = good.events.slice(0, -1);
    expect(judge(withEvents(cut, true))).toEqual({ kind: 'truncated', found: cut.length, recorded: null });
  });

  test('out of order: the first that stands before its time is named', () => {
    expect(judge(withEvents(swapped(3, 6), false))).toEqual({ kind: 'reordered', index: 4 });
    expect(judge(withEvents(swapped(3, 6), true))).toEqual({ kind: 'reordered', index: 4 });
  });

  test('out of order within one millisecond', () => {
    const run = runOf(setup, wholeJob(setup), 0);
    const file = toRunFile(run, recompute(setup, run.events));
    const events = [...file.events];
    [events[2], events[3]] = [events[3]!, events[2]!];
    expect(judge({ ...file, events })).toEqual({ kind: 'reordered', index: null });
  });

  test('an act that the bench refuses, with its number, time and reason', () => {
    const bad: TimedEvent = { atMs: good.events[10]!.atMs, type: 'slugTurned', slug: 'T1', turns: 0.5 };
    const forged = [...good.events.slice(0, 11), bad, ...good.events.slice(11)];
    expect(judge(withEvents(forged, true))).toEqual({
      kind: 'impossibleEvent',
      index: 11,
      atMs: bad.atMs,
      type: 'slugTurned',
      reason: 'noToolInHand',
    });
  });

  test('an act after signing off', () => {
    const late: TimedEvent = { atMs: 1e6, type: 'toolTaken', tool: 'hex' };
    expect(judge(withEvents([...good.events, late], true))).toMatchObject({
      kind: 'impossibleEvent',
      reason: 'runIsOver',
    });
  });
});

describe('damage to the head', () => {
  test('another name, day or run under the same events is told, and the events are said to be whole', () => {
    for (const change of [{ learner: 'Somebody else' }, { learner: null }, { day: '2026-05-31' }, { runId: 'r2' }])
      expect(judge({ ...good, ...change })).toEqual({ kind: 'headChanged' });
  });

  test('so is a key that a later bench may add', () => {
    const dealt = { ...good, dealt: 7 } as RunFile;
    expect(judge(dealt)).toEqual({ kind: 'headChanged' });
    expect(judge({ ...dealt, seal: sealRun(dealt, good.events) }).kind).toBe('verified');
  });

  test('what is sealed anew agrees with itself: a public seal shows no more than that', () => {
    const other = { ...good, learner: 'Somebody else' };
    expect(judge({ ...other, seal: sealRun(other, other.events) }).kind).toBe('verified');
  });

  test('a file of the first version is verified by its events alone', () => {
    const { rules: _, day: __, runId: ___, seal: ____, ...rest } = good;
    const first = { ...rest, version: 1, eventsHash: sealEvents(good.events) };
    const read = readRunFile(JSON.stringify(first), 'first.json');
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.value).toMatchObject({ version: 2, rules: 1, day: null, runId: null, learner: good.learner });
    expect(judge(read.value).kind).toBe('verified');
    expect(judge({ ...read.value, events: without(4) }).kind).toBe('truncated');
    // A file of today cannot pass for one by losing a part of its seal.
    const short = JSON.stringify({ ...good, seal: sealEvents(good.events) });
    expect(readRunFile(short, 'short.json')).toMatchObject({ ok: false, problems: [{ place: '/seal' }] });
  });
});

describe('foreign', () => {
  test('graded by other rules', () => {
    expect(judge({ ...good, rules: 999 })).toMatchObject({ kind: 'foreign', part: 'rules', found: '999' });
  });

  test('another version of the bench', () => {
    expect(judge({ ...good, engine: '9.9.9' })).toMatchObject({ kind: 'foreign', part: 'engine', found: '9.9.9' });
  });

  test('another receiver, or one of the same name that was changed', () => {
    expect(verifyRun(good, knownBench(canSetup()), recompute)).toMatchObject({ kind: 'foreign', part: 'receiver' });
    const main = mainResponse(setup.receiver);
    const other = { ...main, setUp: { ...main.setUp, levelDb: -40 } };
    const retuned = { ...setup, receiver: { ...setup.receiver, responses: [other] } };
    expect(verifyRun(good, knownBench(retuned), recompute)).toMatchObject({ kind: 'foreign', part: 'receiver' });
  });

  test('a scenario changed under its hash, or made easier with a fresh one', () => {
    const easy = { ...good.scenario, toleranceFactor: 3 };
    expect(judge({ ...good, scenario: easy })).toMatchObject({ kind: 'foreign', part: 'scenario' });
    const resealed = { ...good, scenario: easy, scenarioHash: scenarioHash(easy) };
    expect(verifyRun(resealed, knownBench(setup, scenarioHash(setup.scenario)), recompute)).toMatchObject({
      kind: 'foreign',
      part: 'scenario',
    });
  });

  const fromText = (text: string): Verdict => judgeText(text, 'run.json', () => found(knownBench(setup))).verdict;

  test('a file of another kind or of a newer bench', () => {
    expect(fromText(JSON.stringify(setup.scenario))).toMatchObject({
      kind: 'unreadable',
      problems: [{ place: '/format' }],
    });
    expect(fromText('{"answer": 42}')).toMatchObject({ kind: 'unreadable', problems: [{ place: '/format' }] });
    expect(fromText(JSON.stringify({ ...good, version: 3 }))).toMatchObject({ kind: 'foreign', part: 'version' });
  });

  test('a receiver that nobody here knows', () => {
    expect(judgeText(serialiseRunFile(good), 'run.json', () => null).verdict).toMatchObject({
      kind: 'foreign',
      part: 'noReceiver',
    });
  });

  test('unreadable: every problem, nothing loaded', () => {
    const verdict = fromText(JSON.stringify({ ...good, learner: 7, scenario: { ...good.scenario, seed: 'seven' } }));
    expect(verdict.kind).toBe('unreadable');
    if (verdict.kind === 'unreadable')
      expect(verdict.problems.map((p) => p.place).sort()).toEqual(['/learner', '/scenario/seed']);
    expect(fromText('no run at all').kind).toBe('unreadable');
  });

  test('unreadable: a scenario that its receiver cannot play', () => {
    const scenario = { ...good.scenario, start: { ...good.scenario.start, slugs: { T99: 1 } } };
    const verdict = fromText(serialiseRunFile({ ...good, scenario, scenarioHash: scenarioHash(scenario) }));
    expect(verdict).toMatchObject({ kind: 'unreadable', problems: [{ place: '/scenario/start/slugs/T99' }] });
  });
});
