/** What grading hands out: measurements and reason codes. `describe` turns each line into one sentence. */
import type { RulesVersion } from '../base/engine.ts';
import { isInside } from '../base/limits.ts';
import type { ToldSymptom } from '../receiver/faults/fault.ts';
import type { ProofId } from '../scenario/proofId.ts';
import type { JudgedDiagnosis } from './judgedDiagnosis.ts';

export type Block = 'response' | 'truth' | 'proofs' | 'care' | 'economy';
export const BLOCKS: readonly Block[] = ['response', 'truth', 'proofs', 'care', 'economy'];

export type MeasuredUnit =
  | 'percent'
  | 'db'
  | 'hz'
  | 'degrees'
  | 'volts'
  | 'turns'
  | 'seconds'
  | 'count'
  | 'ratio'
  | 'yes';

/** What a failed part does to a set that is sound and aligned otherwise. */
export type PartSymptom =
  | {
      readonly kind: 'curve';
      /** the response of the sheet that shows it most */
      readonly response: string;
      readonly peakDb: number;
      readonly peakShiftHz: number;
      /** width at half power over what it should be */
      readonly widthRatio: number;
      /** largest change of level, and where */
      readonly worstDb: number;
      readonly worstHz: number;
    }
  | {
      readonly kind: 'sCurve';
      readonly response: string;
      readonly heightDb: number;
      /** null where it no longer crosses zero */
      readonly zeroShiftHz: number | null;
    }
  | {
      readonly kind: 'diode';
      readonly reversed: boolean;
      /** volts at the sheet's level over what they should be */
      readonly detectedRatio: number;
    }
  | {
      readonly kind: 'line';
      /** at rest, with nothing clipped on */
      readonly volts: number;
      readonly soundVolts: number;
    }
  /** nothing that can be measured: words by this key */
  | { readonly kind: ToldSymptom };

/** One line of the score. `low`/`high` are the wanted limits (null = open); `measured` and limits are in `unit`. */
export interface ScoreLine {
  /** unique in the report: `G2:45750000` */
  readonly id: string;
  /** number of the rule in docs/grading.md: `G2` */
  readonly rule: string;
  readonly block: Block;
  /** response lines: the response of the sheet that the line is about */
  readonly response?: string;
  readonly points: number;
  readonly max: number;
  readonly measured: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: MeasuredUnit;
  /** frequency or frequencies that the line is about */
  readonly hz: number | null;
  readonly toHz: number | null;
  /** proof, slug, lead or incident concerned */
  readonly subject: string | ProofId | null;
  /** when it happened, for a jump in the replay */
  readonly atSeconds: number | null;
  /** the slug that most moves this line and how far it stands from the nominal position (turns, positive = too far in); null when not about slugs */
  readonly cause: { readonly slug: string; readonly turns: number } | null;
  /** a failed part that keeps this line down more than any slug does: its name in the parts tray */
  readonly part?: string;
  /** G62: what the failed part does by itself */
  readonly symptom?: PartSymptom;
  /** G34, G35: nobody has certified the job, and the limit is a generous stand-in for par, not par */
  readonly parUnknown?: true;
  /** no verdict falls by it */
  readonly pointsOnly?: true;
  /** why less is paid than the figure would earn: there was no picture to judge by, part of the work is still to be done, or a helper did it; absent = nothing is held back */
  readonly held?: 'noPicture' | 'workLeft' | 'helper';
}

/** Earned in full, as far as its own measurement goes. */
export function lineIsMet(line: ScoreLine): boolean {
  return isInside(line, line.measured);
}

/** Four verdicts, and a run passes with all of them. */
export const VERDICT_IDS = ['aligned', 'true', 'proved', 'safe'] as const;
export type VerdictId = (typeof VERDICT_IDS)[number];

export interface RunVerdict {
  readonly stands: boolean;
  /** ids of the lines that keep it from standing; of `safe` the numbers of the caps */
  readonly lacks: readonly string[];
}

export interface Cap {
  readonly rule: string;
  readonly limit: number;
  readonly subject: string;
  readonly atSeconds: number;
}

/** Result word by our own ladder, from bare straw to a full stack. */
export type ResultWord = 'stubble' | 'swath' | 'windrow' | 'haycock' | 'haystack';

export interface CurveSample {
  readonly hz: Float64Array;
  /** level relative to the curve's own reference (its peak; an S-curve's half height), linear, with its sign */
  readonly relative: Float64Array;
}

/** One response of the sheet before and after the work, and as it should be. */
export interface CurveSet {
  readonly response: string;
  readonly before: CurveSample;
  readonly after: CurveSample;
  readonly nominal: CurveSample;
}

export interface Report {
  /** under which rules */
  readonly rules: RulesVersion;
  readonly total: number;
  readonly passed: boolean;
  readonly verdicts: Readonly<Record<VerdictId, RunVerdict>>;
  /** under the first rules: what keeps a run with enough points from passing */
  readonly wanting: readonly ('proof' | 'work' | 'part')[];
  readonly word: ResultWord;
  readonly blocks: Readonly<Record<Block, { readonly points: number; readonly max: number }>>;
  readonly lines: readonly ScoreLine[];
  readonly caps: readonly Cap[];
  readonly turns: number;
  readonly parTurns: number;
  readonly seconds: number;
  readonly parSeconds: number;
  /** nobody has certified the job: both pars only stand for one, and are told to nobody */
  readonly parUnknown?: true;
  /** those that were judged, in the order of the sheet */
  readonly curves: readonly CurveSet[];
  /** a helper set the bench up */
  readonly helped?: true;
  /** left out where none was asked for */
  readonly diagnosis?: JudgedDiagnosis;
}

/** Par as it is told; null where there is none. */
export function parTold({ parTurns, parSeconds, parUnknown }: Pick<Report, 'parTurns' | 'parSeconds' | 'parUnknown'>) {
  return parUnknown === true ? null : { turns: parTurns, seconds: parSeconds };
}
