/** The version of everything that decides a curve or a score; run files and certificates carry it. */
export const ENGINE = '0.3.0';

/**
 * Of the rules that runs are graded by: 1, a pass was a number of points; 2, four verdicts, and the points beside them; 3, what was wrong is to be said at signing; 4, no capacitor is
 * left clipped across a part, and a good part that is replaced in a sealed job costs care too; 5, on a set that may be live the earth strap goes on before the other leads; 6, a proof is read
 * where the card asks and on a picture that can be read, and two turns are free where par has fewer; 7, that picture covers the band, stands three divisions tall and is halved when it is
 * halved, and hum stands two.
 */
export const RULES_VERSIONS = [1, 2, 3, 4, 5, 6, 7] as const;
export type RulesVersion = (typeof RULES_VERSIONS)[number];
/** The rules of today; run files carry it beside the engine's. */
export const RULES_VERSION: RulesVersion = 7;
