/** Makes the entries of the shipped course from the scenarios folder, or says what is wrong with it. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { problemLine } from '../src/base/result.ts';
import { benchSetup } from '../src/certify/benchSetup.ts';
import { loadScenarioFolder } from '../src/files/library.ts';
import { entryOf } from '../src/present/entryOf.ts';
import type { ScenarioEntry } from '../src/present/scenarioEntry.ts';

export type CourseIndex =
  | { readonly ok: true; readonly entries: readonly ScenarioEntry[] }
  | { readonly ok: false; readonly lines: readonly string[] };

export function makeCourseIndex(folder: string): CourseIndex {
  const loaded = loadScenarioFolder(textsIn(folder));
  if (!loaded.ok) return { ok: false, lines: loaded.problems.map(problemLine) };
  const { scenarios, receivers } = loaded.value;
  const setups = scenarios.map((scenario) => benchSetup(receivers.get(scenario.receiver)!, scenario));
  const lines = setups.flatMap((setup) => (setup.ok ? [] : setup.problems.map(problemLine)));
  if (lines.length > 0) return { ok: false, lines };
  return { ok: true, entries: setups.flatMap((setup) => (setup.ok ? [entryOf(setup.value)] : [])) };
}

/** Every file of a folder as text, by its path from there. */
export function textsIn(folder: string): Record<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return Object.fromEntries(
    files.map((entry) => {
      const full = path.join(entry.parentPath, entry.name);
      return [path.relative(folder, full).replaceAll('\\', '/'), readFileSync(full, 'utf8')];
    }),
  );
}
