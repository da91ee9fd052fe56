/** What to try next time, for a line of the score that lost points. Its sentence (scoreLine.ts) says what was off, why, and where it could have been seen. */
import type { ScoreLine } from '../grading/report.ts';
import type { Words } from '../words/words.ts';

export function adviceFor(
  { advice, grading }: Words,
  { rule, part, symptom }: Pick<ScoreLine, 'rule' | 'part' | 'symptom'>,
): string {
  if (!Object.hasOwn(advice, rule)) throw new Error(`no advice for the rule ${rule}`);
  if (symptom !== undefined && symptom.kind !== 'curve' && symptom.kind !== 'sCurve')
    return grading.faults.tries[symptom.kind];
  // Where a failed part is to blame no slug is named.
  return advice[part === undefined ? (rule as keyof Words['advice']) : 'G62'];
}
