/** The sentences of the product, by what they are about: one place to import from. */
import type { MissingCode } from '../session/missing.ts';
import { missingSentences } from '../words/en/session.ts';

export { curveSentence, readCurve } from './curve.ts';
export { type Finding, findings } from './findings.ts';
export { refusalSentence } from './refusal.ts';
export { lineIsMet, scoreLineSentence } from './scoreLine.ts';
export { slugName, slugNameFirst } from './slugName.ts';
export { verdictWords } from './verdict.ts';

/** What is still missing, and the way to mend it. Codes come from SessionView.missing. */
export function missingSentence(code: string): string {
  if (!Object.hasOwn(missingSentences, code)) throw new Error(`no words for the missing ${code}`);
  return missingSentences[code as MissingCode];
}
