/** The curves on cards: inside their box, true to the samples, and as short as can be. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CARD_BOX, drawCardCurve, scaledPath } from '../../src/present/cardCurve.ts';
import { bandOf, type Curve, levelAt } from '../../src/present/curves.ts';

type Point = readonly [x: number, y: number];

function pointsOf(path: string): Point[] {
  const [move, lines] = path.slice(1).split('l');
  let [x, y] = move!.split(' ').map(Number) as [number, number];
  const points: Point[] = [[x, y]];
  for (const [, dx, dy] of lines!.matchAll(/(-?\d+) ?(-?\d+)/g)) {
    x += Number(dx);
    y += Number(dy);
    points.push([x, y]);
  }
  return points;
}

function heightAt(points: readonly Point[], x: number): number {
  const i = Math.max(
    1,
    points.findIndex(([px]) => px >= x),
  );
  const [x1, y1] = points[i - 1]!;
  const [x2, y2] = points[i]!;
  return x2 === x1 ? y2 : y1 + ((y2 - y1) * (x - x1)) / (x2 - x1);
}

const COUNT = 301;
const curveOf = (level: (share: number) => number): Curve => {
  const hz = Float64Array.from({ length: COUNT }, (_, i) => 10e6 + (i * 1e6) / (COUNT - 1));
  return { hz, relative: hz.map((f) => level((f - 10e6) / 1e6)) };
};
const hump = (at: number, width: number, height: number) => (share: number) =>
  height / (1 + ((share - at) / width) ** 4);

const humps = fc.record({
  at: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
  width: fc.double({ min: 0.02, max: 0.4, noNaN: true }),
  height: fc.double({ min: 0.1, max: 3, noNaN: true }),
  dip: fc.double({ min: -3, max: 0, noNaN: true }),
});

describe('a curve on a card', () => {
  it('goes from edge to edge and never out of its box, an S-curve that is out of line included', () => {
    fc.assert(
      fc.property(humps, humps, (a, b) => {
        const [found, wanted] = [a, b].map(({ at, width, height, dip }) =>
          curveOf((s) => hump(at, width, height)(s) + hump(1 - at, width, dip)(s)),
        );
        const drawn = drawCardCurve(found!, wanted!);
        for (const path of [drawn.found, drawn.wanted]) {
          const points = pointsOf(path);
          expect(points[0]![0]).toBe(0);
          expect(points.at(-1)![0]).toBe(CARD_BOX);
          for (const [x, y] of points) {
            expect(x).toBeGreaterThanOrEqual(0);
            expect(x).toBeLessThanOrEqual(CARD_BOX);
            expect(y).toBeGreaterThanOrEqual(0);
            expect(y).toBeLessThanOrEqual(CARD_BOX);
          }
        }
        expect(drawn.zero).toBeGreaterThanOrEqual(0);
        expect(drawn.zero).toBeLessThanOrEqual(CARD_BOX);
      }),
    );
  });

  it('uses the whole height, and stands where the samples stand', () => {
    const found = curveOf((s) => hump(0.4, 0.1, 1)(s) - hump(0.7, 0.08, 0.6)(s));
    const drawn = drawCardCurve(found, found);
    const points = pointsOf(drawn.found);
    const [low, high] = [Math.min(...found.relative), Math.max(...found.relative)];
    const ys = points.map(([, y]) => y);
    expect([Math.min(...ys), Math.max(...ys)]).toEqual([0, CARD_BOX]);
    expect(drawn.zero).toBe(Math.round((high / (high - low)) * CARD_BOX));
    const [fromHz, toHz] = bandOf([found]);
    for (let x = 0; x <= CARD_BOX; x += 7) {
      const level = levelAt(found, fromHz + ((toHz - fromHz) * x) / CARD_BOX);
      // Rounded to a unit both ways, thinned to within one, and as steep as the flank is.
      expect(Math.abs(heightAt(points, x) - ((high - level) / (high - low)) * CARD_BOX)).toBeLessThan(12);
    }
    expect(points.length).toBeLessThan(COUNT / 3);
  });

  it('of a set that gives nothing lies on the line of no signal', () => {
    const nothing = curveOf(() => 0);
    const { found, zero } = drawCardCurve(nothing, nothing);
    expect(pointsOf(found)).toEqual([
      [0, zero],
      [CARD_BOX, zero],
    ]);
  });
});

it('a path scales to any size', () => {
  expect(scaledPath('M0 1000l500-1000 500 250', 200, 50)).toBe('M0 50l100 -50 100 12.5');
});
