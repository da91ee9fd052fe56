/** What a pass needs. */

/** Points from which a run passes. */
export const PASS_POINTS = 70;
/** Of what was lacking as found, the share that must have been won for a pass: what was good before is nobody's work. */
export const LEAST_WORK_SHARE = 0.25;
