/** What a pass needed under the first rules, and what a helper costs. */

/** From here the ladder of words goes up; under the first rules a run passed from here. */
export const PASS_POINTS = 70;
/** Of what was lacking as found, the share that must have been won. */
export const LEAST_WORK_SHARE = 0.25;

/** G68: what a helper's set-up counts for in the time of a run, as long as par gives a learner for it. */
export const HELPER_SECONDS = 300;
