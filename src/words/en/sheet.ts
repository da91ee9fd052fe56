/** Words of the service sheet: its pages, figures and demands. */
import type { ProofId } from '../../scenario/proofId.ts';
import { format } from './numbers.ts';

const { atMost, frequency, knob, percent, width, written } = format;

/** A top or a dip of a curve, its level as a share of the highest. */
type Turning = { readonly hz: number; readonly level: number };

export const sheetWords = {
  kicker: 'Service sheet',
  figure: (at: string): string => `Fig. 1. Response wanted at ${at}.`,
  beatFigure: (at: string): string => `Fig. 1. Where the beat of the oscillator is wanted at ${at}.`,
  stageFigure: (
    at: string,
    from: string,
    peaks: readonly Turning[],
    dips: readonly Turning[],
    halfWayHz: readonly [number, number] | null,
  ): string => {
    const told = (turnings: readonly Turning[]): string =>
      format.list(turnings.map(({ hz, level }) => `${frequency(hz)} (${percent(level)})`));
    const between = dips.length === 0 ? '' : `, ${dips.length === 1 ? 'dip' : 'dips'} at ${told(dips)}`;
    const sides =
      halfWayHz === null ? '' : `, half way up at ${frequency(halfWayHz[0])} and ${frequency(halfWayHz[1])}`;
    const [only] = peaks;
    const tops = peaks.length === 1 ? `top at ${frequency(only!.hz)}` : `tops at ${told(peaks)}`;
    return `Fig. 1. Wanted at ${at} with the sweep at ${from}: ${tops}${between}${sides}.`;
  },
  figureSpoken: (at: string, set: string): string =>
    `The curve that the sheet asks for at ${at} of the ${set}. Its levels are in the table.`,
  responses: 'Curves of this sheet',
  stepOf: (n: number, all: number): string => `Step ${n} of ${all}`,
  done: 'done',
  tickStep: (n: number): string => `Step ${n}: I have done this`,
  allStands: 'Everything stands. Sign off?',
  lookAgain: 'Look again',
  ownTicks: 'Sealed run: you tick the steps yourself, and nobody tells you whether they are right.',
  proofsAsked: 'Proofs asked for, after the last turn',
  proofs: {
    halveLevel: 'Halve the level, and put it back.',
    markersOffOn: 'Pip height to 0, and back.',
    touchEarth: 'Lift the earth strap, and clip it on again.',
    swingPhase: 'Swing the phasing away, and back.',
    skirts: 'Two clicks more Y gain, to see the skirts, and back.',
    bias: 'The meter on the bias line, and off again.',
    liftCrystal: 'Lift one crystal, and plug it again.',
    pipDown: 'More Y gain, to see how far down the curve is at a low pip, and back.',
  } satisfies Readonly<Record<ProofId, string>> as Readonly<Record<ProofId, string>>,
  pages: ['Procedure', 'Levels', 'Slugs and points'],
  pageOf: (n: number, all: number): string => `${n} of ${all}`,
  open: 'Open sheet',
  close: 'Close sheet',
  cautions: 'Mains and high voltage',
  care: 'Care',
  levels: 'Levels',
  levelsCaption: 'Carrier level relative to the peak, and how high it looks on the tube after the detector.',
  columns: { hz: 'At', wanted: 'Wanted', tube: 'On the tube' },
  ripple: (fromHz: number, toHz: number, db: number): string =>
    `Flat within ${db} dB from ${frequency(fromHz)} to ${frequency(toHz)}.`,
  tilt: (lowHz: number, highHz: number, db: number): string =>
    `${frequency(lowHz)} and ${frequency(highHz)} within ${db} dB of each other.`,
  trap: (hz: number, db: number): string => `Trap at ${frequency(hz)}: ${written(db, 0)} dB or lower.`,
  skirt: (fromHz: number, toHz: number, most: number): string =>
    `From ${frequency(fromHz)} to ${frequency(toHz)} no more than ${percent(most, 1)}.`,
  peak: (hz: number, within: number): string => `Peak at ${frequency(hz)}, within ${width(within)}.`,
  oscillator: (hz: number, within: number): string =>
    `Oscillator at ${frequency(hz)}, within ${width(within)}, with the fine tuning half way.`,
  zero: (hz: number, within: number, rises: boolean): string =>
    `Zero at ${frequency(hz)}, within ${width(within)}; positive ${rises ? 'above' : 'below'} it.`,
  peaksApart: (minHz: number, maxHz: number): string => `Peaks ${width(minHz)} to ${width(maxHz)} apart.`,
  evenPeaks: (low: number, high: number): string =>
    `Upper peak ${atMost(100 * low, 0)} to ${percent(high)} of the lower.`,
  straight: (within: number, most: number): string =>
    `Straight within ${percent(most, 1)} out to ${width(within)} either side.`,
  bandwidth: (db: number, minHz: number, maxHz: number): string =>
    `${width(minHz)} to ${width(maxHz)} wide at ${written(db, 0)} dB.`,
  gain: (hz: number, db: number): string =>
    `Gain at ${frequency(hz)}: no more than ${written(-db, 0)} dB below the design.`,
  setUp: 'Set up',
  setUpLines: {
    inject: (at: string, with_: string): string => `RF lead to ${at}, ${with_}.`,
    injectWith: 'terminated in 75 \u03a9, through its capacitor',
    observe: (at: string, probe: boolean): string =>
      probe ? `Y lead with the probe to ${at}.` : `Y lead with 10 k\u03a9 to ${at}.`,
    bias: (at: string, volts: number, tolerance: number): string =>
      `Bias ${at} to ${written(volts, 1)} V (within ${written(tolerance, 1)} V).`,
    noBias: 'No bias needed.',
    carrier: (hz: number): string => `Video sweep on a carrier at ${frequency(hz)}.`,
    slow: 'Slow sweep on: the mains rate is too fast for these circuits.',
    sweep: (centreHz: number, spanHz: number): string => `Centre ${frequency(centreHz)}, span ${width(spanHz)}.`,
    level: (volts: number, perDiv: number, div: number, at: 'top' | 'eitherPeak' | number): string => {
      const place =
        at === 'top' ? 'at the top' : at === 'eitherPeak' ? 'from zero to either peak' : `at ${frequency(at)}`;
      return `Level for ${knob.voltage(Number(volts.toPrecision(2)))} ${place}, detected: ${written(div, 1)} divisions at ${knob.voltsPerDiv(perDiv)}. Less will do; more may flatten it.`;
    },
    beatLevel: 'Level up until the beat stands well clear of the line.',
    direction: (lowAtLeft: boolean): string =>
      lowAtLeft ? 'Low frequency on the left.' : 'Low frequency on the right.',
  },
  box: 'Crystals in the box',
  boxWanted: 'plugged in for the overall curve',
  slugs: 'Slugs',
  slugTurns: (turns: number): string =>
    `${atMost(turns, 1)} ${format.plural(turns, { one: 'turn', other: 'turns' })} of thread`,
  head: { hex: 'hexagon', blade: 'blade' },
  points: 'Test points',
  percent: (target: number, low: number, high: number): string =>
    `${percent(target, 1)} (${atMost(100 * low, 1)} to ${atMost(100 * high, 1)})`,
  tubePercent: (value: number): string => percent(value),
} as const;
