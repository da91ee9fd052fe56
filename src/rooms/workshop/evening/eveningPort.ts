/** What the workshop's place for evening sheets may ask of the rest. */
import type { ScenarioEntry } from '../../../present/scenarioEntry.ts';

/** A sheet that is being made. */
export interface EveningDraft {
  readonly title: string;
  readonly author: string;
  /** null: no limit is stated */
  readonly minutes: number | null;
  readonly order: 'listed' | 'any';
  /** ids of scenarios, in their order */
  readonly scenarios: readonly string[];
  /** minutes for each of them, by id; left out: none stated for it */
  readonly minutesEach: Readonly<Record<string, number>>;
  /** how many have to be passed; null: no mark */
  readonly passMark: number | null;
  /** terms of an exam; null: an evening of practice */
  readonly exam: ExamTerms | null;
}

export interface ExamTerms {
  readonly candidates: 'numbers' | 'names';
  readonly attempts: 'one' | 'several';
  readonly ownDeal: boolean;
  readonly results: 'atEnd' | 'each';
}

/** A row for each candidate: for each scenario in order the number that its set is dealt from; null: the same set for all. */
export interface Deals {
  readonly rows: readonly { readonly candidate: string; readonly numbers: readonly (number | null)[] }[];
}

export interface EveningPort {
  /** of the course and of one's own */
  offered(): readonly ScenarioEntry[];
  draft(): EveningDraft;
  /** false: it could not be kept, and is lost with the page */
  write(draft: EveningDraft): boolean;
  /** hands the file to the browser; what stands in the way, else nothing */
  save(
    draft: EveningDraft,
    exam: { readonly terms: ExamTerms; readonly phrase: string } | null,
  ): Promise<readonly string[]>;
  /** What each candidate's set of each scenario is dealt from, as the sheet stands now; what stands in the way, else. */
  deals(draft: EveningDraft, terms: ExamTerms, candidates: readonly string[]): Promise<Deals | readonly string[]>;
  /** what the file will be called */
  fileName(draft: EveningDraft): string;
  /** of this page, without what stands behind `#`; null: no other machine can open it */
  readonly address: string | null;
  subscribe(listener: () => void): () => void;
}
