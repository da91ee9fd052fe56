/** Levenberg-Marquardt in a box, on published test problems with known solutions (Moré, Garbow, Hillstrom, ACM TOMS 7, 1981; from memory). */
import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../src/certify/leastSquares.ts';

type Fn = (x: Float64Array) => number[];

function solve(r: Fn, start: number[], low = -1e6, high = 1e6) {
  const residuals = (x: Float64Array): Float64Array => Float64Array.from(r(x));
  return leastSquares(
    {
      residuals,
      slopes: (x) => {
        const at = residuals(x);
        const jacobian = new Float64Array(at.length * x.length);
        for (let j = 0; j < x.length; j++) {
          const h = 1e-6 * Math.max(1, Math.abs(x[j]!));
          const up = residuals(x.map((v, k) => (k === j ? v + h : v)));
          const down = residuals(x.map((v, k) => (k === j ? v - h : v)));
          for (let i = 0; i < at.length; i++) jacobian[i * x.length + j] = (up[i]! - down[i]!) / (2 * h);
        }
        return { r: at, jacobian };
      },
      box: { low: start.map(() => low), high: start.map(() => high) },
      mostIterations: 400,
      enough: 1e-26,
    },
    Float64Array.from(start),
  );
}

describe('least squares', () => {
  it('goes down the valley of Rosenbrock to (1, 1)', () => {
    const { x, cost } = solve((p) => [10 * (p[1]! - p[0]! ** 2), 1 - p[0]!], [-1.2, 1]);
    expect(cost).toBeLessThan(1e-16);
    expect([...x].map((v) => Math.round(v * 1e6) / 1e6)).toEqual([1, 1]);
  });

  it('brings the singular function of Powell near zero', () => {
    const powell: Fn = (p) => [
      p[0]! + 10 * p[1]!,
      Math.sqrt(5) * (p[2]! - p[3]!),
      (p[1]! - 2 * p[2]!) ** 2,
      Math.sqrt(10) * (p[0]! - p[3]!) ** 2,
    ];
    expect(solve(powell, [3, -1, 0, 1]).cost).toBeLessThan(1e-12);
  });

  it('fits what cannot be met: Freudenstein and Roth end in one of their two minima', () => {
    const { cost } = solve(
      (p) => [-13 + p[0]! + ((5 - p[1]!) * p[1]! - 2) * p[1]!, -29 + p[0]! + ((p[1]! + 1) * p[1]! - 14) * p[1]!],
      [0.5, -2],
    );
    expect(Math.abs(cost - 48.98425)).toBeLessThan(1e-4);
  });

  it('stands at the bound when the minimum is outside, and is least there', () => {
    const { x } = solve((p) => [10 * (p[1]! - p[0]! ** 2), 1 - p[0]!], [-1.2, 0.2], -2, 0.5);
    // On the edge x = 0.5 the best y is 0.25 (by hand).
    expect(x[0]).toBe(0.5);
    expect(Math.abs(x[1]! - 0.25)).toBeLessThan(1e-6);
  });
});
