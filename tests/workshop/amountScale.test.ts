/** Figures of cards: rules and typed figures. */
import { describe, expect, it } from 'vitest';
import { FAULT_KINDS } from '../../src/receiver/faults/fault.ts';
import { FAULT_ROWS } from '../../src/receiver/faults/faultRows.ts';
import { amountScale, typedAmount } from '../../src/workshop/amountScale.ts';
import { FLAWS, flawRow } from '../../src/workshop/flaws.ts';

/** Every range that a card has. */
const RANGES = [
  ...FLAWS.flatMap((id) => {
    const row = flawRow(id);
    return row.holds === 'number' ? [row.bounds] : [];
  }),
  ...FAULT_KINDS.flatMap((kind) =>
    Object.values(FAULT_ROWS[kind].fields).flatMap((field) => (field.holds === 'number' ? [field] : [])),
  ),
];

describe('the rule of a figure', () => {
  it('stays inside its range and comes back to every one of its places', () => {
    expect(RANGES.length).toBeGreaterThan(15);
    for (const range of RANGES) {
      const scale = amountScale(range);
      expect(scale.last).toBeGreaterThan(20);
      for (let place = 0; place <= scale.last; place++) {
        const value = scale.valueAt(place);
        expect(value).toBeGreaterThanOrEqual(range.least);
        expect(value).toBeLessThanOrEqual(range.most);
        expect(Math.abs(scale.placeOf(value) - place)).toBeLessThanOrEqual(1);
      }
    }
  });

  it('has round figures: degrees one by one, kilohertz by tens, ohms as parts are sold (E24, IEC 60063, from memory)', () => {
    expect(amountScale({ least: -85, most: 85 }).valueAt(86)).toBe(1);
    expect(amountScale({ least: -1e6, most: 1e6 }).valueAt(106)).toBe(60e3);
    const ohms = amountScale({ least: 1e-3, most: 1e9 });
    expect(ohms.valueAt(ohms.placeOf(47e3))).toBe(47e3);
  });
});

describe('a typed figure', () => {
  it.each([
    ['47k', 47e3],
    ['47 k\u03a9', 47e3],
    ['\u221260 kHz', -60e3],
    ['4,5 V', 4.5],
    ['0.5', 0.5],
    ['\u00d7 0.5', 0.5],
    ['8 %', 0.08],
    ['10 pF', 10e-12],
    ['1 \u00b5A', 1e-6],
    ['+14\u00b0', 14],
    ['1e3 ohm', 1e3],
  ])('%s', (text, value) => {
    expect(typedAmount(text)).toBeCloseTo(value, 15);
  });
  it.each(['', 'much', '5 apples', '1..2', '8 k%', 'Infinity'])('is none: %s', (text) => {
    expect(typedAmount(text)).toBeNull();
  });
});
