/** How a measured figure becomes a share of the points: all inside the limits, nothing from three tolerances, a straight line between. */
import { excessOver, type Limits } from '../base/limits.ts';
import { clamp, roundTo } from '../base/rounding.ts';
import type { MeasuredUnit } from './report.ts';

export interface FallingLimits extends Limits {
  /** one tolerance, in the unit of the figure; the limit itself stands one tolerance from what is wanted */
  readonly tolerance: number;
  /** where the share falls otherwise under the low limit than over the high one; 0 = it is gone at once */
  readonly toleranceBelow?: number;
  /** where the line is paid in full only nearer to what is wanted than its limit is: so near, in tolerances (0.5 to 1); the limit itself then earns `AT_LIMIT` */
  readonly fullWithin?: number;
}

/** Within this many tolerances of what is wanted, a line of the response is paid in full. */
export const FULL_WITHIN = 0.5;
/** Share that is paid at the limit. */
const AT_LIMIT = 0.85;

const TOLERANCES_TO_NOTHING = 3;

/** 0 to 1. */
export function shareOf(measured: number, limits: FallingLimits): number {
  const excess = excessOver(limits, measured);
  if (limits.fullWithin !== undefined) return tightShare(1 + excess / limits.tolerance, limits.fullWithin);
  if (excess <= 0) return 1;
  const below = limits.low !== null && measured < limits.low;
  const tolerance = below ? (limits.toleranceBelow ?? limits.tolerance) : limits.tolerance;
  return clamp(1 - excess / (tolerance * (TOLERANCES_TO_NOTHING - 1)), 0, 1);
}

/** `away`: from what is wanted, in tolerances. */
function tightShare(away: number, fullWithin: number): number {
  if (away <= fullWithin) return 1;
  if (away <= 1) return 1 - ((1 - AT_LIMIT) * (away - fullWithin)) / (1 - fullWithin);
  return clamp((AT_LIMIT * (TOLERANCES_TO_NOTHING - away)) / (TOLERANCES_TO_NOTHING - 1), 0, 1);
}

/** How far from what is wanted, in tolerances; the limit lies at one. */
export function tolerancesAway(measured: number, limits: FallingLimits): number {
  return 1 + excessOver(limits, measured) / limits.tolerance;
}

/** Steps to which measurements are rounded before anything is computed from them: a last-bit difference between machines then changes nothing. */
const STEPS: Readonly<Record<MeasuredUnit, number>> = {
  percent: 0.01,
  db: 0.01,
  hz: 100,
  degrees: 0.1,
  volts: 0.01,
  turns: 0.01,
  seconds: 1,
  count: 1,
  ratio: 0.0001,
  yes: 1,
};

export function roundMeasured(value: number, unit: MeasuredUnit): number {
  // roundTo takes steps of at most one.
  return unit === 'hz' ? roundTo(value / STEPS.hz, 1) * STEPS.hz : roundTo(value, STEPS[unit]);
}
