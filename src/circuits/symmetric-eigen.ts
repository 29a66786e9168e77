/** Eigenvalues and eigenvectors of a small symmetric matrix. */
export interface Eigen {
  /** Length n, in no particular order. */
  readonly values: readonly number[];
  /** `vectors[k]` is the unit eigenvector of `values[k]`, length n. */
  readonly vectors: readonly (readonly number[])[];
}

/** Off-diagonal elements below this share of the largest are nothing. */
const negligible = 1e-15;
const mostSweeps = 60;

/**
 * Cyclic Jacobi rotations (Golub & Van Loan, Matrix Computations, 4th ed., §8.5). For matrices of a handful of rows:
 * no faster method would pay, and this one is accurate for small eigenvalues beside large ones.
 *
 * @param matrix n rows of n numbers, symmetric; not changed
 */
export function symmetricEigen(matrix: readonly (readonly number[])[]): Eigen {
  const n = matrix.length;
  const a = matrix.map((row) => [...row]);
  const v = a.map((_, i) => a.map((__, j) => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < mostSweeps; sweep += 1) {
    let largest = 0;
    let off = 0;
    for (let p = 0; p < n; p += 1)
      for (let q = 0; q < n; q += 1) {
        largest = Math.max(largest, Math.abs(a[p][q]));
        if (p !== q) off = Math.max(off, Math.abs(a[p][q]));
      }
    if (off <= negligible * largest) break;
    for (let p = 0; p < n - 1; p += 1) for (let q = p + 1; q < n; q += 1) rotate(a, v, p, q);
  }
  return {
    values: a.map((row, i) => row[i]),
    vectors: a.map((_, k) => v.map((row) => row[k])),
  };
}

/** One rotation that makes a[p][q] zero; v collects the rotations, eigenvectors in its columns. */
function rotate(a: number[][], v: number[][], p: number, q: number): void {
  if (a[p][q] === 0) return;
  const theta = (a[q][q] - a[p][p]) / (2 * a[p][q]);
  // the smaller of the two roots turns by less than 45 degrees
  const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (let k = 0; k < a.length; k += 1) {
    const [kp, kq] = [a[k][p], a[k][q]];
    a[k][p] = c * kp - s * kq;
    a[k][q] = s * kp + c * kq;
  }
  for (let k = 0; k < a.length; k += 1) {
    const [pk, qk] = [a[p][k], a[q][k]];
    a[p][k] = c * pk - s * qk;
    a[q][k] = s * pk + c * qk;
  }
  for (const row of v) {
    const [kp, kq] = [row[p], row[q]];
    row[p] = c * kp - s * kq;
    row[q] = s * kp + c * kq;
  }
}
