/** What a certificate says, and why a scenario is refused one. Plain data. */
import type { SpecItem } from '../receiver/specification.ts';

/** A line of the sheet at some setting of the slugs. `excess`: tolerances outside its limits; negative: inside by so much. */
export interface CertifiedLine {
  readonly response: string;
  readonly line: string;
  readonly unit: SpecItem['unit'];
  readonly measured: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly excess: number;
}

export interface RouteStep {
  readonly slug: string;
  /** net, positive = core in */
  readonly turns: number;
}

/** Which set the seed of a scenario deals, and what makes it quick to lay out again. */
export interface CertifiedSet {
  readonly seed: number;
  /** which draw of the seed it is, from 0 */
  readonly draw: number;
  /** by slug id: what its coil has where it is right */
  readonly henries: Readonly<Record<string, number>>;
}

export interface Certificate {
  readonly format: 'haystack-certificate';
  readonly version: 1;
  readonly scenario: string;
  readonly scenarioHash: string;
  readonly receiverHash: string;
  readonly engine: string;
  /** null where the scenario puts the design itself on the bench */
  readonly set: CertifiedSet | null;
  /** every line of the sheet with the sound set's slugs at their nominal places */
  readonly nominal: readonly CertifiedLine[];
  /** the worst line as found */
  readonly asFound: CertifiedLine;
  /** the nearest that slugs alone come while the failed parts stand in the set; null where no failed part touches the curve */
  readonly uncured: CertifiedLine | null;
  /** slugs in the order of the route */
  readonly route: readonly RouteStep[];
  /** the worst line at the end of the route */
  readonly reached: CertifiedLine;
  /** starts that the search needed to find its own way, the scenario's first; null where it found none and the nominal places are the route */
  readonly tries: number | null;
  readonly par: { readonly turns: number; readonly seconds: number };
  /** 0 to 10 */
  readonly difficulty: number;
  /** points of the route done without a slip */
  readonly points: number;
}

/** What stands in the way of a certificate. */
export type CertifyProblem =
  /** the sound set with its slugs at their nominal places misses its own sheet */
  | { readonly code: 'nominalOutside'; readonly line: CertifiedLine }
  /** no setting of the slugs meets the sheet with everything cured; the line is the nearest miss */
  | { readonly code: 'outOfReach'; readonly line: CertifiedLine }
  /** a failed part touches the curve, and yet slugs alone meet the sheet */
  | { readonly code: 'nothingToSee'; readonly part: string }
  /** the sheet is met as the set is found, or with an eighth of a turn on one slug */
  | { readonly code: 'nothingToDo' }
  /** the bench refuses an act of the route */
  | { readonly code: 'refused'; readonly act: string; readonly reason: string }
  /** a line of the score that the route cannot have in full */
  | { readonly code: 'lineLost'; readonly line: string; readonly share: number };

export type Certification =
  | { readonly ok: true; readonly certificate: Certificate }
  | { readonly ok: false; readonly problems: readonly CertifyProblem[] };
