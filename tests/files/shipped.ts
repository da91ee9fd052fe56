/** The scenarios folder as texts by path, and the library made of it, for tests. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { problemLine } from '../../src/base/result.ts';
import { type Library, type LoadedReceiver, loadLibrary } from '../../src/files/library.ts';

export const SCENARIOS = fileURLToPath(new URL('../../scenarios/', import.meta.url));

export function shippedTexts(): Record<string, string> {
  const names = readdirSync(SCENARIOS, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const texts: Record<string, string> = {};
  for (const entry of names) {
    const full = path.join(entry.parentPath, entry.name);
    texts[path.relative(SCENARIOS, full).replaceAll('\\', '/')] = readFileSync(full, 'utf8');
  }
  return texts;
}

export function shippedLibrary(): Library {
  const library = loadLibrary(shippedTexts());
  if (!library.ok) throw new Error(library.problems.map(problemLine).join('\n'));
  return library.value;
}

export function shippedReceiver(id: string): LoadedReceiver {
  const loaded = shippedLibrary().receivers.get(id);
  if (loaded === undefined) throw new Error(`no receiver ${id}`);
  return loaded;
}

/** A deep copy that may be written to. */
// biome-ignore lint/suspicious/noExplicitAny: tests break files on purpose, anywhere
export function shippedJson(file: string): any {
  return JSON.parse(shippedTexts()[file]!);
}
