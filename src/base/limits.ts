/** Limits of a figure, and how far outside them it lies: said once for the sheet, the score, the certificate and the words. */

/** Inclusive; null = open. */
export interface Limits {
  readonly low: number | null;
  readonly high: number | null;
}

/** Distance beyond the nearer limit, in the unit of the figure; negative: inside by so much; minus infinity where both are open. */
export function excessOver({ low, high }: Limits, value: number): number {
  const below = low === null ? Number.NEGATIVE_INFINITY : low - value;
  const above = high === null ? Number.NEGATIVE_INFINITY : value - high;
  return Math.max(below, above);
}

export function isInside(limits: Limits, value: number): boolean {
  return excessOver(limits, value) <= 0;
}

/** Which limit was passed; null = none. */
export function limitPassed(limits: Limits, value: number): 'low' | 'high' | null {
  if (isInside(limits, value)) return null;
  return limits.low !== null && value < limits.low ? 'low' : 'high';
}
