/** A good evening sheet, spoilt key by key: refused or read whole, never half, and every refusal names place, found and wanted in people's words. Source: docs/evening-sheet.md. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { checkEvening, eveningText, readEvening } from '../../src/files/evening.ts';
import { saidOf } from './said.ts';
import { shippedLibrary } from './shipped.ts';

const { scenarios, receivers } = shippedLibrary();
const folder = 'scenarios/receivers/loose-can-10m7';
const some = ['first-curve', 'can-examined'].map((id) => scenarios.find((one) => one.id === id)!);
const whole = JSON.parse(
  eveningText(
    {
      ...{ title: 'Second Thursday', author: 'Ines', order: 'listed', minutes: 90, minutesEach: [30, 25], passMark: 2 },
      exam: { candidates: 'numbers', attempts: 'one', ownDeal: true, results: 'atEnd' },
      scenarios: some,
    },
    [
      {
        receiver: { file: 'receiver.json', text: readFileSync(`${folder}/receiver.json`, 'utf8') },
        deck: { file: 'network.cir', text: readFileSync(`${folder}/network.cir`, 'utf8') },
      },
    ],
  ),
) as Json;

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Path = readonly (string | number)[];
const SPOILT: readonly Json[] = [null, -1, 1e300, '', 'no such thing', []];

/** Every place of the head, of the exam, of the first lists, and of the scenarios as deep as they go. */
function pathsOf(value: Json, at: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [at];
  const inside = Object.entries(value).map(([key, one]): [string | number, Json] => [
    Array.isArray(value) ? Number(key) : key,
    one,
  ]);
  // A receiver is spoilt key by key in tests of its own.
  if (at[0] === 'receivers' && at.length === 2) return [at, ...inside.map(([key]) => [...at, key])];
  return [at, ...inside.flatMap(([key, one]) => pathsOf(one, [...at, key]))];
}

function spoilt(path: Path, put: Json | undefined): Json {
  const copy = structuredClone(whole);
  if (path.length === 0) return put ?? null;
  // biome-ignore lint/suspicious/noExplicitAny: any place of any file
  const holder = path.slice(0, -1).reduce<any>((inner, key) => inner[key], copy);
  const last = path.at(-1)!;
  if (put !== undefined) holder[last] = put;
  else if (Array.isArray(holder)) holder.splice(Number(last), 1);
  else delete holder[last];
  return copy;
}

const paths = pathsOf(whole);

it('is taken as it is, and has many places', () => {
  expect(saidOf(readEvening(JSON.stringify(whole), 'evening.json'))).toEqual([]);
  expect(paths.length).toBeGreaterThan(100);
});

it.each([undefined, ...SPOILT])('with %j in each place of it', (put) => {
  const strange: string[] = [];
  let refused = 0;
  for (const path of paths) {
    const text = JSON.stringify(spoilt(path, put), null, 1);
    const read = readEvening(text, 'evening.json');
    const problems = read.ok
      ? checkEvening(read.value, (id) => receivers.get(id) ?? null, [...receivers.keys()], 'evening.json')
      : read.problems;
    if (problems.length > 0) refused++;
    for (const { file, place, found, wanted } of saidOf({ ok: false, problems })) {
      const line = `${path.join('/')} = ${JSON.stringify(put)}: ${place}: found ${found}; wanted ${wanted}`;
      if (
        file === '' ||
        found === '' ||
        wanted === '' ||
        (place === '' && path.length > 1 && !file.endsWith(', deck 1'))
      )
        strange.push(line);
      if (/undefined|NaN|\[object|\d[eE][+-]?\d/.test(`${place} ${wanted}`)) strange.push(line);
    }
  }
  expect(refused).toBeGreaterThan(20);
  expect(strange).toEqual([]);
});

it('a slug far off is told what its own receiver allows, brought along or known', () => {
  const at: Path = ['scenarios', 0, 'start', 'slugs', 'T1B'];
  const text = JSON.stringify(spoilt(at, 999), null, 1);
  const wanted = (json: string, receiverOf?: Parameters<typeof readEvening>[2]) => {
    const read = readEvening(json, 'evening.json', receiverOf);
    return read.ok ? [] : read.problems.map((problem) => [problem.place, problem.wanted[0]]);
  };
  expect(wanted(text)).toEqual([['/scenarios/0/start/slugs/T1B', 'insideTravel']]);
  const { receivers: _, ...alone } = JSON.parse(text);
  const bare = JSON.stringify(alone);
  expect(wanted(bare)).toEqual([['/scenarios/0/start/slugs/T1B', 'from']]);
  expect(wanted(bare, (id) => receivers.get(id) ?? null)).toEqual([['/scenarios/0/start/slugs/T1B', 'insideTravel']]);
});
