import type {Elimination} from './elimination-order.ts';

/**
 * Numeric factor of a nodal matrix by star–mesh elimination, which is LDLᵀ (or LU) without pivoting written so
 * that no conductance is ever found as the difference of two others.
 *
 * A row of the matrix is kept as its joins to other unknowns (`y` = minus the entry off the diagonal) and its
 * path to earth (`earth` = sum of the row). The diagonal is their sum. Taking unknown k out joins its neighbours
 * p and q by y_pk·y_kq/d_k and gives p a further path to earth of y_pk·earth_k/d_k; nothing is subtracted, so the
 * 100 MΩ leakage of a floating group keeps all its digits beside milliohm wires. (Star–mesh: Rosen, 1924;
 * accuracy without subtraction: Grassmann, Taksar and Heyman, 1985, and Alfa, Xue and Ye, 2002.)
 *
 * Complex numbers are held as two arrays. `edge` arrays have the length of Elimination.row, others its size.
 */
export interface Factor {
  /** Multipliers of the forward pass, per edge: y_pk/d_k. */
  readonly lowerRe: Float64Array;
  readonly lowerIm: Float64Array;
  /** Multipliers of the backward pass, per edge: y_kp/d_k. The same arrays as `lower` where symmetric. */
  readonly upperRe: Float64Array;
  readonly upperIm: Float64Array;
  /** 1/d_k per unknown. */
  readonly inverseRe: Float64Array;
  readonly inverseIm: Float64Array;
}

/** Stamped numbers, overwritten by the factoring. */
export interface Stamps {
  /** Joins of column to row, per edge (row k, column p). */
  readonly edgeRe: Float64Array;
  readonly edgeIm: Float64Array;
  /** Joins of row to column, per edge (row p, column k); used only where the matrix is not symmetric. */
  readonly backRe: Float64Array;
  readonly backIm: Float64Array;
  /** Row sums per unknown. */
  readonly earthRe: Float64Array;
  readonly earthIm: Float64Array;
}

/** Factors a complex symmetric matrix. Overwrites the stamps. Allocates nothing. */
export function factorSymmetric(plan: Elimination, stamps: Stamps, into: Factor): void {
  const {size, start, row, target} = plan;
  const {edgeRe, edgeIm, earthRe, earthIm} = stamps;
  const {lowerRe, lowerIm, inverseRe, inverseIm} = into;
  let pair = 0;
  for (let k = 0; k < size; k += 1) {
    const first = start[k];
    const end = start[k + 1];
    const kRe = earthRe[k];
    const kIm = earthIm[k];
    let dRe = kRe;
    let dIm = kIm;
    for (let e = first; e < end; e += 1) {
      dRe += edgeRe[e];
      dIm += edgeIm[e];
    }
    const square = dRe * dRe + dIm * dIm;
    const iRe = dRe / square;
    const iIm = -dIm / square;
    inverseRe[k] = iRe;
    inverseIm[k] = iIm;
    for (let e = first; e < end; e += 1) {
      const yRe = edgeRe[e];
      const yIm = edgeIm[e];
      const wRe = yRe * iRe - yIm * iIm;
      const wIm = yRe * iIm + yIm * iRe;
      lowerRe[e] = wRe;
      lowerIm[e] = wIm;
      const p = row[e];
      earthRe[p] = earthRe[p] + wRe * kRe - wIm * kIm;
      earthIm[p] = earthIm[p] + wRe * kIm + wIm * kRe;
      for (let q = e + 1; q < end; q += 1) {
        const t = target[pair];
        pair += 1;
        const qRe = edgeRe[q];
        const qIm = edgeIm[q];
        edgeRe[t] = edgeRe[t] + wRe * qRe - wIm * qIm;
        edgeIm[t] = edgeIm[t] + wRe * qIm + wIm * qRe;
      }
    }
  }
}

/** Factors a matrix of symmetric pattern whose values are not (turning motors). Overwrites the stamps. Allocates nothing. */
export function factorUnsymmetric(plan: Elimination, stamps: Stamps, into: Factor): void {
  const {size, start, row, target} = plan;
  const {edgeRe, edgeIm, backRe, backIm, earthRe, earthIm} = stamps;
  const {lowerRe, lowerIm, upperRe, upperIm, inverseRe, inverseIm} = into;
  let pair = 0;
  for (let k = 0; k < size; k += 1) {
    const first = start[k];
    const end = start[k + 1];
    const kRe = earthRe[k];
    const kIm = earthIm[k];
    let dRe = kRe;
    let dIm = kIm;
    for (let e = first; e < end; e += 1) {
      dRe += edgeRe[e];
      dIm += edgeIm[e];
    }
    const square = dRe * dRe + dIm * dIm;
    const iRe = dRe / square;
    const iIm = -dIm / square;
    inverseRe[k] = iRe;
    inverseIm[k] = iIm;
    for (let e = first; e < end; e += 1) {
      const uRe = edgeRe[e];
      const uIm = edgeIm[e];
      upperRe[e] = uRe * iRe - uIm * iIm;
      upperIm[e] = uRe * iIm + uIm * iRe;
      const yRe = backRe[e];
      const yIm = backIm[e];
      const wRe = yRe * iRe - yIm * iIm;
      const wIm = yRe * iIm + yIm * iRe;
      lowerRe[e] = wRe;
      lowerIm[e] = wIm;
      const p = row[e];
      earthRe[p] = earthRe[p] + wRe * kRe - wIm * kIm;
      earthIm[p] = earthIm[p] + wRe * kIm + wIm * kRe;
    }
    for (let p = first; p < end; p += 1) {
      const pLowerRe = lowerRe[p];
      const pLowerIm = lowerIm[p];
      const pRe = edgeRe[p];
      const pIm = edgeIm[p];
      for (let q = p + 1; q < end; q += 1) {
        const t = target[pair];
        pair += 1;
        const qRe = edgeRe[q];
        const qIm = edgeIm[q];
        edgeRe[t] = edgeRe[t] + pLowerRe * qRe - pLowerIm * qIm;
        edgeIm[t] = edgeIm[t] + pLowerRe * qIm + pLowerIm * qRe;
        const wRe = lowerRe[q];
        const wIm = lowerIm[q];
        backRe[t] = backRe[t] + wRe * pRe - wIm * pIm;
        backIm[t] = backIm[t] + wRe * pIm + wIm * pRe;
      }
    }
  }
}

/** Solves with a factor. `re`, `im` go in as amps into each unknown (by position) and out as volts. */
export function substitute(
  plan: Elimination,
  factor: Factor,
  re: Float64Array,
  im: Float64Array,
): void {
  const {size, start, row} = plan;
  const {lowerRe, lowerIm, upperRe, upperIm, inverseRe, inverseIm} = factor;
  for (let k = 0; k < size; k += 1) {
    const kRe = re[k];
    const kIm = im[k];
    if (kRe === 0 && kIm === 0) continue; // most unknowns have no source, and an injected pair touches few
    for (let e = start[k]; e < start[k + 1]; e += 1) {
      const p = row[e];
      const wRe = lowerRe[e];
      const wIm = lowerIm[e];
      re[p] = re[p] + wRe * kRe - wIm * kIm;
      im[p] = im[p] + wRe * kIm + wIm * kRe;
    }
  }
  for (let k = size - 1; k >= 0; k -= 1) {
    const kRe = re[k];
    const kIm = im[k];
    let vRe = kRe * inverseRe[k] - kIm * inverseIm[k];
    let vIm = kRe * inverseIm[k] + kIm * inverseRe[k];
    for (let e = start[k]; e < start[k + 1]; e += 1) {
      const p = row[e];
      const wRe = upperRe[e];
      const wIm = upperIm[e];
      const pRe = re[p];
      const pIm = im[p];
      vRe += wRe * pRe - wIm * pIm;
      vIm += wRe * pIm + wIm * pRe;
    }
    re[k] = vRe;
    im[k] = vIm;
  }
}
