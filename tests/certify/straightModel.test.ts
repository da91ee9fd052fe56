/** The least highest of straight lines in a box: on one that is worked out by hand, and against the halving of levels, which knows nothing of corners. */
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { leastTop } from '../../src/certify/straightModel.ts';

const highestAt = (r: Float64Array, jacobian: Float64Array, d: ArrayLike<number>): number =>
  Math.max(...r.map((v, i) => v + Array.from(d).reduce((sum, x, j) => sum + jacobian[i * d.length + j]! * x, 0)));

describe('the step whose highest line is least', () => {
  // |x - 1| and |x + 2 y| over -3..3, -1..1: both 0 at x = 1, y = -1/2.
  it('by hand: two pairs of lines that meet inside the box', () => {
    const r = Float64Array.of(-1, 1, 0, 0);
    const jacobian = Float64Array.of(1, 0, -1, 0, 1, 2, -1, -2);
    const { d, worst } = leastTop({ r, jacobian }, { low: [-3, -1], high: [3, 1] });
    expect(worst).toBeCloseTo(0, 12);
    expect(d[0]).toBeCloseTo(1, 12);
    expect(d[1]).toBeCloseTo(-0.5, 12);
  });

  // The same with x held under a half: |x - 1| leaves a half there.
  it('by hand: where the box is in the way', () => {
    const r = Float64Array.of(-1, 1, 0, 0);
    const jacobian = Float64Array.of(1, 0, -1, 0, 1, 2, -1, -2);
    expect(leastTop({ r, jacobian }, { low: [-3, -1], high: [0.5, 1] }).worst).toBeCloseTo(0.5, 12);
  });

  it('no place of the box is lower, of thousands tried, and the step lies in the box', () => {
    const chance = seededRandom(7);
    for (let k = 0; k < 60; k++) {
      const n = 2 + (k % 9);
      const lines = 5 + (k % 17);
      const r = Float64Array.from({ length: lines }, () => 4 * chance() - 2);
      const jacobian = Float64Array.from({ length: lines * n }, () => (chance() < 0.2 ? 0 : 6 * chance() - 3));
      const low = Array.from({ length: n }, () => (chance() < 0.1 ? 0 : -chance()));
      const high = Array.from({ length: n }, () => chance());
      const { d, worst } = leastTop({ r, jacobian }, { low, high });
      expect(highestAt(r, jacobian, d)).toBeCloseTo(worst, 9);
      for (const [j, x] of d.entries()) expect(x >= low[j]! && x <= high[j]!).toBe(true);
      let least = Number.POSITIVE_INFINITY;
      let best: readonly number[] = [...d];
      for (let look = 0; look < 400; look++) {
        const reach = look < 200 ? 1 : 0.02;
        const at = best.map((x, j) =>
          Math.min(Math.max(x + reach * (2 * chance() - 1) * (high[j]! - low[j]!), low[j]!), high[j]!),
        );
        const there = highestAt(r, jacobian, at);
        if (there < least) [least, best] = [there, at];
      }
      expect(least).toBeGreaterThan(worst - 1e-9);
    }
  });
});
