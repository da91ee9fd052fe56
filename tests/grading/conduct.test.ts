/** Rules G27 to G35 and G38 to G43: proofs, care, economy, caps and words, each on its own. */
import { describe, expect, test } from 'vitest';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { type BenchState, type IncidentKind, NO_PROOFS } from '../../src/bench/benchState.ts';
import { initialState } from '../../src/bench/setup.ts';
import { toolFor } from '../../src/bench/tools.ts';
import { gradeUnder } from '../../src/grading/grade.ts';
import { capsOf, passes, totalOf, wantingFor, wordOf } from '../../src/grading/verdictOfRun.ts';
import { canSetup } from '../session/setups.ts';
import { careLines, economyLines, proofLines } from './drafts.ts';

const { scenario } = canSetup();
const state = initialState(canSetup());
const happened = (...kinds: readonly IncidentKind[]): BenchState['incidents'] =>
  kinds.map((kind, i) => ({ kind, atSeconds: 60 + i, subject: 'T1T' }));

describe('proofs', () => {
  const done = { done: true, doneAtSeconds: 512, from: null };

  test('[G27] each that stands done earns an equal share', () => {
    const lines = proofLines({ ...state, proofs: { ...NO_PROOFS, touchEarth: done } }, scenario);
    expect(lines.map((line) => line.weight)).toEqual(scenario.proofs.map(() => 1));
    expect(lines.length).toBeGreaterThan(4);
    expect(lines.filter((line) => line.earned === 1)).toMatchObject([
      { id: 'G27:touchEarth', subject: 'touchEarth', atSeconds: 512 },
    ]);
  });

  test('[G27] only those that the scenario asks for', () => {
    expect(proofLines(state, { ...scenario, proofs: ['skirts'] }).map((line) => line.id)).toEqual(['G27:skirts']);
  });
});

describe('care', () => {
  const earned = (rule: string, ...kinds: readonly IncidentKind[]): number =>
    careLines(happened(...kinds), { ...scenario, faults: [{ kind: 'screwedIn' }] }).find((line) => line.rule === rule)!
      .earned;

  test('nothing happened: everything is paid', () => {
    expect(careLines([], scenario).every((line) => line.earned === 1 && line.measured === 0)).toBe(true);
  });

  const rules: readonly (readonly [string, IncidentKind, readonly number[]])[] = [
    ['[G28] leads handled with the set on: half each time', 'wrongPowerOrder', [0.5, 0, 0]],
    ['[G29] a live chassis: gone at once', 'hotChassis', [0, 0, 0]],
    ['[G29] the high-tension corner: gone at once', 'hotTouch', [0, 0, 0]],
    ['[G30] steel: a quarter each time', 'steelTool', [0.75, 0.5, 0.25]],
    ['[G30] a head that does not fit: a quarter each time', 'wrongHead', [0.75, 0.5, 0.25]],
    ['[G31] forced past a stop: half each time', 'forcedStop', [0.5, 0, 0]],
    ['[G32] a cracked slug: gone at once', 'crackedSlug', [0, 0, 0]],
    ['[G33] a good part replaced: half each time', 'goodPartReplaced', [0.5, 0, 0]],
    ['[G69] a lead clipped on before the earth strap: half each time', 'beforeEarth', [0.5, 0, 0]],
  ];
  test.each(rules)('%s', (title, kind, shares) => {
    const rule = /\[(G\d+)\]/.exec(title)![1]!;
    expect(earned(rule, kind)).toBe(shares[0]);
    expect(earned(rule, kind, kind)).toBe(shares[1]);
    expect(earned(rule, kind, kind, kind)).toBe(shares[2]);
    // Nothing else suffers by it.
    const others = careLines(happened(kind), { ...scenario, faults: [{ kind: 'screwedIn' }] }).filter(
      (line) => line.rule !== rule,
    );
    expect(others.every((line) => line.earned === 1)).toBe(true);
  });

  test('[G33] without faults there is no such line', () => {
    expect(careLines([], scenario).map((line) => line.rule)).toEqual(['G28', 'G29', 'G30', 'G31', 'G32', 'G69']);
  });

  test('[G69] on a set that does not run from the mains there is no such line', () => {
    expect(careLines([], scenario, false).map((line) => line.rule)).toEqual(['G28', 'G29', 'G30', 'G31', 'G32']);
  });

  test('[G33] in a sealed job there is, whether anything has failed or not', () => {
    const sealed = { ...scenario, sealed: true };
    const lines = careLines(happened('goodPartReplaced'), sealed);
    expect(lines.find((line) => line.rule === 'G33')?.earned).toBe(0.5);
    expect(lines.length).toBe(7);
  });

  test('a line of care says when it first happened, and to what', () => {
    const line = careLines(happened('forcedStop', 'forcedStop'), scenario).find((one) => one.rule === 'G31');
    expect(line).toMatchObject({ measured: 2, high: 0, subject: 'T1T', atSeconds: 60 });
  });
});

describe('economy', () => {
  const at = (turnsMade: number, seconds: number): number[] =>
    economyLines(turnsMade, seconds, { turns: 6, seconds: 600 }).map((line) => line.earned);

  test('[G34] turns: full to par, gone at three times par', () => {
    expect([at(6, 0), at(12, 0), at(18, 0)].map(([turns]) => turns)).toEqual([1, 0.5, 0]);
  });

  test('[G35] time: full to par, gone at three times par', () => {
    expect([at(0, 600), at(0, 1200), at(0, 1800)].map(([, time]) => time)).toEqual([1, 0.5, 0]);
  });

  test('[G34] two turns are free where par has fewer, and were not under rules 5', () => {
    const can = canSetup();
    const setup = { ...can, scenario: { ...can.scenario, par: { turns: 1, seconds: 600 } } };
    const there = (turns: number): BenchEvent => ({ type: 'slugTurned', slug: 'T1T', turns });
    const tool: BenchEvent = {
      type: 'toolTaken',
      tool: toolFor(can.receiver.adjusters.find(({ id }) => id === 'T1T')!.head),
    };
    const acts = [{ type: 'cautionsAcknowledged' } as const, tool, there(0.5), there(-0.5), there(0.5), there(-0.5)];
    const events = acts.map((act, i) => ({ atMs: 1000 * i, ...act }));
    const turns = (rules: 5 | 6) => gradeUnder(rules)(setup, events).lines.find(({ id }) => id === 'G34')!;
    expect([turns(6).measured, turns(6).high, turns(5).high]).toEqual([2, 2, 1]);
    expect([gradeUnder(6)(setup, events).parTurns, gradeUnder(5)(setup, events).parTurns]).toEqual([2, 1]);
  });

  test('[G34] a par of nothing is met by turning nothing', () => {
    const lines = (turnsMade: number) => economyLines(turnsMade, 10, { turns: 0, seconds: 600 });
    expect(lines(0)[0]!.earned).toBe(1);
    expect(lines(0.5)[0]!.earned).toBe(0);
  });
});

describe('the whole', () => {
  test('[G38] a hot chassis caps at 40', () => {
    const caps = capsOf({ ...state, incidents: happened('hotChassis') });
    expect(caps).toEqual([{ rule: 'G38', limit: 40, subject: 'T1T', atSeconds: 60 }]);
    expect(totalOf(97, caps)).toBe(40);
    expect(totalOf(12, caps)).toBe(12);
  });

  test('[G39] the high-tension corner caps at 60, and the lowest cap counts', () => {
    expect(totalOf(97, capsOf({ ...state, incidents: happened('hotTouch', 'hotTouch') }))).toBe(60);
    expect(totalOf(97, capsOf({ ...state, incidents: happened('hotTouch', 'hotChassis') }))).toBe(40);
  });

  test('[G38] lesser incidents cap nothing', () => {
    expect(
      capsOf({ ...state, incidents: happened('wrongPowerOrder', 'steelTool', 'forcedStop', 'crackedSlug') }),
    ).toEqual([]);
  });

  test('[G40] under the first rules a run with points enough that does not pass is told what it wants', () => {
    expect(wantingFor(80, [], { workDone: 1, proved: true, mended: true })).toEqual([]);
    expect(wantingFor(80, [], { workDone: 1, proved: false, mended: true })).toEqual(['proof']);
    expect(wantingFor(80, [], { workDone: 0.1, proved: false, mended: true })).toEqual(['proof', 'work']);
    expect(wantingFor(80, [], { workDone: 1, proved: true, mended: false })).toEqual(['part']);
    expect(wantingFor(69, [], { workDone: 0.1, proved: false, mended: true })).toEqual([]);
    expect(
      wantingFor(60, [{ rule: 'G39', limit: 60, subject: 'rf', atSeconds: 1 }], {
        workDone: 1,
        proved: false,
        mended: true,
      }),
    ).toEqual([]);
  });

  test('[G40] under the first rules pass from 70, without a cap, with a quarter of what was lacking won and a proof that stands', () => {
    expect(passes(70, [], { workDone: 0.9, proved: true, mended: true })).toBe(true);
    expect(passes(69, [], { workDone: 0.9, proved: true, mended: true })).toBe(false);
    expect(
      passes(90, capsOf({ ...state, incidents: happened('hotTouch') }), { workDone: 0.9, proved: true, mended: true }),
    ).toBe(false);
    expect(passes(80, [], { workDone: 0.25, proved: true, mended: true })).toBe(true);
    expect(passes(80, [], { workDone: 0.24, proved: true, mended: true })).toBe(false);
    expect(passes(80, [], { workDone: 0.9, proved: false, mended: true })).toBe(false);
    expect(passes(80, [], { workDone: 0, proved: true, mended: true })).toBe(false);
    expect(passes(90, [], { workDone: 0.9, proved: true, mended: false })).toBe(false);
    expect(passes(80, [], { workDone: -0.2, proved: true, mended: true })).toBe(false);
  });

  test('[G41] the ladder of words', () => {
    const words = [0, 34, 35, 54, 55, 69, 70, 89, 90, 100].map((total) => wordOf(total, total >= 70));
    expect(words).toEqual([
      ...['stubble', 'stubble', 'swath', 'swath', 'windrow'],
      ...['windrow', 'haycock', 'haycock', 'haystack', 'haystack'],
    ]);
    expect(wordOf(95, false)).toBe('windrow');
  });

  test('[G43] whole points, rounded down, but a hair below the whole is the whole', () => {
    expect(totalOf(99.99, [])).toBe(99);
    expect(totalOf(100 - 1e-9, [])).toBe(100);
  });
});
