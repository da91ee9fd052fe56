/** What to try next time, for a line of the score that lost points. Its sentence (scoreLine.ts) says what was off, why, and where it could have been seen. */
import type { ScoreLine } from '../grading/report.ts';
import { adviceWords } from '../words/en/advice.ts';
import { faultWords } from '../words/en/grading.ts';

export function adviceFor({ rule, part, symptom }: Pick<ScoreLine, 'rule' | 'part' | 'symptom'>): string {
  if (!Object.hasOwn(adviceWords, rule)) throw new Error(`no advice for the rule ${rule}`);
  if (symptom !== undefined && symptom.kind !== 'curve' && symptom.kind !== 'sCurve')
    return faultWords.tries[symptom.kind];
  // Where a failed part is to blame no slug is named.
  return adviceWords[part === undefined ? (rule as keyof typeof adviceWords) : 'G62'];
}
