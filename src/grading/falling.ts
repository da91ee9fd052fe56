/** How a measured figure becomes a share of the points: all inside the limits, nothing from three tolerances, a straight line between. */
import { clamp, roundTo } from '../base/rounding.ts';
import type { FigureUnit } from './report.ts';

export interface Limits {
  readonly low: number | null;
  readonly high: number | null;
  /** one tolerance, in the unit of the figure; the limit itself stands one tolerance from what is wanted */
  readonly tolerance: number;
}

const TOLERANCES_TO_NOTHING = 3;

/** 0 to 1. */
export function shareOf(measured: number, limits: Limits): number {
  const below = limits.low === null ? 0 : limits.low - measured;
  const above = limits.high === null ? 0 : measured - limits.high;
  const excess = Math.max(below, above, 0);
  if (excess === 0) return 1;
  return clamp(1 - excess / (limits.tolerance * (TOLERANCES_TO_NOTHING - 1)), 0, 1);
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
