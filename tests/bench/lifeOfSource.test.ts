/** The sweep source's own flaws: an output that is not even, a floor below its attenuator, a second harmonic. Sizes are ordinary service generators' (common practice, no source). */
import { describe, expect, test } from 'vitest';
import { createBench } from '../../src/bench/bench.ts';
import type { BenchEvent, ControlId } from '../../src/bench/benchEvent.ts';
import type { BenchState } from '../../src/bench/benchState.ts';
import type { BenchSetup } from '../../src/bench/setup.ts';
import { createSweepSource } from '../../src/bench/sweepSource.ts';
import { sourceVolts } from '../../src/receiver/sourceLevel.ts';
import { type Life, NO_LIFE } from '../../src/scenario/life.ts';
import { play, readySetup, stripSetup } from './fixture.ts';
import { heights, trace } from './look.ts';

const set = (control: ControlId, value: number | boolean | string): BenchEvent => ({
  type: 'controlSet',
  control,
  value,
});
const lively = (life: Partial<Life>): BenchSetup => readySetup(stripSetup, { life: { ...NO_LIFE, ...life } });
const source = (life: Partial<Life>, seed = 11) => createSweepSource({ life: { ...NO_LIFE, ...life }, seed });
const dB = (ratio: number): number => 20 * Math.log10(ratio);

describe('output over the dial', () => {
  const over = Array.from({ length: 400 }, (_, i) => 10e6 + i * 0.5e6);

  test('strays by what the scenario says and no more, another way for another seed', () => {
    const even = source({ unevenDb: 1 }).evenness!;
    const levels = over.map((hz) => dB(even(hz)));
    expect(Math.max(...levels.map(Math.abs))).toBeLessThanOrEqual(1);
    expect(Math.max(...levels)).toBeGreaterThan(0.6);
    expect(Math.min(...levels)).toBeLessThan(-0.6);
    const other = source({ unevenDb: 1 }, 12).evenness!;
    expect(Math.max(...over.map((hz) => Math.abs(dB(other(hz) / even(hz)))))).toBeGreaterThan(0.3);
  });

  test('slopes and bows over one band: no more than some tenths of a decibel in a megahertz', () => {
    const even = source({ unevenDb: 1 }).evenness!;
    for (const hz of over) expect(Math.abs(dB(even(hz + 1e6) / even(hz)))).toBeLessThan(0.4);
  });

  test('leans the curve on the tube by as much as it strays itself', () => {
    const state = play(lively({}), [
      set('yInput', 'raw'),
      set('pipHeightDiv', 0),
      set('levelDb', -80),
      set('yVoltsPerDiv', 0.02),
    ]);
    const uneven = lively({ unevenDb: 1 });
    const [clean, leaning] = [lively({}), uneven].map((setup) =>
      heights(trace(createBench(setup).display(state))).map(Math.abs),
    );
    const even = createSweepSource(uneven.scenario).evenness!;
    const hzOf = (i: number): number => 44e6 + 6e6 * Math.sin((Math.PI * (i + 0.5)) / 1024 - Math.PI / 2);
    for (const [a, b] of [
      [400, 500],
      [450, 600],
    ] as const) {
      const shown = dB(leaning![a]! / leaning![b]! / (clean![a]! / clean![b]!));
      expect(Math.abs(shown - dB(even(hzOf(a)) / even(hzOf(b))))).toBeLessThan(0.03);
    }
  });
});

describe('attenuator', () => {
  test('has a floor: powers add, so at the level of the leak there are 3 dB more, far above it nothing', () => {
    const { volts } = source({ leakageDb: -70 });
    expect(dB(volts(-70) / sourceVolts(-70))).toBeCloseTo(3.01, 2);
    expect(dB(volts(-40) / sourceVolts(-40))).toBeLessThan(0.01);
    expect(dB(volts(-80) / sourceVolts(-70))).toBeCloseTo(dB(Math.hypot(1, 10 ** -0.5)), 6);
  });

  test('without leakage it is what the dial says', () => {
    expect(source({}).volts(-80)).toBe(sourceVolts(-80));
  });
});

describe('second harmonic', () => {
  // Swept about 22 MHz: the band lies at twice that.
  const half = (...events: BenchEvent[]): BenchState =>
    play(lively({}), [
      set('pipHeightDiv', 0),
      set('yInput', 'raw'),
      set('centreHz', 22e6),
      set('spanHz', 6e6),
      ...events,
    ]);
  const tallest = (life: Partial<Life>, state: BenchState): number =>
    Math.max(...heights(trace(createBench(lively(life)).display(state))));

  test('answers at half the frequency of the band as far down as the harmonic is', () => {
    const ghost = half(set('levelDb', -50), set('yVoltsPerDiv', 0.02));
    const direct = play(lively({}), [
      set('pipHeightDiv', 0),
      set('yInput', 'raw'),
      set('levelDb', -80),
      set('yVoltsPerDiv', 0.02),
    ]);
    const clean = tallest({}, ghost);
    const seen = tallest({ harmonicDb: -30 }, ghost);
    expect(clean).toBeLessThan(0.05 * seen);
    expect(Math.abs(dB(seen / tallest({}, direct)))).toBeLessThan(0.5);
  });

  test('is nowhere while the band itself is swept', () => {
    const state = play(lively({}), []);
    expect([...createBench(lively({ harmonicDb: -20 })).display(state).beam.data]).toEqual([
      ...createBench(lively({})).display(state).beam.data,
    ]);
  });
});
