/** What the check of a run file found, in words: a title, a sentence, and what differs, one line each. */

import { unreachable } from '../base/never.ts';
import { problemLine } from '../base/result.ts';
import type { Verdict } from '../run/verify.ts';
import { clock, written } from '../words/en/benchFigures.ts';
import { refusalWords } from '../words/en/benchTalk.ts';
import { actNames, badTimeInFile, verdictTitles, verdictSentences as words } from '../words/en/problems.ts';

export interface VerdictWords {
  readonly title: string;
  readonly sentence: string;
  readonly details: readonly string[];
}

export function verdictWords(verdict: Verdict): VerdictWords {
  const details =
    verdict.kind === 'scoreDiffers'
      ? verdict.lines.map(({ id, claimed, recomputed }) =>
          words.lineDiffers(id, pointsWord(claimed), pointsWord(recomputed)),
        )
      : verdict.kind === 'unreadable'
        ? verdict.problems.map(problemLine)
        : [];
  return { title: verdictTitles[verdict.kind], sentence: sentenceOf(verdict), details };
}

function sentenceOf(verdict: Verdict): string {
  switch (verdict.kind) {
    case 'verified':
      return words.verified(verdict.score.total, verdict.score.passed);
    case 'unclaimed':
      return words.unclaimed(verdict.score.total);
    case 'scoreDiffers':
      return words.scoreDiffers(verdict.claimed.total, verdict.recomputed.total);
    case 'eventsChanged':
      return words.eventsChanged;
    case 'truncated':
      return verdict.recorded === null
        ? words.neverSigned(verdict.found)
        : words.cutOff(verdict.found, verdict.recorded);
    case 'reordered':
      return verdict.index === null ? words.reordered : words.reorderedAt(verdict.index + 1);
    case 'foreign':
      return words.foreign(verdict.part, verdict.found, verdict.wanted);
    case 'impossibleEvent': {
      const reason = badTimeInFile[verdict.reason] ?? refusalWords[verdict.reason];
      return words.impossibleEvent(verdict.index + 1, clock(verdict.atMs / 1000), actNames[verdict.type], reason);
    }
    case 'unreadable':
      return words.unreadable(verdict.problems.length);
    default:
      return unreachable(verdict);
  }
}

function pointsWord(points: number | null): string {
  return points === null ? words.lineAbsent : written(points, 2);
}
