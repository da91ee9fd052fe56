/** Truth of the set-up at sign-off (G12 to G26, G54 to G61): is what stands on the tube what the receiver does? */
import type { Facts } from '../bench/facts.ts';
import type { Receiver, SheetSetUp } from '../receiver/receiver.ts';
import { responseById } from '../receiver/responses.ts';
import type { DraftLine } from './draft.ts';
import { type Limits, roundFigure, shareOf } from './falling.ts';
import {
  CARRIER_SHARE,
  COMPRESSION_LIMIT_DB,
  DIAL_SHARE,
  HUM_SHARE,
  PHASE_TOLERANCE_DEGREES,
  PIP_SHARE,
  SWEEP_LAG_LIMIT,
  VERTICAL_LAG_LIMIT_DEGREES,
  WEAKEST_SHARE,
} from './limits.ts';
import type { FigureUnit } from './report.ts';

export function truthLines(facts: Facts, receiver: Receiver): readonly DraftLine[] {
  const { setUp } = responseById(receiver, facts.response);
  const picture = facts.xConnected && facts.sweeping && facts.detectedPeakVolts > 0;
  const onTube = (line: DraftLine): DraftLine => (picture ? line : { ...line, earned: 0, held: 'noPicture' });
  const weak = facts.sheetPeakVolts > 0 ? (100 * facts.detectedPeakVolts) / facts.sheetPeakVolts : 0;
  return [
    onTube(figure('G13', 4, facts.residualPhaseDegrees, 'degrees', within(PHASE_TOLERANCE_DEGREES))),
    onTube(yes('G14', 2, facts.blanking)),
    ...biasLines(facts),
    onTube(figure('G16', 3, facts.compressionDb, 'db', atMost(COMPRESSION_LIMIT_DB))),
    figure('G17', 1, weak, 'percent', { low: 100 * WEAKEST_SHARE, high: null, tolerance: (100 * WEAKEST_SHARE) / 3 }),
    onTube(yes('G18', 1, facts.spanCovers)),
    onTube(yes('G19', 1, facts.xDirectionAsSheet)),
    ...markersLine(facts, setUp),
    onTube(pipHeightLine(facts)),
    onTube(yes('G22', 1, facts.markersAdded)),
    yes('G23', 1, facts.rfAtSheetPoint, 'rf'),
    yes('G24', 1, facts.rfConnected && facts.rfTerminated, 'rf'),
    yes('G25', 1, facts.yAtSheetPoint && facts.yTipAsSheet, 'y'),
    yes('G26', 1, facts.earthed, 'earth'),
    ...sourceLines(facts, setUp),
    onTube(yes('G55', 1, facts.dcCoupled)),
    onTube(figure('G56', 1, facts.verticalLagDegrees, 'degrees', atMost(VERTICAL_LAG_LIMIT_DEGREES))),
    onTube(figure('G57', 1, 100 * facts.humRatio, 'percent', atMost(100 * HUM_SHARE))),
    onTube({ ...yes('G58', 1, facts.steelIn === null), subject: facts.steelIn }),
    ...dialLine(facts, setUp),
    onTube(figure('G60', 2, 100 * facts.sweepLag, 'percent', atMost(100 * SWEEP_LAG_LIMIT))),
  ];
}

/** For each line that the sheet names: its volts, and that they are held. */
function biasLines(facts: Facts): readonly DraftLine[] {
  const share = facts.biases.length;
  return facts.biases.flatMap(({ at, errorVolts, toleranceVolts, clamped }) => [
    { ...figure('G15', 3 / share, errorVolts, 'volts', within(toleranceVolts)), id: `G15:${at}`, subject: at },
    { ...yes('G61', 1 / share, clamped, at), id: `G61:${at}` },
  ]);
}

function sourceLines(facts: Facts, setUp: SheetSetUp): readonly DraftLine[] {
  if (setUp.source === 'sweep' && facts.sourceAsSheet) return [];
  const line = yes('G54', 2, facts.sourceAsSheet);
  if (facts.carrierErrorHz === null || !facts.sourceAsSheet) return [line];
  const limit = CARRIER_SHARE * (setUp.carrierHz ?? 0);
  return [{ ...figure('G54', 2, facts.carrierErrorHz, 'hz', within(limit)), hz: setUp.carrierHz }];
}

function dialLine(facts: Facts, setUp: SheetSetUp): readonly DraftLine[] {
  if (facts.dialErrorHz === null) return [];
  return [figure('G59', 1, facts.dialErrorHz, 'hz', within(DIAL_SHARE * setUp.spanHz))];
}

function markersLine(facts: Facts, setUp: SheetSetUp): readonly DraftLine[] {
  const asked = setUp.markersHz.length;
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
