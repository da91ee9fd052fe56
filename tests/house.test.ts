/** House rules that no compiler knows: files stay short and say what they are for, and the project stands on its own. */
import { describe, expect, it } from 'vitest';
import { projectFiles, textOf } from './projectFiles.ts';
import { givenValues } from './takenExports.ts';

const FILES = projectFiles();
const SOURCES = FILES.filter((file) => /\.(tsx?|mjs|css)$/.test(file));
/** Of a file of `src`; one that is longer says why in its header. */
const MOST_LINES = 300;
/** Of any file: tests and scripts have no such header. */
const MOST_LINES_ANYWHERE = 450;
const REASON = /^ \* Over 300 lines: [a-z].{20,}$/m;
const linesOf = (file: string): number => textOf(file)!.split('\n').length - 1;
const headerOf = (file: string): string => textOf(file)!.slice(0, textOf(file)!.indexOf('*/'));

/** Marks of things that lead out of the project or that were left for later. Each pattern is written so that it does not match itself. */
const STRAY: readonly (readonly [name: string, pattern: RegExp])[] = [
  ['a place on somebody’s machine', /(?<![\w.:/-])\/(?:work|root|home|Users)\/[\w.]/],
  ['a temporary place', /(?<![\w.:/])\/tm[p]\/\w/],
  ['something left for later', /\b(?:TO[D]O|FIX[M]E|XX[X])\b/],
  ['a number in a list kept elsewhere', /\b[Ii]ssue[s]? #?\d+\b|\bticket[s]? #?\d+\b/],
];

/** Tests that do not run prove nothing. */
const SLEEPING = /\b(?:it|test|describe)\.(?:skip|only|todo|fixme|fails|skipIf|runIf)\b/;

function found(pattern: RegExp, files: readonly string[]): string[] {
  return files.flatMap((file) => {
    const text = textOf(file);
    if (text === null) return [];
    return text
      .split('\n')
      .flatMap((line, i) => (pattern.test(line) ? [`${file}:${i + 1}: ${line.trim().slice(0, 120)}`] : []));
  });
}

/** Relative places in a text that lead above the root of the project. */
function climbs(text: string, file: string): string[] {
  const depth = file.split('/').length - 1;
  return [...text.matchAll(/(?<![\w./\\])((?:\.\.\/)+)[\w@]/g)]
    .filter((match) => match[1]!.length / 3 > depth)
    .map((match) => match[0]);
}

describe('source files', () => {
  it(`have at most ${MOST_LINES_ANYWHERE} lines`, () => {
    const tooLong = SOURCES.filter((file) => linesOf(file) > MOST_LINES_ANYWHERE);
    expect(SOURCES.length).toBeGreaterThan(100);
    expect(tooLong).toEqual([]);
  });

  it(`of src have at most ${MOST_LINES} lines, or say in their header why not; none says so without need`, () => {
    const own = SOURCES.filter((file) => file.startsWith('src/'));
    const long = own.filter((file) => linesOf(file) > MOST_LINES);
    expect(long.filter((file) => !REASON.test(headerOf(file)))).toEqual([]);
    expect(own.filter((file) => REASON.test(headerOf(file)) && !long.includes(file))).toEqual([]);
  });

  it('of src give others what others of src take, or what they use themselves and a test looks at; nothing serves tests alone', () => {
    const code = FILES.filter((file) => /\.(tsx?|mjs)$/.test(file));
    const given = givenValues(new Map(code.map((file) => [file, textOf(file)!])));
    // What another language has is what English has; that it lacks nothing is seen by the compiler.
    const translated = (file: string): boolean => /^src\/words\/(?!en\/)[^/]+\//.test(file);
    const serves = (file: string): boolean => /^(?:src|scripts)\//.test(file);
    const idle = given.filter(
      ({ file, takenBy, usedAtHome }) =>
        !translated(file) && !takenBy.some(serves) && (!usedAtHome || takenBy.length === 0),
    );
    expect(given.length).toBeGreaterThan(1000);
    expect(idle.map(({ file, name }) => `${file}: ${name}`)).toEqual([]);
  });

  it('would be found giving what nobody takes, and what tests alone take', () => {
    const texts = {
      'src/a.ts': 'export const used = 1;\nexport const own = 2;\nexport const idle = own;\nexport const tested = 3;\n',
      'src/all.ts': "export * from './a.ts';\n",
      'src/b.ts': "import { used } from './all.ts';\n",
      'tests/a.test.ts': "import { own, tested } from '../src/a.ts';\n",
    };
    const given = givenValues(new Map(Object.entries(texts)));
    expect(given.map(({ name, takenBy, usedAtHome }) => [name, ...takenBy, usedAtHome])).toEqual([
      ['used', 'src/b.ts', false],
      ['own', 'tests/a.test.ts', true],
      ['idle', false],
      ['tested', 'tests/a.test.ts', false],
    ]);
  });

  it('open with what they are for', () => {
    const silent = SOURCES.filter((file) => !/^(?:#!.*\n)?(?:\/\/ @\w.*\n)?(?:\/\*\*?|\/\/) ?\S?/.test(textOf(file)!));
    expect(silent).toEqual([]);
  });

  it('are called after one idea', () => {
    expect(
      SOURCES.filter(
        (file) => /\/(?:utils?|helpers?|common|misc|manager)\b/i.test(file) || /Manager\.tsx?$/.test(file),
      ),
    ).toEqual([]);
  });
});

describe('keys heard anywhere on a page', () => {
  // An ordinary effect begins to hear after the picture: a key pressed before that would be lost.
  const HEARS = /addEventListener\('keydown'/;
  const KNOWN: readonly string[] = [
    'src/kit/hooks/useKeyDown.ts',
    'src/kit/hooks/usePressed.ts',
    'src/kit/terms/Term.tsx',
    'src/rooms/bench/scene/leadDrag.ts',
  ];
  it('are heard by the hook that hears before the picture, and by nothing else but a few that need no such hook', () => {
    const own = SOURCES.filter((file) => file.startsWith('src/') && HEARS.test(textOf(file)!));
    expect(own.sort()).toEqual(KNOWN);
  });
});

describe('the project', () => {
  // Words of those who wrote the lock file and its packages are not ours.
  const own = FILES.filter((file) => file !== 'package-lock.json');
  it.each(STRAY)('holds no %s', (_, pattern) => {
    expect(found(pattern, own)).toEqual([]);
  });

  it('never climbs out of its own folder', () => {
    const out = own.flatMap((file) => climbs(textOf(file) ?? '', file).map((place) => `${file}: ${place}`));
    expect(out).toEqual([]);
  });

  it('has no sleeping tests', () => {
    expect(
      found(
        SLEEPING,
        own.filter((file) => file.startsWith('tests/') && file !== 'tests/house.test.ts'),
      ),
    ).toEqual([]);
  });

  it('would see each of these', () => {
    const samples = [`see /${'work'}/x`, `see /${'tmp'}/x`, `// ${'TO'}DO later`, `as in ${'issue'} 12`];
    STRAY.forEach(([name, pattern], i) => {
      expect(samples[i], name).toMatch(pattern);
    });
    expect(`${'it'}.skip('x')`).toMatch(SLEEPING);
    expect(climbs(`'${'../'.repeat(3)}x.ts'`, 'src/base/a.ts')).toHaveLength(1);
    expect(climbs(`'${'../'.repeat(2)}x.ts'`, 'src/base/a.ts')).toEqual([]);
    for (const harmless of [
      'src/base/work/x.ts',
      'https://example.org/home/x',
      'TODAY',
      'an issue of taste',
      '../receiver/receiver.ts',
    ]) {
      for (const [name, pattern] of STRAY) expect(harmless, name).not.toMatch(pattern);
    }
  });
});
