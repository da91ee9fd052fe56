/** Every number that the handbook's text states. The words only write them; the tests hold each against the engine or a published formula. */
import type { Format } from '../../words/format.ts';
import { readProse } from './prose.ts';
import { type Quantity, type Unit, writtenQuantity } from './quantity.ts';

const q = (value: number, unit: Unit, places = 0): Quantity => ({ value, unit, places });

export const HANDBOOK_NUMBERS = {
  // sweep and tube
  mains: q(50, 'bare'),
  forward: q(10e-3, 'ms'),
  centralTime: q(0.33, 'share'),
  across: q(10, 'bare'),
  down: q(8, 'bare'),
  spanExample: q(10e6, 'MHz'),
  divisionExample: q(1e6, 'MHz'),
  smallPhase: q(5, 'degrees'),
  splitExample: q(0.87e6, 'MHz', 2),
  amIf: q(455e3, 'kHz'),
  amWidth: q(3e3, 'kHz', 1),
  fastSpan: q(60e3, 'kHz'),
  fastLate: q(1.4e3, 'kHz', 1),
  fastPeak: q(0.94, 'share'),
  wideWidth: q(3e6, 'MHz'),
  wideLate: q(333, 'Hz'),
  throughShare: q(0.1, 'share'),

  // circuits
  coilMore: q(0.2, 'share'),
  hzDown: q(0.087, 'share', 1),
  hzUp: q(0.118, 'share', 1),
  firstTurn: q(617e3, 'kHz'),
  exampleHz: q(44e6, 'MHz'),
  exampleQ: q(15, 'bare'),
  canHz: q(10.7e6, 'MHz', 1),
  canQ: q(60, 'bare'),
  underHeight: q(0.8, 'share'),
  criticalK: q(0.0167, 'share', 2),
  criticalWidth: q(252e3, 'kHz'),
  singleWidth: q(178e3, 'kHz'),
  overK: q(0.03, 'share'),
  canApart: q(267e3, 'kHz'),
  canDip: q(1.42, 'dB', 2),
  dipThreeTimes: q(2.41, 'bare', 2),
  threeDb: q(3, 'dB'),
  unevenA: q(60, 'bare'),
  unevenB: q(40, 'bare'),
  unevenCritical: q(0.02, 'share', 1),
  unevenSplit: q(0.021, 'share', 1),
  fourKeep: q(0.435, 'share', 1),
  twoCansKeep: q(0.802, 'share', 1),
  stripHz: q(43.5e6, 'MHz', 1),
  stripWidth: q(4e6, 'MHz'),
  stageLow: q(41.77e6, 'MHz', 2),
  stageHigh: q(45.23e6, 'MHz', 2),
  edgeLow: q(41.57e6, 'MHz', 2),
  edgeHigh: q(45.57e6, 'MHz', 2),
  staggerGain: q(17.6, 'dB', 1),
  stageOff: q(0.5e6, 'MHz', 1),
  stageLean: q(2.8, 'dB', 1),
  stageRest: q(0.7, 'dB', 1),
  visionIf: q(45.75e6, 'MHz', 2),
  soundIf: q(41.25e6, 'MHz', 2),
  adjacentSound: q(47.25e6, 'MHz', 2),
  adjacentVision: q(39.75e6, 'MHz', 2),
  absorberDepth: q(10, 'dB'),
  tenPercent: q(0.1, 'share'),
  bridgedTenPercent: q(43, 'dB'),
  bridgedNone: q(21, 'dB'),
  toneHz: q(400, 'Hz'),
  toneDepth: q(0.3, 'share'),

  // detectors and stages
  weakVolts: q(10e-3, 'mV'),
  weakHalf: q(0.25, 'share'),
  strongVolts: q(2, 'V'),
  strongHalf: q(0.46, 'share'),
  halfWay: q(0.5, 'share'),
  squareError: q(3, 'dB'),
  sixDb: q(6, 'dB'),
  fmSwing: q(75e3, 'kHz'),
  sApart: q(284e3, 'kHz'),
  sOff: q(20e3, 'kHz'),
  sPrimaryHeights: q(0.078, 'share', 1),
  sSecondaryShift: q(20e3, 'kHz'),
  dbPerVolt: q(2.1, 'dB', 1),
  biasLow: q(-2, 'V'),
  biasHigh: q(-6, 'V'),
  biasShift: q(598e3, 'kHz'),
  overDrive: q(6, 'dB'),
  overHeld: q(5, 'dB'),
  wideTrue: q(2.93e6, 'MHz', 2),
  overWide: q(5.35e6, 'MHz', 2),
  probedHz: q(44e6, 'MHz'),
  probedFarads: q(20e-12, 'pF'),
  halfPicofarad: q(0.5e-12, 'pF', 1),
  probeHalf: q(540e3, 'kHz'),
  leadFarads: q(100e-12, 'pF'),
  leadOhms: q(75, 'ohms'),
  openRise: q(6, 'dB'),
  openRipple: q(3.5, 'dB', 1),
  strapRipple: q(2.1, 'dB', 1),

  // the job
  halfDb: q(-6, 'dB'),
  carrierHigh: q(0.6, 'share'),
  carrierHighDb: q(1.6, 'dB', 1),
  carrierLow: q(0.4, 'share'),
  carrierLowDb: q(1.9, 'dB', 1),
  openRaises: q(12, 'dB'),
  bleedFarads: q(100e-6, 'uF'),
  bleedVolts: q(350, 'V'),
  bleedOhms: q(100e3, 'ohms'),
  bleedTo: q(60, 'V'),
  bleedSeconds: q(17.6, 's', 1),
} as const satisfies Readonly<Record<string, Quantity>>;

const NUMBERS: Readonly<Record<string, Quantity>> = HANDBOOK_NUMBERS;

export function writtenNumber(format: Format, name: string): string {
  const quantity = NUMBERS[name];
  if (quantity === undefined) throw new Error(`the handbook has no figure ${name}`);
  return writtenQuantity(format, quantity);
}

/** A text of the handbook as plain words, its figures written. */
export const plainProse = (format: Format, prose: string): string =>
  readProse(prose)
    .map((piece) => (piece.kind === 'number' ? writtenNumber(format, piece.name) : piece.text))
    .join('');
