/** The few ways in which most rules read their measurement. */
import type { FallingLimits } from '../falling.ts';
import type { MeasuredUnit } from '../report.ts';
import type { Reading } from './rule.ts';

/** Either way; one tolerance is the limit itself. */
export function within(tolerance: number): FallingLimits {
  return { low: -tolerance, high: tolerance, tolerance };
}

/** One tolerance is the limit itself. */
export function atMost(limit: number): FallingLimits {
  return { low: null, high: limit, tolerance: limit };
}

/** None is wanted, and the line is gone at so many. */
export function noneOf(allGoneAt: number): FallingLimits {
  return { low: null, high: 0, tolerance: allGoneAt / 2 };
}

export function amount<S>(
  unit: MeasuredUnit,
  value: (subject: S) => number,
  limits: FallingLimits,
): (subject: S) => Reading {
  return (subject) => ({ measured: value(subject), unit, limits });
}

/** The whole line or nothing; `lead` is the one concerned. */
export function yes<S>(holds: (subject: S) => boolean, lead: string | null = null): (subject: S) => Reading {
  return (subject) => ({ ...answer(holds(subject)), subject: lead });
}

export function answer(holds: boolean): Reading {
  return { measured: holds ? 1 : 0, unit: 'yes', limits: { low: 1, high: null, tolerance: 0.5 } };
}
