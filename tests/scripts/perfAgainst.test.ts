/** Two versions of the code measured in turn: what the table says of them. The figures are written by hand; no clock runs. */
import { describe, expect, it } from 'vitest';
import { compared, type OneRound } from '../../perf/compared.ts';
import { casesFor } from '../../perf/loadCases.ts';
import { tableOf } from '../../perf/table.ts';

const round = (micros: readonly number[], processorSeconds: number, checksum = 7): OneRound => ({
  ...{ micros, processorSeconds, checksum },
});

describe('two versions side by side', () => {
  it('pairs the rounds: a machine that slows down for both changes no ratio', () => {
    const here = [round([1, 2, 3], 1), round([10, 20, 30], 10)];
    const there = [round([2, 4, 6], 4), round([20, 40, 60], 40)];
    const { ratio, processorRatio, here: mine } = compared(here, there);
    expect(ratio).toEqual({ median: 0.5, least: 0.5, most: 0.5 });
    expect(processorRatio).toEqual({ median: 0.25, least: 0.25, most: 0.25 });
    expect(mine).toEqual({ median: 6.5, least: 1, most: 30 });
  });

  it('gives the range of the ratio', () => {
    const { ratio } = compared(
      [round([3], 1), round([1], 1), round([2], 1)],
      [round([1], 1), round([2], 1), round([2], 1)],
    );
    expect(ratio).toEqual({ median: 1, least: 0.5, most: 3 });
  });

  it.each([
    ['the other version', [round([1], 1, 7)], [round([1], 1, 8)]],
    ['one version from round to round', [round([1], 1, 7), round([1], 1, 8)], [round([1], 1, 7), round([1], 1, 8)]],
  ])('says where the work was not the same: %s', (_, here, there) => {
    expect(compared(here, there).sameWork).toBe(false);
    expect(compared([round([1], 1)], [round([1], 1)]).sameWork).toBe(true);
  });

  it('refuses rounds that do not pair', () => {
    expect(() => compared([round([1], 1)], [])).toThrow('pair');
  });

  it('takes the cases that a word is in, or all', () => {
    const all = [{ id: 'solve-full' }, { id: 'tube' }];
    expect(casesFor(all, ['sol'])).toEqual([{ id: 'solve-full' }]);
    expect(casesFor(all, [])).toEqual(all);
  });

  it('writes columns, and a reason why nothing was measured makes none of them wide', () => {
    const rows = [
      ['case', 'us', 'ratio'],
      ['a', '1.0', '0.50'],
      ['bb', 'not run: no browser', ''],
    ];
    expect(tableOf(rows)).toBe('case   us  ratio\na     1.0   0.50\nbb    not run: no browser\n');
  });
});
