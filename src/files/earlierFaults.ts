/**
 * Faults that said something else in earlier files. An open bypass was `farads` from its stage's output back to its input, mended by the capacitor at that stage; it is what such a capacitor does now, gain lost
 * over `ohms`, and feedback is a screen left off or a decoupling open, mended elsewhere. Words, hints and report of the file speak of the part, so that no reader can say which of them it should be: its author is asked.
 */
import type { Problem } from '../base/result.ts';
import { pointer } from './schemaProblems.ts';

/** `problems` with one for each such fault of `json`, a scenario of today's version, in the place of those that its shape brought. */
export function inEarlierSense(json: unknown, problems: readonly Problem[], file: string): Problem[] {
  const { faults } = json as { readonly faults?: unknown };
  if (!Array.isArray(faults)) return [...problems];
  let told = [...problems];
  faults.forEach((fault: unknown, i) => {
    if (!isFeedback(fault)) return;
    const [missing, other] = ['ohms', 'farads'].map((key) => pointer(['faults', i, key]));
    const at = told.findIndex(({ place }) => place === missing || place === other);
    const problem: Problem = { file, place: other!, found: ['bypassAsFeedback'], wanted: ['bypassOrShield'] };
    told = told.flatMap((one, k) => {
      if (k === at) return [problem];
      return one.place === missing || one.place === other ? [] : [one];
    });
  });
  return told;
}

function isFeedback(fault: unknown): boolean {
  if (typeof fault !== 'object' || fault === null) return false;
  const { kind } = fault as { readonly kind?: unknown };
  return kind === 'openBypass' && Object.hasOwn(fault, 'farads') && !Object.hasOwn(fault, 'ohms');
}
