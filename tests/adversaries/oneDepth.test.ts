/** No scenario is met by a hand that sets every slug to one share of its travel, which never has to look at the tube. */
import { describe, expect, it } from 'vitest';
import { shippedLibrary } from '../files/shipped.ts';
import { setupOf } from '../technician/oneScenario.ts';
import { oneDepth } from './oneDepth.ts';

const { scenarios, receivers } = shippedLibrary();

/** Met by luck, with the reason. */
const LUCKY: Readonly<Record<string, string>> = {
  dots: 'practice; one trap alone answers for its sheet, so that one depth for all is nothing but a search with that one slug',
};

describe('one depth for every slug', () => {
  it('meets by luck no more than three scenarios, all of them practice without a fault', () => {
    const lucky = scenarios.filter((s) => LUCKY[s.id] !== undefined);
    expect(lucky.map((s) => s.id)).toEqual(Object.keys(LUCKY));
    expect(lucky.length).toBeLessThanOrEqual(3);
    for (const { sealed, faults, id } of lucky) {
      expect([sealed, faults]).toEqual([false, []]);
      expect(oneDepth(setupOf(id))).toBeLessThanOrEqual(0);
    }
  });

  it.each(scenarios.map((s) => s.id).filter((id) => LUCKY[id] === undefined))('does not meet the sheet of %s', (id) => {
    expect(oneDepth(setupOf(id))).toBeGreaterThan(0);
  });

  it('would meet it where every slug were right at one depth', () => {
    const design = receivers.get('loose-can-10m7')!;
    const scenario = {
      ...scenarios.find((s) => s.id === 'off-centre')!,
      start: { ...setupOf('off-centre').scenario.start, slugs: {} },
    };
    const { set: _, ...plain } = scenario;
    const adjusters = design.receiver.adjusters.map((a) => {
      // The winding is moved until half the travel is right: S(1/2) = 1/2.
      const reach = a.maxHenries / a.minHenries;
      const minHenries = (2 * a.nominalHenries) / (1 + reach);
      return { ...a, minHenries, maxHenries: minHenries * reach };
    });
    const setup = { receiver: { ...design.receiver, adjusters }, deck: design.deck, scenario: plain };
    // Twenty shares stand a fortieth of the travel from the middle; a wide sheet is met there.
    expect(oneDepth({ ...setup, scenario: { ...plain, toleranceFactor: 5 } })).toBeLessThanOrEqual(0);
  });
});
