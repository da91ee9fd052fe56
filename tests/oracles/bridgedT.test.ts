/**
 * Bridged-T trap of two capacitors and a bridging coil: null at w^2 L C = 2 with R = (w L)^2 / (4 r), whatever source and load.
 * Source: Tuttle, Proc. IRE January 1940; Valley and Wallman, Vacuum Tube Amplifiers, ch. 10 (from memory, derived again and simulated in ngspice).
 */

import { describe, expect, test } from 'vitest';
import { decibels, solved } from '../physics/decks.ts';
import { voltsAt } from './measure.ts';

interface Trap {
  readonly henries: number;
  readonly ohms: number;
  readonly farads: number;
}

/** Output against the same source and load without the trap between them; `shunt` null leaves the resistor out. */
function level({ henries, ohms, farads }: Trap, shunt: number | null, hz: number): number {
  const text = [
    'bridged T between 1 k and 1 k',
    'I1 0 a AC 1m',
    'Rs a 0 1k',
    `C1 a m ${farads}`,
    `C2 m b ${farads}`,
    `L1 a x ${henries}`,
    `R1 x b ${ohms}`,
    'Rl b 0 1k',
    ...(shunt === null ? [] : [`Rm m 0 ${shunt}`]),
    '.end',
  ].join('\n');
  return decibels(voltsAt(solved(text, Float64Array.of(hz)), 'b', hz) / 0.5);
}

describe('41.25 MHz: 1 uH, r 3.239767 ohm, 29.77298 pF twice, R 5183.63 ohm', () => {
  const trap = { henries: 1e-6, ohms: 3.239767, farads: 29.77298e-12 };

  test('null deeper than -100 dB', () => {
    expect(level(trap, 5183.63, 41.25e6)).toBeLessThan(-100);
  });

  test.each([
    ['R x 1.1: -42.67 dB (within 0.05)', 5183.63 * 1.1, 41.25e6, -42.67],
    ['R x 0.9: -41.08 dB (within 0.05)', 5183.63 * 0.9, 41.25e6, -41.08],
    ['R x 0.5: -22.65 dB (within 0.05)', 5183.63 * 0.5, 41.25e6, -22.65],
    ['R removed: -21.114 dB (within 0.05)', null, 41.25e6, -21.114],
    ['40.8375 MHz: -17.887 dB (within 0.05)', 5183.63, 40.8375e6, -17.887],
    ['41.6625 MHz: -17.945 dB (within 0.05)', 5183.63, 41.6625e6, -17.945],
  ] as const)('%s', (_, shunt, hz, expected) => {
    expect(Math.abs(level(trap, shunt, hz) - expected)).toBeLessThan(0.05);
  });
});

describe('4.5 MHz: 25 uH, r 14.13717 ohm, 100.0703 pF twice, R 8835.73 ohm', () => {
  const trap = { henries: 25e-6, ohms: 14.13717, farads: 100.0703e-12 };
  test.each([
    ['R x 1.1: -46.69 dB (within 0.05)', 8835.73 * 1.1, 4.5e6, -46.69],
    ['R removed: -25.425 dB (within 0.05)', null, 4.5e6, -25.425],
    ['4.455 MHz: -25.881 dB (within 0.05)', 8835.73, 4.455e6, -25.881],
  ] as const)('%s', (_, shunt, hz, expected) => {
    expect(Math.abs(level(trap, shunt, hz) - expected)).toBeLessThan(0.05);
  });
});
