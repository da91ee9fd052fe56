/** Nobody gets more than chance gives without looking: the right answers are spread evenly, whatever the seed, and no rule of thumb beats them. */
import { describe, expect, it } from 'vitest';
import { chanceOf } from '../../src/drills/chance.ts';
import { DRILLS } from '../../src/drills/drill.ts';
import { lookSeed, MAKERS, receiverOf, rightPlace } from '../../src/drills/question.ts';

const SERIES = ['a', 'b', 'harbour', '0', '00000001', 'f3a97c12'];
const LOOKS = 200;
const SEEDS = DRILLS.flatMap((drill) =>
  SERIES.flatMap((series) => Array.from({ length: LOOKS }, (_, look) => lookSeed(drill, series, look))),
);
/** Four standard deviations of a binomial share: by chance once in fifteen thousand. */
const most = (count: number, tries: number): number =>
  1 / count + 4 * Math.sqrt(((1 / count) * (1 - 1 / count)) / tries);

describe.each([2, 3, 4])('of %i choices', (count) => {
  const places = SEEDS.map((seed) => rightPlace(seed, count));

  it('a constant answer gets no more than chance gives, and no less', () => {
    for (let at = 0; at < count; at++) {
      const share = places.filter((place) => place === at).length / places.length;
      expect(share).toBeLessThan(most(count, places.length));
      expect(share).toBeGreaterThan(2 / count - most(count, places.length));
    }
  });

  it('within each series of each drill, too', () => {
    for (const drill of DRILLS)
      for (const series of SERIES)
        for (let at = 0; at < count; at++) {
          const right = Array.from({ length: LOOKS }, (_, look) => rightPlace(lookSeed(drill, series, look), count));
          expect(right.filter((place) => place === at).length / LOOKS).toBeLessThan(most(count, LOOKS));
        }
  });

  it('neither does a random answer, the place before, the place after it, nor what the address spells', () => {
    const dice = chanceOf(`dice ${count}`);
    const rules: readonly ((seed: string, i: number) => number)[] = [
      () => Math.floor(dice() * count),
      (_, i) => places[(i + places.length - 1) % places.length]!,
      (_, i) => (places[(i + places.length - 1) % places.length]! + 1) % count,
      (seed) => seed.length % count,
      (seed) => [...seed].reduce((sum, sign) => sum + sign.charCodeAt(0), 0) % count,
      (seed) => Number(/\d+$/.exec(seed)![0]) % count,
    ];
    for (const rule of rules) {
      const right = SEEDS.filter((seed, i) => rule(seed, i) === places[i]).length;
      expect(right / SEEDS.length).toBeLessThan(most(count, SEEDS.length));
    }
  });
});

it('every set that a drill has is shown about equally often, and tells nothing of the place', () => {
  for (const drill of DRILLS) {
    const all = MAKERS[drill].receivers;
    const seeds = Array.from({ length: 400 }, (_, look) => lookSeed(drill, 'quay', look));
    for (const id of all) {
      const shown = seeds.filter((seed) => receiverOf(drill, seed) === id);
      expect(shown.length / seeds.length).toBeLessThan(most(all.length, seeds.length));
      const first = shown.filter((seed) => rightPlace(seed, 2) === 0).length;
      expect(first / shown.length).toBeLessThan(most(2, shown.length));
    }
  }
});
