/** Envelopes: a detected carrier against its own samples, a swept one against its differential equation, the gate against a free discharge, and what wrong use does. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createFastSweep, linesFit, MOST_LINES, sideLines } from '../../src/physics/fastSweep.ts';
import { createGentleSweep, LAG_LIMIT, sweepMode } from '../../src/physics/gentleSweep.ts';
import { envelopeModulation } from '../../src/physics/videoEnvelope.ts';
import { SEED } from '../laws/randomNetworks.ts';

describe('modulation of a detected carrier', () => {
  const modulation = (
    carrier: readonly [number, number],
    upper: readonly [number, number],
    lower: readonly [number, number],
  ) => {
    const [re, im] = [new Float64Array(1), new Float64Array(1)];
    envelopeModulation(
      carrier[0],
      carrier[1],
      Float64Array.of(upper[0], lower[0]),
      Float64Array.of(upper[1], lower[1]),
      1,
      re,
      im,
    );
    return [re[0]!, im[0]!] as const;
  };

  test('agrees with the envelope itself, sampled, for a small depth and any two sidebands', () => {
    const part = fc.double({ min: -2, max: 2, noNaN: true });
    fc.assert(
      fc.property(
        fc.tuple(part, part, part, part),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        ([ur, ui, lr, li], phase) => {
          const [cr, ci] = [Math.cos(phase), Math.sin(phase)];
          const [re, im] = modulation([cr, ci], [ur, ui], [lr, li]);
          // |c + (depth / 2)(u e^{jt} + l e^{-jt})| projected on cos t and sin t.
          const [n, depth] = [64, 1e-5];
          let [inPhase, quadrature] = [0, 0];
          for (let i = 0; i < n; i++) {
            const t = (2 * Math.PI * i) / n;
            const [c, s] = [Math.cos(t), Math.sin(t)];
            const x = cr + (depth / 2) * (ur * c - ui * s + lr * c + li * s);
            const y = ci + (depth / 2) * (ur * s + ui * c - lr * s + li * c);
            const size = Math.hypot(x, y);
            inPhase += (2 * size * c) / (n * depth);
            quadrature -= (2 * size * s) / (n * depth);
          }
          expect(Math.abs(re - inPhase)).toBeLessThan(1e-4);
          expect(Math.abs(im - quadrature)).toBeLessThan(1e-4);
        },
      ),
      { seed: SEED, numRuns: 200 },
    );
  });

  test('no carrier counts as in phase; wrong lengths throw', () => {
    expect(modulation([0, 0], [1, 0], [1, 0])).toEqual([1, 0]);
    const two = new Float64Array(2);
    expect(() => envelopeModulation(1, 0, two, two, 1, two, two)).toThrow('sidebands');
  });
});

describe('exact sweep', () => {
  test('a network that passes all alike gives one throughout, and nothing in the retrace behind the gate', () => {
    const fast = createFastSweep(256);
    const lines = fast.linesHz(455e3, 40e3, 60, 1);
    const [re, im] = [new Float64Array(lines.length).fill(0.6), new Float64Array(lines.length).fill(-0.8)];
    const out = new Float64Array(512);
    fast.envelope(re, im, false, out);
    for (const e of out) expect(Math.abs(e - 1)).toBeLessThan(1e-6);
    fast.envelope(re, im, true, out);
    // One missing line of the 16 384 is all that a flat network lacks.
    for (let i = 0; i < 512; i++) expect(Math.abs(out[i]! - (i < 256 ? 1 : 0))).toBeLessThan(1e-4);
    fast.envelope(re, im, false, out);
    for (const e of out) expect(Math.abs(e - 1)).toBeLessThan(1e-6);
  });

  test.each([
    ['all the time', false, 1e-7],
    ['with the carrier off in the retrace', true, 1e-4],
  ])('one circuit, %s: as its differential equation, integrated in time, says', (_, gated, tolerance) => {
    const [b, points, sweepHz, spanHz, offsetHz] = [400, 256, 60, 8e3, 1500];
    const fast = createFastSweep(points);
    const lines = fast.linesHz(455e3, spanHz, sweepHz, 1);
    const a = lines.map((hz) => (2 * (hz - 455e3 - offsetHz)) / b);
    const out = new Float64Array(2 * points);
    fast.envelope(
      a.map((x) => 1 / (1 + x * x)),
      a.map((x) => -x / (1 + x * x)),
      gated,
      out,
    );
    // de/dt = pi B (u - e) + j 2 pi offset e by the rule of Runge and Kutta, over one period to settle and one to compare.
    const [perSample, turn] = [64, 2 * Math.PI * offsetHz];
    const h = 1 / (sweepHz * 2 * points * perSample);
    let [er, ei] = [0, 0];
    let worst = 0;
    for (let k = 0; k < 4 * points * perSample; k++) {
      const at = k % (2 * points * perSample);
      const on = !gated || at < points * perSample ? Math.PI * b : 0;
      const slope = (t: number, xr: number, xi: number): [number, number] => {
        const phi = (-spanHz / (2 * sweepHz)) * Math.cos(2 * Math.PI * sweepHz * t - Math.PI / 2);
        const loss = Math.PI * b;
        return [on * Math.cos(phi) - loss * xr - turn * xi, on * Math.sin(phi) - loss * xi + turn * xr];
      };
      if (k >= 2 * points * perSample && at % perSample === perSample / 2) {
        worst = Math.max(worst, Math.abs(Math.hypot(er, ei) - out[(at - perSample / 2) / perSample]!));
      }
      const t = at * h;
      const [ar, ai] = slope(t, er, ei);
      const [br, bi] = slope(t + h / 2, er + (h / 2) * ar, ei + (h / 2) * ai);
      const [cr, ci] = slope(t + h / 2, er + (h / 2) * br, ei + (h / 2) * bi);
      const [dr, di] = slope(t + h, er + h * cr, ei + h * ci);
      er += (h / 6) * (ar + 2 * br + 2 * cr + dr);
      ei += (h / 6) * (ai + 2 * bi + 2 * ci + di);
    }
    expect(worst).toBeLessThan(tolerance);
  });

  test('after the gate a tuned circuit rings out at exp(-pi B t)', () => {
    const [b, points, sweepHz, spanHz] = [200, 512, 60, 8e3];
    const fast = createFastSweep(points);
    const lines = fast.linesHz(455e3, spanHz, sweepHz, 1);
    // Resonant at the end of the trace, where the gate closes.
    const a = lines.map((hz) => (2 * (hz - 455e3 - spanHz / 2)) / b);
    const re = a.map((x) => 1 / (1 + x * x));
    const im = a.map((x) => -x / (1 + x * x));
    const out = new Float64Array(2 * points);
    fast.envelope(re, im, true, out);
    const step = 1 / (sweepHz * 2 * points);
    for (const k of [5, 20, 60, 120]) {
      const [from, to] = [out[points + 2]!, out[points + 2 + k]!];
      expect(to / from / Math.exp(-Math.PI * b * k * step)).toBeCloseTo(1, 3);
    }
    expect(out[points]).toBeGreaterThan(0.3);
  });

  test('lines: rising, centred, one sweep frequency apart, none below the lowest allowed', () => {
    const lines = createFastSweep(64).linesHz(10e3, 18e3, 60, 500);
    expect(lines).toHaveLength(2 * sideLines(18e3, 60) + 1);
    expect(lines[sideLines(18e3, 60)]).toBe(10e3);
    expect(Math.min(...lines)).toBe(500);
    for (let i = 1; i < lines.length; i++) {
      if (lines[i - 1]! > 500) expect(lines[i]! - lines[i - 1]!).toBeCloseTo(60, 6);
    }
  });

  test('which way of reckoning: lines that fit go exactly, others by the first order, slow ones neither', () => {
    expect(linesFit(40e3, 60)).toBe(true);
    expect(linesFit(10e6, 60)).toBe(false);
    expect(2 * sideLines(40e3, 60) + 1).toBeLessThan(MOST_LINES);
    expect(sweepMode(LAG_LIMIT * 0.99, true)).toBe('quasiStatic');
    expect(sweepMode(LAG_LIMIT * 0.99, false)).toBe('quasiStatic');
    expect(sweepMode(LAG_LIMIT, true)).toBe('exact');
    expect(sweepMode(LAG_LIMIT, false)).toBe('gentle');
  });

  test('wrong use throws', () => {
    const fast = createFastSweep(64);
    expect(() => fast.envelope(new Float64Array(3), new Float64Array(3), false, new Float64Array(128))).toThrow('line');
    const n = fast.linesHz(455e3, 6e3, 60, 1).length;
    expect(() => fast.envelope(new Float64Array(n), new Float64Array(n), false, new Float64Array(64))).toThrow(
      'period',
    );
    expect(() => createGentleSweep(4).envelope(new Float64Array(4), new Float64Array(4), new Float64Array(4))).toThrow(
      'period',
    );
  });

  test('a node without signal has no lag and no envelope', () => {
    const nothing = new Float64Array(16);
    const hz = Float64Array.from({ length: 16 }, (_, i) => 1e6 + i * 1e3);
    expect(createGentleSweep(16).lag(nothing, nothing, hz, 16e3, 60)).toBe(0);
    const fast = createFastSweep(64);
    const n = fast.linesHz(455e3, 6e3, 60, 1).length;
    const out = new Float64Array(128).fill(7);
    fast.envelope(new Float64Array(n), new Float64Array(n), true, out);
    expect([...out]).toEqual(new Array(128).fill(0));
  });
});
