/** Reads and writes files for the commands. Whatever is wrong with one is a problem like any other, never a crash. */
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { bad, good, type Problem, type Result } from '../base/result.ts';
import { type Terminal, worded } from './terminal.ts';

/** The folder of the project, wherever the command was called from. */
export const PROJECT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..');

/** No file of ours is larger: a run file has at most 4 Mi characters, which are rarely more than a byte each. */
const LARGEST_BYTES = 8 * 1024 * 1024;

/** A name as given by the person: relative to where they stand. npm moves to the project and leaves word of where it came from. */
export function placeOf(name: string): string {
  const from = process.env.npm_lifecycle_event === 'haystack' ? process.env.INIT_CWD : undefined;
  return path.resolve(from ?? process.cwd(), name);
}

/** The text of a file. `file` in problems is the name as given. */
export function readText({ words }: Terminal, name: string): Result<string> {
  const fileWords = words.cli.files;
  const problem = (found: string, wanted: string): Problem => worded({ file: name, place: '', found, wanted });
  try {
    const stats = statSync(placeOf(name));
    if (stats.isDirectory()) return bad(problem(fileWords.folder, fileWords.file));
    if (!stats.isFile()) return bad(problem(fileWords.special, fileWords.file));
    if (stats.size > LARGEST_BYTES)
      return bad(problem(fileWords.tooLarge(stats.size), fileWords.atMost(LARGEST_BYTES)));
    const bytes = readFileSync(placeOf(name));
    if (bytes.includes(0)) return bad(problem(fileWords.binary, fileWords.utf8));
    return good(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
  } catch (error) {
    if (error instanceof TypeError) return bad(problem(fileWords.binary, fileWords.utf8));
    const code = codeOf(error);
    return bad(
      code === 'ENOENT'
        ? problem(fileWords.missing, fileWords.file)
        : problem(fileWords.unreadable(code), fileWords.readable),
    );
  }
}

export function writeText({ words }: Terminal, name: string, text: string): readonly Problem[] {
  const { unwritable, writable } = words.cli.files;
  try {
    writeFileSync(placeOf(name), text);
    return [];
  } catch (error) {
    return [worded({ file: name, place: '', found: unwritable(codeOf(error)), wanted: writable })];
  }
}

function codeOf(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === undefined) throw error;
  return code;
}
