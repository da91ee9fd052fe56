/** The first file that the book of formats gives is whole, fits its receiver and can be certified, as it stands there. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { inside, PROJECT, scratch } from '../cli/commandLine.ts';

const files = scratch();
afterAll(files.remove);

it('has ten keys, is sound, and can be solved', () => {
  const book = readFileSync(path.join(PROJECT, 'docs', 'scenario-format.md'), 'utf8');
  const text = /A first file\.[\s\S]*?```json\n([\s\S]*?)```/.exec(book)![1]!;
  expect(Object.keys(JSON.parse(text) as object)).toHaveLength(10);
  const file = files.file('back-from-the-regatta.json', text);
  expect(inside('check', file)).toMatchObject({ code: 0, err: '' });
  expect(inside('certify', file)).toMatchObject({ code: 0, err: '' });
});
