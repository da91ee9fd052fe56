/** A line of the score as one sentence: the figure, what was wanted, the slug to blame, and where it could have been seen. Which words, its rule says. */
import { lineIsMet, type ScoreLine } from '../grading/report.ts';
import type { Receiver } from '../receiver/receiver.ts';
import type { RuleSentence, Said } from '../words/ruleWords.ts';
import type { Words } from '../words/words.ts';
import { partCalled } from './partCalled.ts';
import { lineWords } from './ruleWords.ts';
import { saidOf } from './said.ts';
import { slugName } from './slugName.ts';
import { symptomSentence } from './symptomSentence.ts';

export function scoreLineSentence(words: Words, line: ScoreLine, receiver: Receiver): string {
  const { name, good, bad, seen } = lineWords(words, line.rule);
  const { held } = words.grading;
  if (line.held === 'noPicture' && name !== undefined) return held.noPicture(name);
  const said = saidOf(words, line, receiver);
  const told = tell(lineIsMet(line) ? good : bad, said);
  const sentence = seen === undefined ? told : withCause(words, line, receiver, told, tell(seen, said));
  return [
    sentence.charAt(0).toUpperCase() + sentence.slice(1),
    ...(line.symptom === undefined ? [] : [symptomSentence(words, line.symptom, receiver)]),
    ...(line.held === 'helper' ? [held.helper] : []),
    ...(line.held === 'workLeft' ? [line.points === 0 ? held.whole : held.inPart] : []),
  ].join(' ');
}

function tell(told: RuleSentence, said: Said): string {
  return typeof told === 'string' ? told : told(said);
}

/** Of a demand of the sheet: who is to blame, and where it could have been seen. */
function withCause(words: Words, line: ScoreLine, receiver: Receiver, what: string, seen: string): string {
  const { causes } = words.grading;
  const { turns, turnsLong } = words.format;
  if (lineIsMet(line)) return `${what}.`;
  if (line.part !== undefined) return causes.part(what, partCalled(words, receiver, line.part), seen);
  if (line.cause === null) return causes.unknown(what, seen);
  const slug = slugName(words, receiver, line.cause.slug);
  const size = turns(line.cause.turns) === '0' ? causes.hair : turnsLong(line.cause.turns);
  return causes.whole(what, slug, size, line.cause.turns > 0 ? 'in' : 'out', seen);
}
