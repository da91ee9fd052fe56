/** What the check of a run file found, in words: a title, a sentence, and what differs, one line each. */

import { unreachable } from '../base/never.ts';
import type { Verdict, VerdictDetail } from '../run/verify.ts';
import type { Words } from '../words/words.ts';
import { problemSentence, saidPhrase } from './problem.ts';

export interface VerdictWords {
  readonly title: string;
  readonly sentence: string;
  readonly details: readonly string[];
}

export function verdictWords(words: Words, verdict: Verdict): VerdictWords {
  const details =
    verdict.kind === 'scoreDiffers'
      ? verdict.lines.map(({ id, claimed, recomputed }) =>
          words.verdicts.sentences.lineDiffers(id, pointsWord(words, claimed), pointsWord(words, recomputed)),
        )
      : verdict.kind === 'unreadable'
        ? verdict.problems.map((problem) => problemSentence(words, problem))
        : [];
  return { title: words.verdicts.titles[verdict.kind], sentence: sentenceOf(words, verdict), details };
}

function sentenceOf(words: Words, verdict: Verdict): string {
  const { verdicts, refusals, format } = words;
  const say = verdicts.sentences;
  switch (verdict.kind) {
    case 'verified':
      return say.verified(verdict.score.total, verdict.score.passed);
    case 'unclaimed':
      return say.unclaimed(verdict.score.total);
    case 'scoreDiffers':
      return say.scoreDiffers(verdict.claimed.total, verdict.recomputed.total);
    case 'claimMissing':
      return say.claimMissing(verdict.score.total);
    case 'eventsChanged':
      return say.eventsChanged;
    case 'headChanged':
      return say.headChanged;
    case 'truncated':
      return verdict.recorded === null ? say.neverSigned(verdict.found) : say.cutOff(verdict.found, verdict.recorded);
    case 'reordered':
      return verdict.index === null ? say.reordered : say.reorderedAt(verdict.index + 1);
    case 'foreign':
      return say.foreign(verdict.part, toldWords(words, verdict.found), toldWords(words, verdict.wanted));
    case 'impossibleEvent': {
      const reason = verdicts.badTimeInFile[verdict.reason] ?? refusals[verdict.reason];
      return say.impossibleEvent(
        verdict.index + 1,
        format.clock(verdict.atMs / 1000),
        verdicts.acts[verdict.type],
        reason,
      );
    }
    case 'tooFast':
      return say.tooFast(
        verdict.limit,
        verdict.found,
        verdict.most,
        verdict.withinMs / 1000,
        format.clock(verdict.atMs / 1000),
      );
    case 'unreadable':
      return say.unreadable(verdict.problems.length);
    default:
      return unreachable(verdict);
  }
}

export function toldWords(words: Words, what: VerdictDetail): string {
  return typeof what === 'string' ? what : saidPhrase(words, what);
}

function pointsWord({ verdicts, format }: Words, points: number | null): string {
  return points === null ? verdicts.sentences.lineAbsent : format.written(points, 2);
}
