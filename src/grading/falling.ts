/** How a measured figure becomes a share of the points: all inside the limits, nothing from three tolerances, a straight line between. */
import { excessOver, type Limits } from '../base/limits.ts';
import { clamp, roundTo } from '../base/rounding.ts';
import type { FigureUnit } from './report.ts';

export interface FallingLimits extends Limits {
  /** one tolerance, in the unit of the figure; the limit itself stands one tolerance from what is wanted */
  readonly tolerance: number;
  /** where the share falls otherwise under the low limit than over the high one; 0 = it is gone at once */
  readonly toleranceBelow?: number;
}

const TOLERANCES_TO_NOTHING = 3;

/** 0 to 1. */
export function shareOf(measured: number, limits: FallingLimits): number {
  const excess = excessOver(limits, measured);
  if (excess <= 0) return 1;
  const below = limits.low !== null && measured < limits.low;
  const tolerance = below ? (limits.toleranceBelow ?? limits.tolerance) : limits.tolerance;
  return clamp(1 - excess / (tolerance * (TOLERANCES_TO_NOTHING - 1)), 0, 1);
}

/** Steps to which figures are rounded before anything is made of them: a last-bit difference between machines then changes nothing. */
const STEPS: Readonly<Record<FigureUnit, number>> = {
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

export function roundFigure(value: number, unit: FigureUnit): number {
  // roundTo takes steps of at most one.
  return unit === 'hz' ? roundTo(value / STEPS.hz, 1) * STEPS.hz : roundTo(value, STEPS[unit]);
}
