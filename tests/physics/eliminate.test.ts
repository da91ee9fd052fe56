/** One matrix taken apart for several right sides: what comes out is to the last digit what elimination by itself gives. */
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { eliminate, eliminateFour, factor, substitute } from '../../src/physics/eliminate.ts';

/** Both ways for one matrix and some right sides. */
function bothWays(matrix: readonly (readonly number[])[], sides: readonly (readonly number[])[]) {
  const n = matrix.length;
  // Somewhere inside a longer array, as the loads keep them.
  const kept = Float64Array.from([7, ...matrix.flat(), 7]);
  const rows = new Uint8Array(n + 2);
  const steps = factor(kept, 1, n, rows, 2);
  return sides.map((side) => {
    const whole = Float64Array.from(matrix.flatMap((row, i) => [...row, side[i]!]));
    const done = eliminate(whole, n);
    const b = Float64Array.from(side);
    substitute(kept, 1, n, rows, 2, steps, b);
    if (n === 4) {
      const four = Float64Array.from(matrix.flatMap((row, i) => [...row, side[i]!]));
      const place = (i: number): number => i * (n + 1) + n;
      expect(eliminateFour(four)).toBe(done);
      if (done) expect(matrix.map((_, i) => four[place(i)])).toEqual(matrix.map((_, i) => whole[place(i)]));
    }
    return { done, steps, whole: matrix.map((_, i) => whole[i * (n + 1) + n]), halves: [...b] };
  });
}

describe('one matrix, several right sides', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 14, 21, 32])('of %i rows: the same numbers as elimination gives', (n) => {
    const chance = seededRandom(40 + n);
    const row = (length: number): number[] => Array.from({ length }, () => 2 * chance() - 1);
    for (let i = 0; i < 200; i++) {
      // In every other one some places hold nothing.
      const gaps = (figures: number[]): number[] => figures.map((v) => (i % 2 === 1 && chance() < 0.2 ? 0 : v));
      const matrix = Array.from({ length: n }, (_, k) => gaps(row(n)).with(k, 1 + chance()));
      for (const { done, steps, whole, halves } of bothWays(matrix, [row(n), row(n), row(n)])) {
        expect(done).toBe(true);
        expect(steps).toBe(n);
        expect(halves).toEqual(whole);
      }
    }
  });

  it('takes the largest of a column first, and solves what it should', () => {
    const [both] = bothWays(
      [
        [0, 2],
        [4, 0],
      ],
      [[6, 8]],
    );
    expect(both?.halves).toEqual([2, 3]);
  });

  it('stops where elimination stops', () => {
    const all = bothWays(
      [
        [1, 2, 3],
        [2, 4, 6],
        [1, 0, 1],
      ],
      [
        [1, 2, 3],
        [3, 2, 1],
      ],
    );
    for (const { done, steps, whole, halves } of all) {
      expect(done).toBe(false);
      expect(steps).toBe(2);
      expect(halves).toEqual(whole);
    }
  });
});
