/**
 * The S-curves of the FM tuner and of the television's sound section under sweeps far wider than their sheets', as the bench draws them, against ngspice (as packaged in eecircuit-engine) on the very set, wave by wave: its deck from `haystack deck` with
 * the sweep as its source and the tube's pole behind its lead. Means over three waves at instants of the picture, of the highest of the curve.
 *
 * The trapezoidal rule takes a frequency w for (2 / h) tan(w h / 2) (elementary numerics), so coils and capacitors are made so much smaller that at the carrier each is what it is.
 */
import { describe, expect, it } from 'vitest';
import { asSheetSays } from '../../src/bench/asSheetSays.ts';
import { CONTROL_ROWS } from '../../src/bench/controls/rows.ts';
import { createFaultBook } from '../../src/bench/faultsNow.ts';
import { TUBE_SECONDS } from '../../src/bench/instruments.ts';
import { TRACE_POINTS } from '../../src/bench/moment.ts';
import { createPictureMaker } from '../../src/bench/picture.ts';
import { type BenchSetup, firstResponse } from '../../src/bench/setup.ts';
import { NO_LIFE } from '../../src/scenario/life.ts';
import { writtenDeck } from '../cli/writtenDeck.ts';
import { keptMeans, type PartOfRun } from '../physics/keptSpice.ts';
import { setupOf } from '../technician/oneScenario.ts';

const MAINS_HZ = 60;
const STEPS_A_WAVE = 100;

interface Set {
  readonly id: string;
  readonly centreHz: number;
  readonly levelDb: number;
  /** the run begins from rest so long before the middle of the sweep */
  readonly beforeSeconds: number;
  readonly setup: BenchSetup;
}

const standing = (id: string): BenchSetup => {
  const shipped = setupOf(id);
  return { ...shipped, scenario: { ...shipped.scenario, life: NO_LIFE } };
};
const setup = standing('zero');
/** Its circuits settle within 14 us, its loads have 11. */
const TUNER: Set = { id: 'zero', centreHz: 10.7e6, levelDb: -32, beforeSeconds: 160e-6, setup };
/** Its circuits settle within 19 us, its loads have 25. */
const SOUND: Set = { id: 'buzz', centreHz: 4.5e6, levelDb: -26, beforeSeconds: 400e-6, setup: standing('buzz') };
const means = keptMeans('hurriedPair');

/** Volts over a period at the mains rate, with the sheet's own settings but for the span. */
function drawn(on: BenchSetup, spanHz: number, levelDb = TUNER.levelDb, of = TUNER): Float64Array {
  const faults = createFaultBook(on);
  const sheet = asSheetSays(on, firstResponse(on), {});
  const { centreErrorHz = 0 } = on.scenario.bench;
  const state = {
    ...sheet,
    controls: {
      ...sheet.controls,
      spanHz,
      levelDb,
      centreHz: of.centreHz - centreErrorHz,
      slowSweep: false,
      blanking: false,
    },
  };
  return createPictureMaker(on, faults)(faults(state).really(state)).volts.slice();
}

/** Seconds after the middle of its half at which a sample stands. */
const secondsOf = (sample: number): number => ((sample + 0.5) / TRACE_POINTS - 0.5) / (2 * MAINS_HZ);

function sweptDeck({ id, centreHz, beforeSeconds }: Set, spanHz: number, sense: 1 | -1, lastSeconds: number): string {
  const step = 1 / centreHz / STEPS_A_WAVE;
  const angle = Math.PI / STEPS_A_WAVE;
  const warp = angle / Math.tan(angle);
  const seconds = `(time-${beforeSeconds})`;
  const phase = `${2 * Math.PI * centreHz}*${seconds}+${(sense * spanHz) / (2 * MAINS_HZ)}*(1-cos(${2 * Math.PI * MAINS_HZ}*${seconds}))`;
  const text = writtenDeck('sound-fm', id, centreHz)
    .replace(
      /^([LC]\S*\s+\S+\s+\S+\s+)(\S+)$/gm,
      (_, before: string, value: string) => `${before}${Number(value) * warp}`,
    )
    .replace(
      /^Isig 0 (\S+) sin\(0 (\S+) \S+\)$/m,
      (_, node: string, amps: string) => `BIsig 0 ${node} I = ${amps}*sin(${phase})`,
    )
    .replace(/^\.tran.*$/m, `.tran ${step} ${beforeSeconds + lastSeconds} 0 ${step} uic`)
    .replace(/^\.print.*$/m, `Btube before 0 V = v(out)\nRtube before tube 1000\nCtube tube 0 ${TUBE_SECONDS / 1000}`);
  expect(text).toMatch(/^BIsig/m);
  expect(text).toMatch(/^Rtube/m);
  return text;
}

/** Bench and ngspice at samples of one half of the sweep, of the highest of the curve. */
async function apart(
  spanHz: number,
  sense: 1 | -1,
  samples: readonly number[],
  of = TUNER,
): Promise<readonly number[]> {
  const { centreHz, beforeSeconds } = of;
  const last = secondsOf(samples.at(-1)!) + 3 / centreHz;
  const end = beforeSeconds + last;
  const parts = samples.map((sample): PartOfRun => {
    const at = beforeSeconds + secondsOf(sample);
    return [(at - 1.5 / centreHz) / end, (at + 1.5 / centreHz) / end];
  });
  const [run] = await means(sweptDeck(of, spanHz, sense, last), ['tube'], parts);
  const volts = drawn(of.setup, spanHz, of.levelDb, of);
  const most = volts.reduce((top, v) => Math.max(top, Math.abs(v)), 0);
  // The falling half stands behind the rising one in time.
  const place = (sample: number): number => (sense === 1 ? sample : TRACE_POINTS + sample);
  return samples.map((sample, i) => (volts[place(sample)]! - run![i]!) / most);
}

const worst = (list: readonly number[]): number => Math.max(...list.map(Math.abs));

describe('an S-curve under ten times its sheet\u2019s span', () => {
  const from = TRACE_POINTS / 2 - 13;

  // Found 0.8 % up and 0.6 % down over the whole curve; by the first order in the rate, as engines before 0.6.0 had it, 6.3 and 7.6 %.
  it('comes up as it does wave by wave', { timeout: 300_000 }, async () => {
    expect(worst(await apart(10e6, 1, [from, from + 2, from + 4]))).toBeLessThan(0.012);
  });

  it('stands so all along, up and down', { timeout: 900_000 }, async () => {
    const samples = Array.from({ length: 11 }, (_, i) => from + 3 * i);
    expect(worst(await apart(10e6, 1, samples))).toBeLessThan(0.012);
    expect(worst(await apart(10e6, -1, samples))).toBeLessThan(0.012);
  });
});

/** From the middle of the sweep on, each so far behind the one before. */
const samplesFrom = (first: number, each: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => TRACE_POINTS / 2 + first + each * i);

describe('sweeps up to the end of the knob', () => {
  // Found 1.1, 1.7, 10.3 and 7.1 %; by the first order in the rate 8.5, 10.3, 15.5 and 16.6 %.
  it.each([
    [15e6, 1, samplesFrom(-14, 1, 34), 0.013],
    [20e6, 1, samplesFrom(-10, 1, 25), 0.02],
    [CONTROL_ROWS.spanHz.max, 1, samplesFrom(-8, 1, 18), 0.11],
    [CONTROL_ROWS.spanHz.max, -1, samplesFrom(-8, 1, 19), 0.08],
  ] as const)('the FM tuner over %f Hz, sense %i', { timeout: 900_000 }, async (spanHz, sense, samples, limit) => {
    expect(worst(await apart(spanHz, sense, samples))).toBeLessThan(limit);
  });

  // Found 0.8 %; by the first order 2.2 %.
  it('the sound section over three times its sheet\u2019s, at the full rate', { timeout: 900_000 }, async () => {
    expect(worst(await apart(2.1e6, 1, samplesFrom(-40, 4, 25), SOUND))).toBeLessThan(0.012);
  });
});

describe('the widest sweep of the knob', () => {
  // No source: a curve that is hurried is lower and wider, and does not run away.
  it.each([-32, -10])('is a curve at %i dB, too', (levelDb) => {
    const highest = (spanHz: number): number =>
      drawn(setup, spanHz, levelDb).reduce((top, v) => Math.max(top, Math.abs(v)), 0);
    const [wide, sheet] = [highest(CONTROL_ROWS.spanHz.max), highest(1e6)];
    expect(wide).toBeGreaterThan(0.5 * sheet);
    expect(wide).toBeLessThan(1.3 * sheet);
  });
});

describe('what engines before it drew', () => {
  const before: BenchSetup = { ...setup, engine: '0.5.0' };
  const share = (spanHz: number): number => {
    const [then, now] = [drawn(before, spanHz), drawn(setup, spanHz)];
    const most = now.reduce((top, v) => Math.max(top, Math.abs(v)), 0);
    return then.reduce((top, v, i) => Math.max(top, Math.abs(v - now[i]!)), 0) / most;
  };

  it('is the same to the last digit at the sheet\u2019s span, and another at ten times it', () => {
    expect(share(1e6)).toBe(0);
    expect(share(10e6)).toBeGreaterThan(0.05);
  });

  it('is joined without a step where a lag of 0.02 begins to ask for the moment: what it adds to the first order grows with the span', () => {
    // 0.3.0 has the first order alone at every span, and its other differences do not hang on the lag. The lag goes by the span: 0.02 at 1.11 MHz.
    const first: BenchSetup = { ...setup, engine: '0.3.0' };
    const added = Array.from({ length: 18 }, (_, i) => {
      const spanHz = 1.05e6 + 7.5e3 * i;
      const [then, now] = [drawn(first, spanHz), drawn(setup, spanHz)];
      const most = now.reduce((top, v) => Math.max(top, Math.abs(v)), 0);
      return now.map((v, k) => (v - then[k]!) / most);
    });
    for (const [i, one] of added.entries()) {
      if (i > 0) expect(Math.max(...one.map((v, k) => Math.abs(v - added[i - 1]![k]!)))).toBeLessThan(0.0008);
    }
  });
});
