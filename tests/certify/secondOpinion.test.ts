/**
 * A second opinion on what a certificate calls impossible: while the failed parts stand in the set, no setting of its slugs meets the sheet. Asked here of another search
 * than the certifier's own: evolution by differences (Storn and Price, Journal of Global Optimization 11, 1997, rand/1/bin; from memory), which knows no slopes and no
 * printed curve, only the worst line of the sheet. `npx tsx scripts/second-opinion.ts` asks it of every scenario.
 */
import { describe, expect, it } from 'vitest';
import { shippedLibrary } from '../files/shipped.ts';
import { certificateOf, secondOpinion } from './secondOpinion.ts';

/** Tolerances by which another search may come lower. */
const BEATEN_BY = 0.02;

const IMPOSSIBLE = shippedLibrary().scenarios.flatMap(({ id }) => (certificateOf(id).uncured === null ? [] : [id]));
/** Those whose certificates come nearest to a sheet are looked at longest. */
const NARROW = ['tired-valve', 'lazy-diode', 'half-a-loaf', 'a-broken-wire'];

describe('while the failed parts stand in the set', () => {
  it.each(IMPOSSIBLE)(
    'another search of %s meets the sheet nowhere either, nor comes nearer than the certificate says',
    (id) => {
      const { uncured } = certificateOf(id);
      expect(uncured!.excess).toBeGreaterThan(0.1);
      expect(secondOpinion(id, 1, NARROW.includes(id) ? 1500 : 300)).toBeGreaterThan(uncured!.excess - BEATEN_BY);
    },
  );

  it('that is asked of every scenario which a certificate calls impossible, none left out', () => {
    expect(IMPOSSIBLE.length).toBeGreaterThan(15);
    expect(IMPOSSIBLE).toEqual(expect.arrayContaining(NARROW));
  });

  it('every shipped certificate that calls it impossible does so by a tenth of a tolerance at least', () => {
    const impossible = shippedLibrary().scenarios.flatMap(({ id }) => certificateOf(id).uncured ?? []);
    expect(impossible.length).toBeGreaterThan(10);
    for (const { excess, line } of impossible) expect(excess, line).toBeGreaterThan(0.1);
  });

  it('the same search meets the sheet where the part is cured: it can find what is there', () => {
    expect(secondOpinion('tired-valve', 1, 4000, true)).toBeLessThanOrEqual(0);
  });
});
