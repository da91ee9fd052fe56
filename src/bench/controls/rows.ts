/**
 * Every knob and switch of the bench, one row each, in the unit that its name says. Values, resting values, ranges, the schemas of files, the places on the
 * panels and the knobs' scales follow from here; a row without words does not compile.
 */
import type { ControlRows, RangeRow } from './row.ts';

/** A frequency dial covers all of the spectrum that sets of this kind use. */
const FREQUENCY = { kind: 'range', unit: 'hz', min: 0.1e6, max: 230e6, step: 'bySet', resting: 20e6 } as const;
const POSITION = {
  kind: 'range',
  panel: 'tube',
  unit: 'divisions',
  min: -8,
  max: 8,
  step: 0.2,
  resting: 0,
} as const satisfies RangeRow;
const SHARE = { kind: 'range', panel: 'tube', unit: 'share', min: 0, max: 1, step: 0.05 } as const;
const BIAS_VOLTS = {
  kind: 'range',
  panel: 'bias',
  unit: 'unsignedVolts',
  min: 0,
  max: 15,
  step: 0.5,
  resting: 0,
  example: 4,
} as const satisfies RangeRow;
const POLARITY = { kind: 'positions', panel: 'bias', choices: ['-', '+'], resting: '-' } as const;

export const CONTROL_ROWS = {
  // sweep source
  sourceMode: {
    kind: 'positions',
    panel: 'sweep',
    choices: ['sweep', 'spot', 'tone', 'video'],
    needs: { video: 'videoFeed' },
    resting: 'sweep',
  },
  centreHz: { ...FREQUENCY, panel: 'sweep', notch: { of: 'span', part: 1 / 10 } },
  spanHz: {
    kind: 'range',
    panel: 'sweep',
    unit: 'hzWide',
    min: 0,
    max: 30e6,
    step: 'bySet',
    notch: { of: 'itself', part: 1 / 5 },
    resting: 10e6,
  },
  /** in steps of 1; 0 dB is 2 V peak open circuit */
  levelDb: {
    kind: 'range',
    panel: 'sweep',
    unit: 'db',
    min: -80,
    max: 0,
    step: 1,
    stepped: true,
    resting: -40,
    example: -46,
  },
  /** where the carrier stands that a video sweep modulates */
  carrierHz: { ...FREQUENCY, panel: 'sweep', drawnWith: 'videoFeed' },
  /** the set's own: how far its plates stand in from half way, as a share of what is left; in is more capacitance, and a lower oscillator */
  fineTuning: {
    kind: 'range',
    panel: 'sweep',
    drawnWith: 'oscillator',
    unit: 'share',
    min: -1,
    max: 1,
    step: 0.05,
    fineStep: 0.01,
    resting: 0,
    fromTop: true,
    example: 0.2,
  },
  /** an eighth of the mains instead of the mains: for narrow circuits, which a mains sweep hurries */
  slowSweep: { kind: 'switch', panel: 'sweep', resting: false },
  phasingDegrees: {
    kind: 'range',
    panel: 'sweep',
    unit: 'degrees',
    min: -90,
    max: 90,
    step: 1,
    resting: 0,
    example: 12,
  },
  blanking: { kind: 'switch', panel: 'sweep', resting: false },
  /** X direction reversed */
  mirror: { kind: 'switch', panel: 'sweep', resting: false },

  // marker rack
  comb: { kind: 'switch', panel: 'rack', resting: false },
  tunableOn: { kind: 'switch', panel: 'rack', resting: false },
  /** what the dial says; the true frequency differs by the dial's own error */
  tunableHz: { ...FREQUENCY, panel: 'rack', drawnAs: 'dial', notch: { of: 'span', part: 1 / 50 }, fromTop: true },
  /** shifts the tunable marker's true frequency: set by zero beat against a crystal, it takes out the dial's error */
  dialTrimHz: {
    kind: 'range',
    panel: 'rack',
    unit: 'hzOff',
    min: -1e6,
    max: 1e6,
    step: 5e3,
    resting: 0,
    example: -20e3,
  },
  /** pip height in divisions on the tube at the Y gain of the moment */
  pipHeightDiv: {
    kind: 'range',
    panel: 'rack',
    unit: 'divisions',
    min: 0,
    max: 3,
    step: 0.1,
    fineStep: 0.05,
    resting: 0.5,
    example: 0.4,
  },
  markerRoute: { kind: 'positions', panel: 'rack', choices: ['added', 'through'], resting: 'added' },

  // what is screwed to the leads
  rfTerminated: { kind: 'switch', panel: 'leads', resting: false },
  rfCapacitor: { kind: 'switch', panel: 'leads', resting: false },
  /** a plain wire, a wire behind 10 kilohm, or the demodulator probe */
  yTip: { kind: 'positions', panel: 'leads', choices: ['plain', 'resistor', 'probe'], resting: 'plain' },

  // bias supply
  biasAVolts: BIAS_VOLTS,
  biasAPolarity: POLARITY,
  biasBVolts: BIAS_VOLTS,
  biasBPolarity: POLARITY,

  // meter
  meterRangeVolts: { kind: 'clicks', panel: 'bias', unit: 'volts', choices: [0.3, 1, 3, 10, 30], resting: 10 },
  /** direct volts, or the 400 Hz tone's, rms */
  meterMode: { kind: 'positions', panel: 'bias', choices: ['dc', 'tone'], resting: 'dc' },

  // tube
  yVoltsPerDiv: {
    kind: 'clicks',
    panel: 'tube',
    unit: 'voltsPerDiv',
    choices: [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5],
    resting: 0.1,
    example: 0.2,
  },
  yPositionDiv: { ...POSITION, example: -0.5 },
  /** 1: the sweep just fills the ten divisions, and stands at the top of the scale */
  xGain: {
    kind: 'range',
    panel: 'tube',
    unit: 'times',
    min: 0.2,
    max: 5,
    step: 0.05,
    fineStep: 0.01,
    positions: 64,
    resting: 1,
    fromTop: true,
    example: 1.2,
  },
  xPositionDiv: { ...POSITION, example: 0.5 },
  yCoupling: { kind: 'positions', panel: 'tube', choices: ['AC', 'DC'], resting: 'DC' },
  yInvert: { kind: 'switch', panel: 'tube', resting: false },
  /** 10 nF across the Y input: takes noise off, and the edges with it */
  ySmoothing: { kind: 'switch', panel: 'tube', resting: false },
  focus: { ...SHARE, resting: 0.7 },
  brightness: { ...SHARE, resting: 0.6 },
  phosphor: { kind: 'positions', panel: 'tube', choices: ['P1', 'P31', 'P7'], resting: 'P31' },
  yInput: { kind: 'positions', panel: 'tube', choices: ['detected', 'raw'], resting: 'detected' },
} as const satisfies ControlRows;
