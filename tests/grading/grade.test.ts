/** Whole runs on the real bench: the ideal one, the idle one, and those between (G36, G37, G42 to G45). */
import { describe, expect, test } from 'vitest';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import { trueFinding } from '../../src/bench/witness.ts';
import type { TimedEvent } from '../../src/files/runFile.ts';
import { blindTurns } from '../../src/grading/blindTurns.ts';
import { claimOf, grade, gradeUnder } from '../../src/grading/grade.ts';
import { BLOCKS, type Report } from '../../src/grading/report.ts';
import type { Fault } from '../../src/receiver/faults/fault.ts';
import {
  alignmentActs,
  connectionActs,
  proofActs,
  safetyActs,
  setUpActs,
  stateAfter,
  wholeJob,
  yActs,
} from '../session/acts.ts';
import { canSetup, stripSetup } from '../session/setups.ts';

const timed = (acts: readonly BenchEvent[], stepMs = 1000): TimedEvent[] =>
  acts.map((act, i) => ({ atMs: i * stepMs, ...act }));
const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

describe.each([
  ['two slugs', canSetup],
  ['nine slugs on a live chassis', stripSetup],
])('a run with %s', (_, make) => {
  test('done as it should be is worth exactly 100 and everything in it', () => {
    const report = grade(make(), timed(wholeJob(make())));
    expect(report.lines.filter((line) => line.points !== line.max)).toEqual([]);
    expect(report).toMatchObject({ total: 100, passed: true, word: 'haystack', caps: [] });
    expect(BLOCKS.map((block) => report.blocks[block].points)).toEqual([50, 20, 10, 10, 10]);
  });

  test('[G36] [G37] [G40] never begun earns what the set deserves as found: no care, no economy, no pass', () => {
    const report = grade(make(), []);
    expect(report.passed).toBe(false);
    expect([report.blocks.care.points, report.blocks.economy.points, report.blocks.proofs.points]).toEqual([0, 0, 0]);
    expect(report.total).toBeLessThan(30);
  });

  test('points add up: lines to blocks, blocks to the total', () => {
    const report = grade(make(), timed(halfDone(make())));
    for (const block of BLOCKS) {
      const lines = report.lines.filter((line) => line.block === block);
      expect(sum(lines.map((line) => line.points))).toBeCloseTo(report.blocks[block].points, 0);
      expect(Math.abs(sum(lines.map((line) => line.max)) - report.blocks[block].max)).toBeLessThan(0.1);
    }
    const blocks = sum(BLOCKS.map((block) => report.blocks[block].points));
    expect(Math.abs(report.total - blocks)).toBeLessThan(1.03);
    expect(report.lines.every((line) => line.points >= 0 && line.points <= line.max)).toBe(true);
    expect(new Set(report.lines.map((line) => line.id)).size).toBe(report.lines.length);
  });

  test('the same events give the same report, whatever was graded before', () => {
    const events = timed(halfDone(make()));
    const first = grade(make(), events);
    grade(make(), timed(wholeJob(make())));
    expect(grade(make(), JSON.parse(JSON.stringify(events)) as TimedEvent[])).toEqual(first);
  });

  test('curves before, after and nominal: after equals nominal when all is done', () => {
    const { curves } = grade(make(), timed(wholeJob(make())));
    expect(curves.map((c) => c.response)).toEqual(make().receiver.responses.map((r) => r.id));
    const { before, after, nominal } = curves[0]!;
    const worst = (a: Float64Array, b: Float64Array): number =>
      a.reduce((most, v, i) => Math.max(most, Math.abs(v - b[i]!)), 0);
    expect(before.hz).toEqual(nominal.hz);
    expect(worst(after.relative, nominal.relative)).toBeLessThan(1e-9);
    expect(worst(before.relative, nominal.relative)).toBeGreaterThan(0.2);
    for (const curve of [before, after, nominal]) expect(Math.max(...curve.relative)).toBeGreaterThan(0.999);
  });
});

/** Set up and the first slug mended; nothing proved. */
function halfDone(setup: BenchSetup): readonly BenchEvent[] {
  const start = initialState(setup);
  const first = alignmentActs(setup, start).slice(0, 3);
  return [...safetyActs(setup), ...connectionActs(setup), ...setUpActs(setup), ...first];
}

/** Everything but the slugs. */
function allButSlugs(setup: BenchSetup): readonly BenchEvent[] {
  const before = [...safetyActs(setup), ...connectionActs(setup), ...setUpActs(setup)];
  const state = stateAfter(setup, before, initialState(setup));
  const y = yActs(setup, state);
  const ready = stateAfter(setup, y, state);
  const proved: BenchEvent[] = [];
  for (const proof of setup.scenario.proofs) {
    proved.push(...proofActs(proof, setup, ready));
    proved.push(trueFinding(setup, stateAfter(setup, proved, ready), proof));
  }
  return [...before, ...y, ...proved, { type: 'signedOff' }];
}

describe('points that must be earned first', () => {
  const idle = (make: typeof canSetup): Report => grade(make(), timed(allButSlugs(make())));

  test('[G37] a perfect set-up with no slug turned earns no economy, and does not pass', () => {
    for (const report of [idle(canSetup), idle(stripSetup)]) {
      expect(report.blocks.truth.points).toBe(20);
      expect(report.blocks.proofs.points).toBe(10);
      expect(report.blocks.economy.points).toBe(0);
      expect(report.lines.filter((line) => line.block === 'economy').every((line) => line.held === 'workLeft')).toBe(
        true,
      );
      expect(report.passed).toBe(false);
    }
  });

  test('[G36] care is paid in the proportion of what was won, twice over, and in full from a half', () => {
    const report = idle(canSetup);
    const found = grade(canSetup(), []);
    const won = (r: Report): number => r.blocks.response.points + r.blocks.truth.points + r.blocks.proofs.points;
    const share = (won(report) - won(found)) / (80 - won(found));
    expect(share).toBeGreaterThan(0.1);
    expect(share).toBeLessThan(0.5);
    expect(report.blocks.care.points).toBeCloseTo(10 * 2 * share, 1);
    expect(grade(stripSetup(), timed(wholeJob(stripSetup()).slice(0, -1))).blocks.care.points).toBe(10);
  });

  test('[G37] economy is paid in the proportion of the response won', () => {
    const setup = canSetup();
    const acts = halfDone(setup);
    const report = grade(setup, timed(acts));
    const found = grade(setup, []).blocks.response.points;
    const share = (report.blocks.response.points - found) / (50 - found);
    expect(share).toBeGreaterThan(0);
    expect(report.blocks.economy.points).toBeCloseTo(10 * share, 1);
  });

  test('[G35] [G37] time that has earned nothing by itself is not said to have lost by what is still to be done', () => {
    const setup = canSetup();
    const late = timed(halfDone(setup)).map((event, i, all) =>
      i === all.length - 1 ? { ...event, atMs: 100 * 60_000 } : event,
    );
    const of = (events: readonly TimedEvent[]) => grade(setup, events).lines.find(({ rule }) => rule === 'G35')!;
    expect(of(late)).toMatchObject({ points: 0 });
    expect(of(late).held).toBeUndefined();
    expect(of(timed(halfDone(setup)))).toMatchObject({ held: 'workLeft' });
    expect(of(timed(halfDone(setup))).points).toBeGreaterThan(0);
  });

  test('[G36] [G37] a set left worse than found earns neither', () => {
    const setup = stripSetup({ start: { ...stripSetup().scenario.start, slugs: { T1: 0.3 } } });
    const worse: BenchEvent[] = [
      { type: 'cautionsAcknowledged' },
      { type: 'toolTaken', tool: 'hex' },
      { type: 'slugTurned', slug: 'T4', turns: 2 },
      { type: 'signedOff' },
    ];
    const report = grade(setup, timed(worse));
    expect(report.blocks.response.points).toBeLessThan(grade(setup, []).blocks.response.points);
    expect([report.blocks.care.points, report.blocks.economy.points]).toEqual([0, 0]);
  });

  test('[G37] where the response lacked nothing, the rest of the work is the measure', () => {
    const setup = canSetup({ start: { ...canSetup().scenario.start, slugs: {} } });
    const report = grade(setup, timed(allButSlugs(setup)));
    expect(report.total).toBe(100);
    expect(grade(setup, []).blocks.economy.points).toBe(0);
  });
});

describe('the whole', () => {
  test('[G42] weights are made to add up to 100', () => {
    const weights = { response: 30, truth: 10, proofs: 0, care: 5, economy: 5 };
    const report = grade(canSetup({ weights }), timed(wholeJob(canSetup())));
    expect(BLOCKS.map((block) => report.blocks[block].max)).toEqual([60, 20, 0, 10, 10]);
    expect(report.total).toBe(100);
  });

  test('[G42] a block without lines leaves its points to the others', () => {
    const setup = canSetup({ proofs: [] });
    const report = grade(setup, timed(wholeJob(setup)));
    expect(report.blocks.proofs.max).toBe(0);
    expect(report.blocks.response.max).toBe(55.56);
    expect(report.total).toBe(100);
  });

  test('[G43] the total is a whole number', () => {
    expect(Number.isInteger(grade(stripSetup(), timed(halfDone(stripSetup()))).total)).toBe(true);
  });

  test('[G44] what comes after the time limit is not looked at', () => {
    const acts = wholeJob(canSetup());
    const events = timed(acts, 10_000);
    const cut = Math.floor(acts.length / 2);
    const setup = canSetup({ timeLimitSeconds: cut * 10 });
    const report = grade(setup, events);
    expect(report).toEqual(grade(setup, events.slice(0, cut + 1)));
    expect(report.seconds).toBe(cut * 10);
    expect(report.total).toBeLessThan(grade(canSetup(), events).total);
  });

  test('[G45] at an impossible act the grading stops', () => {
    const events = timed(wholeJob(canSetup()));
    const broken = [
      ...events.slice(0, 8),
      { atMs: 8000, type: 'crystalPulled', hz: 1 } as TimedEvent,
      ...events.slice(8),
    ];
    expect(grade(canSetup(), broken).blocks).toEqual(grade(canSetup(), events.slice(0, 8)).blocks);
  });

  test('a live chassis: the run is stopped, capped and not passed', () => {
    const report = grade(stripSetup(), timed([{ type: 'cautionsAcknowledged' }, { type: 'powerSwitched', on: true }]));
    expect(report.caps).toMatchObject([{ rule: 'G38', limit: 40 }]);
    expect(report.passed).toBe(false);
    expect(report.lines.find((line) => line.rule === 'G29')).toMatchObject({ points: 0, measured: 1, atSeconds: 1 });
  });

  test('the claim holds the total and every line', () => {
    const report = grade(canSetup(), timed(wholeJob(canSetup())));
    expect(claimOf(report).total).toBe(100);
    expect(claimOf(report).lines.length).toBe(report.lines.length);
  });
});

describe('turns by a picture that lied', () => {
  test('none in a run done as it should be', () => {
    expect(blindTurns(stripSetup(), timed(wholeJob(stripSetup())))).toEqual([]);
  });

  test('overload, phase, bias and darkness are told apart, with the moment and the turns', () => {
    const setup = stripSetup();
    const ready = [...safetyActs(setup), ...connectionActs(setup), ...setUpActs(setup)];
    const turn: readonly BenchEvent[] = [
      { type: 'toolTaken', tool: 'hex' },
      { type: 'slugTurned', slug: 'T1', turns: 0.25 },
      { type: 'slugTurned', slug: 'T1', turns: 0.5 },
    ];
    const lieAfter = (...acts: readonly BenchEvent[]) => blindTurns(setup, timed([...ready, ...acts, ...turn]));
    const at = (acts: number): number => ready.length + acts + 1;
    expect(lieAfter({ type: 'controlSet', control: 'levelDb', value: -10 })).toEqual([
      { lie: 'overloaded', slug: 'T1', turns: 0.75, atSeconds: at(1) },
    ]);
    expect(lieAfter({ type: 'controlSet', control: 'phasingDegrees', value: 40 })).toMatchObject([{ lie: 'phaseOff' }]);
    expect(lieAfter({ type: 'controlSet', control: 'biasAVolts', value: 4 })).toMatchObject([{ lie: 'biasOff' }]);
    expect(lieAfter({ type: 'leadRemoved', lead: 'rf' })).toMatchObject([{ lie: 'noPicture' }]);
  });
});

describe('failed parts', () => {
  const broken = () => {
    const setup = stripSetup();
    return { ...setup, scenario: { ...setup.scenario, faults: [{ kind: 'openResistor', element: 'Rp2' } as const] } };
  };

  test('[G62] a part that has failed is worth its line when it has been replaced, and names itself where it has not', () => {
    const setup = broken();
    const job = wholeJob(setup).filter((act) => act.type !== 'partReplaced');
    const left = grade(setup, timed(job)).lines.find((line) => line.rule === 'G62')!;
    expect(left).toMatchObject({ id: 'G62:Rp2', points: 0, subject: 'Rp2' });
    expect(left.max).toBeGreaterThan(1);
    const bad = grade(setup, timed(job)).lines.filter((line) => line.block === 'response' && line.points < line.max);
    expect(bad.some((line) => line.part === 'Rp2')).toBe(true);
    const before = job.findIndex((act) => act.type === 'powerSwitched');
    const mended = [...job.slice(0, before), { type: 'partReplaced', element: 'Rp2' } as const, ...job.slice(before)];
    const report = grade(setup, timed(mended));
    expect(report.lines.find((line) => line.rule === 'G62')!.points).toBeCloseTo(left.max, 9);
    expect(report.lines.filter((line) => line.block === 'response').every((line) => line.points === line.max)).toBe(
      true,
    );
    expect(report.lines.find((line) => line.rule === 'G33')!.measured).toBe(0);
  });

  const symptomOf = (fault: Fault) => {
    const setup = stripSetup();
    const scenario = { ...setup.scenario, faults: [fault] };
    return grade({ ...setup, scenario }, []).lines.find((line) => line.rule === 'G62')!.symptom;
  };

  test('[G62] the symptom is worked out: a weak stage loads the circuit before it less, so the top falls by less than the factor, and the curve is narrower', () => {
    // 20 log10 of the factor is -9.12 dB. Grid loading goes with the transconductance (Ferris, Proc. IRE 1936, from memory), so the circuit before it is damped less.
    const symptom = symptomOf({ kind: 'weakStage', element: 'G2', factor: 0.35 });
    if (symptom?.kind !== 'curve') throw new Error('a weak stage changes the curve');
    expect(symptom.peakDb).toBeGreaterThan(20 * Math.log10(0.35));
    expect(symptom.peakDb).toBeLessThan(0);
    expect(symptom.worstDb).toBeLessThan(20 * Math.log10(0.35));
    expect(symptom.widthRatio).toBeLessThan(0.9);
    // The figures themselves are the model's own; the edited deck is held against ngspice in tests/receiver/faults/ngspice.test.ts.
    expect(symptom.peakDb).toBeCloseTo(-2.55, 1);
    expect(symptom.worstDb).toBeCloseTo(-16.65, 1);
    expect(symptom.widthRatio).toBeCloseTo(0.559, 2);
    expect(Math.abs(symptom.peakShiftHz - 1.026e6)).toBeLessThan(30e3);
  });

  test('[G62] diode, line and core have symptoms of their own', () => {
    expect(symptomOf({ kind: 'reversedDiode', detector: 'D1' })).toEqual({
      ...{ kind: 'diode', reversed: true, detectedRatio: 1 },
    });
    expect(symptomOf({ kind: 'leakyDiode', detector: 'D1', ohms: 500 })).toMatchObject({
      kind: 'diode',
      reversed: false,
    });
    // Ohm's law with the 470 kilohm of a line: 150 / 620 of a volt.
    expect(symptomOf({ kind: 'leakyBiasLine', at: 'AGC', ohms: 150e3 })).toEqual({
      ...{ kind: 'line', volts: -0.24, soundVolts: -1 },
    });
    expect(symptomOf({ kind: 'crackedSlug', slug: 'T3' })).toEqual({ kind: 'core' });
  });

  test('[G40] with a part left that has failed a run does not pass, whatever its points', () => {
    const setup = stripSetup();
    const faults = [{ kind: 'leakyBiasLine', at: 'AGC', ohms: 150e3 } as const];
    const faulty = { ...setup, scenario: { ...setup.scenario, faults } };
    const job = wholeJob(faulty);
    const done = grade(faulty, timed(job));
    const left = grade(faulty, timed(job.filter((act) => act.type !== 'partReplaced')));
    expect(left.total).toBeGreaterThanOrEqual(70);
    expect([left.passed, left.verdicts.aligned]).toMatchObject([false, { stands: false }]);
    expect(left.verdicts.aligned.lacks).toContain(left.lines.find((line) => line.rule === 'G62')!.id);
    expect([done.passed, done.verdicts.aligned.lacks]).toEqual([true, []]);
    const [before, after] = [left, done].map((_, i) =>
      gradeUnder(1)(faulty, timed(i === 0 ? job.filter((act) => act.type !== 'partReplaced') : job)),
    );
    expect([before?.passed, before?.wanting]).toEqual([false, ['part']]);
    expect([after?.passed, after?.wanting]).toEqual([true, []]);
  });
});
