/** What the screen reader is told of S-curves, humps and single peaks, against what the set really does. */
import { describe, expect, test } from 'vitest';
import type { BenchEvent } from '../../src/bench/benchEvent.ts';
import type { BenchDisplay } from '../../src/bench/display.ts';
import { curveSentence, readCurve } from '../../src/describe/sentence.ts';
import { en } from '../../src/words/en/index.ts';
import { gain, onBench, set, xAt } from '../bench/shippedSheet.ts';

const plugs = (...hz: number[]): BenchEvent[] => hz.map((one) => ({ type: 'crystalPlugged', hz: one }));

/** A line drawn by hand, a blanked retrace on its base line after it. */
function drawn(level: (x: number) => number): Pick<BenchDisplay, 'beam' | 'tags'> {
  const count = 2048;
  const data = new Float32Array(3 * count);
  for (let i = 0; i < count; i++) {
    const x = -5 * Math.cos((2 * Math.PI * (i + 0.5)) / count);
    data[3 * i] = x;
    data[3 * i + 1] = i < count / 2 ? level(x) - 1 : -1;
  }
  return { beam: { data, count }, tags: [] };
}
const bell = (x: number, middle: number): number => Math.exp(-((x - middle) ** 2));

describe('lines drawn by hand', () => {
  test('an S-curve: both peaks, their heights, and the crossing', () => {
    const { sCurve, heightDiv, humps } = readCurve(drawn((x) => 2 * bell(x, 1.9) - 3 * bell(x, -1.5)));
    expect(humps).toBeNull();
    expect(sCurve!.upperXDiv).toBeCloseTo(1.9, 1);
    expect(sCurve!.lowerXDiv).toBeCloseTo(-1.5, 1);
    expect(Math.abs(sCurve!.upperDiv - 2)).toBeLessThan(0.1);
    expect(Math.abs(sCurve!.lowerDiv - 3)).toBeLessThan(0.1);
    expect(Math.abs(heightDiv - 5)).toBeLessThan(0.2);
    // 2 exp(-(x - 1.9)^2) = 3 exp(-(x + 1.5)^2): x = 0.2 + ln 1.5 / 6.8.
    expect(Math.abs(sCurve!.zeroXDiv - (0.2 + Math.log(1.5) / 6.8))).toBeLessThan(0.05);
  });

  test('two humps and the dip between them, also of a curve that hangs down', () => {
    for (const sign of [1, -1]) {
      const { humps, sCurve } = readCurve(drawn((x) => sign * 4 * Math.max(bell(x, -1.5), 0.8 * bell(x, 1.5))));
      expect(sCurve).toBeNull();
      expect(humps!.xDiv.length).toBe(2);
      expect(humps!.xDiv[0]).toBeCloseTo(-1.5, 0);
      expect(humps!.xDiv[1]).toBeCloseTo(1.5, 0);
      // The two bells meet at exp(-1.4^2) or thereabouts.
      expect(humps!.dipShare).toBeGreaterThan(0.08);
      expect(humps!.dipShare).toBeLessThan(0.2);
    }
  });

  test('one bell has neither', () => {
    expect(readCurve(drawn((x) => 4 * bell(x, 0)))).toMatchObject({ humps: null, sCurve: null });
  });
});

describe('on shipped sets', () => {
  test('the S-curve of the tuner rises through its middle pip, as the sheet asks', () => {
    const tuner = onBench('fm-10m7', 's');
    const acts = [...plugs(10.6e6, 10.7e6, 10.8e6), gain(1), set('pipHeightDiv', 0.2)];
    const display = tuner.bench.display(tuner.after(...acts));
    const said = curveSentence(en, display);
    expect(said).toMatch(/^An S-curve \d+\.\d divisions from peak to peak; /);
    expect(said).toContain('it crosses the base line at 10.70 MHz');
    const { sCurve } = readCurve(display);
    expect(sCurve!.upperXDiv).toBeGreaterThan(sCurve!.lowerXDiv);
    const apart = sCurve!.upperXDiv - sCurve!.lowerXDiv;
    const { minHz, maxHz } = tuner.response.specification.sCurve!.separation;
    // Read in columns of a fifth of a division, 20 kHz.
    expect(apart).toBeGreaterThan(xAt(tuner, 10.7e6 + minHz) - 0.4);
    expect(apart).toBeLessThan(xAt(tuner, 10.7e6 + maxHz) + 0.4);
    const turned = curveSentence(en, tuner.bench.display(tuner.after(...acts, set('yInvert', true))));
    expect(turned).not.toBe(said);
  });

  test('the beat of the running oscillator stands at its pip, alone', () => {
    const tank = onBench('front-to-detector', 'osc');
    const display = tank.bench.display(tank.after(...plugs(221e6), gain(0.05), set('pipHeightDiv', 0.2)));
    const { humps, sCurve, topXDiv } = readCurve(display);
    expect([humps, sCurve]).toEqual([null, null]);
    expect(Math.abs(topXDiv)).toBeLessThan(0.4);
  });
});
