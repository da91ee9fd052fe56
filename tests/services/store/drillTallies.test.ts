/** The tally of the last ten looks of each drill: kept, cut to ten, and never in the way where storage is spoilt or refused. */
import { describe, expect, it } from 'vitest';
import { createDrillTallies } from '../../../src/services/store/drillTallies.ts';

function shelf(text: string | null = null) {
  let kept = text;
  return {
    getItem: () => kept,
    setItem: (_: string, value: string) => {
      kept = value;
    },
  };
}

describe('tallies', () => {
  it('are there again on the next visit, each drill by itself', () => {
    const storage = shelf();
    const first = createDrillTallies(() => storage);
    first.add('zero', true);
    first.add('zero', false);
    first.add('overload', true);
    const second = createDrillTallies(() => storage);
    expect(second.read('zero')).toEqual([true, false]);
    expect(second.read('overload')).toEqual([true]);
    expect(second.read('phase-it')).toEqual([]);
  });

  it('hold the last ten', () => {
    const tallies = createDrillTallies(() => shelf());
    tallies.add('zero', false);
    for (let i = 0; i < 10; i++) tallies.add('zero', true);
    expect(tallies.read('zero')).toEqual(Array.from({ length: 10 }, () => true));
  });

  it.each(['no JSON', '[]', 'null', '{"zero":"12"}', '{"zero":[true]}', '{"zero":"11111111111"}'])(
    'are empty where %s is kept',
    (text) => {
      const tallies = createDrillTallies(() => shelf(text));
      expect(tallies.read('zero')).toEqual([]);
      tallies.add('zero', true);
      expect(tallies.read('zero')).toEqual([true]);
    },
  );

  it('last as long as the page where storage is refused', () => {
    const tallies = createDrillTallies(() => {
      throw new Error('refused');
    });
    tallies.add('zero', true);
    expect(tallies.read('zero')).toEqual([true]);
  });
});
