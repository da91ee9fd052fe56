/** The slug law: laws for any slug, then the shipped ones. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Adjuster } from '../../src/receiver/receiver.ts';
import {
  couplingFactor,
  henriesPerTurn,
  nominalTurns,
  slugHenries,
  turnsForHenries,
} from '../../src/receiver/slugLaw.ts';
import { shippedLibrary } from '../files/shipped.ts';

const pattern = shippedLibrary().receivers.get('loose-can-10m7')!.receiver.adjusters[0]!;

const adjusters: fc.Arbitrary<Adjuster> = fc
  .record({
    nominal: fc.double({ min: 1e-9, max: 1e-2, noNaN: true }),
    below: fc.double({ min: 0.5, max: 0.95, noNaN: true }),
    above: fc.double({ min: 1.05, max: 2, noNaN: true }),
    travelTurns: fc.double({ min: 2, max: 60, noNaN: true }),
  })
  .map(({ nominal, below, above, travelTurns }) => ({
    ...pattern,
    nominalHenries: nominal,
    minHenries: nominal * below,
    maxHenries: nominal * above,
    travelTurns,
  }));
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('the slug law', () => {
  it('is exact at the stops and stays there beyond them', () => {
    fc.assert(
      fc.property(adjusters, fc.double({ min: 0, max: 5, noNaN: true }), (a, past) => {
        expect(slugHenries(a, 0)).toBe(a.minHenries);
        expect(slugHenries(a, a.travelTurns)).toBe(a.maxHenries);
        expect(slugHenries(a, -past)).toBe(a.minHenries);
        expect(slugHenries(a, a.travelTurns + past)).toBe(a.maxHenries);
      }),
    );
  });

  it('rises with every turn in', () => {
    fc.assert(
      fc.property(adjusters, share, share, (a, p, q) => {
        fc.pre(Math.abs(p - q) > 1e-6);
        const [low, high] = p < q ? [p, q] : [q, p];
        expect(slugHenries(a, high * a.travelTurns)).toBeGreaterThan(slugHenries(a, low * a.travelTurns));
      }),
    );
  });

  it('is inverted: turns to henries to turns', () => {
    fc.assert(
      fc.property(adjusters, share, (a, p) => {
        const turns = p * a.travelTurns;
        expect(turnsForHenries(a, slugHenries(a, turns))).toBeCloseTo(turns, 9);
        expect(slugHenries(a, nominalTurns(a)) / a.nominalHenries).toBeCloseTo(1, 12);
      }),
    );
  });

  it('has no answer for what the slug cannot reach', () => {
    fc.assert(
      fc.property(adjusters, (a) => {
        expect(turnsForHenries(a, a.minHenries * 0.999)).toBeNull();
        expect(turnsForHenries(a, a.maxHenries * 1.001)).toBeNull();
        expect(turnsForHenries(a, Number.NaN)).toBeNull();
        expect(() => nominalTurns({ ...a, nominalHenries: a.maxHenries * 2 })).toThrow(a.id);
      }),
    );
  });

  it('is S-shaped: steepest in the middle, and the same on both sides of it', () => {
    fc.assert(
      fc.property(adjusters, share, (a, p) => {
        const middle = a.travelTurns / 2;
        const rate = henriesPerTurn(a, p * a.travelTurns);
        expect(rate).toBeGreaterThan(0);
        expect(rate).toBeLessThanOrEqual(henriesPerTurn(a, middle) * (1 + 1e-12));
        expect(henriesPerTurn(a, a.travelTurns * (1 - p)) / rate).toBeCloseTo(1, 9);
        expect(henriesPerTurn(a, -0.01)).toBe(0);
        expect(henriesPerTurn(a, a.travelTurns + 0.01)).toBe(0);
      }),
    );
  });

  it('has the rate that its differences have', () => {
    fc.assert(
      fc.property(adjusters, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (a, p) => {
        const at = p * a.travelTurns;
        const h = 1e-4 * a.travelTurns;
        const difference = (slugHenries(a, at + h) - slugHenries(a, at - h)) / (2 * h);
        expect(difference / henriesPerTurn(a, at)).toBeCloseTo(1, 5);
      }),
    );
  });

  // The bench's finest step; all sheets are met with every slug within 0.1 per cent (see shippedScenarios.test.ts).
  it('makes 1/32 turn at most 0.1 per cent of inductance in every shipped receiver', () => {
    for (const { receiver } of shippedLibrary().receivers.values()) {
      for (const a of receiver.adjusters) {
        // At its steepest: half way in, or half way to the middle where the core goes right through.
        const steepest = a.twoPeaks === undefined ? a.travelTurns / 2 : a.travelTurns / 4;
        const step = henriesPerTurn(a, steepest) / 32 / a.nominalHenries;
        expect(step, a.id).toBeGreaterThan(0.0005);
        expect(step, a.id).toBeLessThan(0.001);
      }
    }
  });
});

describe('a core that can be screwed right through', () => {
  const twice: fc.Arbitrary<Adjuster> = adjusters.map((a) => ({ ...a, twoPeaks: { coupling: 'K1', share: 0.5 } }));

  it('meets every inductance twice, as far from the middle either way', () => {
    fc.assert(
      fc.property(twice, share, (a, p) => {
        const out = slugHenries(a, (p * a.travelTurns) / 2);
        const through = slugHenries(a, (1 - p / 2) * a.travelTurns);
        expect(Math.abs(out / through - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it('rises to the middle, falls from there, and stands nominal outside it', () => {
    fc.assert(
      fc.property(twice, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (a, p) => {
        const half = a.travelTurns / 2;
        expect(henriesPerTurn(a, p * half)).toBeGreaterThan(0);
        expect(henriesPerTurn(a, half + p * half)).toBeLessThan(0);
        expect(nominalTurns(a)).toBeLessThan(half);
        expect(Math.abs(slugHenries(a, nominalTurns(a)) / a.nominalHenries - 1)).toBeLessThan(1e-9);
        expect(slugHenries(a, half)).toBeCloseTo(a.maxHenries, 12);
      }),
    );
  });

  it('has the slope of its own curve', () => {
    fc.assert(
      fc.property(twice, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (a, p) => {
        const at = p * a.travelTurns;
        const h = 1e-5 * a.travelTurns;
        const difference = (slugHenries(a, at + h) - slugHenries(a, at - h)) / (2 * h);
        const scale = (a.maxHenries - a.minHenries) / a.travelTurns;
        expect(Math.abs(henriesPerTurn(a, at) - difference) / scale).toBeLessThan(1e-4);
      }),
    );
  });

  it('couples more closely the further it has gone through, smoothly, and not at all before', () => {
    const a = { ...pattern, twoPeaks: { coupling: 'K1', share: 0.5 } };
    const at = (u: number) => couplingFactor(a, u * a.travelTurns);
    expect([at(0), at(0.3), at(0.5)]).toEqual([1, 1, 1]);
    expect(at(0.75)).toBeCloseTo(1.25, 12);
    expect(at(1)).toBeCloseTo(1.5, 12);
    // No corner at the middle: the first hundredth of the way adds less than a thousandth of the share.
    expect(at(0.505) - 1).toBeLessThan(0.5e-3);
    expect(couplingFactor(pattern, pattern.travelTurns)).toBe(1);
  });
});
