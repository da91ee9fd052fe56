/**
 * The sweep on the tube and the pips. Sources: X-Y phase, public course notes on Lissajous figures; sweep rates, elementary calculus;
 * zero-beat pip, common practice, figures computed by direct integration.
 */

import { describe, expect, test } from 'vitest';
import { sweepMode } from '../../src/physics/gentleSweep.ts';
import { addPip, pipShape } from '../../src/physics/pip.ts';
import { rateHzPerSecond, sweepFrequencies, wholePeriod, xDrive } from '../../src/physics/sweep.ts';

const SPAN = 10e6;
const CENTRE = 44e6;

describe('zero-beat pip through a one-pole low-pass, largest output of a full beat', () => {
  const root = Math.sqrt(rateHzPerSecond(SPAN, 60));
  const sweep = { centreHz: CENTRE, spanHz: SPAN, mainsHz: 60, points: 1 << 18 };

  test.each([
    [0.1, 0.4198],
    [0.3, 0.7823],
    [0.5, 0.909],
    [1, 0.9852],
    [2, 0.9988],
  ])('corner %d of the root of the rate: %d (within 0.002)', (ratio, expected) => {
    const trace = new Float64Array(2 * sweep.points);
    addPip(trace, pipShape(sweep, CENTRE, ratio * root), 1, 0);
    const largest = trace.subarray(0, sweep.points).reduce((most, v) => Math.max(most, Math.abs(v)), 0);
    expect(Math.abs(largest - expected)).toBeLessThan(0.002);
  });

  test.each([
    [20e3, 0.106],
    [50e3, 0.663],
    [100e3, 2.653],
  ])(
    'corner %d Hz at 1.885 GHz/s: %d cycles of the beat on each side inside the corner (within 0.005)',
    (corner, cycles) => {
      // Cycles counted on the pip itself: unwrap the phase of the complex beat from the crossing to where it is one corner away.
      // A low-pass turns the phase near its own corner, so a very wide one is used for counting.
      const [trace] = pipShape(sweep, CENTRE, 20e6);
      const { re, im, first } = trace!;
      const hz = sweepFrequencies(CENTRE, SPAN, sweep.points);
      let turns = 0;
      for (let i = 1; i < re.length; i++) {
        const f = hz[first + i]!;
        if (f <= CENTRE || f > CENTRE + corner) continue;
        turns += Math.atan2(im[i]! * re[i - 1]! - re[i]! * im[i - 1]!, re[i]! * re[i - 1]! + im[i]! * im[i - 1]!);
      }
      expect(Math.abs(turns / (2 * Math.PI) - cycles)).toBeLessThan(0.005);
    },
  );
});

describe('sine-shaped sweep', () => {
  test.each([
    [10e6, 60, 1.884956e9],
    [10e6, 15_734.266, 494.307e9],
    [1e6, 60, 188.496e6],
    [40e3, 60, 7.53982e6],
  ])('span %d Hz at %d Hz: centre rate %d Hz/s (within 1e-5)', (span, mains, rate) => {
    expect(Math.abs(rateHzPerSecond(span, mains) / rate - 1)).toBeLessThan(1e-5);
  });

  test('at 0.4 of the span from the centre the rate is 0.600 of the centre rate', () => {
    expect(rateHzPerSecond(SPAN, 60, 0.4 * SPAN) / rateHzPerSecond(SPAN, 60)).toBeCloseTo(0.6, 12);
  });

  test('the rate function agrees with the frequencies themselves', () => {
    const points = 20_000;
    const hz = sweepFrequencies(CENTRE, SPAN, points);
    const step = 1 / (60 * 2 * points);
    for (const i of [1000, 6000, 10_000, 17_500]) {
      const measured = (hz[i + 1]! - hz[i - 1]!) / (2 * step);
      expect(measured / rateHzPerSecond(SPAN, 60, hz[i]! - CENTRE)).toBeCloseTo(1, 6);
    }
  });

  test('a third of the time is spent in the central half of the span', () => {
    const hz = sweepFrequencies(CENTRE, SPAN, 9000);
    const inside = hz.filter((f) => Math.abs(f - CENTRE) < SPAN / 4).length;
    expect(inside).toBe(3000);
  });

  test('quasi-static while rate / B^2 < 0.02: 4 MHz strip yes, 8 kHz strip over 40 kHz no', () => {
    // The lag of one tuned circuit of bandwidth b at its peak.
    const mode = (rate: number, b: number) => sweepMode((2 * rate) / (Math.PI * b * b), false);
    expect(mode(rateHzPerSecond(10e6, 60), 4e6)).toBe('quasiStatic');
    expect(mode(rateHzPerSecond(40e3, 60), 8e3)).toBe('gentle');
    expect(mode(0.0199 * 1e6 ** 2, 1e6)).toBe('quasiStatic');
    expect(mode(0.0201 * 1e6 ** 2, 1e6)).toBe('gentle');
  });
});

describe('X drive out of step with the sweep', () => {
  test('10 MHz, 5 degrees: trace and retrace stand 0.8716 MHz apart at the centre (within 0.5 %)', () => {
    // A single narrow feature at the centre frequency, drawn at the X of the moment it is swept through.
    const points = 100_000;
    const feature = wholePeriod(sweepFrequencies(CENTRE, SPAN, points)).map(
      (hz) => 1 / (1 + ((hz - CENTRE) / 1e4) ** 2),
    );
    const x = xDrive(points, (5 * Math.PI) / 180);
    const peakX = (from: number): number => {
      let best = from;
      for (let i = from; i < from + points; i++) if (feature[i]! > feature[best]!) best = i;
      return x[best]!;
    };
    const apart = (Math.abs(peakX(0) - peakX(points)) * SPAN) / 2;
    expect(Math.abs(apart / 0.8716e6 - 1)).toBeLessThan(0.005);
  });

  test('ellipse open 3 divisions of 8: 22.02 degrees (within 0.5 %)', () => {
    const points = 100_000;
    const y = xDrive(points, 0);
    const opening = (degrees: number): number => {
      const x = xDrive(points, (degrees * Math.PI) / 180);
      let [low, high] = [0, 0];
      for (let i = 1; i < x.length; i++) {
        if (x[i - 1]! < 0 === x[i]! < 0) continue;
        low = Math.min(low, y[i]!);
        high = Math.max(high, y[i]!);
      }
      return ((high - low) / 2) * 8;
    };
    expect(opening(22.0243 * 0.995)).toBeLessThan(3);
    expect(opening(22.0243 * 1.005)).toBeGreaterThan(3);
    expect(opening(30)).toBeCloseTo(4, 3);
  });
});
