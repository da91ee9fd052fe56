/** Scores are made from rounded quantities, so that a last-bit difference between machines changes nothing. */

/** Rounds to a multiple of `step` (half away from zero); `step` is one of 1, 0.1, 0.01 and so on. */
export function roundTo(value: number, step: number): number {
  const per = Math.round(1 / step);
  const scaled = Math.abs(value) * per;
  const rounded = Math.round(scaled + 1e-9) / per;
  return value < 0 && rounded !== 0 ? -rounded : rounded;
}

export function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high);
}
