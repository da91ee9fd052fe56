/** The catalogue as a whole: every file is in it, and no plain string in it offends the house's way of writing. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { catalogue } from '../../src/words/words.ts';

const FILES = readdirSync('src/words/en').map((name) => name.replace(/\.ts$/, ''));

test('every file of the catalogue is a member of it', () => {
  expect(Object.keys(catalogue).sort()).toEqual([...FILES].sort());
});

function strings(value: unknown, path: string): (readonly [string, string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => strings(inner, `${path}.${key}`));
}

test('plain strings are clean: no doubled spaces, no plain minus before a digit, no straight apostrophe', () => {
  const all = strings(catalogue, 'catalogue');
  expect(all.length).toBeGreaterThan(200);
  expect(all.filter(([, text]) => / {2}|(^|\s)-\d|\w'\w|^\s|\s$/.test(text) && text.trim() !== '')).toEqual([]);
});

test('the files of sentences write no plain minus and no small fraction glyphs', () => {
  for (const name of ['curve', 'facts', 'grading', 'problems', 'refusals', 'session']) {
    const text = readFileSync(`src/words/en/${name}.ts`, 'utf8');
    expect(text, name).not.toMatch(/['`][^'`]*[^\w]-\d/);
    expect(text, name).not.toMatch(/[\u00bc-\u00be\u2150-\u215e]/);
    // British spelling, the commonest slips.
    expect(text, name).not.toMatch(/\b(?:center|color|gray|meters\b|analyz|behavior|judgment)/i);
  }
});
