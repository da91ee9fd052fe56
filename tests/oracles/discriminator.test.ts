/**
 * Foster-Seeley discriminator from a current-driven coupled pair: 10.7 MHz, Q 60, k 0.025, L_s / L_p = 4 (2 and 8 uH, real mutual
 * inductance). The diodes see |V_p + V_s / 2| and |V_p - V_s / 2|, linear detectors.
 * Sources: Foster and Seeley, Proc. IRE March 1937; Arguimbau; Sturley, Radio Receiver Design (from memory, derived again and
 * simulated in ngspice).
 */

import { describe, expect, test } from 'vitest';
import { grid, solved } from '../physics/decks.ts';
import { tank } from './measure.ts';

const F0 = 10.7e6;

/** S-curve volts on a grid, for a primary and a secondary tuned to the frequencies given. */
function sCurve(primaryHz: number, secondaryHz: number, hz: Float64Array): Float64Array {
  const tuned = (name: string, at: number, henries: number) => tank(name, name, at, 60, henries);
  const text = [
    'pair',
    'I1 0 p AC 1m',
    tuned('p', primaryHz, 2e-6),
    tuned('s', secondaryHz, 8e-6),
    'K1 Lp Ls 0.025',
    '.end',
  ];
  const solver = solved(text.join('\n'), hz);
  const [pr, pi, sr, si] = [solver.real('p'), solver.imag('p'), solver.real('s'), solver.imag('s')];
  return hz.map((_, i) => {
    const half = (sign: number) => Math.hypot(pr[i]! + (sign * sr[i]!) / 2, pi[i]! + (sign * si[i]!) / 2);
    return half(1) - half(-1);
  });
}

function measure(primaryHz: number, secondaryHz: number) {
  const hz = grid(10.4e6, 11e6, 60_001);
  const s = sCurve(primaryHz, secondaryHz, hz);
  const extreme = (sign: number) => s.reduce((best, v, i) => (sign * v > sign * s[best]! ? i : best), 0);
  const [a, b] = [extreme(1), extreme(-1)];
  const [from, to] = [Math.min(a, b), Math.max(a, b)];
  let zero = from;
  while (zero < to && s[zero]! > 0 === s[zero + 1]! > 0) zero++;
  const [small = 0, tall = 0] = [Math.abs(s[from]!), Math.abs(s[to]!)].sort((x, y) => x - y);
  const zeroHz = hz[zero]! + ((hz[1]! - hz[0]!) * s[zero]!) / (s[zero]! - s[zero + 1]!);
  return { low: hz[from]!, high: hz[to]!, zeroHz, heights: tall / small };
}

describe('primary and secondary both at 10.7 MHz', () => {
  const m = measure(F0, F0);

  test('crosses zero at 10.703345 MHz (within 0.1 kHz)', () => {
    expect(Math.abs(m.zeroHz - 10.703345e6)).toBeLessThan(100);
  });

  test('peaks 283.85 kHz apart (within 1 kHz), at 10.56055 and 10.84440 MHz', () => {
    expect(Math.abs(m.high - m.low - 283.85e3)).toBeLessThan(1000);
    expect(Math.abs(m.low - 10.56055e6)).toBeLessThan(500);
    expect(Math.abs(m.high - 10.8444e6)).toBeLessThan(500);
  });

  test('peak heights unequal by 1.05 % (within 0.1)', () => {
    expect(Math.abs(m.heights - 1.0105)).toBeLessThan(0.001);
  });

  test('75 kHz from the crossing: +2.66 % off the tangent, mean of both sides (within 0.3 %)', () => {
    const d = 10;
    const s = sCurve(F0, F0, Float64Array.of(m.zeroHz - 75e3, m.zeroHz - d, m.zeroHz + d, m.zeroHz + 75e3));
    const slope = (s[2]! - s[1]!) / (2 * d);
    const off = ((s[3]! - s[0]!) / (2 * 75e3) / slope - 1) * 100;
    expect(Math.abs(off - 2.66)).toBeLessThan(0.3);
  });
});

test('primary moved to 10.72 MHz: crossing unmoved (within 1 Hz), heights unequal by 7.8 % (within 0.5)', () => {
  const m = measure(10.72e6, F0);
  expect(Math.abs(m.zeroHz - measure(F0, F0).zeroHz)).toBeLessThan(1);
  expect(Math.abs((m.heights - 1) * 100 - 7.8)).toBeLessThan(0.5);
});

test('secondary moved to 10.72 MHz: crossing 10.723352 MHz (within 0.1 kHz), heights unequal by 10.1 % (within 0.5)', () => {
  const m = measure(F0, 10.72e6);
  expect(Math.abs(m.zeroHz - 10.723352e6)).toBeLessThan(100);
  expect(Math.abs((m.heights - 1) * 100 - 10.1)).toBeLessThan(0.5);
});
