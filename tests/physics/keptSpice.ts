/**
 * Means of long time runs of ngspice, kept in `tests/fixtures/spice/` under the fingerprint of the engine's version, the deck's whole text and what was asked of it. A deck that
 * differs in one digit has no kept answer and is run. Of each file the run that is asked for first is run all the same, and must give what is kept to the last digit.
 * `HAYSTACK_SPICE=anew npx vitest run FILE` runs them all and keeps what they give (then `npm run format`).
 */

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { hashOf } from '../../src/files/hash.ts';
import { meanVolts, runTransient } from './ngspice.ts';

/** From and to as shares of the run's end. */
export type PartOfRun = readonly [from: number, to: number];

/** All that was kept. */
export const WHOLE: PartOfRun = [0, 1];

const PROJECT = fileURLToPath(new URL('../../', import.meta.url));
const ANEW = process.env.HAYSTACK_SPICE === 'anew';

/** Means over `parts` of the run of each of `nodes`, volts, by node. `set` names the file that keeps them. */
export type MeansOfRun = (
  deckText: string,
  nodes: readonly string[],
  parts: readonly PartOfRun[],
) => Promise<readonly (readonly number[])[]>;

export function keptMeans(set: string): MeansOfRun {
  const file = path.join(PROJECT, 'tests', 'fixtures', 'spice', `${set}.json`);
  const kept: Readonly<Record<string, readonly (readonly number[])[]>> = existsSync(file)
    ? JSON.parse(readFileSync(file, 'utf8'))
    : {};
  const version = engineVersion();
  const given: Record<string, readonly (readonly number[])[]> = {};
  let first = true;
  return async (deckText, nodes, parts) => {
    const key = hashOf({ version, deckText, nodes, parts });
    const known = kept[key];
    const asked = first;
    first = false;
    if (known !== undefined && !ANEW && !asked) return known;
    const run = await runTransient(deckText, nodes);
    const means = nodes.map((node) => parts.map((part) => meanVolts(run, node, part)));
    if (ANEW) {
      given[key] = means;
      mkdirSync(path.dirname(file), { recursive: true });
      writeFileSync(file, `${JSON.stringify(given, null, 2)}\n`);
    } else if (known !== undefined) expect(means).toEqual(known);
    return means;
  };
}

function engineVersion(): string {
  return JSON.parse(readFileSync(path.join(PROJECT, 'node_modules', 'eecircuit-engine', 'package.json'), 'utf8'))
    .version;
}
