/** Every key, number, text and list of the shipped files, broken one by one: each must be told, at its place. */
import { describe, expect, it } from 'vitest';
import type { Result } from '../../src/base/result.ts';
import { parseReceiver } from '../../src/files/receiverSchema.ts';
import { parseScenario } from '../../src/files/scenarioSchema.ts';
import { saidOf } from './said.ts';
import { shippedJson } from './shipped.ts';

type Path = readonly (string | number)[];
interface Spot {
  readonly path: Path;
  readonly value: unknown;
}

const FILES: readonly (readonly [string, (json: unknown, file: string) => Result<unknown>])[] = [
  ['receivers/loose-can-10m7/receiver.json', parseReceiver],
  ['receivers/video-valve-45m/receiver.json', parseReceiver],
  ['first-sweep/off-centre.json', parseScenario],
  ['vision-if/from-cold.json', parseScenario],
  ['vision-if/flat-top.json', parseScenario],
];

function spots(value: unknown, path: Path = []): Spot[] {
  const inside =
    typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([key, item]) => spots(item, [...path, Array.isArray(value) ? Number(key) : key]))
      : [];
  return [{ path, value }, ...inside];
}

const pointerOf = (path: Path) => path.map((step) => `/${step}`).join('');

/** A copy of `root` in which the value at `path` is another. */
function changed(root: unknown, path: Path, change: (old: unknown) => unknown): unknown {
  const copy = structuredClone(root);
  if (path.length === 0) return change(copy);
  // biome-ignore lint/suspicious/noExplicitAny: walks anywhere
  let at: any = copy;
  for (const step of path.slice(0, -1)) at = at[step];
  at[path.at(-1)!] = change(at[path.at(-1)!]);
  return copy;
}

/** Whether some problem is told at a place or just around it (a broken `kind` is told of the object that it belongs to). */
function told(result: Result<unknown>, place: string): boolean {
  if (result.ok) return false;
  return result.problems.some(
    (p) => p.place === place || p.place.startsWith(`${place}/`) || place.startsWith(`${p.place}/`),
  );
}

describe.each(FILES)('%s', (file, parse) => {
  const json = shippedJson(file);
  const all = spots(json);

  it('is good as it stands', () => {
    expect(parse(json, file).ok).toBe(true);
    expect(all.length).toBeGreaterThan(40);
  });

  it('has no key that may be left out, but those that say so', () => {
    const optional =
      /^\/notParts$|^\/detectors\/\d+\/(loadFarads|carrierHz)$|\/plan\/letter$|^\/procedure\/\d+\/parts$|^\/procedure\/\d+\/(response|at)$|^\/responses\/\d+\/setUp\/slowSweep$|^\/testPoints\/\d+\/(tap|looseLoop)$|^\/responses\/\d+\/specification\/referenceHz$|^\/start\/controls\/|^\/start\/slugs\/|\/letter\/[xy]$/;
    const ofScenario =
      /^\/(responses|set|seed|difficulty|recommendedAfter|bench|life|faults|aids|sealed|timeLimitSeconds|toleranceFactor|weights|proofs|par|hints)$|^\/bench\/[a-zA-Z]+$|^\/aids\/[a-zA-Z]+$|^\/life\/[a-zA-Z]+$|^\/start\/(slugs|randomTurns|controls|prepared)$/;
    const silent: string[] = [];
    for (const { path, value } of all) {
      if (typeof value !== 'object' || value === null || Array.isArray(value)) continue;
      for (const key of Object.keys(value)) {
        const place = pointerOf([...path, key]);
        if (optional.test(place) || (parse === parseScenario && ofScenario.test(place))) continue;
        const result = parse(
          changed(json, path, (old) => without(old as object, key)),
          file,
        );
        if (!told(result, place)) silent.push(place);
      }
    }
    expect(silent).toEqual([]);
  });

  it('may not have a key more, anywhere', () => {
    const silent: string[] = [];
    for (const { path, value } of all) {
      if (typeof value !== 'object' || value === null || Array.isArray(value)) continue;
      // Slugs are named by the receiver, so only checkScenario can know them.
      if (pointerOf(path) === '/start/slugs') continue;
      const result = parse(
        changed(json, path, (old) => ({ ...(old as object), extraKey: 1 })),
        file,
      );
      if (!told(result, pointerOf([...path, 'extraKey']))) silent.push(pointerOf(path));
    }
    expect(silent).toEqual([]);
  });

  it.each([
    ['a number that is huge', 'number', () => 1e300],
    ['a number that is hugely negative', 'number', () => -1e300],
    ['a number that is none', 'number', () => Number.NaN],
    ['a number as text', 'number', (old: unknown) => String(old)],
    ['a text that is empty', 'string', () => ''],
    ['a text that is blank', 'string', () => '   '],
    ['a text that is far too long', 'string', () => 'a'.repeat(3000)],
    ['a text that turns the writing round', 'string', (old: unknown) => `${old}\u202e`],
    ['a text with a control character', 'string', (old: unknown) => `${old}\u0007`],
    ['a text that is a number', 'string', () => 7],
    ['yes as a word', 'boolean', () => 'yes'],
  ])('%s is told wherever it stands', (_, type, change) => {
    const silent: string[] = [];
    for (const { path, value } of all) {
      if (typeof value !== type) continue;
      if (!told(parse(changed(json, path, change), file), pointerOf(path))) silent.push(pointerOf(path));
    }
    expect(silent).toEqual([]);
  });

  it('blames nothing else for a value that is not known', () => {
    const blamed: string[] = [];
    for (const { path, value } of all) {
      if (typeof value === 'object' || path.length === 0 || path[0] === 'format' || path[0] === 'version') continue;
      const place = pointerOf(path);
      const result = parse(
        changed(json, path, () => ({})),
        file,
      );
      for (const p of result.ok ? [] : result.problems)
        if (p.place !== place && !place.startsWith(`${p.place}/`)) blamed.push(`${place}: ${p.place}`);
    }
    expect(blamed).toEqual([]);
  });

  it('has no list without end', () => {
    const silent: string[] = [];
    for (const { path, value } of all) {
      if (!Array.isArray(value)) continue;
      const item = value[0] ?? 'x';
      const result = parse(
        changed(json, path, () => Array.from({ length: 100 }, () => structuredClone(item))),
        file,
      );
      if (!told(result, pointerOf(path))) silent.push(pointerOf(path));
    }
    expect(silent).toEqual([]);
  });
});

describe('several mistakes in one file', () => {
  it('are all told at once, each with what stood there and what was wanted', () => {
    const json = shippedJson('vision-if/from-cold.json');
    json.title = '';
    json.difficulty = 9;
    json.par = { turns: 3, seconds: 'an hour' };
    json.colour = 'blue';
    json.start.controls = { levelDb: 6 };
    delete json.words.lesson;
    const result = parseScenario(json, 'x.json');
    expect(result.ok).toBe(false);
    if (result.ok) return;
    const lines = saidOf(result).map((p) => `${p.place}: ${p.found} / ${p.wanted}`);
    expect([...new Set(lines)].sort()).toEqual([
      '/colour: the key "colour" / only keys that the format has',
      '/difficulty: 9 / one of 1, 2, 3',
      '/par/seconds: "an hour" / a whole number from 30 to 14400 seconds',
      '/start/controls/levelDb: 6 dB / a whole number from \u221280 to 0 dB',
      '/title: "" / text of 1 to 60 characters without control characters, not blank',
      '/words/lesson: nothing / a value for "lesson"',
    ]);
  });

  it('are each told once', () => {
    const json = shippedJson('vision-if/from-cold.json');
    json.title = '';
    json.par = { turns: 1e9, seconds: 600 };
    const result = parseScenario(json, 'x.json');
    expect(saidOf(result).map((p) => p.place)).toEqual(['/title', '/par/turns']);
  });
});

function without(object: object, key: string): object {
  return Object.fromEntries(Object.entries(object).filter(([k]) => k !== key));
}
