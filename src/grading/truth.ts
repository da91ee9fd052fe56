/** Truth of the set-up at sign-off (G12 to G25): is what stands on the tube what the receiver does? */
import type { Facts } from '../bench/facts.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { DraftLine } from './draft.ts';
import { type Limits, roundFigure, shareOf } from './falling.ts';
import { COMPRESSION_LIMIT_DB, PHASE_TOLERANCE_DEGREES, PIP_SHARE, WEAKEST_SHARE } from './limits.ts';
import type { FigureUnit } from './report.ts';

export function truthLines(facts: Facts, receiver: Receiver): readonly DraftLine[] {
  const picture = facts.xConnected && facts.sweeping && facts.detectedPeakVolts > 0;
  const onTube = (line: DraftLine): DraftLine => (picture ? line : { ...line, earned: 0, held: 'noPicture' });
  const weak = facts.sheetPeakVolts > 0 ? (100 * facts.detectedPeakVolts) / facts.sheetPeakVolts : 0;
  return [
    onTube(figure('G13', 4, facts.residualPhaseDegrees, 'degrees', within(PHASE_TOLERANCE_DEGREES))),
    onTube(yes('G14', 2, facts.blanking)),
    ...biasLine(facts, receiver),
    onTube(figure('G16', 3, facts.compressionDb, 'db', atMost(COMPRESSION_LIMIT_DB))),
    figure('G17', 1, weak, 'percent', { low: 100 * WEAKEST_SHARE, high: null, tolerance: (100 * WEAKEST_SHARE) / 3 }),
    onTube(yes('G18', 1, facts.spanCovers)),
    onTube(yes('G19', 1, facts.xDirectionAsSheet)),
    ...markersLine(facts, receiver),
    onTube(pipHeightLine(facts)),
    onTube(yes('G22', 1, facts.markersAdded)),
    yes('G23', 1, facts.rfAtSheetPoint, 'rf'),
    yes('G24', 1, facts.rfConnected && facts.rfTerminated, 'rf'),
    yes('G25', 1, facts.yAtSheetPoint && facts.yTipAsSheet, 'y'),
    yes('G26', 1, facts.earthed, 'earth'),
  ];
}

function biasLine(facts: Facts, receiver: Receiver): readonly DraftLine[] {
  const bias = receiver.setUp.bias;
  if (bias === null || facts.biasErrorVolts === null) return [];
  return [figure('G15', 3, facts.biasErrorVolts, 'volts', within(bias.toleranceVolts))];
}

function markersLine(facts: Facts, receiver: Receiver): readonly DraftLine[] {
  const asked = receiver.setUp.markersHz.length;
  if (asked === 0) return [];
  const missing = facts.markersMissingHz.length;
  const line = { ...figure('G20', 2, missing, 'count', atMost(0)), hz: facts.markersMissingHz[0] ?? null };
  return [{ ...line, earned: Math.max(1 - missing / asked, 0) }];
}

function pipHeightLine(facts: Facts): DraftLine {
  const [low, high] = [100 * PIP_SHARE.low, 100 * PIP_SHARE.high];
  const line = figure('G21', 1, 100 * facts.pipHeightRatio, 'percent', { low: null, high, tolerance: high });
  return { ...line, low, earned: line.measured < low ? 0 : line.earned };
}

function within(tolerance: number): Limits {
  return { low: -tolerance, high: tolerance, tolerance };
}

function atMost(limit: number): Limits {
  return { low: null, high: limit, tolerance: limit };
}

function figure(rule: string, weight: number, value: number, unit: FigureUnit, limits: Limits): DraftLine {
  const measured = roundFigure(value, unit);
  const { low, high } = limits;
  return { id: rule, rule, block: 'truth', weight, earned: shareOf(measured, limits), measured, low, high, unit };
}

function yes(rule: string, weight: number, holds: boolean, subject: string | null = null): DraftLine {
  const measured = holds ? 1 : 0;
  return {
    id: rule,
    rule,
    block: 'truth',
    weight,
    earned: measured,
    measured,
    low: 1,
    high: null,
    unit: 'yes',
    subject,
  };
}
