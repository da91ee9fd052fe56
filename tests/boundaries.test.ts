/**
 * The rooms of src/ and who may import whom. The table in DEVELOPERS.md is the law: this test reads it, reads every import of every file
 * (static, type-only, dynamic, re-export, and by pattern) from the syntax tree, and holds one against the other.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { breaches, circles, type ImportUse, importsOf, type Room, readRooms, roomOf, wildGlobals } from './roomLaw.ts';

const ROOMS = readRooms(readFileSync('DEVELOPERS.md', 'utf8'));
const FILES = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .map((name) => `src/${name.replaceAll('\\', '/')}`)
  .filter((name) => /\.tsx?$/.test(name))
  .sort();
const read = (file: string): string => readFileSync(file, 'utf8');

describe('the table of rooms', () => {
  it('has a row for every folder of src and a folder for every row', () => {
    const folders = readdirSync('src', { withFileTypes: true });
    expect(folders.filter((entry) => !entry.isDirectory()).map((entry) => entry.name)).toEqual([]);
    const below = readdirSync('src/rooms', { withFileTypes: true });
    expect(below.filter((entry) => !entry.isDirectory()).map((entry) => entry.name)).toEqual([]);
    const rooms = folders.map((entry) => entry.name).filter((name) => name !== 'rooms');
    expect([...rooms, ...below.map((entry) => `rooms/${entry.name}`)].sort()).toEqual([...ROOMS.keys()].sort());
  });

  it('lets a row import code only from rows above it, and nobody from app', () => {
    const order = [...ROOMS.keys()];
    for (const [name, room] of ROOMS) {
      for (const other of room.mayImport) {
        expect(order, `${name} may import ${other}`).toContain(other);
        expect(order.indexOf(other), `${name} stands above ${other}`).toBeLessThan(order.indexOf(name));
      }
      for (const other of room.mayImportTypes) expect(order, `${name} may import types of ${other}`).toContain(other);
      expect([...room.mayImport, ...room.mayImportTypes], name).not.toContain('app');
    }
  });

  it('agrees with the compiler and the linter on which rooms are pure', () => {
    const pure = [...ROOMS].filter(([, room]) => room.platform === 'no').map(([name]) => name);
    const core = JSON.parse(read('tsconfig.core.json')) as {
      include: string[];
      compilerOptions: { lib: string[]; types: string[] };
    };
    expect([...core.include].sort()).toEqual(pure.map((name) => `src/${name}`).sort());
    expect(core.compilerOptions.lib.some((lib) => /dom/i.test(lib))).toBe(false);
    expect(core.compilerOptions.types).toEqual([]);
    const lint = JSON.parse(read('biome.json')) as {
      linter: { rules: { suspicious: Record<string, unknown> } };
      overrides: { includes: string[] }[];
    };
    expect(lint.overrides[0]!.includes.filter((glob) => glob.startsWith('src/')).sort()).toEqual(
      pure.map((name) => `src/${name}/**`).sort(),
    );
    expect(lint.linter.rules.suspicious.noImportCycles).toBe('error');
  });
});

describe('every file of src', () => {
  it('imports only what its room may', () => {
    const found = FILES.flatMap((file) => breaches(file, importsOf(read(file), file), ROOMS));
    expect(FILES.length).toBeGreaterThan(50);
    expect(found).toEqual([]);
  });

  it('takes its words as they are handed down: only the wiring of page and program imports a language', () => {
    const WIRING = ['src/app/language.ts', 'src/cli/language.ts'];
    const importers = FILES.filter(
      (file) =>
        !file.startsWith('src/words/') &&
        importsOf(read(file), file).some(({ from }) => /\/words\/(?!\w+\.ts$)/.test(from)),
    );
    expect(importers).toEqual(WIRING);
  });

  it('finds what it imports, under the name with its ending', () => {
    const lost: string[] = [];
    for (const file of FILES) {
      for (const use of importsOf(read(file), file)) {
        if (!use.from.startsWith('.') || use.from.includes('*')) continue;
        const target = path.posix.join(path.posix.dirname(file), use.from.replace(/\?.*$/, ''));
        if (!existsSync(target) || !/\.\w+$/.test(target)) lost.push(`${file}: ${use.from}`);
      }
    }
    expect(lost).toEqual([]);
  });

  it('stands in no circle, types counted', () => {
    const imports = new Map(
      FILES.map((file) => [
        file,
        importsOf(read(file), file)
          .map((use) => path.posix.join(path.posix.dirname(file), use.from))
          .filter((target) => FILES.includes(target)),
      ]),
    );
    expect(circles(imports)).toEqual([]);
    const ring = new Map([
      ['a', ['b']],
      ['b', ['c']],
      ['c', ['a', 'd']],
      ['d', []],
    ]);
    expect(circles(ring)).toEqual([['a', 'b', 'c']]);
  });

  it('leaves time, chance and timers to its callers when its room is pure', () => {
    const found = FILES.filter((file) => ROOMS.get(roomOf(file))?.platform === 'no').flatMap((file) =>
      wildGlobals(read(file), file).map((name) => `${file}: ${name}`),
    );
    expect(found).toEqual([]);
  });

  it('draws no chance of its own anywhere but where a run gets its seed', () => {
    const found = FILES.filter(
      (file) => roomOf(file) !== 'app' && wildGlobals(read(file), file).includes('Math.random'),
    );
    expect(found).toEqual([]);
  });
});

describe('this net itself', () => {
  const rooms: ReadonlyMap<string, Room> = readRooms(`
| room | holds | may import | outside library | DOM |
| --- | --- | --- | --- | --- |
| base | x | - | - | no |
| bench | x | base, scenario types | - | no |
| scenario | x | base | valibot | no |
| cli | x | base, bench | commander | node |
| view | x | base | pixi.js, @fontsource | yes |
| rooms/one | x | base | - | yes |
| rooms/two | x | base | - | yes |
| app | x | everything | idb | yes |
`);
  const breachesOf = (file: string, source: string): string[] => breaches(file, importsOf(source, file), rooms);

  it('reads every way to import', () => {
    const source = `
      import a from './a.ts';
      import type { B } from './b.ts';
      import { type C, type D } from './c.ts';
      import { type E, f } from './e.ts';
      import './side.css';
      export { g } from './g.ts';
      export type { H } from './h.ts';
      export * from './i.ts';
      const j: import('./j.ts').J = await import('./k.ts');
      const l = new URL('./l.wav', import.meta.url);
      const m = import.meta.glob(['./m/*.json', '!./m/not.json']);
      // import n from './n.ts'; and '' import o from "./o.ts"
      const text = "import p from './p.ts'";
    `;
    const uses = importsOf(source, 'src/view/x.tsx').map(
      (use: ImportUse) => `${use.typeOnly ? 'type ' : ''}${use.from}`,
    );
    expect(uses.sort()).toEqual(
      [
        './a.ts',
        './e.ts',
        './g.ts',
        './i.ts',
        './k.ts',
        './l.wav',
        './m/*.json',
        './side.css',
        'type ./b.ts',
        'type ./c.ts',
        'type ./h.ts',
        'type ./j.ts',
      ].sort(),
    );
  });

  it('catches what is not allowed and lets through what is', () => {
    expect(
      breachesOf('src/bench/a.ts', "import { x } from '../base/x.ts'; import type { S } from '../scenario/s.ts';"),
    ).toEqual([]);
    expect(breachesOf('src/bench/a.ts', "import { s } from '../scenario/s.ts';")).toHaveLength(1);
    expect(breachesOf('src/base/a.ts', "import type { S } from '../scenario/s.ts';")).toHaveLength(1);
    expect(breachesOf('src/scenario/a.ts', "import * as v from 'valibot';")).toEqual([]);
    expect(breachesOf('src/scenario/a.ts', "const v = await import('zod');")).toHaveLength(1);
    expect(breachesOf('src/view/a.ts', "import '@fontsource/plain/400.css'; import { G } from 'pixi.js';")).toEqual([]);
    expect(breachesOf('src/view/a.ts', "import { readFile } from 'node:fs';")).toHaveLength(1);
    expect(breachesOf('src/cli/a.ts', "import { readFile } from 'node:fs'; import '../view/v.ts';")).toHaveLength(1);
    expect(breachesOf('src/cli/a.ts', "export * from '../app/main.tsx';")).toHaveLength(1);
    expect(breachesOf('src/app/a.ts', "import '../view/v.ts'; import '../cli/c.ts'; import x from 'idb';")).toEqual([]);
    expect(breachesOf('src/rooms/one/a.ts', `import '${'../'.repeat(2)}base/x.ts'; import './b.ts';`)).toEqual([]);
    expect(breachesOf('src/rooms/one/a.ts', "import type { X } from '../two/x.ts';")).toHaveLength(1);
    expect(breachesOf('src/base/a.ts', `import x from '${'../'.repeat(3)}elsewhere/x.ts';`)).toHaveLength(1);
    expect(breachesOf('src/base/a.ts', `import x from '${'../'.repeat(2)}tests/x.ts';`)).toHaveLength(1);
  });

  it('sees time, chance and timers, but not words in strings, comments, types or members', () => {
    const caught = [
      'Date.now()',
      'new Date()',
      '(Date as unknown as Clock).now()',
      'Math.random()',
      "Math['random']()",
      'performance.now()',
      'setTimeout(f)',
      'crypto.subtle',
      'globalThis.Date',
    ];
    for (const source of caught) expect(wildGlobals(source, 'a.ts'), source).toHaveLength(1);
    const free = [
      '// Date.now()',
      '"Math.random"',
      'row.performance',
      'const x = { Date: 1 };',
      'let when: Date | null;',
      'interface Page { performance: number }',
      'Math.sin(1)',
    ];
    for (const source of free) expect(wildGlobals(source, 'a.ts'), source).toEqual([]);
  });
});
