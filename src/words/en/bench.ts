/** Words of the bench page: panels, widgets, header, sheet. Dialogs, refusals and what is missing stand in benchTalk.ts. */
import type { LeadId } from '../../bench/benchState.ts';
import type { CONTROL_ROWS } from '../../bench/controls/rows.ts';
import type { ControlWordsFor } from '../controlWords.ts';
import { format } from './numbers.ts';

const { aloud, atMost, eighths, frequency, said, width, written } = format;

export const knobWords = {
  drag: 'Drag up or down',
  typeFor: (label: string): string => `${label}: type a value`,
  typeHint: (example: string): string => `For example ${example}. Return sets it, Escape leaves it as it was.`,
  unread: (example: string): string => `That is not a value for this knob. Try ${example}.`,
} as const;

export const switchWords = {
  flipTo: (word: string): string => `Flip to ${word}`,
  choose: 'Choose a position',
  off: 'off',
  on: 'on',
} as const;

export const panelWords = {
  tube: 'Tube',
  sweep: 'Sweep source',
  rack: 'Marker rack',
  bias: 'Bias and meter',
  leads: 'Lead ends',
  safe: 'Make safe',
  sides: (panel: string): string => `Sides of the panel: ${panel}`,
  traceSide: 'Trace',
  faceSide: 'Beam',
  biasSide: 'Meter',
  leadsSide: 'Lead ends',
  safeSide: 'Make safe',
  turnOver: (side: string): string => `Turn over to ${side.toLowerCase()}`,
  shelf: 'Instruments',
  slideLeft: 'Show the instruments to the left',
  slideRight: 'Show the instruments to the right',
} as const;

const POLARITIES = { '-': { word: '\u2212', spoken: 'Negative' }, '+': { word: '+', spoken: 'Positive' } } as const;

/** What each control is called, and its positions. */
export const controlWords: ControlWordsFor<typeof CONTROL_ROWS> = {
  sourceMode: {
    label: 'Mode',
    positions: {
      sweep: { word: 'sweep', spoken: 'Sweep' },
      spot: { word: 'spot', spoken: 'Spot frequency, no sweep' },
      tone: { word: 'spot with tone', spoken: 'Spot frequency with a 400 hertz tone' },
      video: { word: 'video', spoken: 'Video sweep on a carrier' },
    },
  },
  centreHz: { label: 'Centre' },
  spanHz: { label: 'Span' },
  levelDb: { label: 'Level' },
  carrierHz: { label: 'Carrier' },
  slowSweep: { label: 'Slow' },
  fineTuning: { label: 'Fine tuning' },
  phasingDegrees: { label: 'Phasing' },
  blanking: { label: 'Retrace blanking' },
  mirror: { label: 'Mirror' },
  comb: { label: 'Comb' },
  tunableOn: { label: 'Tunable' },
  tunableHz: { label: 'Tune' },
  dialTrimHz: { label: 'Dial trim' },
  pipHeightDiv: { label: 'Pip height' },
  markerRoute: {
    label: 'Markers',
    positions: {
      added: { word: 'added', spoken: 'Added after the detector' },
      through: { word: 'through', spoken: 'Sent through the set' },
    },
  },
  rfTerminated: { label: '75 \u03a9 termination' },
  rfCapacitor: { label: 'RF capacitor' },
  yTip: {
    label: 'Y tip',
    positions: {
      plain: { word: 'plain', spoken: 'A plain wire' },
      resistor: { word: '10 k\u03a9', spoken: 'A wire behind 10 kilohms' },
      probe: { word: 'probe', spoken: 'The demodulator probe' },
    },
  },
  biasAVolts: { label: 'Bias A' },
  biasAPolarity: { label: 'Polarity of bias A', positions: POLARITIES },
  biasBVolts: { label: 'Bias B' },
  biasBPolarity: { label: 'Polarity of bias B', positions: POLARITIES },
  meterRangeVolts: { label: 'Range' },
  meterMode: {
    label: 'Meter reads',
    positions: { dc: { word: 'DC', spoken: 'DC volts' }, tone: { word: 'tone', spoken: 'The 400 hertz tone' } },
  },
  yVoltsPerDiv: { label: 'Y gain' },
  yPositionDiv: { label: 'Y position' },
  xGain: { label: 'X gain' },
  xPositionDiv: { label: 'X position' },
  yCoupling: {
    label: 'Y input',
    positions: { AC: { word: 'AC', spoken: 'AC, without the base line' }, DC: { word: 'DC' } },
  },
  yInvert: { label: 'Invert' },
  ySmoothing: { label: 'Smoothing' },
  focus: { label: 'Focus' },
  brightness: { label: 'Brightness' },
  phosphor: {
    label: 'Phosphor',
    positions: {
      P1: { word: 'P1', spoken: 'P1, medium' },
      P31: { word: 'P31', spoken: 'P31, short' },
      P7: { word: 'P7', spoken: 'P7, long tail' },
    },
  },
  yInput: {
    label: 'Y shows',
    positions: {
      detected: { word: 'curve', spoken: 'The detected curve' },
      raw: { word: 'raw', spoken: 'The raw RF envelope' },
    },
  },
};

export const tubeControlWords = {
  wax: 'Wax marks',
  waxNote: 'Wax marks are an aid; this run allows none.',
  hint: ['Drag a knob up or down.', 'Shift or two fingers: finer.'],
} as const;

const inBox = (hz: number): string => (hz < 2e6 ? written(hz / 1e3, 1) : written(hz / 1e6, 2));

export const rackWords = {
  tunableMarker: 'Tunable marker',
  crystals: 'Crystals',
  crystal: (hz: number, pip: number | null): string =>
    pip === null ? `Crystal ${aloud(frequency(hz))}, lifted` : `Crystal ${aloud(frequency(hz))}, pip ${pip}`,
  crystalIn: (hz: number): string => `Crystal ${aloud(frequency(hz))}, in its socket`,
  canLabel: inBox,
  plugIn: (hz: number): string => `Plug in ${frequency(hz)}`,
  lift: (hz: number): string => `Lift ${frequency(hz)}`,
  note: (unit: string): string => `Plugged in, each makes its pip. In ${unit}.`,
  dialNote: (unit: string): string => `Read at the hairline, ${unit}`,
  unit: (hz: number): string => (hz < 2e6 ? 'kHz' : 'MHz'),
} as const;

export const dialWords = {
  label: 'Tunable marker dial',
  drag: 'Drag the scale',
  figure: (hz: number): string => atMost(hz < 2e6 ? hz / 1e3 : hz / 1e6, 2),
  spoken: (hz: number, markHz: number): string =>
    `about ${aloud(frequency(hz))}, to the nearest ${aloud(width(markHz))}`,
} as const;

export const meterWords = {
  unit: 'volts',
  mark: (volts: number): string => atMost(volts, Math.abs(volts) < 1 ? 2 : 1),
  reading: (volts: number, rangeVolts: number, pinned: boolean, connected: boolean): string => {
    if (!connected) return 'Meter at rest: its lead is in the tray';
    if (pinned)
      return `Meter on its stop, ${volts < 0 ? 'below minus' : 'above'} ${aloud(format.knob.voltage(rangeVolts))}`;
    return `Meter reads ${said(volts, rangeVolts <= 1 ? 3 : rangeVolts <= 3 ? 2 : 1)} volts`;
  },
} as const;

export const leadWords = {
  names: {
    rf: 'RF lead',
    y: 'Y lead',
    x: 'X lead',
    earth: 'Earth strap',
    biasA: 'Bias A lead',
    biasB: 'Bias B lead',
    meter: 'Meter lead',
  } satisfies Record<LeadId, string>,
  note: 'Carry an end to a point on the chassis, or press return on its jack.',
} as const;

export const safeWords = {
  isolation: 'Isolating transformer',
  mains: 'Mains switch',
  read: 'Cautions',
  noMains: 'Nothing on this bench is connected to the mains.',
  hot: 'The chassis may be live. Isolate first, switch on last.',
  cold: 'The chassis is not live. The mains parts stay fenced off.',
} as const;

export const atHandWords = {
  name: 'At hand',
  hints: 'Hints',
  parts: 'Parts',
  /** while a good capacitor hangs in the set */
  bridged: 'Bridge on',
  circuit: 'Circuit',
  sound: { off: 'Sound off', low: 'Sound low', full: 'Sound full' },
  soundNote: {
    waiting: 'The browser plays no sound before the first click or key press.',
    silent: 'This machine cannot play sounds.',
  },
} as const;

export const headerWords = {
  scenario: (code: string, set: string): string => `Scenario ${code}, ${set}`,
  turns: (par: number | null): string => (par === null ? 'Turns' : `Turns (par ${eighths(par)})`),
  elapsed: 'Elapsed',
  left: 'Left',
  signOff: 'Sign off',
  menu: 'Menu',
  help: 'Keys and help',
  suspend: 'Suspend',
  abandon: 'Clear the bench',
  rail: (names: readonly string[], done: readonly boolean[], current: string): string => {
    const finished = names.filter((_, i) => done[i]);
    const list = finished.length === 0 ? 'none yet' : finished.join(', ');
    return `Phases done: ${list}. You are at: ${current}.`;
  },
} as const;

export const narrowWords = {
  title: 'The bench needs a wider screen',
  body: 'It needs a window about 680 pixels wide. Turn the device, or widen the window. The course and the reports fit on this screen.',
  back: 'To the course',
} as const;
