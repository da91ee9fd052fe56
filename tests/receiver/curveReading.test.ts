/** Reading curves whose every figure is known from a formula. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  highest,
  lowest,
  nearestNotch,
  outerCrossings,
  type ResponseCurve,
  voltsAt,
} from '../../src/receiver/curveReading.ts';

function sampled(fromHz: number, toHz: number, points: number, law: (hz: number) => number): ResponseCurve {
  const hz = Float64Array.from({ length: points }, (_, i) => fromHz + ((toHz - fromHz) * i) / (points - 1));
  return { hz, volts: hz.map(law) };
}

const CENTRE = 10.7e6;
const HALF_WIDTH = 100e3;
/** A single resonance near its peak: |H| = 1 / sqrt(1 + x^2), down 3 dB at x = 1. */
const resonance = (hz: number) => 1 / Math.hypot(1, (hz - CENTRE) / HALF_WIDTH);
const curve = sampled(10.2e6, 11.21e6, 400, resonance);

describe('levels', () => {
  it('between samples are those of the law', () => {
    fc.assert(
      fc.property(fc.double({ min: 10.2e6, max: 11.21e6, noNaN: true }), (hz) => {
        expect(voltsAt(curve, hz)).toBeCloseTo(resonance(hz), 6);
      }),
    );
  });

  it('at samples are the samples', () => {
    curve.hz.forEach((hz, i) => {
      expect(voltsAt(curve, hz)).toBe(curve.volts[i]);
    });
  });

  it('outside the curve are nobody’s to know', () => {
    expect(() => voltsAt(curve, 10.1e6)).toThrow('outside');
    expect(() => voltsAt(curve, 11.3e6)).toThrow('outside');
  });
});

describe('peaks and lows', () => {
  it('lie between samples where the law has them', () => {
    const peak = highest(curve, 10.2e6, 11.2e6);
    expect(Math.abs(peak.hz - CENTRE)).toBeLessThan(20);
    expect(peak.volts).toBeCloseTo(1, 6);
  });

  it('stand at the end of a stretch that only rises', () => {
    expect(highest(curve, 10.3e6, 10.5e6)).toEqual({ hz: 10.5e6, volts: voltsAt(curve, 10.5e6) });
    expect(lowest(curve, 10.3e6, 10.5e6)).toEqual({ hz: 10.3e6, volts: voltsAt(curve, 10.3e6) });
  });
});

describe('crossings', () => {
  it('of the 3 dB level are a bandwidth apart', () => {
    const found = outerCrossings(curve, Math.SQRT1_2, 10.2e6, 11.2e6)!;
    expect(Math.abs(found.lowHz - (CENTRE - HALF_WIDTH))).toBeLessThan(5);
    expect(Math.abs(found.highHz - (CENTRE + HALF_WIDTH))).toBeLessThan(5);
  });

  it('are the outer ones where the curve has two humps', () => {
    const humps = sampled(9e6, 12e6, 900, (hz) => Math.max(resonance(hz - 400e3), resonance(hz + 400e3)));
    const found = outerCrossings(humps, Math.SQRT1_2, 9e6, 12e6)!;
    expect(Math.abs(found.lowHz - (CENTRE - 500e3))).toBeLessThan(20);
    expect(Math.abs(found.highHz - (CENTRE + 500e3))).toBeLessThan(20);
  });

  it('are the ends where the curve is still up, and none where it never is', () => {
    const found = outerCrossings(curve, 0.9, 10.69e6, 10.71e6)!;
    expect(found.lowHz).toBeGreaterThanOrEqual(10.69e6);
    expect(found.highHz).toBeLessThanOrEqual(10.71e6);
    expect(outerCrossings(curve, 1.1, 10.2e6, 11.2e6)).toBeNull();
  });
});

describe('notches', () => {
  const NOTCHES = [39.76e6, 47.21e6];
  /** Two sharp nulls, each |x| / sqrt(1 + x^2) with its own width: the magnitude has a corner there, the power has none. */
  const law = (hz: number) => NOTCHES.reduce((level, f) => (level * Math.abs(hz - f)) / Math.hypot(hz - f, 300e3), 1);
  const notched = sampled(38e6, 52e6, 561, law);

  it('are found where they are, the nearest first', () => {
    for (const f of NOTCHES) {
      const found = nearestNotch(notched, f + 0.3e6, 38e6, 52e6)!;
      expect(Math.abs(found.hz - f)).toBeLessThan(500);
      expect(found.volts).toBeLessThan(0.01);
    }
  });

  it('are none in a curve that has none', () => {
    expect(nearestNotch(curve, CENTRE, 10.2e6, 11.2e6)).toBeNull();
  });
});
