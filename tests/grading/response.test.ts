/** Rules G1 to G11 and G46, G47: what the sheet demands of the curve, on curves drawn by hand and on a real strip. */

import { describe, expect, test } from 'vitest';
import { roundMeasured, shareOf } from '../../src/grading/falling.ts';
import { linesOf } from '../../src/grading/lines.ts';
import { createSheetJudge } from '../../src/grading/response.ts';
import { RULES } from '../../src/grading/rules/rules.ts';
import { mainResponse } from '../../src/receiver/responses.ts';
import { nominalTurns } from '../../src/receiver/slugLaw.ts';
import { type CoreTurns, createStatedResponse } from '../../src/receiver/statedResponse.ts';
import { stripSetup } from '../session/setups.ts';
import { bell, flatBut, linesOn } from './curves.ts';

const only = (lines: ReturnType<typeof linesOn>) => {
  expect(lines.length).toBe(1);
  return lines[0]!;
};

describe('one line', () => {
  test('[G1] full inside the limits, half way at two tolerances, gone at three', () => {
    const limits = { low: -2, high: 2, tolerance: 2 };
    expect([0, 2, -2].map((at) => shareOf(at, limits))).toEqual([1, 1, 1]);
    expect([3, 4, 5, 6, 60].map((at) => shareOf(at, limits))).toEqual([0.75, 0.5, 0.25, 0, 0]);
    expect(shareOf(-4, limits)).toBe(0.5);
  });

  test('[G1] a line of the response is full within half a tolerance, 85 per cent at the limit, gone at three', () => {
    const limits = { low: -2, high: 2, tolerance: 2, fullWithin: 0.5 };
    const shares = [0, 1, 1.5, 2, 4, 6, 7].map((value) => shareOf(value, limits));
    [1, 1, 0.925, 0.85, 0.425, 0, 0].forEach((share, i) => {
      expect(shares[i]).toBeCloseTo(share, 9);
      expect(shareOf(-[0, 1, 1.5, 2, 4, 6, 7][i]!, limits)).toBeCloseTo(share, 9);
    });
    // Where the sound set itself comes no nearer, there is nothing to lose by that.
    expect(shareOf(1.8, { ...limits, fullWithin: 0.9 })).toBe(1);
  });

  test('[G1] an open side costs nothing', () => {
    expect(shareOf(1e9, { low: -1, high: null, tolerance: 1 })).toBe(1);
    expect(shareOf(-2, { low: -1, high: null, tolerance: 1 })).toBe(0.5);
  });

  test('[G2] figures are rounded before they are judged', () => {
    expect(roundMeasured(49.994999, 'percent')).toBe(49.99);
    expect(roundMeasured(-3.456, 'db')).toBe(-3.46);
    expect(roundMeasured(291_788, 'hz')).toBe(291_800);
    expect(roundMeasured(-14, 'hz') + 0).toBe(0);
    expect(roundMeasured(2.04, 'degrees')).toBe(2);
    expect(roundMeasured(-3.004, 'volts')).toBe(-3);
    expect(roundMeasured(5.505001, 'turns')).toBe(5.51);
    expect(roundMeasured(599.6, 'seconds')).toBe(600);
  });

  test('[G2] a last-bit difference at the limit costs nothing', () => {
    const sheet = { points: [{ hz: 45e6, target: 0.5, low: 0.44, high: 0.56, weight: 1 }] };
    expect(only(linesOn(sheet, flatBut(45e6, 0.56 * (1 + 1e-12)))).earned).toBe(1);
  });
});

describe('demands of the sheet', () => {
  const point = { points: [{ hz: 45e6, target: 0.5, low: 0.44, high: 0.56, weight: 3 }] };

  test('[G3] a level in per cent of the peak', () => {
    const inside = only(linesOn(point, flatBut(45e6, 0.5)));
    expect(inside).toMatchObject({
      id: 'G3:if:point:45000000',
      rule: 'G3',
      block: 'response',
      unit: 'percent',
      hz: 45e6,
      weight: 3,
    });
    expect(inside).toMatchObject({ measured: 50, low: 44, high: 56, earned: 1 });
    expect(only(linesOn(point, flatBut(45e6, 0.62))).earned).toBeCloseTo(0.5, 9);
    expect(only(linesOn(point, flatBut(45e6, 0.32))).earned).toBeCloseTo(0, 9);
  });

  test('[G3] the unit of the volts does not matter', () => {
    const strong = only(linesOn(point, (hz) => 1e5 * flatBut(45e6, 0.62)(hz)));
    expect(strong).toEqual(only(linesOn(point, flatBut(45e6, 0.62))));
  });

  test('[G4] ripple: one tolerance is the limit', () => {
    const sheet = { windows: [{ fromHz: 43e6, toHz: 45e6, maxRippleDb: 1, weight: 1 }] };
    expect(only(linesOn(sheet, flatBut(44e6, 10 ** (-1 / 20)))).earned).toBe(1);
    const two = only(linesOn(sheet, flatBut(44e6, 10 ** (-2 / 20))));
    expect(two).toMatchObject({ rule: 'G4', measured: 2, high: 1, unit: 'db', hz: 43e6, toHz: 45e6 });
    expect(two.earned).toBe(0.5);
    expect(only(linesOn(sheet, flatBut(44e6, 10 ** (-3 / 20)))).earned).toBe(0);
  });

  test('[G5] tilt either way', () => {
    const sheet = { tilts: [{ lowHz: 43e6, highHz: 45e6, maxDb: 0.8, weight: 1 }] };
    for (const at of [43e6, 45e6]) {
      const leaning = only(linesOn(sheet, flatBut(at, 10 ** (-1.6 / 20))));
      expect(leaning.rule).toBe('G5');
      expect(Math.abs(leaning.measured)).toBe(1.6);
      expect(leaning.earned).toBeCloseTo(0.5, 9);
    }
  });

  test('[G6] a trap: full to its limit, gone 12 dB above it', () => {
    const sheet = { traps: [{ hz: 47e6, maxDb: -40, notchWithinHz: null, weight: 1 }] };
    const shares = [-46, -40, -37, -34, -28].map((db) => only(linesOn(sheet, flatBut(47e6, 10 ** (db / 20)))));
    expect(shares.map((line) => line.measured)).toEqual([-46, -40, -37, -34, -28]);
    expect(shares.map((line) => line.earned)).toEqual([1, 1, 0.75, 0.5, 0]);
    expect(shares[0]!.rule).toBe('G6');
  });

  test('[G7] the notch itself must lie near', () => {
    const sheet = { traps: [{ hz: 47e6, maxDb: -40, notchWithinHz: 120e3, weight: 1 }] };
    const valley = (at: number) => (hz: number) => Math.min(1, Math.abs(hz - at) / 1e6 + 1e-4);
    const place = (at: number) => linesOn(sheet, valley(at)).find((line) => line.rule === 'G7')!;
    expect(place(47e6)).toMatchObject({ id: 'G7:if:notch:47000000', measured: 0, earned: 1, unit: 'hz' });
    expect(place(46.76e6).measured).toBe(-240_000);
    expect(place(46.76e6).earned).toBeCloseTo(0.5, 6);
    expect(place(47.36e6).earned).toBeCloseTo(0, 6);
  });

  test('[G8] the highest place of a skirt', () => {
    const sheet = { skirts: [{ fromHz: 46e6, toHz: 48e6, max: 0.03, weight: 1 }] };
    // Full up to 45 MHz, down to nothing at 46, a hump of 6 per cent at 47.
    const six = only(linesOn(sheet, (hz) => Math.sqrt(hz < 45e6 ? 1 : bell(hz, 45e6) + 0.06 ** 2 * bell(hz, 47e6))));
    expect(six).toMatchObject({ rule: 'G8', measured: 6, high: 3, low: null, unit: 'percent' });
    expect(six.earned).toBeCloseTo(0.5, 9);
  });

  const hill =
    (halfHz: number, middle = 44e6) =>
    (hz: number): number =>
      10 ** (-(((hz - middle) / halfHz) ** 2) * (6 / 20));
  const width = { levelDb: -6, minHz: 2e6, maxHz: 2.4e6, centreHz: 44e6, centreToleranceHz: 50e3, weight: 1 };

  test('[G9] width: one tolerance is half of the range', () => {
    const at = (halfHz: number) => linesOn({ bandwidths: [width] }, hill(halfHz)).find((line) => line.rule === 'G9')!;
    expect(at(1.1e6)).toMatchObject({
      id: 'G9:if:bandwidth:-6',
      measured: 2_200_000,
      low: 2e6,
      high: 2.4e6,
      earned: 1,
    });
    expect(at(1.3e6).measured).toBe(2_600_000);
    expect(at(1.3e6).earned).toBeCloseTo(0.5, 3);
    expect(at(0.8e6).earned).toBeCloseTo(0, 3);
  });

  test('[G10] the middle of that width', () => {
    const at = (middle: number) =>
      linesOn({ bandwidths: [width] }, hill(1.1e6, middle)).find((line) => line.rule === 'G10')!;
    expect(at(44.1e6)).toMatchObject({ measured: 100_000, low: -50_000, high: 50_000, unit: 'hz' });
    expect(at(44.1e6).earned).toBeCloseTo(0.5, 2);
    expect(at(43.85e6).earned).toBeCloseTo(0, 2);
  });

  test('[G11] gain: less costs, more does not', () => {
    const sheet = { gain: { hz: 44e6, minDb: -2, nominal: 10, weight: 1 } };
    const at = (volts: number) => only(linesOn(sheet, () => volts));
    expect(at(10)).toMatchObject({ rule: 'G11', measured: 0, low: -2, high: null, earned: 1 });
    expect(at(40).earned).toBe(1);
    expect(at(10 * 10 ** (-4 / 20)).earned).toBeCloseTo(0.5, 9);
  });

  test('[G46] a wider sheet: limits and tolerances grow together', () => {
    const wide = only(linesOn(point, flatBut(45e6, 0.74), 2));
    expect(wide).toMatchObject({ low: 38, high: 62 });
    expect(wide.earned).toBeCloseTo(0.5, 9);
    const trap = { traps: [{ hz: 47e6, maxDb: -40, notchWithinHz: null, weight: 1 }] };
    expect(only(linesOn(trap, flatBut(47e6, 10 ** (-33.98 / 20)), 2)).earned).toBe(1);
  });
});

describe('an S-curve and a peak', () => {
  /** Half a sine either side of the middle: peaks a megahertz from it. */
  const ess =
    (middle: number, up = 1) =>
    (hz: number): number => {
      const x = (hz - middle) / 1e6;
      if (Math.abs(x) > 2) return 0;
      return (x > 0 ? up : 1) * Math.sin((Math.PI / 2) * x);
    };
  const sheet = {
    sCurve: {
      centreHz: 44e6,
      risesWithFrequency: true,
      zero: { toleranceHz: 20e3, weight: 1 },
      separation: { minHz: 1.8e6, maxHz: 2.2e6, weight: 1 },
      symmetry: { low: 0.8, high: 1.25, weight: 1 },
      linearity: { withinHz: 400e3, max: 0.1, weight: 1 },
    },
  };
  const line = (rule: string, level: (hz: number) => number) => linesOn(sheet, level).find((one) => one.rule === rule)!;

  test('[G48] the place of a peak', () => {
    const peaks = { peaks: [{ hz: 44e6, toleranceHz: 50e3, weight: 1 }] };
    const at = (middle: number) => only(linesOn(peaks, (hz) => bell(hz, middle)));
    expect(at(44.05e6)).toMatchObject({ rule: 'G48', earned: 1, unit: 'hz' });
    expect(at(43.9e6).earned).toBeCloseTo(0.5, 2);
    expect(at(44.15e6).earned).toBeCloseTo(0, 2);
  });

  test('[G49] the zero', () => {
    expect(line('G49', ess(44.02e6))).toMatchObject({ measured: 20_000, earned: 1 });
    expect(line('G49', ess(43.96e6)).earned).toBeCloseTo(0.5, 2);
  });

  test('[G50] the way it runs', () => {
    expect(line('G50', ess(44e6)).earned).toBe(1);
    expect(line('G50', (hz) => -ess(44e6)(hz)).earned).toBe(0);
  });

  test('[G51] the distance of the peaks', () => {
    expect(line('G51', ess(44e6))).toMatchObject({ earned: 1, low: 1_800_000, high: 2_200_000 });
    expect(line('G51', ess(44e6)).measured / 2e6).toBeCloseTo(1, 3);
  });

  test('[G52] the upper peak over the lower', () => {
    expect(line('G52', ess(44e6, 1.25))).toMatchObject({ measured: 125, unit: 'percent', earned: 1 });
    expect(line('G52', ess(44e6, 1.7)).earned).toBeLessThan(0.1);
  });

  test('[G53] straightness', () => {
    expect(line('G53', ess(44e6)).earned).toBe(1);
    expect(line('G53', (hz) => ess(44e6)(hz) ** 3)).toMatchObject({ earned: 0 });
  });
});

describe('the slug to blame', () => {
  const { receiver, deck } = stripSetup();
  const judge = createSheetJudge(receiver, [createStatedResponse(receiver, deck, mainResponse(receiver))], 1);
  const judged = (turns: CoreTurns) => linesOf(RULES, { demand: judge.demands(turns, true) });

  test('[G47] a trap that stands wrong is named for its notch, with its turns', () => {
    const a2 = receiver.adjusters.find((adjuster) => adjuster.id === 'A2')!;
    const lines = judged({ A2: nominalTurns(a2) + 0.75 });
    const notch = lines.find((line) => line.id === 'G7:if:notch:47250000')!;
    expect(notch.earned).toBeLessThan(1);
    // Core in: more inductance, lower notch.
    expect(notch.measured).toBeLessThan(0);
    expect(notch.cause).toEqual({ slug: 'A2', turns: 0.75 });
  });

  test('[G47] with every slug in its place nobody is named', () => {
    const lines = judged({});
    expect(lines.every((line) => line.earned === 1)).toBe(true);
    expect(lines.filter((line) => line.cause !== null)).toEqual([]);
  });

  test('[G47] of two wrong slugs, each is named for what it spoils', () => {
    const at = (id: string, away: number) => nominalTurns(receiver.adjusters.find((a) => a.id === id)!) + away;
    const lines = judged({ A1: at('A1', -0.8), A2: at('A2', 0.8) });
    const causeOf = (id: string) => lines.find((line) => line.id === id)?.cause?.slug;
    expect(causeOf('G7:if:notch:39750000')).toBe('A1');
    expect(causeOf('G7:if:notch:47250000')).toBe('A2');
  });
});
