/** The sentences of the product, by what they are about: one place to import from. */
import type { Words } from '../words/words.ts';

export { curveSentence, pipName, readCurve } from './curve.ts';
export { type Finding, findings } from './findings.ts';
export { refusalSentence } from './refusal.ts';
export { scoreLineSentence } from './scoreLine.ts';
export { slugName, slugNameFirst } from './slugName.ts';
export { verdictWords } from './verdict.ts';

/** What is still missing, and the way to mend it. Codes come from SessionView.missing. */
export function missingSentence({ missing }: Words, code: string): string {
  if (!Object.hasOwn(missing, code)) throw new Error(`no words for the missing ${code}`);
  return missing[code as keyof Words['missing']];
}
