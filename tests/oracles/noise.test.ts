/**
 * A carrier in noise. Sources: S. O. Rice, Mathematical analysis of random noise, BSTJ 1944-45 (mean envelope; figures computed with scipy.special.hyp1f1);
 * square-law detection adds powers, and a one-pole's noise band, elementary.
 */
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { noisyDetector, shareBehindPole } from '../../src/physics/noisyDetector.ts';
import { riceDeviation, riceMean } from '../../src/physics/rice.ts';

describe('mean envelope of a carrier with noise of 1 V a side', () => {
  test.each([
    [0, 1.25331],
    [1, 1.54857],
    [2, 2.27238],
    [3, 3.17258],
    [5, 5.10107],
    [10, 10.05013],
  ])('carrier %d: %d (within 1e-5)', (carrier, expected) => {
    expect(Math.abs(riceMean(carrier, 1) - expected)).toBeLessThan(1e-5);
  });

  test('mean square of the envelope is A^2 + 2 sigma^2, and the deviation comes to sigma', () => {
    for (const carrier of [0, 0.3, 2, 7, 60]) {
      const square = riceMean(carrier, 0.5) ** 2 + riceDeviation(carrier, 0.5) ** 2;
      expect(square / (carrier ** 2 + 0.5)).toBeCloseTo(1, 9);
    }
    expect(riceDeviation(0, 1)).toBeCloseTo(Math.sqrt(2 - Math.PI / 2), 9);
    expect(riceDeviation(30, 1)).toBeCloseTo(1, 3);
  });

  test('far above the noise it goes on without a step', () => {
    expect(riceMean(200.001, 1) - riceMean(199.999, 1)).toBeCloseTo(0.002, 6);
  });
});

describe('a diode with noise on its carrier', () => {
  const both = new Float64Array(2);

  test('square law: the mean rises by twice sigma squared, whatever the carrier', () => {
    const noisy = noisyDetector((v) => v * v, 0.1, 5);
    for (const carrier of [0, 0.05, 0.4, 3]) {
      noisy.at(carrier, both);
      expect(Math.abs(both[0]! / 0.02 - 1)).toBeLessThan(5e-3);
    }
  });

  test('a straight law gives the envelope itself, as a draw of many shows', () => {
    const noisy = noisyDetector((v) => v, 0.2, 2);
    const chance = seededRandom(7);
    const normal = () => Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
    const n = 200_000;
    let sum = 0;
    let squares = 0;
    for (let i = 0; i < n; i++) {
      const r = Math.hypot(0.3 + 0.2 * normal(), 0.2 * normal());
      sum += r;
      squares += r * r;
    }
    noisy.at(0.3, both);
    expect(Math.abs(0.3 + both[0]! - sum / n)).toBeLessThan(1.5e-3);
    expect(Math.abs(both[1]! - Math.sqrt(squares / n - (sum / n) ** 2))).toBeLessThan(1.5e-3);
  });

  test('one pole far below the band leaves sqrt(pi f_p / B) of the rms; one far above all of it', () => {
    const seconds = 1 / (2 * Math.PI * 50e3);
    expect(shareBehindPole(3e6, seconds)).toBeCloseTo(Math.sqrt((Math.PI * 50e3) / 3e6), 2);
    expect(shareBehindPole(3e6, 1e-9)).toBeCloseTo(1, 4);
  });
});
