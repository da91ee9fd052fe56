/** Pencil work: turns that make squares least, damped (Levenberg, from memory), with a price on each turn that grows as its size (weights renewed from round to round). */

export interface Problem {
  /** what should come to nothing, for a set of turns; a new array each time, which the caller may write to */
  readonly wrong: (turns: readonly number[]) => Float64Array;
  /** what each turn costs beside the squares */
  readonly price: number;
  readonly low: readonly number[];
  readonly high: readonly number[];
}

export interface Solution {
  readonly turns: readonly number[];
  readonly cost: number;
}

const STEP_TURNS = 0.02;
const ROUNDS = 25;
/** Below so many turns the price is that of the square. */
const SMALL_TURNS = 0.05;
const ENOUGH = 1e-4;

export function leastSquares(start: readonly number[], { wrong, price, low, high }: Problem): Solution {
  const costOf = (turns: readonly number[], off: Float64Array): number =>
    dot(off, off) + price * turns.reduce((sum, t) => sum + Math.hypot(t, SMALL_TURNS), 0);
  let turns = [...start];
  let off = wrong(turns);
  let cost = costOf(turns, off);
  let damping = 0.01;
  for (let round = 0; round < ROUNDS; round++) {
    const slopes = turns.map((t, i) => {
      const way = t + STEP_TURNS > high[i]! ? -STEP_TURNS : STEP_TURNS;
      const there = wrong(turns.with(i, t + way));
      for (let m = 0; m < there.length; m++) there[m] = (there[m]! - off[m]!) / way;
      return there;
    });
    const pull = turns.map((t) => price / (2 * Math.hypot(t, SMALL_TURNS)));
    const b = slopes.map((slope, i) => -dot(slope, off) - pull[i]! * turns[i]!);
    const a = slopes.map((slope) => slopes.map((other) => dot(slope, other)));
    let better = false;
    for (let tries = 0; tries < 6 && !better; tries++) {
      const step = solve(
        a.map((row, i) => row.map((v, k) => (i === k ? v * (1 + damping) + pull[i]! + 1e-9 : v))),
        b,
      );
      const next = turns.map((t, i) => Math.min(Math.max(t + step[i]!, low[i]!), high[i]!));
      const offThere = wrong(next);
      const costThere = costOf(next, offThere);
      if (costThere < cost) {
        better = cost - costThere > ENOUGH * cost;
        [turns, off, cost] = [next, offThere, costThere];
        damping = Math.max(damping / 5, 1e-5);
        if (!better) return { turns, cost };
      } else damping *= 6;
    }
    if (!better) break;
  }
  return { turns, cost };
}

/** Gauss, with the largest of each column taken first. */
export function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const n = right.length;
  const a = matrix.map((row) => [...row]);
  const b = [...right];
  for (let i = 0; i < n; i++) {
    let pivot = i;
    for (let k = i + 1; k < n; k++) if (Math.abs(a[k]![i]!) > Math.abs(a[pivot]![i]!)) pivot = k;
    [a[i], a[pivot]] = [a[pivot]!, a[i]!];
    [b[i], b[pivot]] = [b[pivot]!, b[i]!];
    for (let k = i + 1; k < n; k++) {
      const factor = a[k]![i]! / a[i]![i]!;
      for (let m = i; m < n; m++) a[k]![m] = a[k]![m]! - factor * a[i]![m]!;
      b[k] = b[k]! - factor * b[i]!;
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let m = i + 1; m < n; m++) b[i] = b[i]! - a[i]![m]! * b[m]!;
    b[i] = b[i]! / a[i]![i]!;
  }
  return b;
}

function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
