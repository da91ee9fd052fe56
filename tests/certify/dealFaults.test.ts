/** What has failed at the attempts of a sealed scenario that deals it: the report of one tells nothing of the next, and whoever says what is said most is wrong mostly. */
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/base/random.ts';
import { dealFaults } from '../../src/certify/dealFaults.ts';
import { cureOf } from '../../src/receiver/faults/cure.ts';
import { partsTray } from '../../src/receiver/faults/partsTray.ts';
import { setupOf } from '../technician/oneScenario.ts';

const { receiver, deck, scenario } = setupOf('not-a-word');
const dealt = (seed: number) => dealFaults({ receiver, deck }, scenario, seededRandom(seed));
const kindOf = (fault: (typeof scenario.faults)[number]) => cureOf(fault, receiver, deck).kind;
const HANDS = Array.from({ length: 400 }, (_, i) => dealt(i + 1));

describe('faults that are dealt', () => {
  it('are what the file says where it does not deal them', () => {
    const { dealsFaults: _, ...plain } = scenario;
    expect(dealFaults({ receiver, deck }, plain, seededRandom(1))).toBe(plain.faults);
    expect(scenario.faults.map(kindOf)).toEqual(['replace', 'reconnect']);
  });

  it('are a part for the part and a contact for the contact, each there three times of four', () => {
    for (const kind of ['replace', 'reconnect'] as const) {
      const there = HANDS.filter((faults) => faults.some((fault) => kindOf(fault) === kind)).length;
      expect(there / HANDS.length).toBeGreaterThan(0.65);
      expect(there / HANDS.length).toBeLessThan(0.85);
    }
    expect(HANDS.every((faults) => faults.length <= 2)).toBe(true);
    expect(HANDS.some((faults) => faults.length === 0)).toBe(true);
  });

  it('name parts of the tray, and none of them often', () => {
    const tray = new Set(partsTray(receiver, deck).map(({ name }) => name));
    const times = new Map<string, number>();
    for (const fault of HANDS.flat()) {
      const cure = cureOf(fault, receiver, deck);
      if (cure.kind !== 'replace') continue;
      expect(tray.has(cure.part)).toBe(true);
      times.set(cure.part, (times.get(cure.part) ?? 0) + 1);
    }
    expect(times.size).toBeGreaterThan(10);
    expect(Math.max(...times.values()) / HANDS.length).toBeLessThan(0.25);
  });

  it('are the same again from the same chance', () => {
    expect(dealt(7)).toEqual(dealt(7));
  });
});
