/** Tables of loads: worked out in order, no further than they are read, and the same whatever is asked first. The cubic is exact for cubics in the place (Lagrange; from memory). */
import { describe, expect, it } from 'vitest';
import { admittanceAt, standingAdmittance, tabulateAdmittance } from '../../src/physics/admittance.ts';

const SCALE = 0.05;
const END = 12;
const INTERVALS = 64;

/** A law whose samples hang on the one before, as those of a diode do that begins where the last carrier left it. */
function table() {
  const asked: number[] = [];
  let before = 0;
  const law = tabulateAdmittance(SCALE, END, INTERVALS, (volts) => {
    asked.push(volts);
    before = 0.9 * before + volts;
    return [1 / (1 + before), Math.sin(before)];
  });
  return { law, asked };
}

function at(law: ReturnType<typeof table>['law'], volts: number): number[] {
  const out = new Float64Array(4);
  admittanceAt(law, volts, out);
  return [...out];
}

describe('a table of a load', () => {
  it('gives the same to the last digit whatever is asked first', () => {
    const [up, down] = [table().law, table().law];
    const volts = [0, 0.02, 0.4, 1.7, 6, 11.9, 12, 40];
    const rising = volts.map((v) => at(up, v));
    const falling = volts.toReversed().map((v) => at(down, v));
    expect(falling.toReversed()).toEqual(rising);
    expect(rising.flat().every(Number.isFinite)).toBe(true);
  });

  it('is worked out in its order and no further than it is read', () => {
    const { law, asked } = table();
    expect(asked).toHaveLength(0);
    at(law, 0.4);
    const read = Math.floor(Math.log1p(0.4 / SCALE) / law.step) + 4;
    expect(asked).toHaveLength(read);
    expect(read).toBeLessThan(INTERVALS / 2);
    at(law, 0.1);
    expect(asked).toHaveLength(read);
    at(law, END);
    expect(asked).toHaveLength(INTERVALS + 4);
    expect(asked.slice(1)).toEqual([...asked.slice(1)].sort((a, b) => a - b));
  });

  it('stands still under a carrier at its nearest sample, which nobody has read before', () => {
    for (const volts of [0, 0.3, 2, 11.9]) {
      const { law } = table();
      const still = standingAdmittance(law, volts);
      const place = Math.round(Math.log1p(volts / SCALE) / law.step);
      const nearest = at(law, SCALE * Math.expm1(place * law.step));
      for (const other of [0, volts, 40]) {
        expect(at(still, other)[0]).toBeCloseTo(nearest[0]!, 9);
        expect(at(still, other)[1]).toBeCloseTo(nearest[1]!, 9);
        expect(at(still, other).slice(2)).toEqual([0, 0]);
      }
    }
  });
});
