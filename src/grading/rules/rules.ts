/** All rules that make lines of the score or cap it. The others (docs/grading.md) say how points are made of them. */
import { CAP_RULES, CONDUCT_RULES } from './conductRules.ts';
import { SET_UP_RULES } from './setUpRules.ts';
import { SHEET_RULES } from './sheetRules.ts';

/** In the order of a report. */
export const LINE_RULES = [...SHEET_RULES, ...SET_UP_RULES, ...CONDUCT_RULES];

export const RULES = [...LINE_RULES, ...CAP_RULES];

/** What the words are keyed by. */
export type ShippedRule = (typeof RULES)[number];

/** Rules whose lines the plot of a report shows at their frequency. */
export const DRAWN_RULES: readonly string[] = SHEET_RULES.filter((rule) => 'drawn' in rule).map((rule) => rule.number);
