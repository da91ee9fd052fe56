/** Folders that are named where files may be: what lies in them and below, in order. */
import { readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { placeOf } from './files.ts';

export function isFolder(name: string): boolean {
  return statSync(placeOf(name), { throwIfNoEntry: false })?.isDirectory() === true;
}

export function filesIn(folder: string, pattern: RegExp): readonly string[] {
  const entries = readdirSync(placeOf(folder), { withFileTypes: true });
  return entries
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const name = path.join(folder, entry.name);
      if (entry.isDirectory()) return filesIn(name, pattern);
      return pattern.test(entry.name) && isReadable(name) ? [name] : [];
    });
}

/** A file, or a name that leads to none, which is told. A pipe that somebody left in a folder would be waited on for ever. */
function isReadable(name: string): boolean {
  const found = statSync(placeOf(name), { throwIfNoEntry: false });
  return found === undefined || found.isFile();
}
