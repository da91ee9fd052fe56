/**
 * What counts as rightly set up. The session's guards and the grading rules read the same figures, so that a phase that
 * shows its tick also earns its points. Judgement of common practice; no published source.
 */

/** The residual between sweep and X drive at which trace and retrace still lie on each other, degrees. */
export const PHASE_TOLERANCE_DEGREES = 2;
/** Compression of the worst stage that leaves the shape alone, decibels. */
export const COMPRESSION_LIMIT_DB = 0.5;
/** Least detected peak, as a share of what the sheet's own level gives with the slugs right. */
export const WEAKEST_SHARE = 0.25;
/** Height of a pip as a share of the trace's height: high enough to be seen, low enough not to bend what it marks. */
export const PIP_SHARE = { low: 0.02, high: 0.15 } as const;
/** Least height of the trace on the graticule, divisions. */
export const TRACE_HEIGHT_DIV = 3;

/** Points from which a run passes. */
export const PASS_POINTS = 70;
