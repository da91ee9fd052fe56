/** The scenarios folder as texts by path, and the library made of it, for tests. */
import { fileURLToPath } from 'node:url';
import { certified, textsIn } from '../../scripts/makeCourseIndex.ts';
import { problemLine } from '../../src/base/result.ts';
import { type LoadedReceiver, loadScenarioFolder, type ScenarioFolder } from '../../src/files/library.ts';

export const SCENARIOS = fileURLToPath(new URL('../../scenarios/', import.meta.url));

export const shippedTexts = (): Record<string, string> => textsIn(SCENARIOS);

let library: ScenarioFolder | null = null;

/** Read and checked once for each process that asks: nothing in it may be changed. */
export function shippedLibrary(): ScenarioFolder {
  library ??= read();
  return library;
}

function read(): ScenarioFolder {
  const loaded = loadScenarioFolder(shippedTexts());
  if (!loaded.ok) throw new Error(loaded.problems.map(problemLine).join('\n'));
  return { ...loaded.value, scenarios: loaded.value.scenarios.map(certified) };
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
