/** Putting a list in order. Source: what a list is. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { movedTo, nearestRow } from '../../src/present/inOrder.ts';

describe('a list in order', () => {
  it.each<[number, number, string]>([
    [0, 2, 'bca'],
    [2, 0, 'cab'],
    [1, 1, 'abc'],
    [0, -5, 'abc'],
    [0, 99, 'bca'],
    [7, 0, 'abc'],
  ])('with the item at %i moved to %i is %s', (from, to, after) => {
    expect(movedTo(['a', 'b', 'c'], from, to).join('')).toBe(after);
  });

  it('loses nothing and gains nothing', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(), { maxLength: 20 }), fc.integer(), fc.integer(), (list, from, to) => {
        expect([...movedTo(list, from, to)].sort()).toEqual([...list].sort());
      }),
    );
  });

  it('finds the row that something is held over, beyond the ends too', () => {
    const rows = [0, 50, 100].map((top) => ({ top, height: 44 }));
    expect([-400, 10, 60, 130, 900].map((y) => nearestRow(rows, y))).toEqual([0, 0, 1, 2, 2]);
  });
});
