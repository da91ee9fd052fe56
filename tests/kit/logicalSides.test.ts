/** Texts may run from right to left: the style sheets give their sides as start and end. Only what stands beside something placed in pixels says left or right. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const SHEETS = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .map((name) => `src/${name.replaceAll('\\', '/')}`)
  .filter((name) => name.endsWith('.css'));

/** Room left for jacks and leads, whose places are reckoned in pixels. */
const PHYSICAL: Readonly<Record<string, readonly string[]>> = {
  'src/rooms/bench/panels/biasPanel.css': ['padding-left: 54px'],
  'src/rooms/bench/panels/panels.css': ['padding-right: 62px'],
  'src/rooms/bench/panels/tubePanel.css': ['padding-right: 14px'],
  'src/rooms/bench/scene/scene.css': ['padding-right: 76px'],
};

function physicalSides(css: string): string[] {
  const said =
    css.match(/(?<![\w-])(?:(?:margin|padding|border)-(?:left|right)[\w-]*: [^;]+|text-align: (?:left|right))/g) ?? [];
  // Four values in a row say right and left where the two differ.
  const four = [...css.matchAll(/(?<![\w-])(?:margin|padding): (\S+) (\S+) (\S+) (\S+);/g)]
    .filter(([, , right, , left]) => right !== left)
    .map(([whole]) => whole);
  return [...said, ...four];
}

test('margins, paddings, borders and alignment of texts know no left and right', () => {
  const found = SHEETS.flatMap((sheet) =>
    physicalSides(readFileSync(sheet, 'utf8'))
      .filter((said) => !PHYSICAL[sheet]?.includes(said))
      .map((said) => `${sheet}: ${said}`),
  );
  expect(SHEETS.length).toBeGreaterThan(10);
  expect(found).toEqual([]);
});

test('would see each of them', () => {
  for (const css of [
    'padding-left: 4px;',
    'border-right-color: red;',
    'text-align: right;',
    'margin: 1px 2px 3px 4px;',
  ])
    expect(physicalSides(css), css).toHaveLength(1);
  for (const css of [
    'padding-inline: 4px 2px;',
    'text-align: start;',
    'margin: 1px 2px 3px 2px;',
    'scroll-padding-left: 2px;',
  ])
    expect(physicalSides(css), css).toHaveLength(0);
});
