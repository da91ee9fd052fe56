/** What still keeps each phase from being done: measured facts in, codes out. The machine's guards and the page's list are both made of this. */
import type { ProofId } from '../bench/benchState.ts';
import type { Facts } from '../bench/facts.ts';
import {
  COMPRESSION_LIMIT_DB,
  PHASE_TOLERANCE_DEGREES,
  PIP_SHARE,
  TRACE_HEIGHT_DIV,
  WEAKEST_SHARE,
} from '../grading/limits.ts';
import type { SetUpPart } from '../receiver/receiver.ts';
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
  'phaseOff',
  'blankingOff',
  'biasOff',
  'overloaded',
  'tooWeak',
  'markersMissing',
  'markersThroughSet',
  'pipsTooHigh',
  'pipsTooLow',
  'xReversed',
  'traceOffScreen',
  'traceTooLow',
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
  /** null: the sheet asks for no bias */
  readonly biasToleranceVolts: number | null;
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
        [facts.sweeping && !facts.spanCovers, 'sweepTooNarrow'],
      ]);
    case 'phasing':
      return codes([[Math.abs(facts.residualPhaseDegrees) > PHASE_TOLERANCE_DEGREES, 'phaseOff']]);
    case 'blanking':
      return codes([[!facts.blanking, 'blankingOff']]);
    case 'bias':
      return codes([[biasIsOff(facts, wants), 'biasOff']]);
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
      ]);
    case 'trace':
      return codes([
        [!facts.xDirectionAsSheet, 'xReversed'],
        [!facts.traceOnScreen, 'traceOffScreen'],
        [facts.traceHeightDiv < TRACE_HEIGHT_DIV, 'traceTooLow'],
      ]);
  }
}

/** What may be missing of each part: for a sheet whose steps are about parts. */
export const SET_UP_CODES: Readonly<Record<SetUpPart, readonly MissingCode[]>> = {
  sweep: ['notSweeping', 'sweepTooNarrow'],
  phasing: ['phaseOff'],
  blanking: ['blankingOff'],
  bias: ['biasOff'],
  level: ['overloaded', 'tooWeak'],
  markers: ['markersMissing', 'markersThroughSet', 'pipsTooHigh', 'pipsTooLow'],
  trace: ['xReversed', 'traceOffScreen', 'traceTooLow'],
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

function biasIsOff(facts: Facts, wants: Wants): boolean {
  if (facts.biasErrorVolts === null || wants.biasToleranceVolts === null) return false;
  return Math.abs(facts.biasErrorVolts) > wants.biasToleranceVolts;
}

function codes(checks: readonly (readonly [boolean, MissingCode])[]): readonly MissingCode[] {
  return checks.filter(([missing]) => missing).map(([, code]) => code);
}
