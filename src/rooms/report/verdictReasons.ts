/** What keeps a verdict from standing, as sentences with their moments. Pure. */
import { capWords } from '../../describe/ruleWords.ts';
import { scoreLineSentence } from '../../describe/scoreLine.ts';
import type { Report, VerdictId } from '../../grading/report.ts';
import type { Receiver } from '../../receiver/receiver.ts';
import type { Words } from '../../words/words.ts';

export interface VerdictReason {
  readonly text: string;
  readonly at: number | null;
}

export function reasonsOf(
  words: Words,
  report: Pick<Report, 'verdicts' | 'lines' | 'caps'>,
  receiver: Receiver,
  id: VerdictId,
): readonly VerdictReason[] {
  return report.verdicts[id].lacks.flatMap((lack) => {
    const line = report.lines.find((one) => one.id === lack);
    if (line !== undefined) return [{ text: scoreLineSentence(words, line, receiver), at: line.atSeconds }];
    const cap = report.caps.find((one) => one.rule === lack);
    if (cap === undefined) return [];
    const text = capWords(words, cap.rule).capped(cap.limit, words.report.clock(cap.atSeconds));
    return [{ text, at: cap.atSeconds }];
  });
}
