/** docs/grading.md and the code hold to each other: every rule is tested under its number, every line has its rule, every figure is the one in the code. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { initialState } from '../../src/bench/setup.ts';
import { grade } from '../../src/grading/grade.ts';
import { PASS_POINTS } from '../../src/grading/limits.ts';
import { setUpLines } from '../../src/grading/standing.ts';
import { capsOf } from '../../src/grading/verdictOfRun.ts';
import { wholeJob } from '../session/acts.ts';
import { ALL_RIGHT } from '../session/fakeFacts.ts';
import { stripSetup } from '../session/setups.ts';
import { careLines } from './drafts.ts';

const DOCUMENT = readFileSync('docs/grading.md', 'utf8');
const RULES = new Map(
  [...DOCUMENT.matchAll(/^\*\*(G\d+) [^*]+\*\*([\s\S]*?)(?=^\*\*G|^## |$(?![\s\S]))/gm)].map((m) => [m[1]!, m[2]!]),
);
const TITLES = readdirSync('tests/grading')
  .filter((name) => name.endsWith('.test.ts'))
  .map((name) => readFileSync(`tests/grading/${name}`, 'utf8'))
  .join('\n');

test('rules are numbered from 1 without a gap', () => {
  expect([...RULES.keys()]).toEqual(Array.from({ length: RULES.size }, (_, i) => `G${i + 1}`));
  expect(RULES.size).toBeGreaterThan(40);
});

test('every rule has a test that carries its number in the title', () => {
  // Titles stand in quotes after test( or in the table of a test.each.
  const tested = new Set(
    [...TITLES.matchAll(/'(?:\[G\d+\] ?)+[^'\n]*'/g)].flatMap(([title]) => title.match(/G\d+(?=\])/g) ?? []),
  );
  expect([...RULES.keys()].filter((rule) => !tested.has(rule))).toEqual([]);
  expect([...tested].filter((rule) => !RULES.has(rule))).toEqual([]);
});

test('every line and every cap of a report carries a rule of the document', () => {
  const setup = stripSetup();
  const report = grade(
    setup,
    wholeJob(setup).map((act, i) => ({ atMs: i, ...act })),
  );
  const faulty = careLines([], { ...setup.scenario, faults: [{ kind: 'screwedIn' }] });
  const incidents = (['hotChassis', 'hotTouch'] as const).map((kind) => ({ kind, atSeconds: 1, subject: 'rf' }));
  const caps = capsOf({ ...initialState(setup), incidents });
  expect(caps.length).toBe(2);
  for (const { rule } of [...report.lines, ...faulty, ...caps]) expect([...RULES.keys()]).toContain(rule);
  // And each id begins with its rule.
  expect(report.lines.every((line) => line.id === line.rule || line.id.startsWith(`${line.rule}:`))).toBe(true);
});

test('the figures in the document are those in the rows', () => {
  const { receiver } = stripSetup();
  const [main, ...others] = receiver.responses;
  const video = { ...main!, setUp: { ...main!.setUp, source: 'video', carrierHz: 40e6, spanHz: 12e6 } as const };
  const facts = { ...ALL_RIGHT, dialErrorHz: 0, carrierErrorHz: 0 };
  const lines = setUpLines(facts, { ...receiver, responses: [video, ...others] });
  const of = (rule: string) => lines.find((line) => line.rule === rule)!;
  expect(RULES.get('G13')).toContain(`within ${of('G13').high} degrees`);
  expect(RULES.get('G16')).toContain(`at most ${of('G16').high} dB`);
  expect(RULES.get('G17')).toContain(`at least ${of('G17').low} per cent`);
  expect(RULES.get('G21')).toContain(`at most ${of('G21').high} per cent`);
  expect(RULES.get('G21')).toContain(`Under ${of('G21').low} per cent`);
  expect(RULES.get('G54')).toContain(`within ${(100 * of('G54').high!) / 40e6} per cent`);
  expect(RULES.get('G56')).toContain(`at most ${of('G56').high} degree`);
  expect(RULES.get('G57')).toContain(`at most ${of('G57').high} per cent`);
  expect(RULES.get('G59')).toContain('at most a four-hundredth of');
  expect(of('G59').high).toBe(12e6 / 400);
  expect(RULES.get('G60')).toContain(`at most ${of('G60').high} per cent`);
  expect(RULES.get('G40')).toContain(`${PASS_POINTS} points or more`);
});
