/**
 * Envelope detection: diagonal clipping, the beat of two carriers, a carrier on the slope of a vestigial sideband.
 * Sources: diagonal clipping RC = sqrt(1 - m^2) / (m w), Terman (from memory) and public notes on peak detectors (P. Pejovic, 2018); the beat r (1 - r^2 / 8), Fourier series
 * of the envelope, computed, principle of intercarrier sound from memory; linear slope of the receiver through the vision carrier, 45.0 to 46.5 MHz, System M
 * practice, transmitter's side 47 CFR 73.682(a)(4) with 73.699 figure 5.
 */

import { describe, expect, test } from 'vitest';
import { envelopeOfTwo, periodicPeakDetector } from '../../src/physics/envelope.ts';
import { envelopeModulation } from '../../src/physics/videoEnvelope.ts';
import { decibels } from '../physics/decks.ts';

describe.each([
  [0.8, 5e3, 23.873e-6],
  [0.5, 5e3, 55.133e-6],
  [0.3, 4e6, 0.12652e-6],
])('diagonal clipping, depth %d at %d Hz: limit %d s', (m, hz, limit) => {
  const n = 100_000;
  const envelope = Float64Array.from({ length: n }, (_, i) => 1 + m * Math.cos((2 * Math.PI * i) / n));
  const clipped = (tau: number): number => {
    const out = new Float64Array(n);
    periodicPeakDetector(envelope, tau, 1 / hz, out);
    return out.reduce((worst, y, i) => Math.max(worst, y - envelope[i]!), 0);
  };

  test('5 % below it the load follows, 5 % above it leaves the envelope', () => {
    expect(clipped(0.95 * limit)).toBe(0);
    expect(clipped(1.05 * limit)).toBeGreaterThan(1e-3 * m);
  });

  test('the limit itself, within 0.02 %', () => {
    expect(clipped(0.9998 * limit)).toBe(0);
    expect(clipped(1.0002 * limit)).toBeGreaterThan(0);
  });

  test('clipped, the load comes down as its own discharge does', () => {
    const tau = 3 * limit;
    const out = new Float64Array(n);
    periodicPeakDetector(envelope, tau, 1 / hz, out);
    const i = out.findIndex((y, k) => k > 0 && y > envelope[k]! && out[k - 1]! > envelope[k - 1]!);
    const later = i + 1000;
    expect(out[later]! > envelope[later]!).toBe(true);
    expect(out[later]! / out[i]! / Math.exp(-1000 / (n * hz * tau))).toBeCloseTo(1, 9);
  });
});

describe('fundamental of the beat of two carriers', () => {
  test.each([
    [0.05, 0.0499844],
    [0.1, 0.0998748],
    [0.2, 0.198995],
    [0.5, 0.483844],
  ])('1 and %d: %d (within 1e-6)', (r, expected) => {
    expect(Math.abs(envelopeOfTwo(1, r) - expected)).toBeLessThan(1e-6);
    expect(envelopeOfTwo(r, 1)).toBe(envelopeOfTwo(1, r));
  });

  test('vision halved, the same sound: 0.0499374 (within 1e-6): the beat does not follow the vision', () => {
    expect(Math.abs(envelopeOfTwo(0.5, 0.05) - 0.0499374)).toBeLessThan(1e-6);
  });

  test('equal carriers: the envelope 2 |cos(t/2)| has 8 / (3 pi)', () => {
    expect(envelopeOfTwo(0.3, 0.3)).toBeCloseTo((0.3 * 8) / (3 * Math.PI), 14);
  });
});

describe('carrier at a part of the height of a linear slope, System M: low video against single-sideband video', () => {
  /** 0 at 1.5 MHz above the top of the slope's width, 1 below it; `moved` shifts the slope. */
  const slope = (hz: number, height: number) => Math.min(1, Math.max(0, height - (hz - 45.75e6) / 1.5e6));
  const size = (height: number, videoHz: number, phase = 0): number => {
    const at = [45.75e6, 45.75e6 + videoHz, 45.75e6 - videoHz].map((hz) => slope(hz, height));
    const [c, s] = [Math.cos(phase), Math.sin(phase)];
    const [re, im] = [new Float64Array(1), new Float64Array(1)];
    const bandsRe = Float64Array.of(at[1]! * c, at[2]! * c);
    const bandsIm = Float64Array.of(at[1]! * s, at[2]! * s);
    envelopeModulation(at[0]! * c, at[0]! * s, bandsRe, bandsIm, 1, re, im);
    return Math.hypot(re[0]!, im[0]!);
  };

  test.each([
    [0.4, -1.938],
    [0.45, -0.915],
    [0.5, 0],
    [0.6, 1.584],
    [0.7, 2.923],
  ])('at %d of full height: %d dB (within 0.001)', (height, expected) => {
    expect(Math.abs(decibels(size(height, 10e3) / size(height, 3e6)) - expected)).toBeLessThan(0.001);
  });

  test('at one half the video is flat from nothing to 4 MHz, whatever the carrier phase', () => {
    for (const videoHz of [1e3, 0.3e6, 0.75e6, 1e6, 4e6])
      expect(size(0.5, videoHz, 2.1)).toBeCloseTo(size(0.5, 3e6), 12);
  });
});
