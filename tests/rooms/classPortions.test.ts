/** A list that is sorted anew comes in portions: never more new rows at a time than are asked for, each row once, and in the end the list itself. Common practice, no source. */
import { expect, test } from 'vitest';
import { portionOf } from '../../src/rooms/class/portions.ts';

const rows = (...nos: readonly number[]) => nos.map((no) => ({ no }));
const nos = (list: readonly { readonly no: number }[]) => list.map(({ no }) => no);

test('rows that are there already come in their new order at once', () => {
  const wanted = rows(3, 1, 2);
  expect(portionOf(rows(1, 2, 3), wanted, 1)).toBe(wanted);
});

test('of an empty table the first few come', () => {
  expect(nos(portionOf(rows(), rows(1, 2, 3, 4, 5), 2))).toEqual([1, 2]);
});

test('what has not had its turn leaves the rows that stood there, each once', () => {
  expect(nos(portionOf(rows(1, 2, 3, 4), rows(9, 8, 1, 7), 2))).toEqual([9, 8, 1, 4]);
  expect(nos(portionOf(rows(1, 2, 3, 4), rows(4, 9, 8, 7), 1))).toEqual([4, 9, 3]);
});

test('turn by turn the list itself stands there, and no turn brings more than it may', () => {
  const wanted = rows(...Array.from({ length: 50 }, (_, i) => 500 - i));
  let drawn: readonly { readonly no: number }[] = rows(...Array.from({ length: 50 }, (_, i) => i + 1));
  let turns = 0;
  while (drawn !== wanted) {
    const next = portionOf(drawn, wanted, 10);
    const before = new Set(nos(drawn));
    expect(nos(next).filter((no) => !before.has(no)).length).toBeLessThanOrEqual(10);
    expect(new Set(nos(next)).size).toBe(next.length);
    drawn = next;
    turns += 1;
  }
  expect(turns).toBe(5);
});
