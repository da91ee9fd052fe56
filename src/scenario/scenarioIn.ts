/** A scenario as it is told to somebody: its texts in the language of the file that suits best. The job is the same. */
import { bestLanguage, USUAL_LANGUAGE } from '../base/languages.ts';
import type { Scenario } from './scenario.ts';

/** The same scenario where its own language is the best there is. */
export function scenarioIn(wanted: string, scenario: Scenario): Scenario {
  const { language = USUAL_LANGUAGE, translations = {} } = scenario;
  const best = bestLanguage(wanted, [language, ...Object.keys(translations)]) ?? language;
  const text = best === language ? undefined : translations[best];
  return text === undefined ? scenario : { ...scenario, ...text, language: best };
}
