/** The file: there and back, and every problem told with its place. */
import { describe, expect, test } from 'vitest';
import { ENGINE } from '../../src/base/engine.ts';
import type { RunFile } from '../../src/files/runFile.ts';
import { RUN_FILE_LIMIT_CHARS, readRunFile } from '../../src/files/runFileSchema.ts';
import { scenarioHash } from '../../src/files/scenarioFile.ts';
import { PROBLEMS_LISTED } from '../../src/files/schemaProblems.ts';
import { readSeal, sealEvents, sealRun } from '../../src/files/seal.ts';
import { receiverHash, serialiseRunFile, toRunFile } from '../../src/run/serialise.ts';
import { finishedFile, runOf } from '../run/runs.ts';
import { canSetup, stripSetup } from '../session/setups.ts';
import { saidOf } from './said.ts';

const file = finishedFile(stripSetup());
const json = (): Record<string, unknown> => JSON.parse(serialiseRunFile(file)) as Record<string, unknown>;
/** Where in the text it stands is told before the place in the file. */
const IN_TEXT = /^line \d+, column \d+(?:, )?/;
const problemsOf = (value: unknown): readonly (readonly [string, string])[] => {
  const parsed = readRunFile(JSON.stringify(value), 'run.json');
  if (parsed.ok) throw new Error('no problem was found');
  const said = saidOf(parsed);
  expect(said.every((problem) => problem.file === 'run.json' && problem.found !== '' && problem.wanted !== '')).toBe(
    true,
  );
  return said.map((problem) => [problem.place.replace(IN_TEXT, ''), problem.wanted] as const);
};
const places = (value: unknown): readonly string[] => problemsOf(value).map(([place]) => place);

describe('a good file', () => {
  test('comes back whole', () => {
    expect(readRunFile(serialiseRunFile(file), 'run.json')).toEqual({ ok: true, value: file });
  });

  test('without events and without a claim, too', () => {
    const empty = toRunFile(runOf(canSetup(), []), null);
    expect(readRunFile(serialiseRunFile(empty), 'run.json')).toEqual({ ok: true, value: empty });
  });

  test('says what made it', () => {
    expect(file.engine).toBe(ENGINE);
    expect(file.scenarioHash).toBe(scenarioHash(stripSetup().scenario));
    expect(file.receiverHash).toBe(receiverHash(stripSetup()));
    expect(file.receiverHash).not.toBe(receiverHash(canSetup()));
    expect(file.claimed).toMatchObject({ total: 100, passed: true });
  });

  test('holds one event a line', () => {
    const lines = serialiseRunFile(file).split('\n');
    expect(lines.filter((line) => line.includes('"atMs"')).length).toBe(file.events.length);
  });
});

describe('a bad file', () => {
  test('without its scenario says so once, and nothing of what it would have been', () => {
    const { scenario: _, ...rest } = json();
    expect(problemsOf(rest).map(([place]) => place)).toEqual(['/scenario']);
  });

  test.each([
    ['nothing', null],
    ['a list', []],
    ['a word', 'run'],
  ])('%s: one problem, of the whole', (_, value) => {
    expect(places(value)).toEqual(['']);
  });

  test('another format or a newer version is told as such', () => {
    expect(places({ ...json(), format: 'haystack-scenario' })).toEqual(['/format']);
    expect(places({ ...json(), version: 3 })).toEqual(['/version']);
  });

  test('all problems at once, each at its place', () => {
    const bad = json();
    const events = bad.events as Record<string, unknown>[];
    events[0] = { ...events[0], atMs: -3 };
    events[1] = { ...events[1], extra: 1 };
    events[2] = { atMs: 900, type: 'slugMelted' };
    events[3] = { atMs: 900, type: 'controlSet', control: 'loudness', value: 1 };
    (bad.claimed as Record<string, unknown>).passed = 'yes';
    bad.scenarioHash = 'abc';
    bad['a/b~c'] = 1;
    (bad.scenario as Record<string, unknown>).difficulty = 9;
    const found = places(bad);
    for (const place of [
      ...[
        '/events/0/atMs',
        '/events/1/extra',
        '/events/2/type',
        '/events/3/control',
        '/claimed/passed',
        '/scenarioHash',
      ],
      ...['/a~1b~0c', '/scenario/difficulty'],
    ]) {
      expect(found).toContain(place);
    }
    expect(found.length).toBe(8);
  });

  test.each<[string, (run: Record<string, unknown>) => void]>([
    [
      '/learner',
      (run) => {
        run.learner = 'x'.repeat(81);
      },
    ],
    [
      '/learner',
      (run) => {
        run.learner = '';
      },
    ],
    [
      '/day',
      (run) => {
        run.day = '31 May 2026';
      },
    ],
    [
      '/rules',
      (run) => {
        run.rules = 0;
      },
    ],
    [
      '/engine',
      (run) => {
        run.engine = 7;
      },
    ],
    [
      '/seal',
      (run) => {
        run.seal = '1:2:3';
      },
    ],
    [
      '/receiverHash',
      (run) => {
        run.receiverHash = 'G'.repeat(64);
      },
    ],
    [
      '/claimed/total',
      (run) => {
        (run.claimed as Record<string, unknown>).total = 1e9;
      },
    ],
    [
      '/claimed/lines/0/points',
      (run) => {
        (run.claimed as { lines: Record<string, unknown>[] }).lines[0]!.points = null;
      },
    ],
    [
      '/events/0/atMs',
      (run) => {
        (run.events as Record<string, unknown>[])[0]!.atMs = 86_400_001;
      },
    ],
    [
      '/events/0/atMs',
      (run) => {
        (run.events as Record<string, unknown>[])[0]!.atMs = 0.5;
      },
    ],
    [
      '/events',
      (run) => {
        run.events = 'none';
      },
    ],
  ])('a bound at %s', (place, spoil) => {
    const run = json();
    spoil(run);
    expect(places(run)).toEqual([place]);
  });

  test('a missing key is told where it should stand', () => {
    for (const key of [
      'engine',
      'scenarioHash',
      'receiverHash',
      'learner',
      'events',
      'seal',
      'claimed',
      'rules',
      'day',
      'runId',
    ]) {
      const run = json();
      delete run[key];
      expect(places(run), key).toEqual([`/${key}`]);
    }
  });

  test('a scenario that is none at all', () => {
    const run = json();
    run.scenario = 7;
    expect(places(run)).toEqual(['/scenario']);
  });

  test('too long a text is not read', () => {
    const parsed = readRunFile(' '.repeat(RUN_FILE_LIMIT_CHARS + 1), 'run.json');
    expect(parsed).toMatchObject({ ok: false, problems: [{ place: '' }] });
  });

  test('a flood of problems is cut off with a count', () => {
    const run = json();
    run.events = Array.from({ length: 100_000 }, () => ({ atMs: 'soon', type: 'signedOff' }));
    const found = problemsOf(run);
    expect(found.length).toBe(PROBLEMS_LISTED + 1);
    expect(found.at(-1)![1]).toBe('none');
  });

  describe('made to be slow', () => {
    /** A text with a run's head, and any text at all under one of its keys. */
    const hostile = (value: string, key = 'events') =>
      JSON.stringify({ ...json(), [key]: '@' }).replace(`"${key}":"@"`, () => `"${key}":${value}`);
    const many = (item: string, count: number): string => `[${Array(count).fill(item).join(',')}]`;
    const told = (text: string) => {
      const parsed = readRunFile(text, 'run.json');
      return saidOf(parsed);
    };

    test('the head that is used here is good', () => {
      expect(told(hostile(JSON.stringify(json().events)))).toEqual([]);
    });

    test.each([
      ['half a million zeros', many('0', 519_000)],
      ['as many empty objects', many('{}', 519_000)],
      ['events that lack everything', many('{"type":"slugTurned"}', 119_000)],
      ['events of no type', many('{"atMs":1,"type":"x"}', 119_000)],
      ['lists in lists', many('[[[[[[]]]]]]', 200_000)],
    ])('%s are refused by the first of them', (_, events) => {
      const problems = told(hostile(events));
      expect(problems.length).toBeLessThanOrEqual(PROBLEMS_LISTED + 1);
      expect(problems[0]).toMatchObject({ file: 'run.json', place: expect.stringMatching(/, \/events\/0/) });
      expect(problems.at(-1)).toEqual({ ...problems.at(-1), found: 'more problems than are listed', wanted: 'none' });
      const last = Math.max(...problems.map((p) => Number(/\/events\/(\d+)/.exec(p.place)?.[1] ?? 0)));
      expect(last).toBeLessThanOrEqual(PROBLEMS_LISTED);
    });

    test.each([
      ['more events than a run may have', many('{"atMs":0,"type":"signedOff"}', 120_001), 'a list of more than 120000'],
      [
        'one event with very many keys',
        `[{${Array.from({ length: 1e5 }, (_, i) => `"k${i}":0`).join(',')}}]`,
        'an object of more than 64 keys',
      ],
      ['one string without end', `["${'x'.repeat(3_000_000)}"]`, 'more than 4000 characters in a string'],
      ['lists without end', '['.repeat(1e6), 'more than 16 levels'],
    ])('%s: refused at its bound', (_, events, found) => {
      expect(told(hostile(events)).map((p) => p.found)).toEqual([found]);
    });

    test('a claim or a scenario of very many things is not read to its end', () => {
      for (const key of ['claimed', 'scenario']) {
        expect(told(hostile(many('0', 4e5), key)).map((p) => p.found)).toEqual(['a list of more than 400']);
      }
      const claimed = { ...file.claimed, lines: Array(401).fill(0) };
      expect(told(JSON.stringify({ ...json(), claimed })).map((p) => p.found)).toEqual(['a list of more than 400']);
    });

    test('a file of another kind or of a newer bench is told as such, not by what its events lack', () => {
      for (const [key, value] of [
        ['format', 'another-format'],
        ['version', 3],
      ] as const) {
        const foreign = JSON.stringify({ ...json(), [key]: value, events: Array(1000).fill(0) });
        expect(told(foreign).map((p) => p.place)).toEqual([`/${key}`]);
      }
    });
  });

  test('text that is no JSON says where it breaks', () => {
    const parsed = readRunFile('{"format": "haystack-run",\n "version": }', 'run.json');
    expect(parsed).toMatchObject({ ok: false, problems: [{ file: 'run.json', at: { line: 2, column: 13 } }] });
  });
});

describe('the seal', () => {
  const events = file.events;

  test('reads back what it wrote', () => {
    expect(readSeal(sealRun(file, events))).toEqual(readSeal(file.seal));
    expect(readSeal(sealEvents(events))).toEqual({ ...readSeal(file.seal), head: null });
    expect(readSeal(sealEvents([]))?.count).toBe(0);
  });

  test('order moves the chain alone, a change moves both, a cut moves all', () => {
    const whole = readSeal(file.seal)!;
    const swapped = readSeal(sealEvents([events[1]!, events[0]!, ...events.slice(2)]))!;
    expect([swapped.count, swapped.set]).toEqual([whole.count, whole.set]);
    expect(swapped.chain).not.toBe(whole.chain);
    const changed = readSeal(sealEvents([{ ...events[0]!, atMs: 1 }, ...events.slice(1)]))!;
    expect(changed.count).toBe(whole.count);
    expect(changed.set).not.toBe(whole.set);
    expect(changed.chain).not.toBe(whole.chain);
    const cut = readSeal(sealEvents(events.slice(0, -1)))!;
    expect(new Set([cut.set, whole.set, cut.chain, whole.chain]).size).toBe(4);
  });

  test('does not depend on the order of keys', () => {
    const turned = events.map((event) =>
      Object.fromEntries(Object.entries(event).reverse()),
    ) as unknown as RunFile['events'];
    expect(sealRun(file, turned)).toBe(file.seal);
  });
});
