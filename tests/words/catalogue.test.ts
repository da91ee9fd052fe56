/** English as a whole: every file is in it, and no plain string in it offends the house's way of writing. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { terminal } from '../../src/words/en/terminal.ts';

const FOLDER = 'src/words/en';
const FILES = readdirSync(FOLDER, { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => name.endsWith('.ts'));

test('every file of the folder is in the language', () => {
  const imported = FILES.flatMap((name) =>
    [...readFileSync(`${FOLDER}/${name}`, 'utf8').matchAll(/from '\.\/([\w-]+\.ts)'/g)].map((match) =>
      path.posix.join(path.posix.dirname(name), match[1]!),
    ),
  );
  const values = ['terminal.ts', 'handbook/index.ts'];
  expect([...new Set([...imported, ...values])].sort()).toEqual([...FILES].sort());
});

function strings(value: unknown, path: string): (readonly [string, string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => strings(inner, `${path}.${key}`));
}

test('plain strings are clean: no doubled spaces, no plain minus before a digit, no straight apostrophe', () => {
  const all = strings(terminal, 'en');
  expect(all.length).toBeGreaterThan(200);
  expect(all.filter(([, text]) => / {2}|(^|\s)-\d|\w'\w|^\s|\s$/.test(text) && text.trim() !== '')).toEqual([]);
});

test('the files of sentences write no plain minus and no small fraction glyphs', () => {
  for (const name of FILES) {
    const text = readFileSync(`${FOLDER}/${name}`, 'utf8');
    expect(text, name).not.toMatch(/['`][^'`]*[^\w]-\d/);
    expect(text, name).not.toMatch(/[\u00bc-\u00be\u2150-\u215e]/);
    // British spelling, the commonest slips.
    expect(text, name).not.toMatch(/\b(?:center|color|gray|meters\b|analyz|behavior|judgment)/i);
  }
});
