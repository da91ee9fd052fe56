/** Ways to call the command line in tests: inside this process, which is quick, or as the program that people start. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { runProgram } from '../../src/cli/program.ts';
import { terminal } from '../../src/words/en/terminal.ts';
import type { TerminalWords } from '../../src/words/words.ts';

export interface Said {
  readonly out: string;
  readonly err: string;
  readonly code: number;
}

export const PROJECT = path.resolve(import.meta.dirname, '..', '..');

export const inside = (...words: readonly string[]): Said => insideSaying(terminal, ...words);

/** As `inside`, without line and column where the key says the place, for tests of what is told and not where. */
export function insideByKey(...words: readonly string[]): Said {
  const said = inside(...words);
  return { ...said, err: said.err.replace(/, line \d+, column \d+(?=, \/)/g, '') };
}

/** In other words than the usual. */
export function insideSaying(language: TerminalWords, ...words: readonly string[]): Said {
  let out = '';
  let err = '';
  let code = 0;
  runProgram(
    {
      words: language,
      out: (text) => {
        out += text;
      },
      err: (text) => {
        err += text;
      },
      exit: (given) => {
        code = given;
      },
    },
    words,
  );
  return { out, err, code };
}

export interface Calling {
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
  /** stop reading after the first chunk, as `| head` does */
  readonly readLittle?: boolean;
  /** what is piped in */
  readonly input?: string;
  /** started by `tsx`, as `npm run haystack` does, which is a process more; else by Node with what tsx loads files by */
  readonly byTsx?: boolean;
}

export function spawned(
  words: readonly string[],
  { cwd = PROJECT, env = {}, readLittle = false, input, byTsx = false }: Calling = {},
): Promise<Said> {
  const main = path.join(PROJECT, 'src', 'cli', 'main.ts');
  const tsx = path.join(PROJECT, 'node_modules', 'tsx', 'dist');
  const by = byTsx ? [path.join(tsx, 'cli.mjs')] : ['--import', pathToFileURL(path.join(tsx, 'loader.mjs')).href];
  const own = { ...process.env, npm_lifecycle_event: '', INIT_CWD: '', ...env };
  const child = spawn(process.execPath, [...by, main, ...words], { cwd, env: own, stdio: ['pipe', 'pipe', 'pipe'] });
  child.stdin.end(input ?? '');
  let out = '';
  let err = '';
  child.stdout.on('data', (chunk) => {
    out += chunk;
    if (readLittle) child.stdout.destroy();
  });
  child.stderr.on('data', (chunk) => {
    err += chunk;
  });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => resolve({ out, err, code: code ?? -1 }));
  });
}

/** A folder for the files of one test file, and what writes into it. */
export function scratch() {
  const folder = mkdtempSync(path.join(tmpdir(), 'haystack-'));
  return {
    folder,
    file(name: string, content: string | Uint8Array): string {
      const place = path.join(folder, name);
      writeFileSync(place, content);
      return place;
    },
    place: (name: string) => path.join(folder, name),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
