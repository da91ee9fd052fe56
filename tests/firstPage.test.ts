/** What the first page brings along: its own pieces and nothing that a bench, a report or a file needs, and letters for all that it says. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { CORE, lettersOf, REST } from '../scripts/fontPieces.ts';
import { SHIPPED_INDEX } from '../src/services/library/shippedIndex.ts';
import { roomOf } from './roomLaw.ts';

/** Imports that a bundler follows at once: `import('...')` waits, and types are gone by then. */
const STATIC = /^(?:import|export)\s+(?!type\b)(?:[^'";]*?\sfrom\s+)?'([^']+)';/gm;

function broughtBy(start: string): { readonly files: readonly string[]; readonly packages: readonly string[] } {
  const files = new Set([start]);
  const packages = new Set<string>();
  for (const file of files) {
    for (const [statement, from] of readFileSync(file, 'utf8').matchAll(STATIC)) {
      const names =
        /\{([^}]*)\}/
          .exec(statement)?.[1]
          ?.split(',')
          .filter((name) => name.trim() !== '') ?? [];
      if (names.length > 0 && names.every((name) => /^\s*type\s/.test(name))) continue;
      if (!from!.startsWith('.')) packages.add(from!.split('/')[0]!);
      else if (/\.tsx?$/.test(from!)) files.add(path.posix.join(path.posix.dirname(file), from!));
    }
  }
  return { files: [...files], packages: [...packages].sort() };
}

describe('the first page', () => {
  const { files, packages } = broughtBy('src/app/main.tsx');

  it('brings neither a solver nor a bench nor a reader of files', () => {
    const rooms = [...new Set(files.map(roomOf))].sort();
    expect(rooms).toEqual(['app', 'base', 'files', 'kit', 'present', 'rooms/course', 'scenario', 'services', 'words']);
    // Of run files nothing but what one is: how long a name may be.
    expect(files.filter((file) => roomOf(file) === 'files')).toEqual(['src/files/runFile.ts']);
    expect(files).toContain('src/rooms/course/JobCard.tsx');
    expect(files).not.toContain('src/app/BenchRoom.tsx');
    // Of the handbook nothing but where it is.
    expect(files.filter((file) => /handbook|glossary|\/terms\//i.test(file))).toEqual([
      'src/present/handbook/address.ts',
    ]);
  });

  it('brings no library but the one that draws pages', () => {
    expect(packages).toEqual(['preact']);
  });
});

describe('the letters that come at once', () => {
  const core = new Set(lettersOf(CORE));

  it('are enough for every card', () => {
    const letters = new Set(JSON.stringify(SHIPPED_INDEX));
    expect([...letters].filter((letter) => !core.has(letter))).toEqual([]);
  });

  it('are enough for the English words of the first page', () => {
    const files = broughtBy('src/app/main.tsx').files.filter((file) => file.startsWith('src/words/en/'));
    expect(files.length).toBeGreaterThan(3);
    const missing = files.flatMap((file) =>
      [...readFileSync(file, 'utf8')].filter((letter) => letter !== '\n' && !core.has(letter)),
    );
    expect(missing).toEqual([]);
  });

  it('are none of those that come later, and none that come are lost', () => {
    const rest = lettersOf(REST);
    expect([...rest].filter((letter) => core.has(letter))).toEqual([]);
    const { latin } = JSON.parse(readFileSync('node_modules/@fontsource/source-serif-4/unicode.json', 'utf8')) as {
      latin: string;
    };
    const whole = latin.split(',').map((range) => {
      const [first, last] = range.replace('U+', '').split('-');
      return [Number.parseInt(first!, 16), Number.parseInt(last ?? first!, 16)] as const;
    });
    expect([...lettersOf(CORE), ...rest].sort()).toEqual([...lettersOf(whole)].sort());
  });
});
