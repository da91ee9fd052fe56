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

/** What load, lead and Y amplifier may make the trace lag behind X before trace and retrace part to the eye, degrees. */
export const VERTICAL_LAG_LIMIT_DEGREES = 1;
/** Hum from edge to edge, as a share of the trace's height. */
export const HUM_SHARE = 0.03;
/** How late a sweep may show the curve, as a share of its narrowest width. */
export const SWEEP_LAG_LIMIT = 0.05;
/** What the tunable marker may be off, as a share of the sheet's span: a fortieth of a division. */
export const DIAL_SHARE = 1 / 400;
/** What the carrier of a video sweep may be off, as a share of itself. */
export const CARRIER_SHARE = 1e-3;

/** Points from which a run passes. */
export const PASS_POINTS = 70;
/** Of what was lacking as found, the share that must have been won for a pass: what was good before is nobody's work. */
export const LEAST_WORK_SHARE = 0.25;
