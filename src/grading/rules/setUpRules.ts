/**
 * Rules of the set-up at sign-off (G13 to G26, G54 to G61, G63, G67): is what stands on the tube what the receiver does?
 * The limits are judgement of common practice; no published source. The session's guards and the look back at lying pictures ask the same rows (standing.ts), so that
 * a step that shows its tick also earns its points.
 */
import { MOST_SWEEP_LAG } from '../../bench/instruments.ts';
import { amount, answer, atMost, noneOf, within, yes } from './readings.ts';
import type { LineRule, Reading, Subjects } from './rule.ts';

export const SET_UP_RULES = [
  {
    number: 'G13',
    block: 'truth',
    about: 'bench',
    weight: 4,
    needsPicture: true,
    // At so much trace and retrace still lie on each other.
    reads: amount('degrees', (b) => b.residualPhaseDegrees, within(2)),
  },
  { number: 'G14', block: 'truth', about: 'bench', weight: 2, needsPicture: true, reads: yes((b) => b.blanking) },
  {
    number: 'G15',
    block: 'truth',
    about: 'biasLine',
    weight: (line) => 3 / line.of,
    reads: ({ at, errorVolts, toleranceVolts }) => ({
      measured: errorVolts,
      unit: 'volts',
      limits: within(toleranceVolts),
      subject: at,
    }),
  },
  {
    number: 'G61',
    block: 'truth',
    about: 'biasLine',
    weight: (line) => 1 / line.of,
    reads: ({ at, clamped }) => ({ ...answer(clamped), subject: at }),
  },
  {
    number: 'G16',
    block: 'truth',
    about: 'bench',
    weight: 3,
    needsPicture: true,
    // Of the worst stage: it leaves the shape alone.
    reads: amount('db', (b) => b.compressionDb, atMost(0.5)),
  },
  {
    number: 'G17',
    block: 'truth',
    about: 'bench',
    weight: 1,
    // Of what the sheet's own level gives with the slugs right.
    reads: amount('percent', (b) => (b.sheetPeakVolts > 0 ? (100 * b.detectedPeakVolts) / b.sheetPeakVolts : 0), {
      low: 25,
      high: null,
      tolerance: 25 / 3,
    }),
  },
  { number: 'G18', block: 'truth', about: 'bench', weight: 1, needsPicture: true, reads: yes((b) => b.spanCovers) },
  {
    number: 'G19',
    block: 'truth',
    about: 'bench',
    weight: 1,
    needsPicture: true,
    reads: yes((b) => b.xDirectionAsSheet),
  },
  { number: 'G20', block: 'truth', about: 'bench', weight: 2, reads: markers },
  {
    number: 'G21',
    block: 'truth',
    about: 'bench',
    weight: 1,
    needsPicture: true,
    // Of the trace's height: high enough to be seen, low enough not to bend what it marks.
    reads: amount('percent', (b) => 100 * b.pipHeightRatio, { low: 2, high: 15, tolerance: 15, toleranceBelow: 0 }),
  },
  { number: 'G22', block: 'truth', about: 'bench', weight: 1, needsPicture: true, reads: yes((b) => b.markersAdded) },
  { number: 'G23', block: 'truth', about: 'bench', weight: 1, reads: yes((b) => b.rfAtSheetPoint, 'rf') },
  {
    number: 'G24',
    block: 'truth',
    about: 'bench',
    weight: 1,
    reads: yes((b) => b.rfConnected && b.rfTerminated, 'rf'),
  },
  {
    number: 'G25',
    block: 'truth',
    about: 'bench',
    weight: 1,
    reads: yes((b) => b.yAtSheetPoint && b.yTipAsSheet, 'y'),
  },
  { number: 'G26', block: 'truth', about: 'bench', weight: 1, reads: yes((b) => b.earthed, 'earth') },
  { number: 'G54', block: 'truth', about: 'bench', weight: 2, reads: source },
  { number: 'G55', block: 'truth', about: 'bench', weight: 1, needsPicture: true, reads: yes((b) => b.dcCoupled) },
  {
    number: 'G56',
    block: 'truth',
    about: 'bench',
    weight: 1,
    needsPicture: true,
    // Load, lead and Y amplifier together, before trace and retrace part to the eye.
    reads: amount('degrees', (b) => b.verticalLagDegrees, atMost(1)),
  },
  {
    number: 'G57',
    block: 'truth',
    about: 'bench',
    weight: 1,
    needsPicture: true,
    // From edge to edge, of the trace's height.
    reads: amount('percent', (b) => 100 * b.humRatio, atMost(3)),
  },
  {
    number: 'G58',
    block: 'truth',
    about: 'bench',
    weight: 1,
    needsPicture: true,
    reads: ({ steelIn }) => ({ ...answer(steelIn === null), subject: steelIn }),
  },
  {
    number: 'G59',
    block: 'truth',
    about: 'bench',
    weight: 1,
    // While it is on: a fortieth of a division.
    reads: ({ dialErrorHz, sheet }) =>
      dialErrorHz === null ? null : { measured: dialErrorHz, unit: 'hz', limits: within((1 / 400) * sheet.spanHz) },
  },
  {
    number: 'G60',
    block: 'truth',
    about: 'bench',
    weight: 2,
    needsPicture: true,
    // How late the sweep may show the curve, of its narrowest width.
    reads: amount('percent', (b) => 100 * b.sweepLag, atMost(100 * MOST_SWEEP_LAG)),
  },
  {
    number: 'G63',
    block: 'truth',
    about: 'bench',
    weight: 1,
    since: 2,
    needsPicture: true,
    reads: yes((b) => b.traceOnScreen && b.traceLit),
  },
  {
    number: 'G67',
    block: 'truth',
    about: 'bench',
    weight: 1,
    since: 4,
    needsPicture: true,
    // Only where there are spares to bridge with.
    reads: ({ bridge }) =>
      bridge === undefined ? null : { ...answer(bridge.across === null), subject: bridge.across },
  },
] as const satisfies readonly LineRule[];

/** Each crystal that is missing takes its share; a sheet may ask for none. */
function markers({ markersMissingHz, sheet }: Subjects['bench']): Reading | null {
  const asked = sheet.markersHz.length;
  if (asked === 0) return null;
  const hz = markersMissingHz[0] ?? null;
  return { measured: markersMissingHz.length, unit: 'count', limits: noneOf(asked), hz };
}

/** The mode as the sheet asks; with a video sweep its carrier too, to a thousandth of itself. */
function source({ sourceAsSheet, carrierErrorHz, sheet }: Subjects['bench']): Reading | null {
  if (sheet.source === 'sweep' && sourceAsSheet) return null;
  if (!sourceAsSheet || carrierErrorHz === null) return answer(sourceAsSheet);
  return { measured: carrierErrorHz, unit: 'hz', limits: within(1e-3 * (sheet.carrierHz ?? 0)), hz: sheet.carrierHz };
}
