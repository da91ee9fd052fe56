/**
 * Levenberg-Marquardt with bounds: the x inside a box for which the sum of squares of r(x) is least.
 *
 * Each step solves (J'J + lambda diag(J'J)) d = -J'r for the variables that are free; one that stands at a bound and is pushed against it is held for that step.
 * A variable that its step would carry over a bound goes to the bound, and the step of the others is taken anew with it there. lambda follows Nielsen's rule from the gain ratio.
 * Validity: r smooth almost everywhere; a local minimum is found. Source: Marquardt, SIAM J. 1963; Nielsen, IMM-REP-1999-05 (both from memory).
 */

export interface Residuals {
  readonly r: Float64Array;
  /** row by row: d r_i / d x_j */
  readonly jacobian: Float64Array;
}

export interface LeastSquares {
  readonly x: Float64Array;
  /** sum of squares */
  readonly cost: number;
  readonly iterations: number;
}

export interface SearchBox {
  readonly low: readonly number[];
  readonly high: readonly number[];
}

export interface LeastSquaresTask {
  readonly residuals: (x: Float64Array) => Float64Array;
  readonly slopes: (x: Float64Array) => Residuals;
  readonly box: SearchBox;
  readonly mostIterations: number;
  /** done when the cost is below this; 0 where none is good enough */
  readonly enough: number;
}

const FIRST_DAMPING = 1e-3;
const LEAST_GAIN = 1e-10;

export function leastSquares(task: LeastSquaresTask, start: Float64Array): LeastSquares {
  const { box } = task;
  const n = start.length;
  let x = start.map((v, j) => Math.min(Math.max(v, box.low[j]!), box.high[j]!));
  let damping = FIRST_DAMPING;
  let growth = 2;
  let cost = squares(task.residuals(x));
  let iterations = 0;
  if (!(cost > task.enough)) return { x, cost, iterations };
  let at = task.slopes(x);
  cost = squares(at.r);
  while (iterations < task.mostIterations && cost > task.enough) {
    iterations++;
    const { square, gradient } = normal(at, n);
    const free: number[] = [];
    for (let j = 0; j < n; j++) {
      const pushedOut = gradient[j]! > 0 ? x[j]! <= box.low[j]! : x[j]! >= box.high[j]!;
      if (square[j * n + j]! > 0 && !(pushedOut && gradient[j] !== 0)) free.push(j);
    }
    const next = free.length === 0 ? null : stepInside(square, gradient, free, x, box, damping);
    if (next === null) break;
    const after = squares(task.residuals(next));
    const promised = promise(square, gradient, x, next, n);
    if (!(promised > LEAST_GAIN * cost)) break;
    const ratio = (cost - after) / promised;
    if (ratio > 1e-4) {
      const won = cost - after;
      x = next;
      cost = after;
      damping = Math.max(damping * Math.max(1 / 3, 1 - (2 * ratio - 1) ** 3), 1e-12);
      growth = 2;
      // Slopes cost the most of a step: where none follows they are not asked for.
      if (won < 1e-9 * cost || iterations === task.mostIterations || cost <= task.enough) break;
      at = task.slopes(x);
      cost = squares(at.r);
    } else {
      damping *= growth;
      growth *= 2;
      if (damping > 1e12) break;
    }
  }
  return { x, cost, iterations };
}

export function squares(r: Float64Array): number {
  let sum = 0;
  for (const v of r) sum += v * v;
  return sum;
}

function normal({ r, jacobian }: Residuals, n: number): { square: Float64Array; gradient: Float64Array } {
  const square = new Float64Array(n * n);
  const gradient = new Float64Array(n);
  for (let i = 0, row = 0; i < r.length; i++, row += n) {
    const own = r[i]!;
    for (let j = 0; j < n; j++) {
      const a = jacobian[row + j]!;
      if (a === 0) continue;
      gradient[j] = gradient[j]! + a * own;
      for (let k = 0, at = j * n; k <= j; k++, at++) square[at] = square[at]! + a * jacobian[row + k]!;
    }
  }
  for (let j = 0; j < n; j++) for (let k = j + 1; k < n; k++) square[j * n + k] = square[k * n + j]!;
  return { square, gradient };
}

/** The damped step with what would leave the box put on its bound; null where there is none. */
function stepInside(
  square: Float64Array,
  gradient: Float64Array,
  free: readonly number[],
  x: Float64Array,
  box: SearchBox,
  damping: number,
): Float64Array<ArrayBuffer> | null {
  const n = x.length;
  const held = new Float64Array(n);
  let open = [...free];
  for (;;) {
    // What has been put on its bound pulls at the others.
    const pulled = open.length === free.length ? gradient : new Float64Array(n);
    if (pulled !== gradient) {
      for (let j = 0; j < n; j++) {
        let sum = gradient[j]!;
        for (let k = 0; k < n; k++) sum += square[j * n + k]! * held[k]!;
        pulled[j] = sum;
      }
    }
    const step = open.length === 0 ? new Float64Array(n) : solveDamped(square, pulled, open, n, damping);
    if (step === null) return null;
    const over = open.filter((j) => x[j]! + step[j]! < box.low[j]! || x[j]! + step[j]! > box.high[j]!);
    if (over.length === 0) {
      // The step of a variable that is not open is zero.
      const next = new Float64Array(n);
      for (let j = 0; j < n; j++) next[j] = Math.min(Math.max(x[j]! + held[j]! + step[j]!, box.low[j]!), box.high[j]!);
      return next;
    }
    for (const j of over) held[j] = (step[j]! > 0 ? box.high[j]! : box.low[j]!) - x[j]!;
    open = open.filter((j) => !over.includes(j));
  }
}

/** What the linear model says the cost falls by. */
function promise(square: Float64Array, gradient: Float64Array, x: Float64Array, next: Float64Array, n: number): number {
  let fall = 0;
  for (let j = 0; j < n; j++) {
    const d = next[j]! - x[j]!;
    fall -= 2 * gradient[j]! * d;
    for (let k = 0; k < n; k++) fall -= d * square[j * n + k]! * (next[k]! - x[k]!);
  }
  return fall;
}

/** Cholesky on the free variables; null where the matrix is not positive. */
function solveDamped(
  square: Float64Array,
  gradient: Float64Array,
  free: readonly number[],
  n: number,
  damping: number,
): Float64Array | null {
  const m = free.length;
  const l = new Float64Array(m * m);
  const y = new Float64Array(m);
  for (let a = 0; a < m; a++) {
    for (let b = 0; b <= a; b++) {
      let sum = square[free[a]! * n + free[b]!]! * (a === b ? 1 + damping : 1);
      for (let k = 0; k < b; k++) sum -= l[a * m + k]! * l[b * m + k]!;
      if (a !== b) l[a * m + b] = sum / l[b * m + b]!;
      else if (sum > 0) l[a * m + a] = Math.sqrt(sum);
      else return null;
    }
    let sum = -gradient[free[a]!]!;
    for (let k = 0; k < a; k++) sum -= l[a * m + k]! * y[k]!;
    y[a] = sum / l[a * m + a]!;
  }
  const step = new Float64Array(n);
  for (let a = m - 1; a >= 0; a--) {
    let sum = y[a]!;
    for (let k = a + 1; k < m; k++) sum -= l[k * m + a]! * step[free[k]!]!;
    step[free[a]!] = sum / l[a * m + a]!;
  }
  return step;
}
