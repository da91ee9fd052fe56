/** The pieces in which the page's scripts travel are drawn from files that there are: of one that has another name now the builder would make what it likes, and say nothing. */
import { existsSync } from 'node:fs';
import { expect, it } from 'vitest';
import { PIECES } from '../../scripts/scriptPieces.ts';

it('names only files of the page', () => {
  const named = PIECES.flatMap(([, all, shared = []]) => [...all, ...shared]);
  expect(named.length).toBeGreaterThan(10);
  expect(named.filter((file) => !existsSync(`src/${file}`))).toEqual([]);
});
