/** What a learner may say, at signing, to have been wrong with the set as it was found. */
import type { Scenario } from './scenario.ts';

/** What of the set-up may have been wrong: contacts of leads, and what the knobs stood at. */
export const SET_UP_MATTERS = ['earth', 'rf', 'y', 'bias', 'level', 'sweep', 'phasing', 'markers'] as const;
export type SetUpMatter = (typeof SET_UP_MATTERS)[number];

/** Slugs and parts empty: the set was good, and was to be left alone. */
export interface Diagnosis {
  /** ids of the sheet */
  readonly slugs: readonly string[];
  /** by the names of the parts tray */
  readonly parts: readonly string[];
  readonly setUp: readonly SetUpMatter[];
}

/** Whether parts may be replaced and named. In a sealed job always: a tray that lay there only where something has failed would tell that something has. */
export function offersParts({ sealed, faults }: Pick<Scenario, 'sealed' | 'faults'>): boolean {
  return sealed || faults.length > 0;
}

/** Where something may have failed, where leaving alone may be the answer, and in every sealed job. */
export function asksDiagnosis(scenario: Pick<Scenario, 'sealed' | 'faults' | 'slugsRight'>): boolean {
  return offersParts(scenario) || scenario.slugsRight === true;
}
