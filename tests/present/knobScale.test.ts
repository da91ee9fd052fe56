/** Knob positions and values: there and back, ends, order, the 1-2-5 sequence. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type KnobScale,
  linearScale,
  listScale,
  notched,
  ratioScale,
  reversedScale,
  roundFigure,
} from '../../src/present/knobScale.ts';

const SCALES: readonly (readonly [string, KnobScale])[] = [
  ['centre, 5 kHz', linearScale(0.1e6, 230e6, 5e3)],
  ['level, 1 dB', linearScale(-80, 0, 1)],
  ['pip height', linearScale(0, 3, 0.05)],
  ['Y gain', listScale([0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5])],
  ['meter range', listScale([0.3, 1, 3, 10, 30])],
  ['X gain', ratioScale(0.2, 5, 64, (v) => Math.round(v * 100) / 100)],
];

describe.each(SCALES)('knob scale: %s', (_, scale) => {
  it('comes back to the same position', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: scale.last }), (index) => {
        expect(Math.round(scale.indexOf(scale.valueAt(index)))).toBe(index);
      }),
    );
  });

  it('rises from position to position', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: scale.last }), (index) => {
        expect(scale.valueAt(index)).toBeGreaterThan(scale.valueAt(index - 1));
      }),
    );
  });

  it('stops at its ends', () => {
    expect(scale.valueAt(-5)).toBe(scale.valueAt(0));
    expect(scale.valueAt(scale.last + 5)).toBe(scale.valueAt(scale.last));
    expect(scale.indexOf(scale.valueAt(0) - 1)).toBe(0);
    expect(scale.indexOf(scale.valueAt(scale.last) + 1)).toBe(scale.last);
  });
});

describe('knob scales', () => {
  it('place a value between two positions of a list by its ratio', () => {
    expect(listScale([1, 10, 100]).indexOf(Math.sqrt(10))).toBeCloseTo(0.5, 12);
    expect(listScale([0, 10]).indexOf(5)).toBeCloseTo(0.5, 12);
  });

  it('send clean figures: no rounding dust of the step', () => {
    const scale = linearScale(-8, 8, 0.2);
    expect(scale.valueAt(43)).toBe(0.6);
    expect(linearScale(0.1e6, 230e6, 5e3).valueAt(8679)).toBe(43_495_000);
  });

  it('have X gain 1 at the top of the knob', () => {
    expect(ratioScale(0.2, 5, 64, (v) => v).indexOf(1)).toBeCloseTo(32, 9);
  });

  it('refuse a list that is no choice', () => {
    expect(() => listScale([1])).toThrow();
  });
});

describe('a scale the other way round', () => {
  it('has more gain, which is fewer volts to a division, clockwise', () => {
    const scale = reversedScale(listScale([0.01, 0.02, 0.05, 0.1]));
    expect([0, 1, 2, 3].map((index) => scale.valueAt(index))).toEqual([0.1, 0.05, 0.02, 0.01]);
    for (const value of [0.01, 0.02, 0.05, 0.1]) expect(scale.valueAt(scale.indexOf(value))).toBe(value);
    expect(scale.indexOf(5)).toBe(0);
    expect(scale.last).toBe(3);
  });
});

describe('notches', () => {
  it('go by 1, 2 and 5 times a power of ten, as the steps of instruments do (common practice, no source)', () => {
    for (const [most, figure] of [
      [1, 1],
      [1.99, 1],
      [2, 2],
      [4.9, 2],
      [5, 5],
      [9.9, 5],
      [10, 10],
      [0.3, 0.2],
      [2.4e6, 2e6],
    ] as const)
      expect(roundFigure(most)).toBeCloseTo(figure, 9);
  });

  it('lead from any place to the next multiple, and from a multiple a whole notch on', () => {
    const scale = linearScale(0.1e6, 230e6, 1e3);
    const notch = { by: 1000, zero: -100 };
    const next = (hz: number, way: 1 | -1): number => scale.valueAt(notched(scale.indexOf(hz), way, notch));
    expect(next(10.7e6, 1)).toBe(11e6);
    expect(next(10.7e6, -1)).toBe(10e6);
    expect(next(10e6, 1)).toBe(11e6);
    expect(next(10e6, -1)).toBe(9e6);
  });
});
