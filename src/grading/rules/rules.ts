/** All rules that make lines or caps, in the order of a report. The others (docs/grading.md) say how points are made of them. */
import { CAP_RULES, CONDUCT_RULES } from './conductRules.ts';
import { SET_UP_RULES } from './setUpRules.ts';
import { SHEET_RULES } from './sheetRules.ts';

export const RULES = [...SHEET_RULES, ...SET_UP_RULES, ...CONDUCT_RULES, ...CAP_RULES];

/** What the words are keyed by. */
export type ShippedRule = (typeof RULES)[number];
