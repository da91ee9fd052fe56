/**
 * A second opinion on what a certificate calls impossible: while the failed parts stand in the set, no setting of its slugs meets the sheet. Asked here of another search
 * than the certifier's own: evolution by differences (Storn and Price, Journal of Global Optimization 11, 1997, rand/1/bin; from memory), which knows no slopes and no
 * printed curve, only the worst line of the sheet. `npx tsx scripts/second-opinion.ts` asks it of every scenario.
 */
import { describe, expect, it } from 'vitest';
import { certificateOf, secondOpinion } from './secondOpinion.ts';

describe('while the failed parts stand in the set', () => {
  it.each(['tired-valve', 'lazy-diode', 'out-of-reach'])(
    'another search of %s meets the sheet nowhere either',
    (id) => {
      const { uncured } = certificateOf(id);
      expect(uncured!.excess).toBeGreaterThan(0);
      expect(secondOpinion(id, 1, 1500)).toBeGreaterThan(0);
    },
  );

  it('the same search meets the sheet where the part is cured: it can find what is there', () => {
    expect(secondOpinion('tired-valve', 1, 4000, true)).toBeLessThanOrEqual(0);
  });
});
