/** Folders of scenarios with several rules of theirs broken at once, by a seed: each is told at its file and place, whatever else is wrong. Common practice, no source. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { insideByKey as inside, scratch } from './commandLine.ts';

const files = scratch();
afterAll(files.remove);

const GOOD = JSON.parse(readFileSync('scenarios/first-sweep/first-curve.json', 'utf8')) as Record<string, unknown>;
const NAMES = ['anchor', 'beacon', 'capstan', 'davit', 'ensign', 'fender'] as const;

interface Card {
  file: string;
  readonly text: Record<string, unknown>;
}

/** Six sound cards of one track, each after the one before. */
const soundFolder = (): Card[] =>
  NAMES.map((id, i) => ({
    file: `tuesday/${id}.json`,
    text: {
      ...GOOD,
      ...{ id, code: `T-0${i + 1}`, track: 'tuesday', order: i + 1 },
      recommendedAfter: i === 0 ? [] : [NAMES[i - 1]],
    },
  }));

/** What is done to card `at`, and what `check` says of it; `at` is never the first. */
const WAYS: readonly ((cards: Card[], at: number) => readonly [file: string, said: RegExp])[] = [
  (cards, at) => {
    cards[at]!.text.code = cards[0]!.text.code;
    return [cards[at]!.file, /, \/code: found "T-01" a second time, wanted each once$/];
  },
  (cards, at) => {
    cards[at]!.text.order = 1;
    return [cards[at]!.file, /, \/order: found order 1 in tuesday a second time/];
  },
  (cards, at) => {
    cards[at]!.file = `wednesday/${NAMES[at]}.json`;
    return [cards[at]!.file, new RegExp(`: found .*${NAMES[at]}.*tuesday.*, wanted .*tuesday/${NAMES[at]}\\.json`)];
  },
  (cards, at) => {
    // A folder whose name only ends as the track does is another folder.
    cards[at]!.file = `mytuesday/${NAMES[at]}.json`;
    return [cards[at]!.file, new RegExp(`: found .*, wanted .*tuesday/${NAMES[at]}\\.json`)];
  },
  (cards, at) => {
    cards[at]!.text.recommendedAfter = ['nobody'];
    return [cards[at]!.file, /, \/recommendedAfter\/0: found "nobody", wanted one of /];
  },
  (cards, at) => {
    cards[at]!.text.recommendedAfter = [NAMES[at]];
    return [cards[at]!.file, /, \/recommendedAfter\/0: found /];
  },
  (cards, at) => {
    cards[at]!.text.difficulty = -3;
    return [cards[at]!.file, /, \/difficulty: found -3, wanted /];
  },
  (cards, at) => {
    cards[at]!.text.Title = 'x';
    return [cards[at]!.file, /, \/Title: found the key "Title"/];
  },
];

function written(name: string, cards: readonly Card[]): string {
  for (const { file, text } of cards) {
    const place = files.place(path.join(name, file));
    mkdirSync(path.dirname(place), { recursive: true });
    writeFileSync(place, JSON.stringify(text));
  }
  return files.place(name);
}

it('is sound as it stands', () => {
  const { err, code } = inside('check', written('sound', soundFolder()));
  expect([err, code]).toEqual(['', 0]);
});

it('with any two to four rules broken tells each of them, and of nothing that is sound', () => {
  const chance = seededRandom(2280);
  for (let n = 0; n < 25; n++) {
    const cards = soundFolder();
    const order = NAMES.map((_, i) => i)
      .slice(1)
      .sort(() => chance() - 0.5);
    const touched = order.slice(0, 2 + Math.floor(3 * chance()));
    const expected = touched.map((at) => WAYS[Math.floor(chance() * WAYS.length)]!(cards, at));
    const home = written(`spoilt${n}`, cards);
    const { err, code } = inside('check', home);
    expect(code).toBe(1);
    const lines = err.trimEnd().split('\n');
    for (const [file, said] of expected) {
      const own = lines
        .filter((line) => line.startsWith(path.join(home, file)))
        .map((line) => line.slice(path.join(home, file).length));
      expect(
        own.filter((line) => said.test(line)),
        `${n}: ${file}\n${err}`,
      ).toHaveLength(1);
    }
    const spoilt = new Set(touched.map((at) => path.join(home, cards[at]!.file)));
    // Whoever comes after a card of another order may be told of, too; a sound first card never.
    expect(spoilt.has(path.join(home, cards[0]!.file))).toBe(false);
    expect(lines.some((line) => line.startsWith(path.join(home, cards[0]!.file)))).toBe(false);
    expect(err).not.toMatch(/undefined|NaN|\[object/);
  }
});

it('tells scenarios of two tracks that are each to be done after the other', () => {
  const cards = soundFolder().slice(0, 2);
  const [first, second] = cards as [Card, Card];
  first.text.recommendedAfter = ['beacon'];
  Object.assign(second.text, { track: 'friday', order: 1 });
  second.file = 'friday/beacon.json';
  const { err, code } = inside('check', written('round', cards));
  expect(code).toBe(1);
  expect(err.match(/, \/recommendedAfter\/0: found "(anchor|beacon)", which comes after this one/g)).toHaveLength(2);
});
