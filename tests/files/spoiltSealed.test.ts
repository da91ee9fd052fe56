/** A sealed sheet spoilt key by key, and a few ways at once by a seed: refused or read whole, and every refusal names place, found and wanted in people's words. Source: docs/evening-sheet.md. */
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { readSealedEvening } from '../../src/files/sealedEvening.ts';
import { saidOf } from './said.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Path = readonly string[];

const WHOLE: { [key: string]: Json } = {
  format: 'haystack-sealed-evening',
  version: 1,
  title: 'Second Thursday',
  author: 'Ines',
  minutes: 90,
  count: 2,
  candidates: 'numbers',
  seal: {
    key: 'PBKDF2-HMAC-SHA-256',
    rounds: 600_000,
    salt: 'A'.repeat(22),
    cipher: 'AES-256-GCM',
    nonce: 'B'.repeat(16),
  },
  content: 'C'.repeat(64),
};
const PATHS: readonly Path[] = [
  ...Object.keys(WHOLE).map((key) => [key]),
  ...Object.keys(WHOLE.seal as object).map((key) => ['seal', key]),
];
const SPOILT: readonly (Json | undefined)[] = [
  undefined,
  null,
  -1,
  0.5,
  1e300,
  '',
  'no such thing',
  ' ',
  [],
  {},
  '\u202e',
  true,
];
/** A sheet without these is a sheet. */
const MAY_BE_LEFT_OUT = ['author'];

function spoil(holder: { [key: string]: Json }, path: Path, put: Json | undefined): void {
  const [first, second] = path;
  const inside = holder[first!];
  const into = second === undefined ? holder : (inside as { [key: string]: Json } | undefined);
  // A spoilt seal has no keys that could be spoilt.
  if (typeof into !== 'object' || into === null || Array.isArray(into)) return;
  const last = second ?? first!;
  if (put === undefined) delete into[last];
  else into[last] = put;
}

function toldOf(sheet: Json) {
  const read = readSealedEvening(JSON.stringify(sheet, null, 1), 'exam.json');
  const told = saidOf(read).map((one) => ({ ...one, place: one.place.replace(/^line \d+, column \d+(, |$)/, '') }));
  for (const { file, found, wanted, place } of told) {
    expect([file.startsWith('exam.json'), found !== '', wanted !== '']).toEqual([true, true, true]);
    expect(`${place} ${wanted}`).not.toMatch(/undefined|NaN|\[object|\d[eE][+-]?\d/);
  }
  return { read, told };
}

it('is taken as it is, word for word', () => {
  expect(toldOf(WHOLE).read).toEqual({ ok: true, value: WHOLE });
});

describe.each(PATHS.map((path) => [path.join('/'), path] as const))('%s', (_, path) => {
  it('spoilt is refused at its place, or is as good as before', () => {
    for (const put of SPOILT) {
      const sheet = structuredClone(WHOLE);
      spoil(sheet, path, put);
      const { read, told } = toldOf(sheet);
      if (read.ok) expect(read.value).toEqual(sheet);
      else if (told.length === 1) expect(`/${path.join('/')}`.startsWith(told[0]!.place)).toBe(true);
      const leftOut = put === undefined && MAY_BE_LEFT_OUT.includes(path.join('/'));
      const fits =
        (put === null && path[0] === 'minutes') || (put === 'no such thing' && /^(title|author)$/.test(path[0]!));
      expect(read.ok, JSON.stringify(put)).toBe(leftOut || fits);
    }
  });
});

it('spoilt in three places tells each of them', () => {
  const chance = seededRandom(1949);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(chance() * list.length)]!;
  for (let n = 0; n < 300; n++) {
    const sheet = structuredClone(WHOLE);
    const places = new Set<Path>();
    while (places.size < 3)
      places.add(
        pick(
          PATHS.filter(
            ([first, second]) => !['format', 'version'].includes(first!) && (first !== 'seal' || second !== undefined),
          ),
        ),
      );
    for (const path of places) spoil(sheet, path, pick([-1, 1e300, [], {}, true]));
    const { read, told } = toldOf(sheet);
    expect(read.ok).toBe(false);
    for (const path of places)
      expect(told.some(({ place }) => place === `/${path.join('/')}` || place.startsWith(`/${path.join('/')}/`))).toBe(
        true,
      );
  }
});
