/** The run files that were named: files as they are, folders with every .json file in them and below, in order. */
import { readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { bad, good, type Problem, type Result } from '../../base/result.ts';
import { placeOf } from '../files.ts';
import type { Terminal } from '../terminal.ts';

export function runFilesIn(terminal: Terminal, names: readonly string[]): Result<readonly string[]> {
  const problems: Problem[] = [];
  const files = names.flatMap((name) => {
    if (!isFolder(name)) return [name];
    const inside = jsonFilesIn(name);
    const { noRuns, runs } = terminal.words.cli.regrade;
    if (inside.length === 0) problems.push({ file: name, place: '', found: noRuns, wanted: runs });
    return inside;
  });
  return problems.length > 0 ? bad(...problems) : good([...new Set(files)]);
}

function isFolder(name: string): boolean {
  return statSync(placeOf(name), { throwIfNoEntry: false })?.isDirectory() === true;
}

function jsonFilesIn(folder: string): readonly string[] {
  const entries = readdirSync(placeOf(folder), { withFileTypes: true });
  return entries
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const name = path.join(folder, entry.name);
      if (entry.isDirectory()) return jsonFilesIn(name);
      return /\.json$/i.test(entry.name) ? [name] : [];
    });
}
