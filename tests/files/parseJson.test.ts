/** The JSON reader: as the built-in one on good text, better on bad, cheap on hostile. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type JsonLimits, parseJson, TEXT_LIMIT_CHARS } from '../../src/files/parseJson.ts';
import { saidOf } from './said.ts';
import { shippedTexts } from './shipped.ts';

const WIDE: JsonLimits = { textCharacters: 1e9, values: 1e9, levels: 1e9, items: 1e9, keys: 1e9, characters: 1e9 };

function problemsOf(text: string, limits: Partial<JsonLimits> = {}) {
  const result =
    Object.keys(limits).length === 0 ? parseJson(text, 'f.json') : parseJson(text, 'f.json', { ...WIDE, ...limits });
  return saidOf(result);
}

describe('good text', () => {
  it('gives what the built-in reader gives, however it is laid out', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 6 }), fc.constantFrom(0, 1, 4), (text, indent) => {
        fc.pre(!text.includes('__proto__'));
        const laidOut = JSON.stringify(JSON.parse(text), null, indent);
        expect(parseJson(laidOut, 'f.json')).toEqual({ ok: true, value: JSON.parse(text) });
      }),
    );
  });

  it('may hold every escape, a byte order mark, and numbers in any dress', () => {
    const text =
      '\ufeff{"a":"\\u00e9\\n\\"\\\\\\/\\b\\f\\r\\t","b":[-0.5e-3,1E+2,0,-0],"c":null,"d":true,"e":false,"f":"\\ud83d\\udd14"}';
    expect(parseJson(text, 'f.json')).toEqual({ ok: true, value: JSON.parse(text.slice(1)) });
  });

  it('is every JSON file of the scenarios folder', () => {
    const files = Object.entries(shippedTexts()).filter(([path]) => path.endsWith('.json'));
    expect(files.length).toBeGreaterThan(8);
    for (const [path, text] of files) expect(parseJson(text, path)).toEqual({ ok: true, value: JSON.parse(text) });
  });
});

describe('bad text', () => {
  it.each([
    ['', 'line 1, column 1', 'the end of the text', 'a value'],
    ['{\n  "a": 1,\n  "b" 2\n}', 'line 3, column 7', '"2"', 'a colon after the key'],
    ['{"a":1,}', 'line 1, column 8', '"}"', 'a key in double quotes'],
    ['[1 2]', 'line 1, column 4', '"2"', 'a comma or the end of the list'],
    ['[1,\n2', 'line 2, column 2', 'the end of the text', 'a comma or the end of the list'],
    ['{"a":"x\ny"}', 'line 1, column 8', '"\\n"', 'the rest of a string and its closing quote'],
    ['"\\q"', 'line 1, column 3', '"q"', 'a known escape after the backslash'],
    ['"\\u12g4"', 'line 1, column 3', '"u"', 'four hexadecimal digits after \\u'],
    ['{"a":"x\\ud800 y"}', 'line 1, column 6', '\\ud800', 'both halves of a surrogate pair'],
    ['nul', 'line 1, column 1', '"n"', 'a value'],
    ['{} x', 'line 1, column 4', '"x"', 'nothing more after the value'],
    ['01', 'line 1, column 2', '"1"', 'nothing more after the value'],
    ['-', 'line 1, column 1', '"-"', 'a digit'],
    ['1e999', 'line 1, column 1', '1e999', 'a number that can be held'],
    ["{'a':1}", 'line 1, column 2', '"\'"', 'a key in double quotes'],
  ])('%j is told with its place', (text, place, found, wanted) => {
    expect(problemsOf(text)).toEqual([{ file: 'f.json', place, found, wanted }]);
  });

  it('is refused whenever the built-in reader refuses it', () => {
    fc.assert(
      fc.property(
        fc.json({ maxDepth: 4 }),
        fc.nat(),
        fc.constantFrom('', '"', ',', '}', '\\', 'x', '\u0001'),
        (text, at, sign) => {
          const place = at % (text.length + 1);
          const broken = text.slice(0, place) + sign + text.slice(place + 1);
          let builtIn = true;
          try {
            JSON.parse(broken);
          } catch {
            builtIn = false;
          }
          if (!builtIn) expect(parseJson(broken, 'f.json').ok).toBe(false);
        },
      ),
    );
  });

  it('may not say a key twice, however it spells it', () => {
    const problems = problemsOf('{"a":1,\n "b":{"c":1,"c":2},\n "\\u0061":3}');
    expect(problems.map((p) => [p.place, p.found])).toEqual([
      ['line 2, column 13', 'the key "c" a second time'],
      ['line 3, column 2', 'the key "a" a second time'],
    ]);
  });

  it('may not touch the prototype', () => {
    const problems = problemsOf('{"a":{"__proto__":{"admin":true}}}');
    expect(problems.map((p) => p.found)).toEqual(['the key "__proto__"']);
    expect(problemsOf('{"\\u005f_proto__":1}')).toHaveLength(1);
    expect(({} as { admin?: boolean }).admin).toBeUndefined();
  });
});

describe('hostile text', () => {
  const mega = TEXT_LIMIT_CHARS;
  const hostile: readonly (readonly [string, string])[] = [
    ['far too long', ' '.repeat(mega * 8)],
    ['deep lists', '['.repeat(mega)],
    ['deep objects', '{"a":'.repeat(Math.floor(mega / 5))],
    ['many values', `[${'1,'.repeat(mega / 2 - 2)}1]`],
    ['a string without end', `"${'x'.repeat(mega - 1)}`],
    ['escapes without end', `"${'\\u0041'.repeat(Math.floor(mega / 6))}`],
    ['the same key again and again', `{${'"a":1,'.repeat(Math.floor(mega / 6) - 2)}"a":1}`],
    ['lines without end', '\n'.repeat(mega)],
    ['a number without end', '1'.repeat(mega)],
  ];
  it.each(hostile)('%s is refused, with few words', (_, text) => {
    const result = parseJson(text, 'f.json');
    expect(result.ok).toBe(false);
    expect(result.ok ? 0 : result.problems.length).toBeLessThanOrEqual(51);
    expect(result.ok ? 0 : Math.max(...result.problems.map((p) => p.found.length))).toBeLessThan(200);
  });

  it('lists no more than it must', () => {
    expect(problemsOf(hostile[6]![1]).length).toBeLessThanOrEqual(51);
  });

  it('is bounded by whoever reads it', () => {
    const cases: readonly (readonly [string, Partial<JsonLimits>, Partial<JsonLimits>, string, string])[] = [
      ['[1,2,3,4]', { textCharacters: 8 }, { textCharacters: 9 }, '', '9 characters'],
      ['[1,2,3,4]', { values: 4 }, { values: 5 }, 'line 1, column 8', 'more than 4 values'],
      ['[1,2,3,4]', { items: 3 }, { items: 4 }, 'line 1, column 8', 'a list of more than 3'],
      ['[[[1]]]', { levels: 2 }, { levels: 3 }, 'line 1, column 4', 'more than 2 levels'],
      ['{"a":1,\n"b":2}', { keys: 1 }, { keys: 2 }, 'line 2, column 1', 'an object of more than 1 key'],
      ['["abc"]', { characters: 2 }, { characters: 3 }, 'line 1, column 2', 'more than 2 characters in a string'],
      ['{"abc":1}', { characters: 2 }, { characters: 3 }, 'line 1, column 2', 'more than 2 characters in a string'],
    ];
    for (const [text, narrow, wide, place, found] of cases) {
      expect(problemsOf(text, narrow), text).toMatchObject([{ file: 'f.json', place, found }]);
      expect(problemsOf(text, wide), text).toEqual([]);
    }
  });

  it('hands over the one long list item by item, with what stands before it, and stops when it is told to', () => {
    const text = '{"a":1,"long":[5,6,{"long":[7,7,7]},8],"b":[1]}';
    const seen: unknown[] = [];
    const upTo = (most: number, last: number) =>
      parseJson(
        text,
        'f.json',
        { ...WIDE, items: 3 },
        {
          ...{ key: 'long', most },
          take: (item, index, before) => seen.push([index, item, { ...before }]) > 0 && index < last,
        },
      );
    expect(upTo(4, 9)).toEqual({ ok: true, value: { a: 1, long: [], b: [1] } });
    expect(seen).toEqual([
      [0, 5, { a: 1 }],
      [1, 6, { a: 1 }],
      [2, { long: [7, 7, 7] }, { a: 1 }],
      [3, 8, { a: 1 }],
    ]);
    expect(saidOf(upTo(3, 9))).toMatchObject([{ place: 'line 1, column 37', found: 'a list of more than 3' }]);
    seen.length = 0;
    expect(saidOf(upTo(4, 1))).toMatchObject([{ place: 'line 1, column 18' }]);
    expect(seen).toHaveLength(2);
  });

  it('counts its lines once, however many problems it has', () => {
    const text = `${'\n'.repeat(1000)}{${'"k":0,\n'.repeat(20)}"k":0}`;
    expect(problemsOf(text).map((p) => p.place)).toEqual(
      Array.from({ length: 20 }, (_, i) => `line ${1002 + i}, column 1`),
    );
  });

  it('may be longer where its reader says so: a run of an hour', () => {
    const event = '{"atMs":1234567,"type":"slugTurned","slug":"T1","turns":0.03125}';
    const text = `[${Array(60_000).fill(event).join(',')}]`;
    expect(parseJson(text, 'f.json').ok).toBe(false);
    expect(problemsOf(text, { textCharacters: 4 * TEXT_LIMIT_CHARS })).toEqual([]);
  });
});
