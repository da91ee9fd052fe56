/** docs/grading.md and the code hold to each other: every rule is tested under its number, every line has its rule, every figure is the one in the code. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ruleLabel } from '../../src/describe/ruleWords.ts';
import { grade } from '../../src/grading/grade.ts';
import { PASS_POINTS } from '../../src/grading/limits.ts';
import { lineIsMet } from '../../src/grading/report.ts';
import { isCap, type LineRule, type Rule } from '../../src/grading/rules/rule.ts';
import { LINE_RULES, RULES } from '../../src/grading/rules/rules.ts';
import { setUpLines } from '../../src/grading/standing.ts';
import { en } from '../../src/words/en/index.ts';
import { ALL_RIGHT } from '../session/fakeFacts.ts';
import { stripSetup } from '../session/setups.ts';
import { reportsBothWays } from './bothWays.ts';

const DOCUMENT = readFileSync('docs/grading.md', 'utf8');
interface Paragraph {
  readonly title: string;
  /** in brackets behind the title */
  readonly weight: number | null;
  readonly text: string;
}
const PARAGRAPHS: ReadonlyMap<string, Paragraph> = new Map(
  [...DOCUMENT.matchAll(/^\*\*(G\d+) ([^*(]+?)(?: \((\d+)\))?\.\*\*([\s\S]*?)(?=^\*\*G|^## |$(?![\s\S]))/gm)].map(
    ([, number, title, weight, text]) => [
      number!,
      { title: title!, weight: weight === undefined ? null : Number(weight), text: text! },
    ],
  ),
);
/** Rules that say how points are made of lines, and what a pass is: they have no row. */
const WITHOUT_ROW = ['G1', 'G2', 'G12', 'G36', 'G37', 'G40', 'G41', 'G42', 'G43', 'G44', 'G45', 'G46', 'G47', 'G68'];
const TITLES = readdirSync('tests/grading')
  .filter((name) => name.endsWith('.test.ts'))
  .map((name) => readFileSync(`tests/grading/${name}`, 'utf8'))
  .join('\n');

test('rules are numbered from 1 without a gap', () => {
  expect([...PARAGRAPHS.keys()]).toEqual(Array.from({ length: PARAGRAPHS.size }, (_, i) => `G${i + 1}`));
  expect(PARAGRAPHS.size).toBeGreaterThan(40);
});

test('every rule has a test that carries its number in the title', () => {
  // Titles stand in quotes after test( or in the table of a test.each.
  const tested = new Set(
    [...TITLES.matchAll(/'(?:\[G\d+\] ?)+[^'\n]*'/g)].flatMap(([title]) => title.match(/G\d+(?=\])/g) ?? []),
  );
  expect([...PARAGRAPHS.keys()].filter((rule) => !tested.has(rule))).toEqual([]);
  expect([...tested].filter((rule) => !PARAGRAPHS.has(rule))).toEqual([]);
});

test('every row has its paragraph and every other paragraph says how points are made; title, weight and cap agree', () => {
  const rows: readonly Rule[] = RULES;
  expect(new Set(rows.map((row) => row.number)).size).toBe(rows.length);
  expect([...rows.map((row) => row.number), ...WITHOUT_ROW].sort()).toEqual([...PARAGRAPHS.keys()].sort());
  for (const row of rows) {
    const { title, weight, text } = PARAGRAPHS.get(row.number)!;
    expect(ruleLabel(en, row.number)).toBe(title);
    if (isCap(row)) expect(text).toContain(`at most ${row.limit}.`);
    else if (row.about === 'biasLine') expect(weighs(row.weight), row.number).toBe(weight);
    else if (['truth', 'care'].includes(row.block)) expect(row.weight, row.number).toBe(weight);
  }
});

/** With one bias line. */
function weighs(weight: (LineRule & { about: 'biasLine' })['weight']): number {
  return typeof weight === 'number'
    ? weight
    : weight({ at: 'AGC', errorVolts: 0, toleranceVolts: 1, clamped: true, of: 1 });
}

test('every rule is met both ways: some run earns it in full, some run loses by it', () => {
  const earned = new Set<string>();
  const lost = new Set<string>();
  const unmet = (met: ReadonlySet<string>): string[] =>
    LINE_RULES.flatMap((r) => (met.has(r.number) ? [] : [r.number]));
  for (const { lines } of reportsBothWays(grade)) {
    for (const line of lines) {
      expect(line.id === line.rule || line.id.startsWith(`${line.rule}:`), line.id).toBe(true);
      if (lineIsMet(line) && line.max > 0 && line.points === line.max) earned.add(line.rule);
      if (!lineIsMet(line) && line.points < line.max) lost.add(line.rule);
    }
    if (unmet(earned).length + unmet(lost).length === 0) break;
  }
  expect({ neverEarned: unmet(earned), neverLost: unmet(lost) }).toEqual({ neverEarned: [], neverLost: [] });
});

test('the figures in the document are those in the rows', () => {
  const { receiver } = stripSetup();
  const [main, ...others] = receiver.responses;
  const video = { ...main!, setUp: { ...main!.setUp, source: 'video', carrierHz: 40e6, spanHz: 12e6 } as const };
  const facts = { ...ALL_RIGHT, dialErrorHz: 0, carrierErrorHz: 0 };
  const lines = setUpLines(facts, { ...receiver, responses: [video, ...others] });
  const of = (rule: string) => lines.find((line) => line.rule === rule)!;
  expect(PARAGRAPHS.get('G13')?.text).toContain(`within ${of('G13').high} degrees`);
  expect(PARAGRAPHS.get('G16')?.text).toContain(`at most ${of('G16').high} dB`);
  expect(PARAGRAPHS.get('G17')?.text).toContain(`at least ${of('G17').low} per cent`);
  expect(PARAGRAPHS.get('G21')?.text).toContain(`at most ${of('G21').high} per cent`);
  expect(PARAGRAPHS.get('G21')?.text).toContain(`Under ${of('G21').low} per cent`);
  expect(PARAGRAPHS.get('G54')?.text).toContain(`within ${(100 * of('G54').high!) / 40e6} per cent`);
  expect(PARAGRAPHS.get('G56')?.text).toContain(`at most ${of('G56').high} degree`);
  expect(PARAGRAPHS.get('G57')?.text).toContain(`at most ${of('G57').high} per cent`);
  expect(PARAGRAPHS.get('G59')?.text).toContain('at most a four-hundredth of');
  expect(of('G59').high).toBe(12e6 / 400);
  expect(PARAGRAPHS.get('G60')?.text).toContain(`at most ${of('G60').high} per cent`);
  expect(PARAGRAPHS.get('G40')?.text).toContain(`${PASS_POINTS} points or more`);
});
