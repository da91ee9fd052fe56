/** Curves in ink: levels between samples, thinning that keeps the notches, round axes, the stretch that is worth showing. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisLabels, axisMarks, axisStep, targetFig, thumb } from '../../src/kit/theme/figures.ts';
import { bandOf, type Curve, levelAt, within } from '../../src/present/curves.ts';

const curve = (n: number, f: (hz: number) => number, from = 38e6, to = 48e6): Curve => {
  const hz = Float64Array.from({ length: n }, (_, i) => from + ((to - from) * i) / (n - 1));
  return { hz, relative: hz.map(f) };
};
const hump = (hz: number): number => 1 / (1 + ((hz - 43e6) / 1e6) ** 4);

describe('levelAt', () => {
  it('is exact on samples, straight between them, and holds the ends', () => {
    const c: Curve = { hz: Float64Array.of(10, 20, 40), relative: Float64Array.of(0, 1, 0.5) };
    expect([5, 10, 15, 20, 30, 40, 99].map((f) => levelAt(c, f))).toEqual([0, 0, 0.5, 1, 0.75, 0.5, 0.5]);
    expect(levelAt({ hz: Float64Array.of(), relative: Float64Array.of() }, 1)).toBe(0);
  });
});

describe('within', () => {
  it('keeps both ends and the bottom of a notch however it is thinned', () => {
    const c = curve(5001, (hz) => Math.abs((hz - 41.25e6) / 5e6));
    const bottom = Math.min(...c.relative);
    const few = within(c, 39e6, 47e6, 40);
    expect(few.length).toBeLessThan(60);
    expect(few[0]![0]).toBe(39e6);
    expect(few[few.length - 1]![0]).toBe(47e6);
    expect(Math.min(...few.map(([, level]) => level))).toBe(bottom);
    expect(few.every(([hz], i) => i === 0 || hz > few[i - 1]![0])).toBe(true);
  });
});

describe('axes', () => {
  it('step by 1, 2 or 5 times a power of ten, about as often as asked', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), fc.integer({ min: 2, max: 14 }), (range, count) => {
        const step = axisStep(range, count);
        const lead = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
        expect([1, 2, 5, 10].some((v) => Math.abs(lead - v) < 1e-6)).toBe(true);
        expect(range / step).toBeLessThanOrEqual(count * 1.0002);
        expect(range / step).toBeGreaterThan(count / 2.6);
      }),
    );
  });

  it('lie inside the range and are written with equal decimals', () => {
    expect(axisMarks(10.2, 11.2, 5).map((v) => Number(v.toFixed(6)))).toEqual([10.2, 10.4, 10.6, 10.8, 11, 11.2]);
    expect(axisLabels(axisMarks(10.2, 11.2, 5))).toEqual(['10.2', '10.4', '10.6', '10.8', '11.0', '11.2']);
    expect(axisLabels(axisMarks(38, 52, 7))).toEqual(['38', '40', '42', '44', '46', '48', '50', '52']);
  });
});

describe('bandOf', () => {
  it('leaves out the empty skirts and stays inside what is sampled', () => {
    const c = curve(1001, hump, 30e6, 60e6);
    const [from, to] = bandOf([c]);
    expect(levelAt(c, from)).toBeLessThan(0.04);
    expect(levelAt(c, to)).toBeLessThan(0.04);
    expect(to - from).toBeLessThan(8e6);
    expect(from).toBeGreaterThan(30e6);
    expect(bandOf([curve(101, () => 1)])).toEqual([38e6, 48e6]);
    expect(bandOf([curve(101, () => 0)])).toEqual([38e6, 48e6]);
  });
});

describe('figures', () => {
  const strokes = (svg: string): number => (/<path d="([^"]+)" clip-path/.exec(svg)?.[1] ?? '').split('M').length - 1;

  it('stack denser hay for a better score, none for none, and dash what is locked', () => {
    const at = (score: number | null): string => thumb({ x: 0, y: 0, w: 160, h: 80, curve: curve(200, hump), score });
    expect(at(0)).not.toContain('clip-path');
    expect(at(null)).not.toContain('clip-path');
    expect(at(null)).toContain('stroke-dasharray="3 3"');
    expect(strokes(at(95))).toBeGreaterThan(strokes(at(80)));
    expect(strokes(at(80))).toBeGreaterThan(strokes(at(60)));
    // One way below 76, crossed above.
    expect(at(60).split('clip-path="').length - 1).toBe(1);
    expect(at(80).split('clip-path="').length - 1).toBe(2);
  });

  it('draw an S about its own middle line', () => {
    const s = curve(201, (hz) => Math.sin(((hz - 43e6) / 5e6) * Math.PI * 0.5));
    const line = /^<path d="M0 ([\d.]+)H160"/.exec(thumb({ x: 0, y: 0, w: 160, h: 80, curve: s, score: 0 }))![1];
    expect(Number(line)).toBeGreaterThan(30);
    expect(Number(line)).toBeLessThan(50);
  });

  it('find room for an S that is higher on one side than on the other', () => {
    const s = curve(201, (hz) => (hz > 43e6 ? 1.7 : 0.3) * Math.sin(((hz - 43e6) / 5e6) * Math.PI));
    const heights = [...thumb({ x: 0, y: 0, w: 160, h: 80, curve: s, score: 0 }).matchAll(/[ML][\d.]+ (-?[\d.]+)/g)];
    const ys = heights.map((match) => Number(match[1]));
    expect(ys.length).toBeGreaterThan(100);
    expect(Math.min(...ys)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...ys)).toBeLessThanOrEqual(80);
  });

  it('put a sheet’s figure on its scales', () => {
    const { svg, X, Y } = targetFig({
      x: 0,
      y: 0,
      w: 280,
      h: 180,
      curve: curve(400, hump),
      marks: [{ hz: 45.75e6, low: 0.45, high: 0.55, level: 0.5, no: 3 }],
    });
    expect(X(48e6) - X(38e6)).toBeCloseTo(280 - 37 - 8, 9);
    expect(Y(0) - Y(1)).toBeCloseTo(180 - 30 - 12, 9);
    expect(svg).toContain('>MHz<');
    expect(svg).toContain('>100%<');
    expect(svg).toContain('>3<');
  });
});
