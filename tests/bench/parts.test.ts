/**
 * Parts that have failed, and new ones, at the bench: those that edit no deck are seen on tube and meter here; the others in tests/receiver/faults. What the trade says
 * of each is common practice, no source, where no formula stands beside it.
 */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { AGC_LINE_OHMS, METER_OHMS_PER_VOLT } from '../../src/bench/instruments.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import type { Fault } from '../../src/receiver/faults/fault.ts';
import { partsTray } from '../../src/receiver/faults/partsTray.ts';
import { canSetup, play, readySetup, refusal, stripSetup } from './fixture.ts';
import { heights, trace } from './look.ts';

const strip = (...faults: readonly Fault[]): BenchSetup => readySetup(stripSetup, { faults });
const can = (...faults: readonly Fault[]): BenchSetup => readySetup(canSetup, { faults });
const off: BenchEvent = { type: 'powerSwitched', on: false };
const on: BenchEvent = { type: 'powerSwitched', on: true };
const replace = (element: string): BenchEvent => ({ type: 'partReplaced', element });
const hex: BenchEvent = { type: 'toolTaken', tool: 'hex' };
/** At one and the same second: the trace's own shimmer is a matter of time. */
const seen = (setup: BenchSetup, state: BenchState): number[] =>
  heights(trace(createBench(setup).display({ ...state, seconds: 100 })));
const kinds = (state: BenchState): string[] => state.incidents.map((i) => i.kind);
const most = (values: readonly number[]): number =>
  values.reduce((best, v) => (Math.abs(v) > Math.abs(best) ? v : best), 0);
const apart = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((worst, v, i) => Math.max(worst, Math.abs(v - b[i]!)), 0);

describe('replacing a part', () => {
  it('is not offered where nothing can have failed', () => {
    expect(refusal(strip(), play(strip(), [off]), replace('Rp1'))).toBe('notInThisScenario');
  });

  it('is offered in every sealed job: in a sound set it changes nothing and is written down', () => {
    const sealed = readySetup(stripSetup, { sealed: true });
    const after = play(sealed, [off, replace('Rp1'), on]);
    expect(after.incidents).toMatchObject([{ kind: 'goodPartReplaced', subject: 'Rp1' }]);
    expect(apart(seen(sealed, after), seen(sealed, play(sealed, [off, on])))).toBeLessThan(1e-9);
  });

  it('takes only what lies in the tray, and each once', () => {
    const setup = strip({ kind: 'openResistor', element: 'Rp1' });
    const state = play(setup, [off]);
    expect(refusal(setup, state, replace('R999'))).toBe('noSuchPart');
    expect(refusal(setup, state, replace('K39'))).toBe('noSuchPart');
    expect(refusal(setup, play(setup, [replace('Rp1')], state), replace('Rp1'))).toBe('alreadySo');
  });

  it('that had failed gives the sound curve back and costs nothing', () => {
    const setup = strip({ kind: 'openResistor', element: 'Rp1' });
    const sound = seen(strip(), play(strip(), [off, on]));
    const before = play(setup, [off, on]);
    expect(apart(seen(setup, before), sound)).toBeGreaterThan(1);
    const after = play(setup, [off, replace('Rp1'), on]);
    expect(apart(seen(setup, after), sound)).toBeLessThan(1e-6);
    expect(kinds(after)).toEqual([]);
  });

  it('that was good changes nothing and is written down, with its name', () => {
    const setup = strip({ kind: 'openResistor', element: 'Rp1' });
    const after = play(setup, [off, replace('Rp2'), on]);
    expect(after.incidents).toMatchObject([{ kind: 'goodPartReplaced', subject: 'Rp2' }]);
    expect(apart(seen(setup, after), seen(setup, play(setup, [off, on])))).toBeLessThan(1e-9);
  });

  it('two faults: each cure takes its own away', () => {
    const [first, second]: Fault[] = [
      { kind: 'openResistor', element: 'Rp1' },
      { kind: 'weakStage', element: 'G3', factor: 0.4 },
    ];
    const both = strip(first!, second!);
    const half = play(both, [off, replace('G3'), on]);
    expect(apart(seen(both, half), seen(strip(first!), play(strip(first!), [off, on])))).toBeLessThan(1e-6);
    const whole = play(both, [off, replace('Rp1'), on], half);
    expect(apart(seen(both, whole), seen(strip(), play(strip(), [off, on])))).toBeLessThan(1e-6);
    expect(kinds(whole)).toEqual([]);
  });

  it('of two that have changed places: either puts both back, and the other is no good part wasted', () => {
    const setup = strip({ kind: 'swappedTraps', first: 'Cp1', second: 'Cdet' });
    const other = strip({ kind: 'swappedTraps', first: 'C39', second: 'Cmix' });
    expect(kinds(play(setup, [off, replace('Cdet'), replace('Cp1')]))).toEqual([]);
    const sound = seen(strip(), play(strip(), [off, on]));
    for (const part of ['C39', 'Cmix']) {
      expect(apart(seen(other, play(other, [off, replace(part), on])), sound)).toBeLessThan(1e-6);
    }
  });

  it('in a set that is on is work in the wrong order; a set without mains has no such order', () => {
    const setup = strip({ kind: 'openResistor', element: 'Rp1' });
    expect(kinds(play(setup, [replace('Rp1')]))).toEqual(['wrongPowerOrder']);
    const loose = can({ kind: 'openResistor', element: 'RQ1' });
    expect(kinds(play(loose, [replace('RQ1')]))).toEqual([]);
  });

  it('takes back what was proved', () => {
    const setup = strip({ kind: 'openResistor', element: 'Rp1' });
    const level = Number(setup.scenario.start.controls.levelDb);
    const halved: BenchEvent[] = [
      { type: 'controlSet', control: 'levelDb', value: level - 6 },
      { type: 'controlSet', control: 'levelDb', value: level },
    ];
    const proved = play(setup, [hex, { type: 'slugTurned', slug: 'T1', turns: 0.25 }, ...halved]);
    expect(proved.proofs.halveLevel.done).toBe(true);
    expect(play(setup, [off, replace('Rp1')], proved).proofs.halveLevel.done).toBe(false);
  });

  it('the tray holds every resistor, capacitor, stage, turned coil, diode, line, and the screen', () => {
    const { receiver, deck } = strip();
    const names = partsTray(receiver, deck).map((p) => p.name);
    for (const name of ['Rp1', 'C39', 'G2', 'L39', 'D1', 'AGC', 'shield']) expect(names).toContain(name);
    expect(new Set(names).size).toBe(names.length);
  });
});

describe('a coil with a cracked core', () => {
  const setup = strip({ kind: 'crackedSlug', slug: 'T3' });
  it('does not follow the tool, and turns again when it is new, from half way', () => {
    const state = play(setup, [hex]);
    const turn: BenchEvent = { type: 'slugTurned', slug: 'T3', turns: 0.5 };
    expect(refusal(setup, state, turn)).toBe('slugCracked');
    const renewed = play(setup, [off, replace('Lp1'), on], state);
    const travel = setup.receiver.adjusters.find((a) => a.id === 'T3')!.travelTurns;
    expect(renewed.slugs.T3).toEqual({
      ...{ screwTurns: travel / 2, coreTurns: travel / 2 },
      ...{ cracked: false, forcedTurns: 0, wear: 0 },
    });
    expect(kinds(renewed)).toEqual([]);
    expect(play(setup, [turn], renewed).slugs.T3!.screwTurns).toBe(travel / 2 + 0.5);
  });

  it('that the learner has cracked can be renewed as well, again and again', () => {
    const mine = strip({ kind: 'openResistor', element: 'Rp1' });
    const force = Array.from({ length: 12 }, (): BenchEvent => ({ type: 'slugTurned', slug: 'T1', turns: -1.99 }));
    let state = play(mine, [hex]);
    for (let round = 0; round < 2; round++) {
      for (const act of force) if (!state.slugs.T1!.cracked) state = play(mine, [act], state);
      expect(state.slugs.T1!.cracked).toBe(true);
      state = play(mine, [off, replace('Lmix'), on], state);
      expect(state.slugs.T1!.cracked).toBe(false);
    }
    expect(kinds(state).filter((k) => k === 'goodPartReplaced')).toEqual([]);
  });
});

describe('leads without contact', () => {
  it('a strap that is loose hums like none, until it is lifted and put back', () => {
    const setup = strip({ kind: 'looseEarth' });
    const lift: BenchEvent = { type: 'leadRemoved', lead: 'earth' };
    const back: BenchEvent = { type: 'leadConnected', lead: 'earth', to: 'Earth' };
    const state = play(setup, [off, on]);
    const bench = createBench(setup);
    expect(bench.facts(state).earthed).toBe(false);
    const without = play(strip(), [off, lift, on]);
    expect(bench.display(state).humDiv).toBeCloseTo(createBench(strip()).display(without).humDiv, 9);
    expect(bench.display(state).humDiv).toBeGreaterThan(0.1);
    const good = play(setup, [off, lift, back, on], state);
    expect(bench.facts(good).earthed).toBe(true);
    expect(bench.display(good).humDiv).toBe(0);
  });

  it('a lead whose pad is open tilts the curve as an open end does, until it is clipped on again', () => {
    const setup = strip({ kind: 'unmatchedLead' });
    const bench = createBench(setup);
    const state = play(setup, [off, on]);
    expect(bench.facts(state).rfTerminated).toBe(false);
    const open: BenchEvent = { type: 'controlSet', control: 'rfTerminated', value: false };
    const openEnd = play(strip(), [off, on, open]);
    expect(apart(seen(setup, state), seen(strip(), openEnd))).toBeLessThan(1e-6);
    const again = play(
      setup,
      [off, { type: 'leadRemoved', lead: 'rf' }, { type: 'leadConnected', lead: 'rf', to: 'TP1' }, on],
      state,
    );
    expect(bench.facts(again).rfTerminated).toBe(true);
    expect(apart(seen(setup, again), seen(strip(), play(strip(), [off, on])))).toBeLessThan(1e-6);
  });
});

describe('diodes and lines', () => {
  it('a diode the wrong way round: the same picture upside down', () => {
    const setup = strip({ kind: 'reversedDiode', detector: 'D1' });
    const right = seen(strip(), play(strip(), [off, on]));
    const wrong = seen(setup, play(setup, [off, on]));
    expect(Math.abs(most(right))).toBeGreaterThan(1);
    expect(most(wrong) / most(right)).toBeCloseTo(-1, 3);
    expect(apart(seen(setup, play(setup, [off, replace('D1'), on])), right)).toBeLessThan(1e-6);
  });

  it('a diode that leaks: less volts, and the circuit that feeds it damped', () => {
    const setup = strip({ kind: 'leakyDiode', detector: 'D1', ohms: 1000 });
    const ratio = (state: BenchState): number => createBench(setup).facts(state).detectedPeakVolts;
    const leaking = play(setup, [off, on]);
    const good = play(setup, [off, replace('D1'), on]);
    expect(ratio(leaking) / ratio(good)).toBeLessThan(0.7);
    expect(kinds(good)).toEqual([]);
  });

  it('a line that leaks stands lower by the divider of its own resistance, leak and meter; the supply holds it all the same', () => {
    const ohms = 150e3;
    const setup = strip({ kind: 'leakyBiasLine', at: 'AGC', ohms });
    const acts = (range: number): BenchEvent[] => [
      off,
      { type: 'leadRemoved', lead: 'rf' },
      { type: 'leadRemoved', lead: 'biasA' },
      { type: 'leadConnected', lead: 'meter', to: 'AGC' },
      on,
      { type: 'controlSet', control: 'meterRangeVolts', value: range },
    ];
    const volts = (s: BenchSetup): number => createBench(s).display(play(s, acts(3))).meterVolts;
    const rest = strip().receiver.biasLines[0]!.unclampedRestVolts;
    // Ohm's law: leak and meter side by side below the line's own resistance.
    const meter = METER_OHMS_PER_VOLT * 3;
    const divided = (below: number): number => below / (below + AGC_LINE_OHMS);
    expect(volts(strip())).toBeCloseTo(rest * divided(meter), 3);
    expect(volts(setup)).toBeCloseTo(rest * divided((meter * ohms) / (meter + ohms)), 3);
    const held = play(setup, [off, { type: 'leadConnected', lead: 'meter', to: 'AGC' }, on]);
    expect(createBench(setup).display(held).meterVolts).toBeCloseTo(-3, 1);
  });
});
