/** The cases of a version of the code: every file in its `perf/cases` exports some. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { PerfCase } from './case.ts';

/** The same for all cases and versions, so that the same work is measured. */
export const SEED = 20_260_301;

export async function loadCases(project: string): Promise<PerfCase[]> {
  const folder = join(project, 'perf', 'cases');
  if (!existsSync(folder)) return [];
  const found: PerfCase[] = [];
  for (const file of readdirSync(folder).sort()) {
    if (!file.endsWith('.ts')) continue;
    const module = (await import(pathToFileURL(join(folder, file)).href)) as { readonly cases?: readonly PerfCase[] };
    if (module.cases === undefined) throw new Error(`perf/cases/${file} exports no cases`);
    found.push(...module.cases);
  }
  return found;
}

/** Those whose id contains one of the words; without words, all. */
export const casesFor = <T extends { readonly id: string }>(all: readonly T[], words: readonly string[]): T[] =>
  all.filter(({ id }) => words.length === 0 || words.some((word) => id.includes(word)));
