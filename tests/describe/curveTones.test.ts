/** The curve to be heard: pitch by height, clicks by the pips. An octave is a doubling (acoustics' own definition); the rest is common practice, no source. */
import { describe, expect, it } from 'vitest';
import { tonesOnTube, tonesWanted } from '../../src/describe/curveTones.ts';

/** A triangle of 4 divisions over ten, drawn forward, and back along the base line. */
function triangle(height: number) {
  const points: number[] = [];
  for (let i = 0; i <= 400; i++) {
    const x = -5 + (10 * i) / 400;
    points.push(x, -2 + height * Math.max(0, 1 - Math.abs(x) / 5), 1);
  }
  for (let i = 400; i >= 0; i--) points.push(-5 + (10 * i) / 400, -2, 1);
  return { data: Float32Array.from(points), count: points.length / 3 };
}

const tag = (xDiv: number | null) => ({ kind: 'crystal', hz: 10.7e6, number: 1, xDiv }) as never;
const beamOf = (height: number) => triangle(height) as never;

describe('the curve on the tube', () => {
  it('rises to its top in the middle and falls again, and the return along the base line is not heard', () => {
    const { pitchesHz } = tonesOnTube({ beam: beamOf(4), tags: [] }, 4)!;
    const top = pitchesHz.indexOf(Math.max(...pitchesHz));
    expect(Math.abs(top - pitchesHz.length / 2)).toBeLessThanOrEqual(1);
    for (let i = 1; i < top; i++) expect(pitchesHz[i]!).toBeGreaterThan(pitchesHz[i - 1]!);
    for (let i = top + 2; i < pitchesHz.length; i++) expect(pitchesHz[i]!).toBeLessThan(pitchesHz[i - 1]!);
  });

  it('sounds equal steps of height as equal intervals', () => {
    const { pitchesHz } = tonesOnTube({ beam: beamOf(4), tags: [] }, 4)!;
    const [low, middle, high] = [5, 25, 45].map((column) => Math.log2(pitchesHz[column]!));
    expect((high! - middle!) / (middle! - low!)).toBeCloseTo(1, 1);
  });

  it('goes down where the curve does', () => {
    const { pitchesHz } = tonesOnTube({ beam: beamOf(-4), tags: [] }, 4)!;
    expect(Math.min(...pitchesHz)).toBeLessThan(pitchesHz[0]! / 2);
    expect(Math.max(...pitchesHz)).toBeLessThan(1.1 * pitchesHz[0]!);
  });

  it('clicks where the pips stand, and leaves out those beside the trace', () => {
    const tags = [tag(-5), tag(0), tag(2.5), tag(null), tag(7)];
    expect(tonesOnTube({ beam: beamOf(4), tags }, 4)!.clicks).toEqual([0, 0.5, 0.75]);
  });

  it('says nothing of a flat trace', () => {
    expect(tonesOnTube({ beam: beamOf(0), tags: [] }, 0)).toBeNull();
  });
});

describe('the curve of the sheet', () => {
  it('has its highest pitch where its highest level is, within the sweep', () => {
    const hz = Array.from({ length: 101 }, (_, i) => 10e6 + i * 10e3);
    const relative = hz.map((f) => Math.exp(-(((f - 10.7e6) / 80e3) ** 2)));
    const { pitchesHz, clicks } = tonesWanted({ hz, relative, fromHz: 10.2e6, toHz: 10.9e6, pipsHz: [10.7e6, 11.2e6] });
    const top = pitchesHz.indexOf(Math.max(...pitchesHz));
    expect(top / pitchesHz.length).toBeCloseTo(0.5 / 0.7, 1);
    expect(clicks.map((at) => at.toFixed(4))).toEqual(['0.7143']);
  });
});
