/** Makes the entries of the shipped course from the scenarios folder, or says what is wrong with it. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Problem } from '../src/base/result.ts';
import { benchSetup } from '../src/certify/benchSetup.ts';
import { parIn, withPar } from '../src/certify/certifiedPar.ts';
import { type KnownSet, knownSetIn } from '../src/certify/knownSet.ts';
import { problemSentence } from '../src/describe/problem.ts';
import { loadScenarioFolder } from '../src/files/library.ts';
import { entryOf } from '../src/present/entryOf.ts';
import type { ScenarioEntry } from '../src/present/scenarioEntry.ts';
import type { Scenario } from '../src/scenario/scenario.ts';
import { en } from '../src/words/en/index.ts';

export type CourseIndex =
  | { readonly ok: true; readonly entries: readonly ScenarioEntry[] }
  | { readonly ok: false; readonly lines: readonly string[] };

export function makeCourseIndex(folder: string): CourseIndex {
  const loaded = loadScenarioFolder(textsIn(folder));
  if (!loaded.ok) return { ok: false, lines: loaded.problems.map(inEnglish) };
  const { receivers } = loaded.value;
  const scenarios = loaded.value.scenarios.map(certified);
  const setups = scenarios.map((scenario) =>
    benchSetup(receivers.get(scenario.receiver)!, scenario, certifiedSet(scenario.id)),
  );
  const lines = setups.flatMap((setup) => (setup.ok ? [] : setup.problems.map(inEnglish)));
  if (lines.length > 0) return { ok: false, lines };
  return { ok: true, entries: setups.flatMap((setup) => (setup.ok ? [marked(entryOf(setup.value))] : [])) };
}

/** Par that only the file itself states is nobody's proof that the job can be done. */
function marked(entry: ScenarioEntry): ScenarioEntry {
  return existsSync(certificateOf(entry.id)) ? entry : { ...entry, uncertified: true };
}

const inEnglish = (problem: Problem): string => problemSentence(en, problem);

/** With the par of its certificate, where it has one. */
export function certified(scenario: Scenario): Scenario {
  const name = certificateOf(scenario.id);
  return existsSync(name) ? withPar(scenario, parIn(readFileSync(name, 'utf8'))) : scenario;
}

const certificateOf = (id: string): string => fileURLToPath(new URL(`../certificates/${id}.json`, import.meta.url));

/** What the certificate of a shipped scenario knows of its set; null where it has none. */
export function certifiedSet(id: string): KnownSet | null {
  const name = certificateOf(id);
  return existsSync(name) ? knownSetIn(readFileSync(name, 'utf8')) : null;
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
