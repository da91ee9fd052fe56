/**
 * Groups of coupled inductors and the inverse of their inductance matrix.
 *
 * L is the group's inductance matrix (henry): L_ii = L_i, L_ij = k_ij sqrt(L_i L_j). inv(L) (1/henry) goes into the nodal
 * equations. Valid while L is positive definite (stored energy above zero for any currents); the Cholesky factor shows it.
 * Source: any text on network theory; Cholesky, Golub and Van Loan, Matrix Computations, sec. 4.2 (from memory).
 */

/** Two coils of a group (`i` and `j` number them within the group) and the K element (index in the deck) that couples them. */
export interface CoilPair {
  readonly i: number;
  readonly j: number;
  readonly element: number;
}

export interface CoilGroup {
  /** indices of the L elements in the deck */
  readonly coils: readonly number[];
  readonly pairs: readonly CoilPair[];
}

/** Whether the group can only store positive energy; `values` are henries and couplings by deck index. */
export function isPositiveDefinite(group: CoilGroup, values: Float64Array): boolean {
  return group.coils.length === 1 || cholesky(couplingMatrix(group, values), group.coils.length);
}

/**
 * Writes inv(L) (row-major, size n*n) of the group to `out`; `values` are henries and couplings by deck index.
 * Returns false, with `out` untouched, when L is not positive definite.
 */
export function inverseInductance(group: CoilGroup, values: Float64Array, out: Float64Array): boolean {
  const n = group.coils.length;
  if (n === 1) {
    out[0] = 1 / values[group.coils[0]!]!;
    return true;
  }
  // inv(L) = D inv(K) D with D = diag(1/sqrt(L_i)): factor the coupling matrix, whose diagonal is 1 whatever the units.
  const k = couplingMatrix(group, values);
  if (!cholesky(k, n)) return false;
  const scale = Float64Array.from(group.coils, (coil) => 1 / Math.sqrt(values[coil]!));
  const column = new Float64Array(n);
  for (let c = 0; c < n; c++) {
    column.fill(0);
    column[c] = 1;
    for (let i = c; i < n; i++) {
      let sum = column[i]!;
      for (let j = c; j < i; j++) sum -= k[i * n + j]! * column[j]!;
      column[i] = sum / k[i * n + i]!;
    }
    for (let i = n - 1; i >= c; i--) {
      let sum = column[i]!;
      for (let j = i + 1; j < n; j++) sum -= k[j * n + i]! * column[j]!;
      column[i] = sum / k[i * n + i]!;
      const entry = column[i]! * scale[c]! * scale[i]!;
      out[i * n + c] = entry;
      out[c * n + i] = entry;
    }
  }
  return true;
}

function couplingMatrix(group: CoilGroup, values: Float64Array): Float64Array {
  const n = group.coils.length;
  const k = new Float64Array(n * n);
  for (let i = 0; i < n; i++) k[i * n + i] = 1;
  for (const pair of group.pairs) {
    k[pair.i * n + pair.j] = values[pair.element]!;
    k[pair.j * n + pair.i] = values[pair.element]!;
  }
  return k;
}

function cholesky(a: Float64Array, n: number): boolean {
  for (let j = 0; j < n; j++) {
    let diagonal = a[j * n + j]!;
    for (let m = 0; m < j; m++) diagonal -= a[j * n + m]! ** 2;
    if (!(diagonal > 1e-12)) return false;
    const root = Math.sqrt(diagonal);
    a[j * n + j] = root;
    for (let i = j + 1; i < n; i++) {
      let sum = a[i * n + j]!;
      for (let m = 0; m < j; m++) sum -= a[i * n + m]! * a[j * n + m]!;
      a[i * n + j] = sum / root;
    }
  }
  return true;
}
