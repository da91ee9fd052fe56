/** What a list says of a scenario, and the little picture on its card, drawn beforehand: enough for the course page, which solves nothing and reads no scenario. */
import { bestLanguage, USUAL_LANGUAGE } from '../base/languages.ts';
import type { Par } from '../scenario/par.ts';
import type { Scenario } from '../scenario/scenario.ts';
import type { CardCurve } from './cardCurve.ts';

export interface ScenarioEntry
  extends Pick<
    Scenario,
    | 'id'
    | 'code'
    | 'title'
    | 'track'
    | 'order'
    | 'difficulty'
    | 'recommendedAfter'
    | 'sealed'
    | 'timeLimitSeconds'
    | 'seed'
    | 'receiver'
    | 'language'
  > {
  /** null: a sealed job, whose par is told with the report */
  readonly par: Par | null;
  /** nobody has certified it: its par is a guess */
  readonly uncertified?: true;
  /** opened from a file by the user, and what the certifier says of it; left out: it comes with the page */
  readonly own?: 'certified' | 'refused' | 'notTried';
  /** it stands on a receiver that does not come with the page */
  readonly ownReceiver?: true;
  /** of that receiver, where a sheet brought it along */
  readonly receiverHash?: string;
  readonly brief: string;
  /** name of the set, as its sheet has it */
  readonly receiverName: string;
  readonly curve: CardCurve;
  /** title and brief in other languages, by tag; left out: in none */
  readonly translations?: Readonly<Record<string, EntryText>>;
}

export type EntryText = Pick<ScenarioEntry, 'title' | 'brief'>;

/** The same entry, told in the language that suits best. */
export function entryIn(wanted: string, entry: ScenarioEntry): ScenarioEntry {
  const { language = USUAL_LANGUAGE, translations = {} } = entry;
  const best = bestLanguage(wanted, [language, ...Object.keys(translations)]) ?? language;
  const text = best === language ? undefined : translations[best];
  return text === undefined ? entry : { ...entry, ...text, language: best };
}
