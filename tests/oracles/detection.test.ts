/**
 * Diode detection. Sources: Bessel law and its two limits, D. W. Knight, Diode detectors for RF measurement (abstract) and public course notes;
 * the loaded form was derived again and simulated in ngspice. V_T 25.852 mV (300 K).
 */

import { describe, expect, test } from 'vitest';
import { createDetector, detectEnvelope } from '../../src/physics/diode.ts';

const V_T = 0.025852;
const laws = {
  equation: detectEnvelope,
  table: (a: number, diode: Parameters<typeof createDetector>[0]) => createDetector(diode)(a),
};

describe.each(Object.entries(laws))('by %s', (_, law) => {
  test.each([
    [0.5, 1e4, 1e-6, 0.345789],
    [0.1, 1e4, 1e-6, 0.026374],
    [1, 1e5, 1e-7, 0.814999],
    [0.01, 1e4, 1e-6, 0.26983e-3],
  ])('loaded: %d V into %d ohm, %d A gives %d V (within 0.01 %)', (amplitude, loadOhms, saturationAmps, expected) => {
    const volts = law(amplitude, { loadOhms, saturationAmps, emissionVolts: V_T });
    expect(Math.abs(volts / expected - 1)).toBeLessThan(1e-4);
  });

  test.each([
    [5, 0.2412],
    [10, 0.95815],
    [100, 59.756],
    [500, 438.126],
  ])('unloaded: %d mV gives %d mV (within 0.01 %)', (amplitudeMv, expectedMv) => {
    const volts = law(amplitudeMv / 1000, {
      loadOhms: Number.POSITIVE_INFINITY,
      saturationAmps: 1e-6,
      emissionVolts: V_T,
    });
    expect(Math.abs((volts * 1000) / expectedMv - 1)).toBeLessThan(1e-4);
  });

  test.each([
    [15.92, 0.1],
    [37.82, 0.5],
    [57.82, 1],
  ])('unloaded: %d mV is %d dB (power) below square law (within 0.2 mV of level)', (amplitudeMv, below) => {
    const loss = (mv: number): number => {
      const volts = law(mv / 1000, { loadOhms: Number.POSITIVE_INFINITY, saturationAmps: 1e-6, emissionVolts: V_T });
      return -10 * Math.log10(volts / ((mv / 1000) ** 2 / (4 * V_T)));
    };
    expect(loss(amplitudeMv - 0.2)).toBeLessThan(below);
    expect(loss(amplitudeMv + 0.2)).toBeGreaterThan(below);
  });
});
