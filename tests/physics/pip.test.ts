/** Pips on trace and retrace. Outside figures are in tests/oracles/sweepAndPips.test.ts; here direct integration of the same filter checks them. */

import { describe, expect, test } from 'vitest';
import type { PipSweep } from '../../src/physics/pip.ts';
import { addPip, pipShape } from '../../src/physics/pip.ts';
import { rateHzPerSecond, sweepFrequencies, wholePeriod } from '../../src/physics/sweep.ts';

const sweep: PipSweep = { centreHz: 44e6, spanHz: 10e6, mainsHz: 60, points: 16_384 };

/** Low-pass of cos(psi + phi), integrated step by step over the forward half from its very start. */
function byIntegration(markerHz: number, halfWidthHz: number, phi: number): Float64Array {
  const oversample = 64;
  const w = 2 * Math.PI * sweep.mainsHz;
  const h = Math.PI / w / sweep.points / oversample;
  const crossing = Math.asin((2 * (markerHz - sweep.centreHz)) / sweep.spanHz);
  const e = Math.exp(-h * 2 * Math.PI * halfWidthHz);
  const out = new Float64Array(sweep.points);
  let y = 0;
  for (let k = 1; k < sweep.points * oversample; k++) {
    // The mean of a step's input is that at its middle, to second order.
    const angle = -Math.PI / 2 + w * h * (k - 0.5);
    const psi =
      (2 *
        Math.PI *
        ((sweep.centreHz - markerHz) * (angle - crossing) -
          (sweep.spanHz / 2) * (Math.cos(angle) - Math.cos(crossing)))) /
      w;
    y = y * e + (1 - e) * Math.cos(psi + phi);
    if (k % oversample === oversample / 2) out[(k - oversample / 2) / oversample] = y;
  }
  return out;
}

describe('pips', () => {
  test.each([
    [44e6, 0],
    [45.75e6, 1],
    [41.25e6, -2.5],
  ])(
    '%d Hz, phase %d: as by direct integration over the whole half (within 0.02 of the full beat near the crossing)',
    (hz, phi) => {
      const halfWidth = 60e3;
      const trace = new Float64Array(2 * sweep.points);
      addPip(trace, pipShape(sweep, hz, halfWidth), 1, phi);
      const expected = byIntegration(hz, halfWidth, phi);
      const at = sweepFrequencies(sweep.centreHz, sweep.spanHz, sweep.points);
      let compared = 0;
      for (let i = 0; i < sweep.points; i++) {
        if (Math.abs(at[i]! - hz) > 3 * halfWidth) continue;
        compared++;
        expect(Math.abs(trace[i]! - expected[i]!)).toBeLessThan(0.02);
      }
      expect(compared).toBeGreaterThan(100);
    },
  );

  test('stand on trace and retrace where the sweep passes the marker, and nowhere else', () => {
    const trace = new Float64Array(2 * sweep.points);
    addPip(trace, pipShape(sweep, 42e6, 30e3), 1, 0.3);
    const hz = wholePeriod(sweepFrequencies(sweep.centreHz, sweep.spanHz, sweep.points));
    const energy = (from: number, to: number, near: boolean) => {
      let sum = 0;
      for (let i = from; i < to; i++) if (Math.abs(hz[i]! - 42e6) < 400e3 === near) sum += trace[i]! ** 2;
      return sum;
    };
    const n = sweep.points;
    expect(energy(0, n, true)).toBeGreaterThan(10);
    expect(energy(n, 2 * n, true)).toBeGreaterThan(10);
    expect(energy(0, 2 * n, false)).toBe(0);
  });

  test('amplitude scales, pips add to what is there, phase turns the beat round', () => {
    const shape = pipShape(sweep, 44e6, 50e3);
    const [once, again, opposite] = [0, 1, 2].map(() => new Float64Array(2 * sweep.points).fill(7));
    addPip(once!, shape, 1, 0.5);
    addPip(again!, shape, 3, 0.5);
    addPip(opposite!, shape, 1, 0.5 + Math.PI);
    for (let i = 0; i < once!.length; i++) {
      expect(again![i]! - 7).toBeCloseTo(3 * (once![i]! - 7), 12);
      expect(opposite![i]! - 7).toBeCloseTo(-(once![i]! - 7), 12);
    }
    expect(Math.max(...once!.subarray(0, sweep.points))).toBeGreaterThan(7.5);
  });

  test('the height shimmers with the phase, the width does not', () => {
    const root = Math.sqrt(rateHzPerSecond(sweep.spanHz, sweep.mainsHz));
    const shape = pipShape(sweep, 44e6, 0.5 * root);
    const heights = [0, 0.5, 1, 1.5, 2, 2.5].map((phi) => {
      const trace = new Float64Array(2 * sweep.points);
      addPip(trace, shape, 1, phi);
      return Math.max(...trace.subarray(0, sweep.points));
    });
    expect(Math.max(...heights) - Math.min(...heights)).toBeGreaterThan(0.1);
    expect(Math.max(...heights)).toBeLessThanOrEqual(1);
    expect(Math.min(...heights)).toBeGreaterThan(0.3);
  });

  test('outside the sweep, at its very ends and with no sweep nothing breaks', () => {
    expect(pipShape(sweep, 60e6, 50e3)).toEqual([]);
    expect(pipShape({ ...sweep, spanHz: 0 }, 44e6, 50e3)).toEqual([]);
    expect(pipShape(sweep, 44e6, 0)).toEqual([]);
    for (const hz of [39e6, 49e6, 38.99e6, 49.01e6, 39.0001e6]) {
      const trace = new Float64Array(2 * sweep.points);
      addPip(trace, pipShape(sweep, hz, 50e3), 1, 0);
      expect(trace.every(Number.isFinite)).toBe(true);
      expect(Math.max(...trace.map(Math.abs))).toBeLessThanOrEqual(1);
    }
  });

  test('a low-pass wider than the sweep still gives a bounded beat', () => {
    const narrow: PipSweep = { centreHz: 455e3, spanHz: 20e3, mainsHz: 50, points: 512 };
    const trace = new Float64Array(1024);
    addPip(trace, pipShape(narrow, 456e3, 50e3), 2, 0);
    expect(trace.every((v) => Math.abs(v) <= 2)).toBe(true);
    expect(Math.max(...trace)).toBeGreaterThan(1.8);
  });
});
