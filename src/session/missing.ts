/** What still keeps each phase from being done: measured facts in, codes out. The machine's guards and the page's list are both made of this. */

import type { Facts } from '../bench/facts.ts';
import type { Findings } from '../bench/witness.ts';
import type { SheetAsks } from '../grading/rules/rule.ts';
import { isOff, type SetUpRuleNumber, standingBy } from '../grading/standing.ts';
import type { SetUpPart } from '../receiver/receiver.ts';
import type { ProofId } from '../scenario/proofId.ts';
import type { Alignment } from './alignment.ts';
import type { Phase } from './phase.ts';

export const MISSING_CODES = [
  'cautionsNotRead',
  'notIsolated',
  'notEarthed',
  'rfNotConnected',
  'rfWrongPoint',
  'rfNotTerminated',
  'rfNoCapacitor',
  'yWrongPoint',
  'yWrongTip',
  'xNotConnected',
  'biasNotConnected',
  'powerOff',
  'notSweeping',
  'sweepTooNarrow',
  'sweepTooWide',
  'sourceNotAsSheet',
  'carrierOff',
  'sweepTooFast',
  'slowSweepOff',
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
  'traceDark',
  'traceOffScreen',
  'traceTooLow',
  'acCoupled',
  'verticalLag',
  'steelInSlug',
  'bridgeOn',
  'nothingOnTube',
  'slugTurning',
  'linesOutside',
  'levelNotHalved',
  'markersNotSwitched',
  'earthNotTouched',
  'phaseNotSwung',
  'skirtsNotSeen',
  'biasNotMetered',
  'crystalNotLifted',
  'pipNotRead',
  'levelNotSaid',
  'markersNotSaid',
  'earthNotSaid',
  'phaseNotSaid',
  'skirtsNotSaid',
  'biasNotSaid',
  'crystalNotSaid',
  'pipNotSaid',
] as const;
export type MissingCode = (typeof MISSING_CODES)[number];

/** What this scenario asks for, beyond what the facts already know. */
export interface Wants {
  /** the phase of each step of the sheet */
  readonly steps: readonly Phase[];
  readonly proofs: readonly ProofId[];
  /** what each response of the sheet asks of the set-up, by its id */
  readonly sheets: Readonly<Record<string, SheetAsks>>;
}

/** A slug counts as turning until it has rested this long, seconds. */
export const SETTLE_SECONDS = 2;
/** Least height of the trace on the graticule, divisions: to judge a curve by, and to see that there is one. */
const TRACE_HEIGHT_DIV = 3;
const SEEN_HEIGHT_DIV = 0.5;
/** So many times the sheet's span is too wide: the hump is a spike on which nothing can be judged. */
const TOO_WIDE = 2;

/** Without a curve on the tube nothing can be set by it, aligned or proved. */
export function missingPicture(facts: Facts): readonly MissingCode[] {
  const joined = facts.powered && facts.rfConnected && facts.xConnected;
  const seen = facts.detectedPeakVolts > 0 && facts.traceHeightDiv >= SEEN_HEIGHT_DIV;
  return codes([[!joined || !seen, 'nothingOnTube']]);
}

function missingSafety(facts: Facts): readonly MissingCode[] {
  return codes([
    [!facts.cautionsAcknowledged, 'cautionsNotRead'],
    [!facts.isolated, 'notIsolated'],
  ]);
}

/** A step of the sheet sweeps from another point than the whole curve; that is no mistake while there is something to align. */
function onItsWay(facts: Facts, alignment: Alignment | null): boolean {
  return facts.rfAtStepPoint && (alignment === null || alignment.off.length > 0 || alignment.moved.length > 0);
}

/** In the order of the sheets: the earth strap first, and power last, since leads are clipped on a set that is off. */
function missingConnection(facts: Facts, alignment: Alignment | null): readonly MissingCode[] {
  return codes([
    [!facts.earthed, 'notEarthed'],
    [!facts.rfConnected, 'rfNotConnected'],
    [facts.rfConnected && !facts.rfAtSheetPoint && !onItsWay(facts, alignment), 'rfWrongPoint'],
    [facts.rfConnected && !facts.rfTerminated, 'rfNotTerminated'],
    [facts.rfConnected && !facts.rfThroughCapacitor, 'rfNoCapacitor'],
    [!facts.yAtSheetPoint, 'yWrongPoint'],
    [facts.yAtSheetPoint && !facts.yTipAsSheet, 'yWrongTip'],
    [!facts.xConnected, 'xNotConnected'],
    [!facts.biasConnected, 'biasNotConnected'],
    [!facts.powered, 'powerOff'],
  ]);
}

/** The moment that a check of the set-up looks at; `off` asks the row of the score, so that what has its tick also earns its points. */
interface Moment {
  readonly facts: Facts;
  readonly sheet: SheetAsks;
  readonly off: (rule: SetUpRuleNumber) => boolean;
  readonly passed: (rule: SetUpRuleNumber) => 'low' | 'high' | null;
}
type Check = readonly [MissingCode, (moment: Moment) => boolean];

const BLANK: Check = ['nothingOnTube', ({ facts }) => missingPicture(facts).length > 0];

const SET_UP_CHECKS: Readonly<Record<SetUpPart, readonly Check[]>> = {
  sweep: [
    // A source that stands still is why there is no curve.
    ['notSweeping', ({ facts }) => !facts.sweeping],
    BLANK,
    ['sourceNotAsSheet', ({ facts }) => !facts.sourceAsSheet],
    ['carrierOff', ({ facts, off }) => facts.sourceAsSheet && off('G54')],
    ['sweepTooNarrow', ({ facts, off }) => facts.sweeping && off('G18')],
    ['slowSweepOff', ({ facts }) => facts.sweeping && !facts.slowSweepAsSheet],
    ['sweepTooWide', ({ facts, sheet }) => facts.sweeping && facts.spanHz > TOO_WIDE * sheet.spanHz],
    ['sweepTooFast', ({ off }) => off('G60')],
  ],
  phasing: [BLANK, ['phaseOff', ({ off }) => off('G13')]],
  blanking: [BLANK, ['blankingOff', ({ off }) => off('G14')]],
  // A clamp can be set and measured without a curve.
  bias: [
    ['powerOff', ({ facts }) => !facts.powered],
    ['biasNotConnected', ({ off }) => off('G61')],
    ['biasOff', ({ off }) => off('G15')],
  ],
  level: [
    BLANK,
    ['overloaded', ({ off }) => off('G16')],
    // From a later point fewer stages stand before the detector.
    ['tooWeak', ({ facts, off }) => facts.rfAtSheetPoint && off('G17')],
  ],
  markers: [
    BLANK,
    ['markersMissing', ({ off }) => off('G20')],
    ['markersThroughSet', ({ off }) => off('G22')],
    ['pipsTooHigh', ({ passed }) => passed('G21') === 'high'],
    ['pipsTooLow', ({ passed }) => passed('G21') === 'low'],
    ['dialOff', ({ off }) => off('G59')],
  ],
  trace: [
    BLANK,
    ['xReversed', ({ off }) => off('G19')],
    ['traceDark', ({ facts }) => !facts.traceLit],
    ['traceOffScreen', ({ facts }) => !facts.traceOnScreen],
    ['traceTooLow', ({ facts }) => facts.traceHeightDiv < TRACE_HEIGHT_DIV],
    ['acCoupled', ({ off }) => off('G55')],
    ['verticalLag', ({ off }) => off('G56')],
    ['steelInSlug', ({ off }) => off('G58')],
    ['bridgeOn', ({ off }) => off('G67')],
  ],
};

function missingSetUp(part: SetUpPart, facts: Facts, { sheets }: Wants): readonly MissingCode[] {
  const sheet = sheets[facts.response];
  if (sheet === undefined) throw new Error(`no sheet for the response ${facts.response}`);
  const moment: Moment = {
    facts,
    sheet,
    off: (rule) => isOff(rule, facts, sheet),
    passed: (rule) => standingBy(rule, facts, sheet).passed,
  };
  return codes(SET_UP_CHECKS[part].map(([code, isMissing]) => [isMissing(moment), code]));
}

/** What may be missing of each part: for a sheet whose steps are about parts. */
export function setUpCodes(part: SetUpPart): readonly MissingCode[] {
  return SET_UP_CHECKS[part].map(([code]) => code);
}

export const SET_UP_PARTS: readonly SetUpPart[] = ['sweep', 'phasing', 'blanking', 'bias', 'level', 'markers', 'trace'];

/** What is not known counts as not done: a slug has just moved, or there is nothing to judge it by. */
function missingAlignment(
  facts: Facts,
  secondsAtRest: number | null,
  alignment: Alignment | null,
): readonly MissingCode[] {
  const turning = secondsAtRest !== null && secondsAtRest < SETTLE_SECONDS;
  return codes([
    [missingPicture(facts).length > 0, 'nothingOnTube'],
    [turning || alignment === null || alignment.moved.length > 0, 'slugTurning'],
    [alignment !== null && alignment.off.length > 0, 'linesOutside'],
  ]);
}

/** Of each proof: the act is to be made, or what was seen is to be said. */
const PROOF_CODES: Readonly<Record<ProofId, { readonly act: MissingCode; readonly word: MissingCode }>> = {
  halveLevel: { act: 'levelNotHalved', word: 'levelNotSaid' },
  markersOffOn: { act: 'markersNotSwitched', word: 'markersNotSaid' },
  touchEarth: { act: 'earthNotTouched', word: 'earthNotSaid' },
  swingPhase: { act: 'phaseNotSwung', word: 'phaseNotSaid' },
  skirts: { act: 'skirtsNotSeen', word: 'skirtsNotSaid' },
  bias: { act: 'biasNotMetered', word: 'biasNotSaid' },
  liftCrystal: { act: 'crystalNotLifted', word: 'crystalNotSaid' },
  pipDown: { act: 'pipNotRead', word: 'pipNotSaid' },
};

/** Of the proofs that are asked for, those of which act or word is among what is missing. */
export function openProofs(proofs: readonly ProofId[], missing: readonly string[]): readonly ProofId[] {
  return proofs.filter(
    (proof) => missing.includes(PROOF_CODES[proof].act) || missing.includes(PROOF_CODES[proof].word),
  );
}

/** A proof is an act and a look: neither stands for the other. */
function missingProofs(facts: Facts, wants: Wants, findings: Findings): readonly MissingCode[] {
  const open = wants.proofs.map((proof): readonly [boolean, MissingCode] => {
    const { act, word } = PROOF_CODES[proof];
    const isMade = facts.proofsDone.includes(proof) && findings[proof] !== 'again';
    return [findings[proof] !== 'right' || !isMade, isMade ? word : act];
  });
  return [...missingPicture(facts), ...codes(open)];
}

export function missingByPhase(
  facts: Facts,
  wants: Wants,
  secondsAtRest: number | null,
  alignment: Alignment | null,
  findings: Findings,
): Readonly<Record<Phase, readonly MissingCode[]>> {
  return {
    safe: missingSafety(facts),
    connect: missingConnection(facts, alignment),
    setUp: [...new Set(SET_UP_PARTS.flatMap((part) => missingSetUp(part, facts, wants)))],
    align: missingAlignment(facts, secondsAtRest, alignment),
    prove: missingProofs(facts, wants, findings),
  };
}

function codes(checks: readonly (readonly [boolean, MissingCode])[]): readonly MissingCode[] {
  return checks.filter(([missing]) => missing).map(([, code]) => code);
}
