/** Individual sets: the same number is the same set, its parts stay within their spreads, its slugs are right where they are dealt, and it meets the printed sheet. */
import { describe, expect, it } from 'vitest';
import { benchSetup } from '../../src/certify/benchSetup.ts';
import { dealSet } from '../../src/certify/dealSet.ts';
import { createDemands } from '../../src/certify/demands.ts';
import { worstOf } from '../../src/certify/search.ts';
import { problemSentence } from '../../src/describe/problem.ts';
import { drawParts, placeSlugs, slugDepths, spreadsOf } from '../../src/receiver/individualSet.ts';
import { nominalTurns, slugHenries } from '../../src/receiver/slugLaw.ts';
import { en } from '../../src/words/en/index.ts';
import { shippedLibrary } from '../files/shipped.ts';

const { receivers, scenarios } = shippedLibrary();
const RECEIVERS = [...receivers];
const SPREAD_OF = { C: 'capacitors', R: 'resistors', K: 'couplings', G: 'transconductances' } as const;

describe.each(RECEIVERS)('sets of %s', (_, design) => {
  const spreads = spreadsOf(design.receiver);

  it('have parts within their spreads, the bench’s own and the coils as designed', () => {
    const most = { C: 0, R: 0, K: 0, G: 0 };
    for (let draw = 0; draw < 40; draw++) {
      const { deck, receiver } = drawParts(design, 7, draw, spreads);
      for (const [i, element] of deck.elements.entries()) {
        const { value, kind } = design.deck.elements[i]!;
        if (kind === 'L' || kind === 'I') {
          expect(element.value).toBe(value);
          continue;
        }
        const away = Math.abs(element.value / value - 1);
        expect(away).toBeLessThanOrEqual(spreads[SPREAD_OF[kind]]);
        most[kind] = Math.max(most[kind], away);
      }
      for (const name of design.receiver.probeInDeck?.elements ?? [])
        expect(deck.elements.find((e) => e.name === name)).toEqual(design.deck.elements.find((e) => e.name === name));
      receiver.stages.forEach((stage) => {
        const device = deck.elements.find((e) => e.name.toLowerCase() === stage.element.toLowerCase());
        expect(stage.gmSiemens).toBe(device!.value);
      });
    }
    // Forty draws of several parts come near the ends of what is allowed.
    for (const kind of ['C', 'R'] as const) expect(most[kind]).toBeGreaterThan(0.8 * spreads[SPREAD_OF[kind]]);
  });

  it('are dealt again from the same number, part for part, and meet the printed sheet where their slugs are right', () => {
    const deal = dealSet(design, 11, spreads);
    expect(deal.ok).toBe(true);
    if (!deal.ok) return;
    expect(dealSet(design, 11, spreads)).toEqual(deal);
    const { receiver, deck } = deal.dealt.set;
    const slugs = receiver.adjusters.map((a) => a.id);
    const depths = slugDepths(design.receiver, 11);
    for (const adjuster of receiver.adjusters) {
      const turns = nominalTurns(adjuster);
      expect(turns / adjuster.travelTurns).toBeCloseTo(depths[adjuster.id]!, 9);
      const coil = deck.elements.find((e) => e.name.toLowerCase() === adjuster.element.toLowerCase())!;
      expect(slugHenries(adjuster, turns)).toBeCloseTo(coil.value, 12);
      const [from, to] = adjuster.twoPeaks === undefined ? [0.25, 0.75] : [0.15, 0.35];
      expect(depths[adjuster.id]).toBeGreaterThanOrEqual(from);
      expect(depths[adjuster.id]).toBeLessThanOrEqual(to);
    }
    const right = Object.fromEntries(receiver.adjusters.map((a) => [a.id, nominalTurns(a)]));
    const demands = createDemands(receiver, deck, receiver.responses, 1, slugs, design);
    expect(worstOf(demands.standings(right)).excess).toBeLessThanOrEqual(0);
  });

  it('differ from number to number', () => {
    const values = [1, 2, 3].map((seed) => drawParts(design, seed, 0, spreads).deck.elements.map((e) => e.value));
    expect(new Set(values.map(String)).size).toBe(3);
    expect(slugDepths(design.receiver, 1)).not.toEqual(slugDepths(design.receiver, 2));
  });
});

describe('a set', () => {
  const design = receivers.get('loose-can-10m7')!;

  it('whose coil is moved keeps what its core reaches, in proportion', () => {
    const [first] = design.receiver.adjusters;
    const wanted = Object.fromEntries(design.receiver.adjusters.map((a) => [a.id, 1.02 * a.nominalHenries]));
    const depths = Object.fromEntries(design.receiver.adjusters.map((a) => [a.id, 0.3]));
    const { receiver } = placeSlugs(design, wanted, depths);
    const moved = receiver.adjusters[0]!;
    expect(moved.maxHenries / moved.minHenries).toBeCloseTo(first!.maxHenries / first!.minHenries, 12);
    expect(nominalTurns(moved)).toBeCloseTo(0.3 * first!.travelTurns, 9);
  });

  it('that no draw can align is refused with its narrowest line', () => {
    // A level above the peak cannot be had by anybody.
    const [first, ...rest] = design.receiver.responses;
    const [point, ...points] = first!.specification.points;
    const specification = { ...first!.specification, points: [{ ...point!, low: 1.2, high: 1.4 }, ...points] };
    const receiver = { ...design.receiver, responses: [{ ...first!, specification }, ...rest] };
    const none = dealSet({ ...design, receiver }, 3, spreadsOf(receiver), { mostDraws: 2 });
    expect(none).toMatchObject({ ok: false, draws: 2, narrowest: { item: { kind: 'point' } } });
    const scenario = { ...scenarios.find((s) => s.receiver === receiver.id)!, set: 3 };
    const refused = benchSetup({ ...design, receiver }, scenario, null, 'wild.json');
    expect(refused).toMatchObject({ ok: false, problems: [{ file: 'wild.json', place: '/set' }] });
    const told = refused.ok ? '' : problemSentence(en, refused.problems[0]!);
    expect(told).toContain('none of 12 draws can be aligned; the narrowest line is the ');
    expect(told).toContain(`the point at ${point!.hz / 1e6} MHz of "can"`);
  });
});
