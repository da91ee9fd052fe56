/** How the bench stands by a single rule of the set-up, at any moment: the session's guards and the look back at lying pictures ask the same rows as the score. */
import { excessOver, limitPassed } from '../base/limits.ts';
import type { Facts } from '../bench/facts.ts';
import type { Receiver } from '../receiver/receiver.ts';
import { responseById } from '../receiver/responses.ts';
import type { DraftLine } from './draft.ts';
import { setUpEvidence } from './evidence.ts';
import { linesOf } from './lines.ts';
import type { SheetAsks } from './rules/rule.ts';
import { SET_UP_RULES } from './rules/setUpRules.ts';

export type SetUpRuleNumber = (typeof SET_UP_RULES)[number]['number'];

export interface Standing {
  /** the limit that was passed; null = all is inside, or the rule does not apply */
  readonly passed: 'low' | 'high' | null;
  /** how far beyond, in the unit of the figure; 0 inside */
  readonly excess: number;
}

export function standingBy(number: SetUpRuleNumber, facts: Facts, sheet: SheetAsks): Standing {
  const rows = SET_UP_RULES.filter((rule) => rule.number === number);
  const lines = linesOf(rows, setUpEvidence(facts, sheet));
  const line = lines.find((one) => limitPassed(one, one.measured) !== null) ?? lines[0];
  if (line === undefined) return { passed: null, excess: 0 };
  return { passed: limitPassed(line, line.measured), excess: Math.max(excessOver(line, line.measured), 0) };
}

/** Outside what the rule wants. */
export function isOff(number: SetUpRuleNumber, facts: Facts, sheet: SheetAsks): boolean {
  return standingBy(number, facts, sheet).passed !== null;
}

/** Every line of the set-up, for the response that the bench stands for. */
export function setUpLines(facts: Facts, receiver: Receiver): readonly DraftLine[] {
  return linesOf(SET_UP_RULES, setUpEvidence(facts, responseById(receiver, facts.response).setUp));
}
