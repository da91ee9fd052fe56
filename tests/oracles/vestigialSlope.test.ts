/**
 * A detected carrier on the slope of a vestigial sideband. Sources: linear slope of the receiver through the vision carrier, 45.0 to 46.5 MHz, System M practice (from
 * memory); transmitter's side 47 CFR 73.682(a)(4) with 73.699 figure 5.
 */

import { describe, expect, test } from 'vitest';
import { envelopeModulation } from '../../src/physics/videoEnvelope.ts';
import { decibels } from '../physics/decks.ts';

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
