/** Finds the words of a rule by its number. */
import type { CapWords, DemandWords, LineWords, PictureWords } from '../words/ruleWords.ts';
import type { Words } from '../words/words.ts';

type AnyWords = CapWords | LineWords | DemandWords | PictureWords;

export function ruleLabel(words: Words, rule: string): string {
  return wordsOf(words, rule).label;
}

export function lineWords(words: Words, rule: string): LineWords & Partial<DemandWords & PictureWords> {
  const found = wordsOf(words, rule);
  if (!('advice' in found)) throw new Error(`the rule ${rule} makes no lines`);
  return found;
}

export function capWords(words: Words, rule: string): CapWords {
  const found = wordsOf(words, rule);
  if (!('capped' in found)) throw new Error(`the rule ${rule} caps nothing`);
  return found;
}

function wordsOf({ rules }: Words, rule: string): AnyWords {
  const table: Readonly<Record<string, AnyWords>> = rules;
  const found = Object.hasOwn(table, rule) ? table[rule] : undefined;
  if (found === undefined) throw new Error(`no words for the rule ${rule}`);
  return found;
}
