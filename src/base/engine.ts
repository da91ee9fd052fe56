/** The version of everything that decides a curve or a score; run files and certificates carry it. */
export const ENGINE = '0.3.0';

/** Of the rules that runs are graded by: 1, a pass was a number of points; 2, four verdicts, and the points beside them. */
export type RulesVersion = 1 | 2;
/** The rules of today; run files carry it beside the engine's. */
export const RULES_VERSION: RulesVersion = 2;
