/** Values that got past the reader and still mean harm: refused at small cost, without touching anything. */
import { describe, expect, it } from 'vitest';
import { parseReceiver } from '../../src/files/receiverSchema.ts';
import { scenarioToFile } from '../../src/files/scenarioFile.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import { PROBLEMS_LISTED } from '../../src/files/schemaProblems.ts';
import { inEnglish, saidOf } from './said.ts';
import { shippedJson } from './shipped.ts';

const cold = () => shippedJson('vision-if/from-cold.json');
const strip = () => shippedJson('receivers/video-valve-45m/receiver.json');

function nested(levels: number): unknown {
  let value: unknown = 1;
  for (let i = 0; i < levels; i++) value = { a: value };
  return value;
}

const EMPTIES = Object.fromEntries(
  ['adjusters', 'testPoints', 'stages', 'biasLines', 'detectors', 'responses', 'procedure'].map(
    (key) => [key, Array.from({ length: 64 }, () => ({}))] as const,
  ),
);

// biome-ignore lint/suspicious/noExplicitAny: tests break files on purpose, anywhere
const HOSTILE: readonly (readonly [string, () => any, typeof parseScenario | typeof parseReceiver, string])[] = [
  ['a list of a million', () => ({ ...cold(), hints: Array(1e6).fill('x') }), parseScenario, '/hints'],
  ['a text of a million', () => ({ ...cold(), title: 'x'.repeat(1e6) }), parseScenario, '/title'],
  [
    'a hundred thousand keys',
    () => ({
      ...cold(),
      start: { ...cold().start, slugs: Object.fromEntries(Array.from({ length: 1e5 }, (_, i) => [`T${i}`, 1])) },
    }),
    parseScenario,
    '/start/slugs',
  ],
  ['a thousand levels', () => ({ ...cold(), words: nested(1000) }), parseScenario, '/words/a/a/a/a/a/a/a/a/a/a/a'],
  [
    'very many small mistakes',
    () => ({ ...strip(), adjusters: Array.from({ length: 64 }, () => Array.from({ length: 64 }, () => 7)) }),
    parseReceiver,
    '',
  ],
  [
    'as many mistakes as are let in',
    () => ({
      ...strip(),
      adjusters: Array.from({ length: 50 }, () =>
        Object.fromEntries(Array.from({ length: 60 }, (_, i) => [`k${i}`, 7])),
      ),
    }),
    parseReceiver,
    '/adjusters/0/k0',
  ],
  ['lists of nothing but empty objects', () => ({ ...strip(), ...EMPTIES }), parseReceiver, '/adjusters/0/id'],
  ['a list that is longer than any', () => ({ ...cold(), hints: Array(65).fill('x') }), parseScenario, '/hints'],
  ['a key of a million', () => ({ ...cold(), ['x'.repeat(1e6)]: 1 }), parseScenario, ''],
];

/** The value, and how many of its members have been read. */
function watched(value: unknown): { readonly value: unknown; looks(): number } {
  let count = 0;
  const wrap = (inner: unknown): unknown =>
    typeof inner !== 'object' || inner === null
      ? inner
      : new Proxy(inner, {
          get(target, key) {
            count++;
            return wrap(Reflect.get(target, key));
          },
        });
  return { value: wrap(value), looks: () => count };
}

describe('hostile values', () => {
  it.each(HOSTILE)('%s is refused without looking far into it', (_, make, parse, place) => {
    const { value, looks } = watched(make());
    const result = parse(value, 'x.json');
    expect(saidOf(result).map((p) => p.place)).toContain(place);
    expect(result.ok ? 0 : result.problems.length).toBeLessThanOrEqual(PROBLEMS_LISTED + 1);
    // What is let in at most has 4,000 values; each may be looked at a few times.
    expect(looks()).toBeLessThan(30_000);
  });

  it('of more problems than are listed give the first ones, and say that there are more', () => {
    const result = parseReceiver({ ...strip(), ...EMPTIES }, 'x.json');
    const problems = saidOf(result);
    expect(problems).toHaveLength(PROBLEMS_LISTED + 1);
    expect(problems.at(-1)).toEqual({
      file: 'x.json',
      place: '',
      found: 'more problems than are listed',
      wanted: 'none',
    });
    expect(new Set(problems.map((p) => `${p.place} ${p.wanted}`)).size).toBe(problems.length);
  });

  it.each(['__proto__', 'constructor', 'prototype'])('with the key %s is refused by name', (key) => {
    const json = cold();
    const slugs = JSON.parse(`{"${key}": 1}`);
    const result = parseScenario({ ...json, start: { ...json.start, slugs } }, 'x.json');
    expect(saidOf(result).map((p) => p.found)).toEqual([`the key "${key}"`]);
  });

  it('keep markup as the text that it is', () => {
    const title = '<img src=x onerror=alert(1)> & "quotes"';
    const result = parseScenario({ ...cold(), title }, 'x.json');
    expect(result.ok && result.value.title).toBe(title);
  });

  it('give back only what the format has, in plain objects', () => {
    const json = cold();
    const result = parseScenario(json, 'x.json');
    expect(result.ok && scenarioToFile(result.value)).toEqual(json);
  });
});

it.each([
  [0.001, '0.001 dB'],
  [1e-9, '0.000000001 dB'],
  [0, '0 dB'],
])('a ripple of %d dB is told as %s, not as nought', (maxRippleDb, found) => {
  const json = shippedJson('receivers/video-valve-45m/receiver.json');
  json.responses[0].specification.windows[0].maxRippleDb = maxRippleDb;
  const read = parseReceiver(json, 'r.json');
  expect(read.ok).toBe(false);
  if (read.ok) return;
  expect(inEnglish(read.problems)).toContainEqual(
    expect.objectContaining({ place: '/responses/0/specification/windows/0/maxRippleDb', found }),
  );
});
