/** What was wrong with a set as it was found, and what was said of it at signing, as grading hands it out. */
import type { Diagnosis } from '../scenario/diagnosis.ts';

export type Contact = 'earth' | 'rf';

export interface SetAsFound {
  /** each failed part, by any of its names: two that have changed places are one failure */
  readonly failed: readonly (readonly string[])[];
  readonly badContacts: readonly Contact[];
  /** leads that stood as the sheet has them, in good contact */
  readonly goodContacts: readonly Contact[];
  /** slugs that have to be named, and how far too deep they stood */
  readonly astray: readonly { readonly slug: string; readonly turns: number }[];
  /** slugs that may not be named; those between are a matter of opinion */
  readonly inPlace: readonly string[];
  /** nothing had failed and no slug was astray */
  readonly good: boolean;
}

/** What was said, and how it differs from what was so. */
export interface JudgedDiagnosis {
  readonly stated: Diagnosis | null;
  readonly asFound: SetAsFound;
  /** of parts and contacts */
  readonly unnamed: readonly string[];
  readonly blamed: readonly string[];
  readonly slugsUnnamed: readonly string[];
  readonly slugsBlamed: readonly string[];
}
