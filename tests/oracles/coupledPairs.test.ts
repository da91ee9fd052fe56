/**
 * Coupled tuned circuits. Sources: response formula and peaks of the equal-Q pair as in public course notes on double-tuned amplifiers;
 * unequal Q, Terman, Radio Engineers' Handbook 1943, and Langford-Smith, Radiotron Designer's Handbook (from memory, derived
 * again and simulated in ngspice); lossless modes, IEC Electropedia, coupling factor of resonators.
 */

import { describe, expect, test } from 'vitest';
import { decibels, grid, solved } from '../physics/decks.ts';
import { crossingBetween, humps, peakBetween, tank, voltsAt } from './measure.ts';

const F0 = 10.7e6;
const L = 1e-6;

function pair(q1: number, q2: number, k: number) {
  const text = [
    'pair',
    'I1 0 a AC 1',
    tank('a', 'a', F0, q1, L),
    tank('b', 'b', F0, q2, L),
    `K1 La Lb ${k}`,
    '.end',
  ].join('\n');
  return solved(text, Float64Array.of(F0));
}

function shape(q1: number, q2: number, k: number) {
  const solver = pair(q1, q2, k);
  const valley = peakBetween(solver, 'b', F0 * 0.998, F0 * 1.002, -1);
  const low = peakBetween(solver, 'b', F0 * 0.95, valley.hz);
  const high = peakBetween(solver, 'b', valley.hz, F0 * 1.05);
  const best = Math.sqrt(q1 * q2) * 2 * Math.PI * F0 * L * 0.5;
  return {
    separation: high.hz - low.hz,
    dip: decibels(valley.volts / ((low.volts + high.volts) / 2)),
    low,
    high,
    best,
  };
}

describe('overcoupled pair, 10.7 MHz, Q 60 and 60, k 0.03', () => {
  const { separation, dip, low, high, best } = shape(60, 60, 0.03);

  test('humps 0.2671 MHz apart (within 0.001)', () => {
    expect(Math.abs(separation - 0.2671e6)).toBeLessThan(0.001e6);
  });

  test('as in ngspice: humps at 10.5697 and 10.8368 MHz (within 0.0001)', () => {
    expect(Math.abs(low.hz - 10.5697e6)).toBeLessThan(100);
    expect(Math.abs(high.hz - 10.8368e6)).toBeLessThan(100);
  });

  test('dip -1.422 dB (within 0.01)', () => {
    expect(Math.abs(dip + 1.422)).toBeLessThan(0.01);
  });

  test('each hump is half the root of R1 R2 (within 0.1 %)', () => {
    for (const hump of [low, high]) expect(Math.abs(hump.volts / best - 1)).toBeLessThan(0.001);
  });
});

describe('pair of unequal Q, 10.7 MHz, Q 60 and 40', () => {
  const { separation, dip, low, high, best } = shape(60, 40, 0.04);

  test('k 0.04: humps 0.3629 MHz apart (within 0.001)', () => {
    expect(Math.abs(separation - 0.3629e6)).toBeLessThan(0.001e6);
  });

  test('k 0.04: dip -1.706 dB (within 0.01)', () => {
    expect(Math.abs(dip + 1.706)).toBeLessThan(0.01);
  });

  test('k 0.04: humps 0.985 of the best possible (within 0.002)', () => {
    expect(Math.abs((low.volts + high.volts) / (2 * best) - 0.98516)).toBeLessThan(0.002);
  });

  const fine = grid(10.5e6, 10.9e6, 4001);

  test('k 0.0208, above critical 0.020412 and below transitional 0.021246: one hump', () => {
    expect(humps(pair(60, 40, 0.0208), 'b', fine)).toBe(1);
  });

  test('k 0.0225: two humps, 0.0793 MHz apart (within 0.001)', () => {
    expect(humps(pair(60, 40, 0.0225), 'b', fine)).toBe(2);
    expect(Math.abs(shape(60, 40, 0.0225).separation - 0.0793e6)).toBeLessThan(0.001e6);
  });
});

test('critical pair, Q 60: 3 dB width 252.20 kHz (within 0.2)', () => {
  const solver = pair(60, 60, 1 / 60);
  const peak = peakBetween(solver, 'b', 10.5e6, 10.9e6);
  const edge = (from: number, to: number) => crossingBetween(solver, 'b', peak.volts / Math.SQRT2, from, to);
  expect(Math.abs(edge(10.7e6, 11e6) - edge(10.4e6, 10.7e6) - 252.2e3)).toBeLessThan(200);
});

test('lossless modes, k 0.05: 10.44213 and 10.97797 MHz (within 1e-8 of the formula)', () => {
  const solver = pair(1e5, 1e5, 0.05);
  const low = peakBetween(solver, 'b', 10.4e6, 10.5e6).hz;
  const high = peakBetween(solver, 'b', 10.9e6, 11.05e6).hz;
  expect(Math.abs(low / (F0 / Math.sqrt(1.05)) - 1)).toBeLessThan(1e-8);
  expect(Math.abs(high / (F0 / Math.sqrt(0.95)) - 1)).toBeLessThan(1e-8);
  const k = (high ** 2 - low ** 2) / (high ** 2 + low ** 2);
  expect(Math.abs(k - 0.05)).toBeLessThan(1e-8);
});

test('absorption trap 41.25 MHz on a 43.5 MHz tank: 10.045 dB deep (within 0.02)', () => {
  // Tank 1 uH, 18.2212 ohm, 13.38634 pF; trap 0.3 uH, 0.518363 ohm, 49.62164 pF; k 0.05. Source: reflected impedance, Terman
  // (from memory, derived again and simulated in ngspice).
  const text = [
    'tank and trap',
    'I1 0 p AC 1m',
    'Lp p q 1u',
    'Rp q 0 18.2212',
    'Cp p 0 13.38634p',
    'Lt t u 0.3u',
    'Rt u 0 0.518363',
    'Ct t 0 49.62164p',
    'K1 Lp Lt 0.05',
    '.end',
  ];
  const coupled = voltsAt(solved(text.join('\n'), Float64Array.of(1)), 'p', 41.25e6);
  const alone = voltsAt(
    solved(text.filter((line) => !line.startsWith('K')).join('\n'), Float64Array.of(1)),
    'p',
    41.25e6,
  );
  expect(Math.abs(decibels(alone / coupled) - 10.045)).toBeLessThan(0.02);
});

test('two critical pairs in cascade keep 0.80224 of the bandwidth of one (within 0.0005)', () => {
  // Source: double-tuned shrinkage (2^(1/n) - 1)^(1/4), "two stages keep 80 %" as in public articles on double-tuned amplifiers.
  const q = 400;
  const one = [tank('a', 'a', F0, q, L), tank('b', 'b', F0, q, L), `K1 La Lb ${1 / q}`].join('\n');
  const two = [tank('c', 'c', F0, q, L), tank('d', 'd', F0, q, L), `K2 Lc Ld ${1 / q}`].join('\n');
  const solver = solved(`cascade\nI1 0 a AC 1\n${one}\nG1 c 0 b 0 1m\n${two}\n.end`, Float64Array.of(F0));
  const width = (node: string): number => {
    const peak = peakBetween(solver, node, F0 * 0.995, F0 * 1.005);
    const level = peak.volts / Math.SQRT2;
    return crossingBetween(solver, node, level, F0, F0 * 1.01) - crossingBetween(solver, node, level, F0 * 0.99, F0);
  };
  expect(Math.abs(width('d') / width('b') - 0.80224)).toBeLessThan(0.0005);
});
