/** What still keeps each phase from being done: measured facts in, codes out. The machine's guards and the page's list are both made of this. */

import type { Facts } from '../bench/facts.ts';
import {
  CARRIER_SHARE,
  COMPRESSION_LIMIT_DB,
  DIAL_SHARE,
  PHASE_TOLERANCE_DEGREES,
  PIP_SHARE,
  SWEEP_LAG_LIMIT,
  TRACE_HEIGHT_DIV,
  VERTICAL_LAG_LIMIT_DEGREES,
  WEAKEST_SHARE,
} from '../grading/limits.ts';
import type { SetUpPart } from '../receiver/receiver.ts';
import type { ProofId } from '../scenario/proofId.ts';
import type { Phase } from './phase.ts';

export const MISSING_CODES = [
  'cautionsNotRead',
  'notIsolated',
  'rfNotConnected',
  'rfWrongPoint',
  'rfNotTerminated',
  'yWrongPoint',
  'yWrongTip',
  'xNotConnected',
  'notEarthed',
  'biasNotConnected',
  'powerOff',
  'notSweeping',
  'sweepTooNarrow',
  'sourceNotAsSheet',
  'carrierOff',
  'sweepTooFast',
  'phaseOff',
  'blankingOff',
  'biasOff',
  'overloaded',
  'tooWeak',
  'markersMissing',
  'markersThroughSet',
  'pipsTooHigh',
  'pipsTooLow',
  'dialOff',
  'xReversed',
  'traceOffScreen',
  'traceTooLow',
  'acCoupled',
  'verticalLag',
  'steelInSlug',
  'noSlugTurned',
  'slugTurning',
  'levelNotHalved',
  'markersNotSwitched',
  'earthNotTouched',
  'phaseNotSwung',
  'skirtsNotSeen',
] as const;
export type MissingCode = (typeof MISSING_CODES)[number];

/** What this scenario asks for, beyond what the facts already know. */
export interface Wants {
  readonly proofs: readonly ProofId[];
  /** span and carrier of each response of the sheet, by its id */
  readonly sheets: Readonly<Record<string, { readonly spanHz: number; readonly carrierHz: number | null }>>;
}

/** A slug counts as turning until it has rested this long, seconds. */
export const SETTLE_SECONDS = 2;

export function missingSafety(facts: Facts): readonly MissingCode[] {
  return codes([
    [!facts.cautionsAcknowledged, 'cautionsNotRead'],
    [!facts.isolated, 'notIsolated'],
  ]);
}

/** Power comes last: leads are clipped on a set that is off. */
export function missingConnection(facts: Facts): readonly MissingCode[] {
  return codes([
    [!facts.rfConnected, 'rfNotConnected'],
    [facts.rfConnected && !facts.rfAtSheetPoint, 'rfWrongPoint'],
    [facts.rfConnected && !facts.rfTerminated, 'rfNotTerminated'],
    [!facts.yAtSheetPoint, 'yWrongPoint'],
    [facts.yAtSheetPoint && !facts.yTipAsSheet, 'yWrongTip'],
    [!facts.xConnected, 'xNotConnected'],
    [!facts.earthed, 'notEarthed'],
    [!facts.biasConnected, 'biasNotConnected'],
    [!facts.powered, 'powerOff'],
  ]);
}

export function missingSetUp(part: SetUpPart, facts: Facts, wants: Wants): readonly MissingCode[] {
  switch (part) {
    case 'sweep':
      return codes([
        [!facts.sweeping, 'notSweeping'],
        [!facts.sourceAsSheet, 'sourceNotAsSheet'],
        [facts.sourceAsSheet && carrierIsOff(facts, wants), 'carrierOff'],
        [facts.sweeping && !facts.spanCovers, 'sweepTooNarrow'],
        [facts.sweepLag > SWEEP_LAG_LIMIT, 'sweepTooFast'],
      ]);
    case 'phasing':
      return codes([[Math.abs(facts.residualPhaseDegrees) > PHASE_TOLERANCE_DEGREES, 'phaseOff']]);
    case 'blanking':
      return codes([[!facts.blanking, 'blankingOff']]);
    case 'bias':
      return codes([[biasIsOff(facts), 'biasOff']]);
    case 'level':
      return codes([
        [facts.compressionDb > COMPRESSION_LIMIT_DB, 'overloaded'],
        [facts.detectedPeakVolts < WEAKEST_SHARE * facts.sheetPeakVolts, 'tooWeak'],
      ]);
    case 'markers':
      return codes([
        [facts.markersMissingHz.length > 0, 'markersMissing'],
        [!facts.markersAdded, 'markersThroughSet'],
        [facts.pipHeightRatio > PIP_SHARE.high, 'pipsTooHigh'],
        [facts.pipHeightRatio < PIP_SHARE.low, 'pipsTooLow'],
        [dialIsOff(facts, wants), 'dialOff'],
      ]);
    case 'trace':
      return codes([
        [!facts.xDirectionAsSheet, 'xReversed'],
        [!facts.traceOnScreen, 'traceOffScreen'],
        [facts.traceHeightDiv < TRACE_HEIGHT_DIV, 'traceTooLow'],
        [!facts.dcCoupled, 'acCoupled'],
        [facts.verticalLagDegrees > VERTICAL_LAG_LIMIT_DEGREES, 'verticalLag'],
        [facts.steelIn !== null, 'steelInSlug'],
      ]);
  }
}

/** What may be missing of each part: for a sheet whose steps are about parts. */
export const SET_UP_CODES: Readonly<Record<SetUpPart, readonly MissingCode[]>> = {
  sweep: ['notSweeping', 'sourceNotAsSheet', 'carrierOff', 'sweepTooNarrow', 'sweepTooFast'],
  phasing: ['phaseOff'],
  blanking: ['blankingOff'],
  bias: ['biasOff'],
  level: ['overloaded', 'tooWeak'],
  markers: ['markersMissing', 'markersThroughSet', 'pipsTooHigh', 'pipsTooLow', 'dialOff'],
  trace: ['xReversed', 'traceOffScreen', 'traceTooLow', 'acCoupled', 'verticalLag', 'steelInSlug'],
};

export const SET_UP_PARTS: readonly SetUpPart[] = ['sweep', 'phasing', 'blanking', 'bias', 'level', 'markers', 'trace'];

export function missingAlignment(facts: Facts, secondsAtRest: number | null): readonly MissingCode[] {
  return codes([
    [facts.slugsTouched === 0, 'noSlugTurned'],
    [facts.slugsTouched > 0 && secondsAtRest !== null && secondsAtRest < SETTLE_SECONDS, 'slugTurning'],
  ]);
}

const PROOF_CODES: Readonly<Record<ProofId, MissingCode>> = {
  halveLevel: 'levelNotHalved',
  markersOffOn: 'markersNotSwitched',
  touchEarth: 'earthNotTouched',
  swingPhase: 'phaseNotSwung',
  skirts: 'skirtsNotSeen',
};

export function missingProofs(facts: Facts, wants: Wants): readonly MissingCode[] {
  return wants.proofs.filter((proof) => !facts.proofsDone.includes(proof)).map((proof) => PROOF_CODES[proof]);
}

export function missingByPhase(
  facts: Facts,
  wants: Wants,
  secondsAtRest: number | null,
): Readonly<Record<Phase, readonly MissingCode[]>> {
  return {
    safe: missingSafety(facts),
    connect: missingConnection(facts),
    setUp: SET_UP_PARTS.flatMap((part) => missingSetUp(part, facts, wants)),
    align: missingAlignment(facts, secondsAtRest),
    prove: missingProofs(facts, wants),
  };
}

function biasIsOff({ biases }: Facts): boolean {
  return biases.some(({ errorVolts, toleranceVolts }) => Math.abs(errorVolts) > toleranceVolts);
}

function carrierIsOff({ carrierErrorHz, response }: Facts, { sheets }: Wants): boolean {
  const carrierHz = sheets[response]?.carrierHz ?? null;
  if (carrierErrorHz === null || carrierHz === null) return false;
  return Math.abs(carrierErrorHz) > CARRIER_SHARE * carrierHz;
}

function dialIsOff({ dialErrorHz, response }: Facts, { sheets }: Wants): boolean {
  return dialErrorHz !== null && Math.abs(dialErrorHz) > DIAL_SHARE * (sheets[response]?.spanHz ?? 0);
}

function codes(checks: readonly (readonly [boolean, MissingCode])[]): readonly MissingCode[] {
  return checks.filter(([missing]) => missing).map(([, code]) => code);
}
