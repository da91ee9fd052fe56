/**
 * The stray between two places of a chassis without its screen, against the whole series of images of two balls: C = 4 pi e0 a sinh B / sum over n of sinh 2nB, cosh B = d / 2a
 * (Smythe, Static and Dynamic Electricity, 5.08; from memory).
 */
import { describe, expect, test } from 'vitest';
import { faultPlaces, hotNode } from '../../../src/receiver/faults/faultPlaces.ts';
import { chartedFaults } from '../../../src/receiver/faults/faultsThatFit.ts';
import { BALL_METRES, betweenBalls, strayFarads } from '../../../src/receiver/faults/strayFarads.ts';
import { shippedLibrary } from '../../files/shipped.ts';

const { receivers, scenarios } = shippedLibrary();

describe('a screen that is left off', () => {
  test.each([
    [0.054, 0.14],
    [0.08, 0.06],
    [0.154, 0.03],
    [0.3, 0.01],
  ])('two balls %d m apart have what their images say, but for a share of %d', (metres, share) => {
    const b = Math.acosh(metres / (2 * BALL_METRES));
    let sum = 0;
    for (let n = 1; n < 60; n++) sum += 1 / Math.sinh(2 * n * b);
    const whole = 4 * Math.PI * 8.8541878e-12 * BALL_METRES * Math.sinh(b) * sum;
    expect(Math.abs(betweenBalls(metres) / whole - 1)).toBeLessThan(share);
  });

  test('two cans of an inch and a quarter, 140 mm apart: 0.20 pF (4 pi e0 a^2 / d)', () => {
    expect(BALL_METRES).toBeCloseTo(0.03175 / 2, 12);
    expect(betweenBalls(0.14) * 1e12).toBeCloseTo(0.2, 3);
  });

  test('lets the more through the nearer its two places stand', () => {
    const strip = receivers.get('video-valve-45m')!;
    // T5 stands farther from T2 than T4 does.
    expect(strayFarads(strip, 'p3', 'g1')).toBeLessThan(strayFarads(strip, 'p2', 'g1'));
    expect(strayFarads(strip, 'p1', 'g1')).toBeGreaterThan(strayFarads(strip, 'p2', 'g1'));
  });

  test('is of a size of its own at each place of each receiver, some tenths of a picofarad', () => {
    const sizes = new Set<number>();
    for (const set of receivers.values()) {
      for (const { at, place } of faultPlaces(set)) {
        if (at !== 'stagePair') continue;
        const farads = strayFarads(set, hotNode(place.late.nodes), hotNode(place.early.control));
        expect(farads).toBeGreaterThan(0.1e-12);
        expect(farads).toBeLessThan(0.7e-12);
        sizes.add(farads);
      }
    }
    expect(sizes.size).toBeGreaterThan(8);
  });

  test('in a scenario is as large as its place makes it, and as the chart has it', () => {
    for (const { faults, receiver } of scenarios) {
      for (const fault of faults) {
        if (fault.kind !== 'missingShield') continue;
        const set = receivers.get(receiver)!;
        expect(fault.farads).toBe(strayFarads(set, fault.from, fault.to));
        expect(chartedFaults(set.receiver, set.deck)).toContainEqual([fault]);
      }
    }
  });
});
