/** Reads and writes files for the commands. Whatever is wrong with one is a problem like any other, never a crash. */
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { bad, type Problem, type Result } from '../base/result.ts';
import { notRead, sizeProblem, textOfBytes } from '../judge/readBytes.ts';
import { type Terminal, worded } from './terminal.ts';

/** The folder of the project, wherever the command was called from. */
export const PROJECT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..');

/** A name as given by the person: relative to where they stand. npm moves to the project and leaves word of where it came from. */
export function placeOf(name: string): string {
  const from = process.env.npm_lifecycle_event === 'haystack' ? process.env.INIT_CWD : undefined;
  return path.resolve(from ?? process.cwd(), name);
}

const decoded = (bytes: Uint8Array): string => new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);

/** The text of a file. `file` in problems is the name as given. */
export function readText({ words }: Terminal, name: string): Result<string> {
  const fileWords = words.cli.files;
  const problem = (found: string, wanted: string): Problem => worded({ file: name, place: '', found, wanted });
  try {
    const stats = statSync(placeOf(name));
    if (stats.isDirectory()) return bad(problem(fileWords.folder, fileWords.file));
    if (!stats.isFile()) return bad(problem(fileWords.special, fileWords.file));
    const tooLarge = sizeProblem(words, stats.size, name);
    if (tooLarge !== null) return tooLarge;
    return textOfBytes(words, readFileSync(placeOf(name)), name, decoded);
  } catch (error) {
    const code = codeOf(error);
    return code === 'ENOENT' ? bad(problem(fileWords.missing, fileWords.file)) : notRead(words, code, name);
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
