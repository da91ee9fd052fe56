/** Putting a folder of texts together. */
import { describe, expect, it } from 'vitest';
import { loadScenarioFolder } from '../../src/files/library.ts';
import { saidOf } from './said.ts';
import { shippedLibrary, shippedTexts } from './shipped.ts';

function problemsWith(change: (texts: Record<string, string>) => void): string[] {
  const texts = shippedTexts();
  change(texts);
  const result = loadScenarioFolder(texts);
  return saidOf(result).map((p) => `${p.file} ${p.place.replace(/^line \d+, column \d+, (?=\/)/, '')}`.trim());
}
const edit = (texts: Record<string, string>, file: string, from: string | RegExp, to: string) => {
  const before = texts[file]!;
  texts[file] = before.replace(from, to);
  expect(texts[file]).not.toBe(before);
};

const RECEIVERS = [
  'aft-45m75',
  'am-455k',
  'chroma-3m58',
  'colour-overall',
  'fm-10m7',
  'front-to-detector',
  'loose-can-10m7',
  'sound-4m5',
  'tuner-vhf',
  'video-b-38m9',
  'video-early-25m',
  'video-solid-45m',
  'video-valve-45m',
];

describe('the shipped folder', () => {
  it('is whole, and in the order of the course', () => {
    const result = loadScenarioFolder(shippedTexts());
    if (!result.ok) throw new Error('the shipped folder should be whole');
    expect([...result.value.receivers.keys()]).toEqual(RECEIVERS);
    const { scenarios } = result.value;
    // Within each track the order of the course; a track's scenarios stand together.
    scenarios.forEach((scenario, i) => {
      const before = scenarios[i - 1];
      if (before?.track === scenario.track) expect(scenario.order).toBeGreaterThan(before.order);
      else expect(scenarios.slice(0, i).some((s) => s.track === scenario.track)).toBe(false);
    });
  });

  it('may lie under any path', () => {
    const moved = Object.fromEntries(
      Object.entries(shippedTexts()).map(([path, text]) => [`../../scenarios/${path}`, text]),
    );
    const result = loadScenarioFolder(moved);
    expect(result.ok && result.value.scenarios.length).toBe(shippedLibrary().scenarios.length);
  });
});

describe('a folder with mistakes', () => {
  it.each<[string, (texts: Record<string, string>) => void, string[]]>([
    [
      'a deck that is missing',
      (t) => delete t['receivers/loose-can-10m7/network.cir'],
      [
        'receivers/loose-can-10m7/network.cir',
        'first-sweep/first-curve.json /receiver',
        'first-sweep/off-centre.json /receiver',
      ],
    ],
    [
      'a deck with a mistake',
      (t) => edit(t, 'receivers/video-valve-45m/network.cir', 'R39 t39', 'X39 t39'),
      ['receivers/video-valve-45m/network.cir line 23, column 1'],
    ],
    [
      'a receiver in the wrong folder',
      (t) => edit(t, 'receivers/loose-can-10m7/receiver.json', '"id": "loose-can-10m7"', '"id": "tight-can"'),
      ['receivers/loose-can-10m7/receiver.json /id', 'first-sweep/first-curve.json /receiver'],
    ],
    [
      'a scenario under another name',
      (t) => edit(t, 'vision-if/flat-top.json', '"id": "flat-top"', '"id": "flat-roof"'),
      ['vision-if/flat-top.json', 'vision-if/from-cold.json /recommendedAfter/0'],
    ],
    ['a code twice', (t) => edit(t, 'vision-if/flat-top.json', 'V-03', 'V-02'), ['vision-if/traps-astray.json /code']],
    [
      'a place twice',
      (t) => edit(t, 'vision-if/flat-top.json', '"order": 3', '"order": 2'),
      ['vision-if/traps-astray.json /order'],
    ],
    [
      'a scenario that comes after a later one',
      (t) => edit(t, 'vision-if/flat-top.json', '"order": 3', '"order": 9'),
      ['vision-if/from-cold.json /recommendedAfter/0'],
    ],
    [
      'text that is no JSON',
      (t) => edit(t, 'vision-if/flat-top.json', '{', '['),
      ['vision-if/flat-top.json line 2, column 11'],
    ],
    [
      'a slug that the receiver has not',
      (t) => edit(t, 'vision-if/flat-top.json', '"T4": 0.5', '"T6": 0.75'),
      ['vision-if/flat-top.json /start/slugs/T6'],
    ],
  ])('tells of %s', (_, change, wanted) => {
    const found = problemsWith(change);
    for (const line of wanted) expect(found).toContain(line);
  });

  it('tells of the receiver’s and the deck’s problems together', () => {
    const found = problemsWith((t) => {
      edit(t, 'receivers/video-valve-45m/network.cir', 'R39 t39', 'X39 t39');
      edit(t, 'receivers/video-valve-45m/receiver.json', '"levelDb": -46', '"levelDb": -146');
    });
    expect(found).toContain('receivers/video-valve-45m/network.cir line 23, column 1');
    expect(found).toContain('receivers/video-valve-45m/receiver.json /responses/0/setUp/levelDb');
  });

  it('gives no library at all', () => {
    const texts = shippedTexts();
    edit(texts, 'vision-if/flat-top.json', '"order": 3', '"order": 2');
    expect(loadScenarioFolder(texts).ok).toBe(false);
  });
});
