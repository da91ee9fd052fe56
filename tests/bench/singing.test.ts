/**
 * A set that sings, at the bench. How large and where the oscillation stands is held against ngspice in tests/physics/limitCycle.test.ts; that a detector stands up without
 * any signal and its line is lifted in the blanked retrace is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import { type BenchSetup, initialState } from '../../src/bench/setup.ts';
import type { Fault } from '../../src/receiver/faults/fault.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { play, readySetup, stripSetup } from './fixture.ts';
import { heights, retrace, trace } from './look.ts';

/** So that a line that is lifted stays on the tube. */
const COARSE = 5;
const off: BenchEvent = { type: 'powerSwitched', on: false };
const on: BenchEvent = { type: 'powerSwitched', on: true };
const strip = (...faults: readonly Fault[]): BenchSetup => readySetup(stripSetup, { faults });
const lid = (farads: number): BenchSetup => strip({ kind: 'missingShield', from: 'p2', to: 'g1', farads });
/** Its edge lies between 5 and 10 femtofarad. */
const sings = lid(50e-15);
const quiet = lid(3e-15);
const seen = (setup: BenchSetup, state: BenchState, seconds = 100): number[] =>
  heights(trace(createBench(setup).display({ ...state, seconds })));
const metered: BenchEvent[] = [
  off,
  { type: 'leadRemoved', lead: 'rf' },
  { type: 'leadConnected', lead: 'meter', to: 'TP8' },
  on,
  { type: 'controlSet', control: 'meterRangeVolts', value: 30 },
];
const detectorOf = ({ receiver }: BenchSetup): string => receiver.testPoints.find((p) => p.role === 'detector')!.id;
const needle = (setup: BenchSetup): number => {
  const acts = metered.map((act) => (act.type === 'leadConnected' ? { ...act, to: detectorOf(setup) } : act));
  return Math.abs(createBench(setup).display(play(setup, acts)).meterVolts);
};
const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;

describe('at the edge of its song', () => {
  it.each([-36, -20, 0])('and with the source at %d dB there is a trace, wherever it stands', (levelDb) => {
    const { design, scenario } = setupOf('lid-off');
    const { set: _, ...plain } = scenario;
    const start = { ...plain.start, slugs: {}, controls: { ...plain.start.controls, levelDb, phasingDegrees: -12 } };
    const [fault] = plain.faults;
    if (fault?.kind !== 'missingShield') throw new Error('another fault');
    // The design's edge lies between 14.3 and 15 femtofarad.
    for (const farads of [14.3e-15, 14.7e-15, 15e-15, 16e-15]) {
      const setup: BenchSetup = { ...design!, scenario: { ...plain, start, faults: [{ ...fault, farads }] } };
      const { beam } = createBench(setup).display(initialState(setup));
      expect(beam.data.subarray(0, 3 * beam.count).every(Number.isFinite), `${farads}`).toBe(true);
    }
  });
});

describe('a set that sings', () => {
  it('holds its detector up without any signal, and one below its edge does not', () => {
    expect(needle(sings)).toBeGreaterThan(0.5);
    expect(needle(quiet)).toBeLessThan(0.1);
  });

  it('lifts the line all along, blanked retrace included', () => {
    const acts: BenchEvent[] = [
      ...[off, on],
      { type: 'controlSet', control: 'blanking', value: true },
      { type: 'controlSet', control: 'yVoltsPerDiv', value: COARSE },
      { type: 'controlSet', control: 'yPositionDiv', value: 0 },
    ];
    const back = (setup: BenchSetup): number =>
      COARSE * Math.abs(median(heights(retrace(createBench(setup).display({ ...play(setup, acts), seconds: 100 })))));
    expect(back(quiet)).toBeLessThan(0.1);
    expect(back(sings)).toBeGreaterThan(1);
    expect(back(sings) / needle(sings)).toBeCloseTo(1, 1);
  });

  it('is the tube alone: the facts are those of the strip without its song, and a new lid ends it', () => {
    const cured = play(sings, [off, { type: 'partReplaced', element: 'shield' }, on]);
    expect(cured.incidents).toEqual([]);
    const sound = strip();
    const a = seen(sings, cured);
    const b = seen(sound, play(sound, [off, on]));
    expect(Math.max(...a.map((v, i) => Math.abs(v - b[i]!)))).toBeLessThan(1e-6);
    const facts = createBench(sings).facts(play(sings, [off, on]));
    expect(
      Object.values(facts)
        .filter((v) => typeof v === 'number')
        .every(Number.isFinite),
    ).toBe(true);
  });

  it('is gone with the power, and shows the same however often and in whatever order it is asked', () => {
    expect(Math.max(...seen(sings, play(sings, [off])).map(Math.abs))).toBeLessThan(
      Math.max(...seen(sings, play(sings, [off, on])).map(Math.abs)),
    );
    const bench = createBench(sings);
    const [first, other] = [
      play(sings, [off, on]),
      play(sings, [off, on, { type: 'controlSet', control: 'levelDb', value: -60 }]),
    ];
    const once = heights(trace(bench.display({ ...first, seconds: 100 })));
    heights(trace(bench.display({ ...other, seconds: 100 })));
    expect(heights(trace(bench.display({ ...first, seconds: 100 })))).toEqual(once);
    expect(seen(sings, first)).toEqual(once);
  });

  it('beats where the sweep goes by it: the line wavers there from sweep to sweep and nowhere else', () => {
    // The lift taken away by AC coupling, and what is left made tall.
    const near: BenchEvent[] = [
      { type: 'controlSet', control: 'yCoupling', value: 'AC' },
      { type: 'controlSet', control: 'yVoltsPerDiv', value: 0.001 },
    ];
    const state = play(sings, [off, on, ...near]);
    const phases = [100, 100.1, 100.2, 100.3].map((seconds) => seen(sings, state, seconds));
    const wavers = phases[0]!.map(
      (_, i) => Math.max(...phases.map((p) => p[i]!)) - Math.min(...phases.map((p) => p[i]!)),
    );
    const most = Math.max(...wavers);
    expect(most).toBeGreaterThan(0.2);
    expect(most).toBeGreaterThan(5 * median(wavers));
  });
});
