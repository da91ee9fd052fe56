/** docs/grading.md and the code hold to each other: every rule is tested under its number, every line has its rule, every figure is the one in the code. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { initialState } from '../../src/bench/setup.ts';
import { careLines } from '../../src/grading/conduct.ts';
import { grade } from '../../src/grading/grade.ts';
import {
  CARRIER_SHARE,
  COMPRESSION_LIMIT_DB,
  DIAL_SHARE,
  HUM_SHARE,
  PASS_POINTS,
  PHASE_TOLERANCE_DEGREES,
  PIP_SHARE,
  SWEEP_LAG_LIMIT,
  VERTICAL_LAG_LIMIT_DEGREES,
  WEAKEST_SHARE,
} from '../../src/grading/limits.ts';
import { capsOf } from '../../src/grading/verdictOfRun.ts';
import { wholeJob } from '../session/acts.ts';
import { stripSetup } from '../session/setups.ts';

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

test('the figures in the document are those in the code', () => {
  expect(RULES.get('G13')).toContain(`within ${PHASE_TOLERANCE_DEGREES} degrees`);
  expect(RULES.get('G16')).toContain(`at most ${COMPRESSION_LIMIT_DB} dB`);
  expect(RULES.get('G17')).toContain(`at least ${100 * WEAKEST_SHARE} per cent`);
  expect(RULES.get('G21')).toContain(`at most ${100 * PIP_SHARE.high} per cent`);
  expect(RULES.get('G21')).toContain(`Under ${100 * PIP_SHARE.low} per cent`);
  expect(RULES.get('G54')).toContain(`within ${100 * CARRIER_SHARE} per cent`);
  expect(RULES.get('G56')).toContain(`at most ${VERTICAL_LAG_LIMIT_DEGREES} degree`);
  expect(RULES.get('G57')).toContain(`at most ${100 * HUM_SHARE} per cent`);
  expect(1 / DIAL_SHARE).toBe(400);
  expect(RULES.get('G60')).toContain(`at most ${100 * SWEEP_LAG_LIMIT} per cent`);
  expect(RULES.get('G40')).toContain(`${PASS_POINTS} points or more`);
});
