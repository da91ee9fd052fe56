/** The small figure of an opened run: every curve of every kind of sheet lies inside its frame. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { grade } from '../../src/grading/grade.ts';
import { responseById } from '../../src/receiver/responses.ts';
import { lookFigure } from '../../src/rooms/class/lookFigure.ts';
import { setupOf } from '../technician/oneScenario.ts';

const [W, H] = [340, 190];

describe.each(['first-curve', 'zero'])('the figure of %s', (id) => {
  const setup = setupOf(id);
  const [set] = grade(setup, []).curves;
  const { specification } = responseById(setup.receiver, set!.response);
  const svg = lookFigure(W, H, set!, specification, { asFound: 'as found', asLeft: 'as left' });

  it('has the curve as found and as left, whole and inside', () => {
    const curves = [...svg.matchAll(/<path d="(M[\d.]+ [\d.]+(?:L[\d.]+ [\d.]+){50,})" fill="none" stroke="#(\w+)"/g)];
    expect(curves.map(([, , ink]) => ink)).toEqual(['b5482e', '1f2d38']);
    for (const [, path] of curves) {
      const points = [...path!.matchAll(/([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
      expect(points.length).toBeGreaterThan(50);
      for (const [x, y] of points) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(W);
        expect(y).toBeGreaterThanOrEqual(30);
        expect(y).toBeLessThanOrEqual(H - 20);
      }
    }
  });

  it('says what each curve is, and the unit', () => {
    expect(svg).toContain('as found');
    expect(svg).toContain('as left');
    expect(svg).toContain('MHz');
    expect(svg).not.toContain('NaN');
  });
});
