/**
 * Describing function, diode, one-pole filters and sweep geometry. Sources: the integrals themselves, done another way here;
 * limits of the diode law as in D. W. Knight, Diode detectors for RF measurement; AC coupling droop, Terman (from memory), computed.
 */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { besselI0Scaled } from '../../src/physics/bessel.ts';
import { fundamentalGain, fundamentalGainByQuadrature } from '../../src/physics/describingFunction.ts';
import { createDetector, detectEnvelope } from '../../src/physics/diode.ts';
import { periodicHighPass, periodicOnePole } from '../../src/physics/onePole.ts';
import { sweepAngle, sweepFrequencies, wholePeriod, xDrive, xOfFrequency } from '../../src/physics/sweep.ts';
import { SEED } from '../laws/randomNetworks.ts';

describe('fundamental gain of tanh', () => {
  /** Simpson's rule on the defining integral, over the quarter period. */
  const bySimpson = (a: number): number => {
    const n = 20_000;
    const f = (t: number) => Math.tanh(a * Math.sin(t)) * Math.sin(t);
    let sum = f(0) + f(Math.PI / 2);
    for (let i = 1; i < n; i++) sum += f((i * Math.PI) / 2 / n) * (i % 2 === 1 ? 4 : 2);
    return ((sum * Math.PI) / 2 / n / 3) * (4 / (Math.PI * a));
  };

  test('agrees with the integral within 1e-7, from small signal to deep limiting and across the end of the table', () => {
    for (const a of [
      1e-6, 0.001, 0.01, 0.03, 0.1, 0.333, 1, 1.5, 2.7, 5, 8.13, 12, 15.9, 15.99999, 16, 16.1, 25, 60, 300,
    ]) {
      expect(Math.abs(fundamentalGain(a) / bySimpson(a) - 1)).toBeLessThan(1e-7);
      expect(fundamentalGain(-a)).toBe(fundamentalGain(a));
    }
    for (let a = 16; a < 100; a *= 1.1) expect(Math.abs(fundamentalGain(a) / bySimpson(a) - 1)).toBeLessThan(1e-8);
    for (let a = 0.005; a < 17; a += 0.0137) {
      expect(Math.abs(fundamentalGain(a) / fundamentalGainByQuadrature(a, 1200) - 1)).toBeLessThan(1e-7);
    }
  });

  test('limits: 1 at zero, 1 - a^2 / 4 when small, 4 / (pi a) when large; falls all the way', () => {
    expect(fundamentalGain(0)).toBeCloseTo(1, 12);
    expect((1 - fundamentalGain(0.05)) / (0.05 ** 2 / 4)).toBeCloseTo(1, 2);
    expect(fundamentalGain(1e6) * 1e6 * (Math.PI / 4)).toBeCloseTo(1, 9);
    expect(fundamentalGain(Number.POSITIVE_INFINITY)).toBe(0);
    let last = 1;
    for (let a = 0.05; a < 40; a += 0.05) {
      expect(fundamentalGain(a)).toBeLessThan(last);
      last = fundamentalGain(a);
    }
  });
});

describe('diode', () => {
  const V_T = 0.025852;

  test.each([
    // Abramowitz and Stegun, Handbook of Mathematical Functions, table 9.8 (from memory), figures checked with scipy.special.i0e.
    [0, 1],
    [0.2, 0.8269385516],
    [1, 0.4657596076],
    [2, 0.3085083226],
    [5, 0.1835408126],
    [10, 0.1278333372],
  ])('exp(-x) I0(x) at %d is %d (ten figures)', (x, expected) => {
    expect(Math.abs(besselI0Scaled(x) - expected)).toBeLessThan(1e-10);
    expect(besselI0Scaled(-x)).toBe(besselI0Scaled(x));
  });

  test('series and asymptote of I0 meet at 20 (within 1e-13)', () => {
    const step = besselI0Scaled(20 + 1e-9) / besselI0Scaled(20 - 1e-9) - 1;
    expect(Math.abs(step + 2e-9 * (1 / 40 + 1 / 3200))).toBeLessThan(1e-13);
  });

  test('the answer satisfies the equation of equal mean currents', () => {
    // Mean diode current over a cycle, by direct integration, equals the load's current V / R.
    for (const amplitude of [0.003, 0.05, 0.4, 2]) {
      const diode = { saturationAmps: 2e-6, emissionVolts: 0.04, loadOhms: 4700 };
      const volts = detectEnvelope(amplitude, diode);
      const n = 4000;
      let mean = 0;
      for (let i = 0; i < n; i++) {
        mean += Math.expm1((amplitude * Math.cos((2 * Math.PI * (i + 0.5)) / n) - volts) / 0.04) / n;
      }
      expect((mean * diode.saturationAmps) / (volts / diode.loadOhms)).toBeCloseTo(1, 8);
    }
  });

  test('zero, sign and limits', () => {
    const diode = { saturationAmps: 1e-6, emissionVolts: V_T, loadOhms: Number.POSITIVE_INFINITY };
    expect(detectEnvelope(0, diode)).toBe(0);
    expect(detectEnvelope(-0.2, diode)).toBe(detectEnvelope(0.2, diode));
    expect(detectEnvelope(1e-5, diode) / (1e-10 / (4 * V_T))).toBeCloseTo(1, 6);
    const large = 5 - (V_T / 2) * Math.log((2 * Math.PI * 5) / V_T);
    expect(detectEnvelope(5, diode) / large).toBeCloseTo(1, 3);
  });

  test('the fast detector agrees with the equation within 1e-8, from microvolts to beyond its table', () => {
    for (const loadOhms of [1000, 1e4, 1e6, Number.POSITIVE_INFINITY]) {
      const diode = { saturationAmps: 1e-6, emissionVolts: 0.035, loadOhms };
      const fast = createDetector(diode);
      expect(fast(0)).toBe(0);
      for (let amplitude = 1e-6; amplitude < 500; amplitude *= 1.07) {
        expect(Math.abs(fast(amplitude) / detectEnvelope(amplitude, diode) - 1)).toBeLessThan(1e-8);
        expect(fast(-amplitude)).toBe(fast(amplitude));
      }
    }
  });
});

describe('periodic one-pole filters', () => {
  const wave = (n: number, f: (phase: number) => number) =>
    Float64Array.from({ length: n }, (_, i) => f((2 * Math.PI * i) / n));

  test('a sine comes out smaller and later by the filter of its frequency', () => {
    const n = 4096;
    const period = 1 / 60;
    const tau = 2e-3;
    const out = new Float64Array(n);
    periodicOnePole(wave(n, Math.sin), tau, period, out);
    const wt = 2 * Math.PI * 60 * tau;
    for (const i of [0, 100, 1777, 4000]) {
      const phase = (2 * Math.PI * i) / n;
      expect(out[i]).toBeCloseTo((Math.sin(phase) - wt * Math.cos(phase)) / (1 + wt * wt), 6);
    }
  });

  test('settled: running on for another period changes nothing, whatever the time constant', () => {
    const samples = fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: 1, maxLength: 60 });
    const tau = fc.double({ min: -6, max: 3, noNaN: true }).map((x) => 10 ** x);
    fc.assert(
      fc.property(samples, tau, (list, tauSeconds) => {
        const x = Float64Array.from(list);
        const twice = Float64Array.from([...list, ...list]);
        const [one, two] = [new Float64Array(x.length), new Float64Array(twice.length)];
        periodicOnePole(x, tauSeconds, 0.02, one);
        periodicOnePole(twice, tauSeconds, 0.04, two);
        for (let i = 0; i < twice.length; i++) expect(Math.abs(two[i]! - one[i % x.length]!)).toBeLessThan(1e-8);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test('the samples may stand twice as dense: the straight line between them is filtered exactly', () => {
    const coarse = Float64Array.from([0, 3, -1, 2, 5, 4]);
    const fine = Float64Array.from({ length: 12 }, (_, i) =>
      i % 2 === 0 ? coarse[i / 2]! : (coarse[(i - 1) / 2]! + coarse[((i + 1) / 2) % 6]!) / 2,
    );
    const [a, b] = [new Float64Array(6), new Float64Array(12)];
    periodicOnePole(coarse, 0.004, 0.02, a);
    periodicOnePole(fine, 0.004, 0.02, b);
    for (let i = 0; i < 6; i++) expect(b[2 * i]).toBeCloseTo(a[i]!, 12);
  });

  test('no time constant copies, a very long one gives the mean; in place works', () => {
    const x = Float64Array.from([1, 5, 2, -4]);
    periodicOnePole(x, 0, 0.02, x);
    expect([...x]).toEqual([1, 5, 2, -4]);
    periodicOnePole(x, 1e6, 0.02, x);
    for (const y of x) expect(y).toBeCloseTo(1, 6);
  });

  test('high-pass: no mean is left, and a blanked trace sinks by duty times height', () => {
    const n = 1000;
    const x = Float64Array.from({ length: n }, (_, i) => (i < 300 ? 4 : 0));
    const out = new Float64Array(n);
    periodicHighPass(x, 10, 1 / 60, out, new Float64Array(n));
    expect(out.reduce((sum, v) => sum + v, 0) / n).toBeCloseTo(0, 9);
    expect(out[700]).toBeCloseTo(-1.2, 2);
  });

  test('AC coupling droop: 0.1 uF into 1 megohm, 60 Hz square wave tilts by 8.329 % (within 0.02)', () => {
    const n = 20_000;
    const square = Float64Array.from({ length: n }, (_, i) => (i < n / 2 ? 1 : -1));
    const out = new Float64Array(n);
    periodicHighPass(square, 0.1, 1 / 60, square, out);
    expect(Math.abs((square[0]! - square[n / 2 - 1]!) * 100 - 8.329)).toBeLessThan(0.02);
  });

  test('wrong use throws', () => {
    expect(() => periodicOnePole(new Float64Array(3), 1, 1, new Float64Array(2))).toThrow('out');
    expect(() => periodicOnePole(new Float64Array(3), -1, 1, new Float64Array(3))).toThrow('tau');
    expect(() => periodicOnePole(new Float64Array(3), 1, 0, new Float64Array(3))).toThrow('period');
  });
});

describe('sweep geometry', () => {
  test('the forward half rises from one end of the span to the other, symmetrical about the centre', () => {
    const hz = sweepFrequencies(10.7e6, 1e6, 1024);
    for (let i = 1; i < hz.length; i++) expect(hz[i]).toBeGreaterThan(hz[i - 1]!);
    expect(hz[0]).toBeGreaterThan(10.2e6);
    expect(hz[0]).toBeLessThan(10.2001e6);
    for (const i of [0, 300, 511]) expect(hz[i]! + hz[1023 - i]!).toBeCloseTo(21.4e6, 3);
  });

  test('span zero is a spot frequency', () => {
    expect(new Set(sweepFrequencies(10.7e6, 0, 16))).toEqual(new Set([10.7e6]));
  });

  test('the retrace mirrors the trace, and with no phase error stands exactly over it', () => {
    const hz = wholePeriod(sweepFrequencies(10.7e6, 1e6, 512));
    const x = xDrive(512, 0);
    for (let i = 0; i < 512; i++) {
      expect(hz[1023 - i]).toBe(hz[i]);
      expect(x[1023 - i]).toBeCloseTo(x[i]!, 12);
      expect(xOfFrequency(hz[i]!, 10.7e6, 1e6)).toBeCloseTo(x[i]!, 9);
    }
  });

  test('a lag of half a turn draws the same picture mirrored', () => {
    const [straight, turned] = [xDrive(64, 0), xDrive(64, Math.PI)];
    for (let i = 0; i < 128; i++) expect(turned[i]).toBeCloseTo(-straight[i]!, 12);
  });

  test('angles are the middles of equal intervals of a half turn', () => {
    expect(sweepAngle(0, 2)).toBeCloseTo(-Math.PI / 4, 14);
    expect(sweepAngle(3, 2)).toBeCloseTo((5 * Math.PI) / 4, 14);
  });

  test('wrong use throws', () => {
    expect(() => sweepFrequencies(1, 1, 4, new Float64Array(3))).toThrow('out');
  });
});
