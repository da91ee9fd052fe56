/** What to try next time, for a line of the score that lost points. Its sentence (scoreLine.ts) says what was off, why, and where it could have been seen. */
import type { ScoreLine } from '../grading/report.ts';
import { FAILED_PART } from '../grading/rules/sheetRules.ts';
import type { Words } from '../words/words.ts';
import { lineWords } from './ruleWords.ts';

export function adviceFor(words: Words, { rule, part, symptom }: Pick<ScoreLine, 'rule' | 'part' | 'symptom'>): string {
  if (symptom !== undefined && symptom.kind !== 'curve' && symptom.kind !== 'sCurve')
    return words.grading.faults.tries[symptom.kind];
  // Where a failed part is to blame no slug is named.
  return part === undefined ? lineWords(words, rule).advice : words.rules[FAILED_PART].advice;
}
