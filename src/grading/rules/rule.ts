/**
 * What a rule of the score is: one row says what it is about, what it reads there, within which limits, and what that weighs.
 * Grading walks the rows. The words of a row stand under its number in src/words/en/; a row without them does not compile.
 */
import type { RulesVersion } from '../../base/engine.ts';
import type { Incident, IncidentKind } from '../../bench/benchState.ts';
import type { Facts } from '../../bench/facts.ts';
import type { SheetSetUp } from '../../receiver/receiver.ts';
import type { SpecItem, SpecItemKind } from '../../receiver/specification.ts';
import type { Par } from '../../scenario/par.ts';
import type { ProofId } from '../../scenario/proofId.ts';
import type { DraftLine } from '../draft.ts';
import type { FallingLimits } from '../falling.ts';
import type { JudgedDiagnosis } from '../judgedDiagnosis.ts';

import type { Block, MeasuredUnit, PartSymptom, ScoreLine } from '../report.ts';

/** What rules may be about. Rows that follow each other and are about the same are laid out subject by subject. */
export interface Subjects {
  /** a demand of the sheet, measured on the true response, and what is to blame for it */
  readonly demand: {
    readonly response: string;
    readonly item: SpecItem;
    readonly cause: ScoreLine['cause'];
    readonly part?: string;
    /** so near to what is wanted, in tolerances, it is paid in full; absent = anywhere inside its limits */
    readonly fullWithin?: number;
  };
  /** a part that has to be replaced */
  readonly failedPart: { readonly part: string; readonly cured: boolean; readonly symptom?: PartSymptom };
  /** the bench as it stands, beside what the sheet asks for */
  readonly bench: Facts & { readonly sheet: SheetAsks };
  /** a bias line that the sheet names, one `of` so many */
  readonly biasLine: Facts['biases'][number] & { readonly of: number };
  /** a proof that the scenario asks for */
  readonly proof: { readonly proof: ProofId; readonly done: boolean; readonly doneAtSeconds: number | null };
  /** what was said to have been seen during a proof, beside what the tube showed */
  readonly finding: { readonly proof: ProofId; readonly fits: boolean; readonly atSeconds: number | null };
  /** what was said to have been wrong, beside what was */
  readonly diagnosis: JudgedDiagnosis & { readonly atSeconds: number | null };
  /** all that went wrong on the way */
  readonly mishaps: {
    readonly incidents: readonly Incident[];
    readonly partsMayFail: boolean;
    readonly onMains: boolean;
  };
  /** what the work took, beside its par */
  readonly effort: {
    readonly turns: number;
    readonly seconds: number;
    readonly par: Par;
  };
}
export type About = keyof Subjects;

/** What of the sheet's set-up the rules hold the facts against. */
export type SheetAsks = Pick<SheetSetUp, 'source' | 'carrierHz' | 'spanHz' | 'markersHz'>;

/** What a rule finds. */
export interface Reading
  extends Pick<
    DraftLine,
    'response' | 'hz' | 'toHz' | 'subject' | 'atSeconds' | 'cause' | 'part' | 'symptom' | 'parUnknown'
  > {
  /** in `unit`; it is rounded before points are made of it (G2) */
  readonly measured: number;
  readonly unit: MeasuredUnit;
  readonly limits: FallingLimits;
}

interface RuleAbout<A extends About> {
  /** in docs/grading.md: `G13` */
  readonly number: string;
  readonly block: Block;
  readonly about: A;
  /** among the lines of the block */
  readonly weight: number | ((subject: Subjects[A]) => number);
  /** nothing is paid where no picture stands on the tube (G12) */
  readonly needsPicture?: true;
  /** null = the rule does not apply here, and makes no line */
  readonly reads: (subject: Subjects[A]) => Reading | null;
  /** which demand of a sheet it is about */
  readonly demand?: SpecItemKind;
  /** the figure of a report shows it at its frequency */
  readonly drawn?: true;
  /** no verdict falls by it */
  readonly pointsOnly?: true;
  /** the rules of before do not know it */
  readonly since?: RulesVersion;
}

/** A rule that makes lines of the score. */
export type LineRule = { readonly [A in About]: RuleAbout<A> }[About];

/** A breach of safety: the whole run is worth no more than the limit, and does not pass. */
export interface CapRule {
  readonly number: string;
  readonly breach: IncidentKind;
  readonly limit: number;
}

export type Rule = LineRule | CapRule;

export function isCap(rule: Rule): rule is CapRule {
  return 'breach' in rule;
}

export function makesLines(rule: Rule): rule is LineRule {
  return !isCap(rule);
}
