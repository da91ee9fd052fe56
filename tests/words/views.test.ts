/** Views have no text of their own: what stands between their tags, or is told to a screen reader, comes from the words or from a file. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ownTexts } from './viewTexts.ts';

const VIEWS = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .map((name) => `src/${name.replaceAll('\\', '/')}`)
  .filter((name) => name.endsWith('.tsx'));

test('no view says anything that is not handed down', () => {
  expect(VIEWS.length).toBeGreaterThan(50);
  expect(VIEWS.flatMap((view) => ownTexts(readFileSync(view, 'utf8')).map((text) => `${view}: ${text}`))).toEqual([]);
});

test('such a text would be seen, and nothing else', () => {
  const page = (inner: string): string => `export const Page = ({ words, n }) => ${inner};`;
  for (const inner of [
    '<p>Sign off</p>',
    '<b aria-label="Close" />',
    '<b title={`Turn $' + '{n}`} />',
    '<p>{n > 1 ? "turns" : words.turn}</p>',
  ])
    expect(ownTexts(page(inner)), inner).toHaveLength(1);
  for (const inner of [
    '<p class="big bold">{words.signOff}</p>',
    '<p>{n} / 3</p>',
    '<b aria-label={words.close} role="img" />',
    '<p>{n === "open" ? words.a : words.b}</p>',
  ])
    expect(ownTexts(page(inner)), inner).toEqual([]);
});
