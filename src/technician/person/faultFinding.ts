/**
 * Looking for a failed part: the lines with the meter, then what is on the tube against the chart. A failure may be larger or smaller than the chart's, so the
 * symptoms are compared by their shape: the change against the sound curve, in decibels, with the size left free between bounds.
 */
import { axisOf, readVolts } from './eyes.ts';
import { clip, type Hands, set } from './hands.ts';
import type { PrintedCurve, PrintedSheet } from './sheet.ts';
import type { Turner } from './turner.ts';

const FLOOR_DB = -46;
const SMALLEST = 0.4;
const LARGEST = 2;
/** A line that gives less than this share of what the sheet says leaks. */
const SAGS = 0.9;

export interface Candidate {
  readonly part: string;
  /** root mean square of what the part does not explain, decibels */
  readonly apart: number;
}

export interface Suspicion {
  /** root mean square of what is wrong, decibels */
  readonly left: number;
  /** each part once, the most like first */
  readonly candidates: readonly Candidate[];
}

export function suspicion(hands: Hands, sheet: PrintedSheet, curve: PrintedCurve): Suspicion {
  const sound = curve.volts.map((v) => signedDb(v, curve));
  const seen = readVolts(hands, curve.hz, axisOf(hands)).map((v, i) => signedDb(v, curve) - sound[i]!);
  const best = new Map<string, number>();
  for (const { part, volts } of sheet.chart) {
    const change = volts.map((v, i) => signedDb(v, curve) - sound[i]!);
    const size = change.reduce((sum, v) => sum + v * v, 0);
    if (size < 1e-6) continue;
    const along = change.reduce((sum, v, i) => sum + v * seen[i]!, 0) / size;
    const share = Math.min(Math.max(along, SMALLEST), LARGEST);
    const missed = seen.reduce((sum, v, i) => sum + (v - share * change[i]!) ** 2, 0);
    const apart = Math.sqrt(missed / seen.length);
    best.set(part, Math.min(apart, best.get(part) ?? Number.POSITIVE_INFINITY));
  }
  const candidates = [...best].map(([part, apart]) => ({ part, apart })).sort((a, b) => a.apart - b.apart);
  return { left: Math.sqrt(seen.reduce((sum, v) => sum + v * v, 0) / seen.length), candidates };
}

/** A diode the wrong way round gives the other sign: that is far from any level. */
function signedDb(volts: number, curve: PrintedCurve): number {
  const peak = curve.volts.reduce((most, v) => (Math.abs(v) > Math.abs(most) ? v : most), 0);
  const db = Math.max(FLOOR_DB, 20 * Math.log10(Math.max(Math.abs(volts / peak), 1e-6)));
  return volts / peak < 0 ? 2 * FLOOR_DB - db : db;
}

export function replacePart({ hands, sheet, turner }: Fitter, part: string): boolean {
  if (sheet.mains) hands.act({ type: 'powerSwitched', on: false });
  const refused = hands.act({ type: 'partReplaced', element: part });
  if (sheet.mains) hands.act({ type: 'powerSwitched', on: true });
  for (const slug of sheet.slugs) if (slug.coil === part) turner.renewed(slug.id);
  return refused === null;
}

export interface Fitter {
  readonly hands: Hands;
  readonly sheet: PrintedSheet;
  readonly turner: Turner;
}

/** Before any supply is clipped to them: what the lines give of their own, with the meter on each. */
export function tryLines(fitter: Fitter): void {
  const { hands, sheet } = fitter;
  for (const { at, meterRangeVolts, restVolts } of sheet.lines) {
    if (sheet.mains) hands.act({ type: 'powerSwitched', on: false });
    for (const lead of ['biasA', 'biasB'] as const) if (hands.leads()[lead] === at) clip(hands, lead, null);
    if (hands.leads().rf !== null) clip(hands, 'rf', null);
    clip(hands, 'meter', at);
    set(hands, 'meterMode', 'dc');
    if (sheet.mains) hands.act({ type: 'powerSwitched', on: true });
    set(hands, 'meterRangeVolts', meterRangeVolts);
    const { meterVolts } = hands.look();
    clip(hands, 'meter', null);
    if (Math.abs(restVolts) > 0 && Math.abs(meterVolts / restVolts) < SAGS) replacePart(fitter, at);
  }
}
