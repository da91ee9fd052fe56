/**
 * Every figure that the handbook states, against the engine that draws its live figures and against a published formula, rounded as the page writes it.
 * A source stands beside each: `from memory` where the book's text was not at hand, `common practice` where there is none.
 */
import { describe, expect, it } from 'vitest';
import {
  HALF_HEIGHT_DIV,
  HALF_WIDTH_DIV,
  THROUGH_PER_DIV,
  TONE_DEPTH,
  TONE_HZ,
  Y_LEAD_FARADS,
} from '../../src/bench/instruments.ts';
import { rateHzPerSecond, sweepFrequencies } from '../../src/physics/sweep.ts';
import { decibels, grid } from '../../src/present/handbook/circuits.ts';
import {
  CAN,
  leanDb,
  readCan,
  SLUG,
  STRIP,
  slug,
  stagesAt,
  stripLevels,
} from '../../src/present/handbook/figures/cans.ts';
import { halfReads, PAIR, readS } from '../../src/present/handbook/figures/detecting.ts';
import {
  atBias,
  faulty,
  leadLevels,
  overdriven,
  overload,
  PROBED,
  probedPeak,
  VALVE,
} from '../../src/present/handbook/figures/stages.ts';
import { fastSweep, MAINS_HZ, NARROW, phasing, SPAN_HZ, SWEPT } from '../../src/present/handbook/figures/sweeping.ts';
import { ABSORBER, BRIDGED, bridgedDb, markers, trapDepthDb } from '../../src/present/handbook/figures/traps.ts';
import { HANDBOOK_NUMBERS } from '../../src/present/handbook/numbers.ts';
import { SCALE } from '../../src/present/handbook/quantity.ts';
import { highest, peaks, widthAt } from '../../src/present/handbook/read.ts';
import { LEAD_OHMS } from '../../src/receiver/sourceLevel.ts';
import { crossingBetween, humps, peakBetween, tank, voltsAt } from '../oracles/measure.ts';
import { solved } from '../physics/decks.ts';

type Name = keyof typeof HANDBOOK_NUMBERS;

const stated = (name: Name): number => HANDBOOK_NUMBERS[name].value;

/** Half of the last place that the page shows, in SI. */
function halfPlace(name: Name): number {
  const { unit, places } = HANDBOOK_NUMBERS[name];
  return (0.5 * (unit === 'share' ? 0.01 : SCALE[unit])) / 10 ** places;
}

const only = (at: number): Float64Array => Float64Array.of(at);
const strip = (at: number, off = 0): number => stripLevels(stagesAt(1, off), only(at))[0]!;

/** 3 dB edges of the flat triple, from the level in its middle. */
function stripEdges(): readonly [number, number] {
  const hz = grid(40e6, 48e6, 16_001);
  const y = stripLevels(stagesAt(1), hz);
  const level = strip(STRIP.hz) / Math.SQRT2;
  const above = [...hz].filter((_, i) => y[i]! >= level);
  return [above[0]!, above.at(-1)!];
}

/** A strip of equal single circuits or of equal critical cans, far narrower than their frequency: what is left of the width of one. */
function kept(count: number, kind: 'single' | 'can'): number {
  const q = 400;
  const lines = ['cascade', 'I1 0 n0 AC 1'];
  let last = 'n0';
  const ends: string[] = [];
  for (let i = 0; i < count; i++) {
    lines.push(tank(`a${i}`, `n${i}`, 10e6, q, 1e-6));
    let out = `n${i}`;
    if (kind === 'can') {
      out = `m${i}`;
      lines.push(tank(`b${i}`, out, 10e6, q, 1e-6), `K${i} La${i} Lb${i} ${1 / q}`);
    }
    ends.push(out);
    if (i < count - 1) lines.push(`G${i} n${i + 1} 0 ${out} 0 1m`);
    last = out;
  }
  const solver = solved([...lines, '.end'].join('\n'), only(1e6));
  const width = (node: string): number => {
    const top = peakBetween(solver, node, 9.9e6, 10.1e6);
    const level = top.volts / Math.SQRT2;
    return crossingBetween(solver, node, level, top.hz, 10.3e6) - crossingBetween(solver, node, level, 9.7e6, top.hz);
  };
  return width(last) / width(ends[0]!);
}

/** A pair of unequal circuits at 10.7 MHz. */
function uneven(k: number) {
  const lines = ['pair', 'I1 0 a AC 1', tank('a', 'a', 10.7e6, 60, 1e-6), tank('b', 'b', 10.7e6, 40, 1e-6)];
  return solved([...lines, `K1 La Lb ${k}`, '.end'].join('\n'), only(10.7e6));
}

/** The coupling from which on there are two humps, and the one of the tallest curve, by halving and by climbing. */
function unevenSplit(): number {
  const fine = grid(10.6e6, 10.8e6, 2001);
  let [one, two] = [0.02, 0.023];
  for (let i = 0; i < 14; i++) {
    const k = (one + two) / 2;
    if (humps(uneven(k), 'b', fine) > 1) two = k;
    else one = k;
  }
  return (one + two) / 2;
}
function unevenBest(): number {
  const ks = Array.from({ length: 61 }, (_, i) => 0.0195 + i * 3e-5);
  const heights = ks.map((k) => voltsAt(uneven(k), 'b', 10.7e6));
  return ks[heights.indexOf(Math.max(...heights))]!;
}

const can = (times: number) => readCan(times / CAN.q, CAN.q, 4801);
const leadDb = (terminated: boolean, earthed: boolean): number => {
  const y = leadLevels(terminated, earthed, grid(1e6, 200e6, 20_001));
  return decibels(y.reduce((a, b) => Math.max(a, b)) / y.reduce((a, b) => Math.min(a, b)));
};
const leadMeanDb = (): number => {
  const y = leadLevels(false, true, grid(1e6, 51e6, 20_001));
  return decibels(y.reduce((a, b) => a + b) / y.length);
};
const fast = fastSweep.draw({ span: stated('fastSpan') }).readings;
const driven = overload.draw({ drive: stated('overDrive') }).readings;
const right = readS(PAIR.hz, PAIR.hz, 12_001);
const offPrimary = readS(PAIR.hz + stated('sOff'), PAIR.hz, 12_001);
const offSecondary = readS(PAIR.hz, PAIR.hz + stated('sOff'), 12_001);
const probeGrid = grid(40e6, 46e6, 24_001);
const strongest = (fault: number): number => faulty(fault).reduce((a, b) => Math.max(a, b));
const w = 2 * Math.PI;

type Check = readonly [source: string, ...values: (() => number)[]];
/** A value chosen for an example: it has to be the one that the figure or the bench uses. */
const chosen = (...values: (() => number)[]): Check => ['chosen; what the bench or the figure has', ...values];

const CHECKS: Readonly<Record<Name, Check>> = {
  mains: chosen(() => MAINS_HZ),
  forward: ['half a period', () => 1 / (2 * MAINS_HZ)],
  centralTime: [
    'arcsine: 2 asin(1/2) / pi; elementary calculus',
    () => (2 * Math.asin(0.5)) / Math.PI,
    () => sweepFrequencies(0, 2, 9000).filter((f) => Math.abs(f) < 0.5).length / 9000,
  ],
  across: chosen(() => 2 * HALF_WIDTH_DIV),
  down: chosen(() => 2 * HALF_HEIGHT_DIV),
  spanExample: chosen(() => SPAN_HZ),
  divisionExample: ['span over divisions', () => stated('spanExample') / stated('across')],
  smallPhase: chosen(() => 5),
  splitExample: [
    'S sin phi, X-Y phase; public course notes on Lissajous figures',
    () => stated('spanExample') * Math.sin((w * stated('smallPhase')) / 360),
    () => phasing.draw({ phase: stated('smallPhase'), blanking: 0 }).readings.apart.value!,
  ],
  amIf: ['usual AM IF in the USA after about 1940; common practice', () => NARROW.hz],
  amWidth: ['f0 / Q, any handbook (from memory)', () => NARROW.hz / NARROW.q],
  fastSpan: chosen(() => 60e3),
  fastLate: [
    'gliding tone, arXiv 1910.10995: about 0.456 B at R / B^2 = 1',
    () => fast.late.value!,
    () => 0.456 * 3033 * 1.018,
  ],
  fastPeak: ['gliding tone, arXiv 1910.10995: 0.938 at R / B^2 = 1', () => fast.peak.value!, () => 0.938],
  wideWidth: chosen(() => Math.round(SWEPT.hz / SWEPT.q / 1e6) * 1e6),
  wideLate: [
    'slow limit 2 R / (pi B), gliding tone, arXiv 1910.10995',
    () => (2 * rateHzPerSecond(SPAN_HZ, MAINS_HZ)) / (Math.PI * stated('wideWidth')),
  ],
  throughShare: chosen(() => THROUGH_PER_DIV),

  coilMore: chosen(() => SLUG.reach),
  hzDown: ['f as 1 / root L; resonance, any handbook (from memory)', () => 1 - 1 / Math.sqrt(1.2)],
  hzUp: ['f as 1 / root L; resonance, any handbook (from memory)', () => 1 / Math.sqrt(0.8) - 1],
  firstTurn: ['the figure', () => -slug.draw({ turns: 1 }).readings.moved.value!],
  exampleHz: chosen(() => SWEPT.hz),
  exampleQ: ['Q = f0 / B, any handbook (from memory)', () => stated('exampleHz') / stated('wideWidth'), () => SWEPT.q],
  canHz: ['usual FM IF, Rider and Uslan; Langford-Smith', () => CAN.hz],
  canQ: chosen(() => CAN.q),
  underHeight: [
    '2 n / (1 + n^2) at n = 1/2; course notes on double-tuned amplifiers',
    () => 1 / 1.25,
    () => can(0.5).height,
  ],
  criticalK: ['1 / Q; the same', () => 1 / CAN.q],
  criticalWidth: [
    'root 2 f0 / Q; the same, 252.20 kHz in ngspice',
    () => (Math.SQRT2 * CAN.hz) / CAN.q,
    () => can(1).width!,
  ],
  singleWidth: ['f0 / Q, any handbook (from memory)', () => CAN.hz / CAN.q],
  overK: chosen(() => 0.03),
  canApart: ['root(n^2 - 1) f0 / Q, 0.26713 MHz in ngspice', () => can(1.8).apart!, () => 0.26713e6],
  canDip: ['2 n / (1 + n^2), 1.4237 dB in ngspice', () => -can(1.8).dipDb!, () => -decibels(3.6 / (1 + 1.8 ** 2))],
  dipThreeTimes: ['1 + root 2 gives the half power dip; 2.41017 gives 3 dB', () => 2.41017],
  threeDb: ['the same', () => -can(2.41017).dipDb!, () => -decibels((2 * 2.41017) / (1 + 2.41017 ** 2))],
  unevenA: chosen(() => 60),
  unevenB: chosen(() => 40),
  unevenCritical: ['1 / root(Q1 Q2), Terman (from memory)', () => 1 / Math.sqrt(60 * 40), unevenBest],
  unevenSplit: [
    'transitional coupling, Langford-Smith (from memory)',
    () => Math.sqrt((1 / 60 ** 2 + 1 / 40 ** 2) / 2),
    unevenSplit,
  ],
  fourKeep: ['root(2^(1/4) - 1); GATE EC 1993, 6.10', () => Math.sqrt(2 ** 0.25 - 1), () => kept(4, 'single')],
  twoCansKeep: [
    '(2^(1/2) - 1)^(1/4); articles on double-tuned amplifiers',
    () => (Math.SQRT2 - 1) ** 0.25,
    () => kept(2, 'can'),
  ],
  stripHz: chosen(() => STRIP.hz),
  stripWidth: chosen(() => STRIP.width),
  stageLow: [
    'flat triple, Valley and Wallman ch. 4 (from memory, derived again)',
    () => stagesAt(1)[0]!.hz,
    () => 41.7679e6,
  ],
  stageHigh: ['the same', () => stagesAt(1)[2]!.hz, () => 45.2321e6],
  edgeLow: ['the same, exact circuits: 41.5715', () => stripEdges()[0], () => 41.5715e6],
  edgeHigh: ['the same, exact circuits: 45.5667', () => stripEdges()[1], () => 45.5667e6],
  staggerGain: [
    '72.96 dB against 55.41 dB, Valley and Wallman (from memory)',
    () => {
      const wide = 7.846e6;
      const equal = { hz: STRIP.hz, width: wide };
      return decibels(strip(STRIP.hz) / stripLevels([equal, equal, equal], only(STRIP.hz))[0]!);
    },
    () => 72.96 - 55.41,
  ],
  stageOff: chosen(() => 0.5e6),
  stageLean: ['the figure', () => lean(stated('stageOff'))],
  stageRest: ['the figure', () => lean(0)],
  visionIf: ['vision IF in the USA after the early fifties; public source code of tuner drivers', () => 45.75e6],
  soundIf: [
    'sound 4.5 MHz from vision, 47 CFR 73.682; oscillator above',
    () => 45.75e6 - 4.5e6,
    () => ABSORBER.trap.hz,
    () => BRIDGED.hz,
  ],
  adjacentSound: ['channels of 6 MHz, 47 CFR 73.682: 1.5 MHz beyond vision', () => 45.75e6 + 6e6 - 4.5e6],
  adjacentVision: ['channels of 6 MHz, 47 CFR 73.682', () => 45.75e6 - 6e6],
  absorberDepth: [
    'reflected impedance, Terman (from memory), 10.045 dB in ngspice',
    () => trapDepthDb(ABSORBER.trap.hz, ABSORBER.coupling),
    () => 10.045,
  ],
  tenPercent: chosen(() => 0.1),
  bridgedTenPercent: [
    'Tuttle, Proc. IRE 1940 (from memory), -42.67 dB in ngspice',
    () => -bridgedDb(only(BRIDGED.hz), 1.1)[0]!,
    () => 42.67,
  ],
  bridgedNone: ['the same, -21.11 dB in ngspice', () => -bridgedDb(only(BRIDGED.hz), 1e6)[0]!, () => 21.1137],
  toneHz: chosen(() => TONE_HZ),
  toneDepth: chosen(() => TONE_DEPTH),

  weakVolts: chosen(() => 10e-3),
  weakHalf: ['square law: a quarter', () => 0.25, () => halfReads(stated('weakVolts'))],
  strongVolts: chosen(() => 2),
  strongHalf: ['the figure; exponential diode with its load', () => halfReads(stated('strongVolts'))],
  halfWay: chosen(() => 0.5),
  squareError: ['half of a square is root half', () => decibels(Math.sqrt(0.5) / 0.5)],
  sixDb: ['20 log 2', () => decibels(2)],
  fmSwing: ['100 per cent modulation, 47 CFR 73.1570(b)(2)', () => 75e3],
  sApart: ['Arguimbau; Sturley (from memory), 283.85 kHz in ngspice', () => right.apart, () => 283.85e3],
  sOff: chosen(() => 20e3),
  sPrimaryHeights: ['simulated: 7.8 per cent', () => offPrimary.heights - 1, () => 0.078],
  sSecondaryShift: ['f_s / root(1 - k^2): it goes with the secondary', () => offSecondary.crossing - right.crossing],
  dbPerVolt: [
    '4.3 mS at 1 V, 0.040 mS at 20 V: 2.138 dB a volt',
    () => decibels(4.3 / 0.04) / 19,
    () => -decibels(atBias(-2).gain / atBias(-1).gain),
  ],
  biasLow: chosen(() => -2),
  biasHigh: chosen(() => -6),
  biasShift: ['the figure', () => atBias(stated('biasHigh')).peakHz - atBias(stated('biasLow')).peakHz],
  overDrive: chosen(() => 6),
  overHeld: [
    'describing function of tanh, Gelb and Vander Velde (from memory)',
    () => driven.compression.value!,
    () => tanhHeldDb(2),
  ],
  wideTrue: ['the figure; f0 / Q', () => overload.draw({ drive: -60 }).readings.width.value!, () => SWEPT.hz / SWEPT.q],
  overWide: ['the figure', () => driven.width.value!],
  probedHz: chosen(() => PROBED.hz),
  probedFarads: chosen(() => PROBED.farads),
  halfPicofarad: chosen(() => 0.5e-12),
  probeHalf: [
    'f root(C / (C + dC)): 43.4601 MHz; resonance, any handbook (from memory)',
    () => 44e6 - 43.4601e6,
    () => probedPeak(0, probeGrid).peakHz - probedPeak(0.5e-12, probeGrid).peakHz,
  ],
  leadFarads: chosen(() => Y_LEAD_FARADS),
  leadOhms: chosen(() => LEAD_OHMS),
  openRise: ['an open end doubles the wave; any lines text (from memory)', () => decibels(2), leadMeanDb],
  openRipple: ['(1 + r) / (1 - r) with r = 0.2', () => decibels(1.2 / 0.8), () => leadDb(false, true)],
  strapRipple: ['(1 + r) / (1 - r) with r = 0.12', () => decibels(1.12 / 0.88), () => leadDb(true, false)],

  halfDb: ['20 log 1/2', () => decibels(0.5)],
  carrierHigh: chosen(() => 0.6),
  carrierHighDb: [
    '2 H(carrier): +1.58 dB; vestigial sideband, Nyquist slope',
    () => decibels(2 * stated('carrierHigh')),
  ],
  carrierLow: chosen(() => 0.4),
  carrierLowDb: ['2 H(carrier): -1.94 dB', () => -decibels(2 * stated('carrierLow'))],
  openRaises: ['the figure: four times the resistance', () => decibels(strongest(2) / strongest(0))],
  bleedFarads: chosen(() => 100e-6),
  bleedVolts: chosen(() => 350),
  bleedOhms: chosen(() => 100e3),
  bleedTo: chosen(() => 60),
  bleedSeconds: [
    't = R C ln(V0 / V): 17.636 s',
    () => stated('bleedFarads') * stated('bleedOhms') * Math.log(stated('bleedVolts') / stated('bleedTo')),
  ],
};

function lean(off: number): number {
  const hz = grid(38.5e6, 48.5e6, 601);
  return leanDb(hz, stripLevels(stagesAt(1, off), hz));
}

/** How far tanh holds back the fundamental of a sine of `a` times its scale, by plain integration. */
function tanhHeldDb(a: number): number {
  const n = 20_000;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const s = Math.sin((Math.PI * (i + 0.5)) / n);
    sum += Math.tanh(a * s) * s;
  }
  return -decibels((2 * sum) / (n * a));
}

describe('a figure in the handbook', () => {
  it.each(Object.entries(CHECKS) as [Name, Check][])('%s is what is stated', (name, [source, ...values]) => {
    expect(source.length).toBeGreaterThan(5);
    expect(values.length).toBeGreaterThan(0);
    for (const value of values) {
      expect(Math.abs(value() - stated(name)), `${value()} by ${source}`).toBeLessThanOrEqual(halfPlace(name) * 1.0001);
    }
  });
});

describe('what the pages say without a figure', () => {
  it('in is down', () => {
    expect(slug.draw({ turns: 1 }).readings.peak.value!).toBeLessThan(slug.draw({ turns: 0 }).readings.peak.value!);
  });

  it('critical coupling gives one hump and the tallest; more gives two of the same height', () => {
    expect(can(1).apart).toBeNull();
    expect(can(1).height).toBeCloseTo(1, 4);
    expect(can(1.8).height).toBeCloseTo(1, 4);
    expect(can(0.8).height).toBeLessThan(0.98);
  });

  it('a damped can has one hump at the coupling that gave two', () => {
    expect(readCan(0.03, 60).apart).not.toBeNull();
    expect(readCan(0.03, 30).apart).toBeNull();
  });

  it('the primary leaves the zero of an S-curve where it is', () => {
    expect(Math.abs(offPrimary.crossing - right.crossing)).toBeLessThan(10);
  });

  it('an overloaded curve is wider, and a small one is not', () => {
    expect(driven.width.value!).toBeGreaterThan(1.5 * overload.draw({ drive: -20 }).readings.width.value!);
    expect(overdriven(-40).compressionDb).toBeLessThan(0.001);
  });

  it('a late peak is late to the other side on the way back, and less span brings it home', () => {
    const late = (span: number): number => fastSweep.draw({ span }).readings.late.value!;
    expect(late(20e3)).toBeGreaterThan(0);
    expect(late(20e3)).toBeLessThan(late(60e3) / 2);
  });

  it('more bias is less gain and a higher frequency, for less capacitance', () => {
    expect(VALVE.referenceVolts).toBeLessThan(0);
    expect(atBias(-6).gain).toBeLessThan(atBias(-2).gain);
    expect(atBias(-6).peakHz).toBeGreaterThan(atBias(-2).peakHz);
  });

  it('an absorption trap moves the coil that it feeds on', () => {
    expect(trapDepthDb(ABSORBER.trap.hz, 0.1)).toBeGreaterThan(trapDepthDb(ABSORBER.trap.hz, 0.05));
  });

  it('readings are finer than the samples that they come from', () => {
    const hz = grid(0, 10, 11);
    const y = hz.map((f) => 5 - (f - 4.3) ** 2);
    expect(highest(hz, y).hz).toBeCloseTo(4.3, 9);
    expect(peaks(hz, y)).toHaveLength(1);
    expect(widthAt(hz, y, 4)).toBeCloseTo(2, 0);
    expect(widthAt(hz, y, 6)).toBeNull();
  });
});

describe('the marker of its figure', () => {
  const draw = (marker: number, way: number) => markers.draw({ marker, way });
  const inTrap = ABSORBER.trap.hz;

  it('added, is as tall in the trap as on the slope and leaves the base line alone', () => {
    for (const at of [inTrap, 43.5e6]) {
      const { pip, base } = draw(at, 0).readings;
      expect(pip.value).toBe(1);
      expect(base.value).toBe(0);
    }
  });

  it('sent through the set, goes with the curve and lifts the base line', () => {
    const [trapped, free] = [draw(inTrap, 1).readings, draw(45.5e6, 1).readings];
    expect(trapped.pip.value!).toBeLessThan(0.3 * free.pip.value!);
    expect(free.base.value!).toBeGreaterThan(0.05);
  });

  it('stands at its frequency', () => {
    const { lines } = draw(43.5e6, 0).plot;
    const { x, y } = lines[1]!;
    const smooth = draw(46.5e6, 0).plot.lines[1]!;
    const curve = (hz: number): number => {
      const i = Array.from(smooth.x).findIndex((f) => f >= hz);
      return smooth.y[i]!;
    };
    const off = Array.from(x, (f, i) => (Math.abs(y[i]! - curve(f)) > 0.05 ? f : 0)).filter((f) => f > 0 && f < 45e6);
    expect(off.length).toBeGreaterThan(10);
    for (const f of off) expect(Math.abs(f - 43.5e6)).toBeLessThan(0.25e6);
  });
});
