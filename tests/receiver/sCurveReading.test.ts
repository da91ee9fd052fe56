/** Reading an S-curve, against the closed forms of the phase discriminator with a constant primary; and the sheet's items on it. */
import { describe, expect, it } from 'vitest';
import type { Specification } from '../../src/receiver/receiver.ts';
import { nonLinearity, readSCurve, valueAt } from '../../src/receiver/sCurveReading.ts';
import { evaluateSpecification, isInside, widenSpecification } from '../../src/receiver/specification.ts';

const CENTRE = 10.7e6;
const HALF_WIDTH = 100e3;

/** Foster and Seeley, Proc. IRE 1937 (from memory): [sqrt(1+(a+h)^2) - sqrt(1+(a-h)^2)] / sqrt(1+a^2), a in half widths off the centre. */
function discriminator(h: number, offHz = 0, points = 801) {
  const hz = Float64Array.from({ length: points }, (_, i) => CENTRE + 500e3 * ((2 * i) / (points - 1) - 1));
  const volts = hz.map((f) => {
    const a = (f - CENTRE - offHz) / HALF_WIDTH;
    return (Math.hypot(1, a + h) - Math.hypot(1, a - h)) / Math.hypot(1, a);
  });
  return { hz, volts };
}

describe('an S-curve', () => {
  // Closed forms of the same source, derived from the expression: peaks at a = sqrt(1 + h^2/2), height 2h / sqrt(4 + h^2).
  it.each([1, 2, 2.5])('of h = %f has its peaks and its height where the closed form has them', (h) => {
    const read = readSCurve(discriminator(h), CENTRE, 10.2e6, 11.2e6);
    expect(Math.abs((read.top.hz - CENTRE) / HALF_WIDTH - Math.sqrt(1 + (h * h) / 2))).toBeLessThan(2e-4);
    expect(Math.abs((CENTRE - read.bottom.hz) / HALF_WIDTH - Math.sqrt(1 + (h * h) / 2))).toBeLessThan(2e-4);
    expect(read.height).toBeCloseTo((2 * h) / Math.hypot(2, h), 6);
  });

  it.each([0, 12_345, -40_000])('moved by %f Hz crosses zero there', (offHz) => {
    const read = readSCurve(discriminator(2, offHz), CENTRE, 10.2e6, 11.2e6);
    expect(Math.abs(read.zeroHz! - CENTRE - offHz)).toBeLessThan(0.5);
  });

  it('that never changes its sign has no zero', () => {
    const { hz, volts } = discriminator(2);
    expect(readSCurve({ hz, volts: volts.map((v) => v + 5) }, CENTRE, 10.2e6, 11.2e6).zeroHz).toBeNull();
  });

  it('is read between its samples', () => {
    const curve = discriminator(2);
    const a = 0.513;
    const wanted = (Math.hypot(1, a + 2) - Math.hypot(1, a - 2)) / Math.hypot(1, a);
    expect(valueAt(curve, CENTRE + a * HALF_WIDTH)).toBeCloseTo(wanted, 8);
    expect(() => valueAt(curve, 9e6)).toThrow('outside');
  });

  it('is straight when it is a line, and bent by as much as a cubic bends', () => {
    const hz = Float64Array.from({ length: 401 }, (_, i) => CENTRE + (i - 200) * 1e3);
    const x = (f: number) => (f - CENTRE) / 100e3;
    expect(nonLinearity({ hz, volts: hz.map((f) => 3 * x(f)) }, CENTRE, 100e3)).toBeLessThan(1e-12);
    // x - c x^3 lies furthest from its chord at x = 1/sqrt 3: c (2 / (3 sqrt 3)), over 1 - c.
    const c = 0.2;
    const bent = nonLinearity({ hz, volts: hz.map((f) => x(f) - c * x(f) ** 3) }, CENTRE, 100e3);
    expect(bent).toBeCloseTo((c * 2) / (3 * Math.sqrt(3)) / (1 - c), 4);
  });
});

const SHEET: Specification = {
  fromHz: 10.2e6,
  toHz: 11.2e6,
  points: [{ hz: CENTRE + HALF_WIDTH, target: 0.874, low: 0.8, high: 0.95, weight: 1 }],
  windows: [],
  tilts: [],
  traps: [],
  skirts: [],
  bandwidths: [],
  peaks: [],
  sCurve: {
    centreHz: CENTRE,
    risesWithFrequency: true,
    zero: { toleranceHz: 10e3, weight: 3 },
    separation: { minHz: 330e3, maxHz: 360e3, weight: 1 },
    symmetry: { low: 0.9, high: 1.11, weight: 1 },
    linearity: { withinHz: 50e3, max: 0.06, weight: 1 },
  },
  gain: { hz: CENTRE, minDb: -3, nominal: Math.SQRT2, weight: 1 },
};

describe('the sheet’s items of an S-curve', () => {
  const itemsOf = (curve: { readonly hz: Float64Array; readonly volts: Float64Array }, sheet = SHEET) =>
    evaluateSpecification(sheet, curve.hz, curve.volts, null);

  it('are all inside for h = 2, each with its own name', () => {
    const items = itemsOf(discriminator(2));
    expect(items.filter((item) => !isInside(item))).toEqual([]);
    expect(items.map((i) => i.kind)).toEqual([
      'zero',
      'polarity',
      'separation',
      'symmetry',
      'linearity',
      'point',
      'gain',
    ]);
    expect(new Set(items.map((i) => i.id)).size).toBe(items.length);
    // 2 sqrt(1 + h^2/2) half widths
    expect(items[2]!.measured).toBeCloseTo(2 * Math.sqrt(3) * HALF_WIDTH, -2);
    expect(items[3]!.measured).toBeCloseTo(1, 6);
    expect(items[6]!.measured).toBeCloseTo(0, 4);
  });

  it('tell a curve that is off, upside down, lopsided or weak', () => {
    const outside = (curve: Parameters<typeof itemsOf>[0]) =>
      itemsOf(curve)
        .filter((item) => !isInside(item))
        .map((item) => item.kind);
    const { hz, volts } = discriminator(2);
    expect(outside(discriminator(2, 15e3))).toContain('zero');
    expect(outside({ hz, volts: volts.map((v) => -v) })).toContain('polarity');
    expect(outside({ hz, volts: volts.map((v) => (v > 0 ? 1.2 * v : v)) })).toContain('symmetry');
    expect(outside({ hz, volts: volts.map((v) => v / 2) })).toEqual(['gain']);
    expect(itemsOf({ hz, volts: volts.map(() => 0) }).every((item) => Number.isFinite(item.measured))).toBe(true);
  });

  it('widen with the sheet', () => {
    const off = discriminator(2, 15e3);
    const kinds = itemsOf(off, widenSpecification(SHEET, 2)).filter((i) => !isInside(i));
    expect(kinds.map((i) => i.kind)).not.toContain('zero');
    const wide = widenSpecification(SHEET, 2).sCurve!;
    expect(wide.separation).toMatchObject({ minHz: 315e3, maxHz: 375e3 });
    expect(wide.symmetry.low).toBeCloseTo(0.81, 12);
  });
});
