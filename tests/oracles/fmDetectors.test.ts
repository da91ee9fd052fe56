/**
 * FM detectors: closed forms of the discriminator, and the ratio detector beside it.
 * Sources: Foster and Seeley, Proc. IRE March 1937 (constant primary voltage; closed forms derived again and checked): with a = 2 Q (f - f0) / f0 and h the half
 * secondary over the primary, output  (sqrt(1 + (a + h)^2) - sqrt(1 + (a - h)^2)) / sqrt(1 + a^2), slope 2h / sqrt(1 + h^2), peak 2h / sqrt(4 + h^2) at
 * a = sqrt(1 + h^2 / 2). Seeley and Avins, The Ratio Detector, RCA Review June 1947: the sum held, output (sum / 2) (E1 - E2) / (E1 + E2), steady while the input falls to one
 * third; balanced residue of AM, suppression 20 log (M / v).
 */

import { describe, expect, test } from 'vitest';
import { createDetector } from '../../src/physics/diode.ts';
import { fmOutput, fmOutputs } from '../../src/physics/fmDetector.ts';
import { decibels, grid, solved } from '../physics/decks.ts';
import { tank } from './measure.ts';

const F0 = 10.7e6;

/** |V_p + V_s / 2| and |V_p - V_s / 2| over |V_p|, from a solved pair. */
function halvesOf(text: string, hz: Float64Array): { plus: Float64Array; minus: Float64Array; primary: Float64Array } {
  const solver = solved(text, hz);
  const [pr, pi, sr, si] = [solver.real('p'), solver.imag('p'), solver.real('s'), solver.imag('s')];
  const half = (sign: number) =>
    hz.map((_, i) => Math.hypot(pr[i]! + (sign * sr[i]!) / 2, pi[i]! + (sign * si[i]!) / 2));
  return { plus: half(1), minus: half(-1), primary: solver.magnitude('p') };
}

describe('Foster-Seeley with a stiff primary', () => {
  // A Q so high that the narrow-band form holds to 1e-5, and a source of a ten-thousandth of the primary's reactance.
  const q = 1e5;
  const [lp, ls] = [1e-6, 4e-6];
  const stiff = 2 * Math.PI * F0 * lp * 1e-4;
  // The secondary resonates with the primary shorted: its coil looks smaller by 1 - k^2.
  const curve = (h: number) => {
    const k = (2 * h) / (q * Math.sqrt(ls / lp));
    const text = [
      'stiff',
      'I1 0 p AC 1m',
      `Rp p 0 ${stiff}`,
      `Lp p 0 ${lp}`,
      tank('s', 's', F0, q, ls),
      `K1 Lp Ls ${k}`,
    ];
    return (a: Float64Array): Float64Array => {
      const hz = a.map((x) => F0 * (1 + x / (2 * q)));
      const { plus, minus, primary } = halvesOf([...text, '.end'].join('\n'), hz);
      return hz.map((_, i) => Math.abs(fmOutput('discriminator', plus[i]!, minus[i]!, 0)) / primary[i]!);
    };
  };

  test.each([
    [1, 1.224745, 0.894427, Math.SQRT2],
    [2, 1.732051, Math.SQRT2, 1.788854],
    [2.5, 2.03101, 1.561738, 1.856953],
  ])('h %d: peak at a = %d of height %d, slope %d at the middle (within 1e-4)', (h, at, height, slope) => {
    const output = curve(h);
    const a = grid(0.5, 3.5, 30_001);
    const s = output(a);
    const top = s.reduce((best, v, i) => (v > s[best]! ? i : best), 0);
    // The top is flat: the parabola through three wider points gives its place better than the highest sample.
    const [below, above] = [s[top - 50]!, s[top + 50]!];
    const place = a[top]! + (0.005 * (above - below)) / (2 * (2 * s[top]! - above - below));
    expect(Math.abs(place - at)).toBeLessThan(1e-4);
    expect(Math.abs(s[top]! - height)).toBeLessThan(1e-4);
    const [low, high] = output(Float64Array.of(-0.001, 0.001));
    expect(Math.abs((low! + high!) / 0.002 - slope)).toBeLessThan(1e-4);
  });
});

describe('ratio detector and discriminator, 10.7 MHz, Q 60, k 0.025, 2 and 8 uH, 25 kHz off the crossing', () => {
  const text = [
    'pair',
    'I1 0 p AC 1m',
    tank('p', 'p', F0, 60, 2e-6),
    tank('s', 's', F0, 60, 8e-6),
    'K1 Lp Ls 0.025',
    '.end',
  ];
  const { plus, minus } = halvesOf(text.join('\n'), Float64Array.of(10.703345e6 + 25e3));
  const [e1, e2] = [plus[0]!, minus[0]!];

  test('input halved, sum held: the discriminator halves (within 0.1 %), the ratio detector stays', () => {
    const whole = fmOutput('discriminator', e1, e2, 0);
    expect(Math.abs(fmOutput('discriminator', e1 / 2, e2 / 2, 0) / whole / 0.5 - 1)).toBeLessThan(1e-3);
    const held = fmOutput('ratio', e1, e2, e1 + e2);
    expect(Math.abs(fmOutput('ratio', e1 / 2, e2 / 2, e1 + e2) / held - 1)).toBeLessThan(1e-12);
  });

  test('through real diodes the ratio detector stays within 2 %', () => {
    const detect = createDetector({ saturationAmps: 1e-6, emissionVolts: 0.04, loadOhms: 10e3 });
    // Some tens of volts, against which the diodes' own drop of 0.4 V is small.
    const scale = 20 / e1;
    const volts = (level: number): [number, number] => [detect(level * scale * e1), detect(level * scale * e2)];
    const sum = volts(1)[0] + volts(1)[1];
    const [whole, half] = [fmOutput('ratio', ...volts(1), sum), fmOutput('ratio', ...volts(0.5), sum)];
    expect(Math.abs(half / whole - 1)).toBeLessThan(0.02);
  });

  test('settled, the ratio detector gives half of what the discriminator gives', () => {
    expect(fmOutput('ratio', e1, e2, e1 + e2) / fmOutput('discriminator', e1, e2, 0)).toBeCloseTo(0.5, 12);
  });

  test('the input may fall to one third; far below that the output falls with it', () => {
    const at = (level: number) => fmOutput('ratio', level * e1, level * e2, e1 + e2);
    expect(at(0.34) / at(1)).toBeCloseTo(1, 12);
    expect(at(0.1) / at(0.2)).toBeCloseTo(0.5, 12);
  });

  test('balanced residue of AM at 60 Hz, depth 0.3, reservoir 0.1 s: suppressed by the pole, 31.5 dB (within 0.1)', () => {
    const n = 2048;
    const am = Float64Array.from({ length: n }, (_, i) => 1 + 0.3 * Math.cos((2 * Math.PI * i) / n));
    const [out, held] = [new Float64Array(n), new Float64Array(n)];
    const wobble = (kind: 'discriminator' | 'ratio'): number => {
      fmOutputs(
        kind,
        am.map((x) => x * e1),
        am.map((x) => x * e2),
        0.1,
        1 / 60,
        out,
        held,
      );
      const sizes = out.map(Math.abs);
      const [most, least] = [Math.max(...sizes), Math.min(...sizes)];
      return (most - least) / (most + least);
    };
    expect(wobble('discriminator')).toBeCloseTo(0.3, 6);
    // A one-pole low-pass leaves 1 / sqrt(1 + (w tau)^2) of a ripple.
    const left = Math.sqrt(1 + (2 * Math.PI * 60 * 0.1) ** 2);
    expect(Math.abs(decibels(0.3 / wobble('ratio')) - decibels(left))).toBeLessThan(0.1);
    expect(Math.abs(decibels(left) - 31.53)).toBeLessThan(0.01);
  });
});

test('one carrier at both diodes: nothing comes out; none at all: nothing, and no division by it', () => {
  for (const kind of ['discriminator', 'ratio'] as const) {
    expect(fmOutput(kind, 2, 2, 4)).toBe(0);
    expect(fmOutput(kind, 0, 0, 0)).toBe(0);
    expect(fmOutput(kind, 0, 0, 4)).toBe(0);
    expect(fmOutput(kind, 1, 3, 4)).toBe(-fmOutput(kind, 3, 1, 4));
  }
});
