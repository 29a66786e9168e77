import type {Solution} from './solution.ts';

/**
 * Transfer impedances among a list of nodes: `re[i * count + j]` is the volts at node i for one ampere sent into
 * node j and taken out at earth, every source dead (ohms). Row and column of earth are zero. The impedance that a
 * meter meets between i and j is then z(i,i) + z(j,j) − z(i,j) − z(j,i), as {@link Solution.thevenin} finds it for
 * one pair. Length count².
 */
export interface TransferOhms {
  readonly count: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Scratch of one caller, kept between solutions so that nothing is allocated. */
export class TransferWork {
  rowsRe = new Float64Array(0);
  rowsIm = new Float64Array(0);
  result: {count: number; re: Float64Array; im: Float64Array} = {
    count: 0,
    re: new Float64Array(0),
    im: new Float64Array(0),
  };

  reserve(size: number, count: number): void {
    if (this.rowsRe.length < size * count) {
      this.rowsRe = new Float64Array(size * count);
      this.rowsIm = new Float64Array(size * count);
    }
    if (this.result.count !== count)
      this.result = {
        count,
        re: new Float64Array(count * count),
        im: new Float64Array(count * count),
      };
  }
}

/**
 * All transfer impedances at once, with the factor at hand: one forward and one backward substitution over a block
 * of unit currents, row by row, so that every multiplier is fetched once for all nodes. The result is overwritten by
 * the next call with the same `work`.
 *
 * @param positions elimination position of each node (`plan.positionOf`); −1 is earth
 */
export function transferOhms(
  solution: Solution,
  positions: Int32Array,
  work: TransferWork,
): TransferOhms {
  const {size, start, row} = solution.plan.elimination;
  const {lowerRe, lowerIm, upperRe, upperIm, inverseRe, inverseIm} = solution.factor;
  const count = positions.length;
  work.reserve(size, count);
  const {rowsRe, rowsIm, result} = work;
  // columns by elimination position: in the forward pass row k holds only currents of columns at or before k
  const order = Int32Array.from({length: count}, (_, index) => index);
  order.sort((a, b) => positions[a] - positions[b]);
  rowsRe.fill(0, 0, size * count);
  rowsIm.fill(0, 0, size * count);
  for (let c = 0; c < count; c += 1) {
    const position = positions[order[c]];
    if (position >= 0) rowsRe[position * count + c] = 1;
  }
  const direct = solution.kind === 'dc';
  let filled = 0;
  for (let k = 0; k < size; k += 1) {
    while (filled < count && positions[order[filled]] <= k) filled += 1;
    const from = k * count;
    for (let e = start[k]; e < start[k + 1]; e += 1)
      addRow(rowsRe, rowsIm, row[e] * count, from, filled, lowerRe[e], lowerIm[e], direct);
  }
  for (let k = size - 1; k >= 0; k -= 1) {
    const to = k * count;
    scaleRow(rowsRe, rowsIm, to, count, inverseRe[k], inverseIm[k], direct);
    for (let e = start[k]; e < start[k + 1]; e += 1)
      addRow(rowsRe, rowsIm, to, row[e] * count, count, upperRe[e], upperIm[e], direct);
  }
  for (let i = 0; i < count; i += 1) {
    const position = positions[i];
    for (let c = 0; c < count; c += 1) {
      const to = i * count + order[c];
      result.re[to] = position < 0 ? 0 : rowsRe[position * count + c];
      result.im[to] = position < 0 ? 0 : rowsIm[position * count + c];
    }
  }
  return result;
}

/** Row `to` gains `w` times row `from`, over the first `count` columns. Direct current has no imaginary parts. */
export function addRow(
  re: Float64Array,
  im: Float64Array,
  to: number,
  from: number,
  count: number,
  wRe: number,
  wIm: number,
  direct: boolean,
): void {
  if (direct) {
    for (let c = 0; c < count; c += 1) re[to + c] += wRe * re[from + c];
    return;
  }
  for (let c = 0; c < count; c += 1) {
    const fRe = re[from + c];
    const fIm = im[from + c];
    re[to + c] += wRe * fRe - wIm * fIm;
    im[to + c] += wRe * fIm + wIm * fRe;
  }
}

/** Row `at` times `w`. */
export function scaleRow(
  re: Float64Array,
  im: Float64Array,
  at: number,
  count: number,
  wRe: number,
  wIm: number,
  direct: boolean,
): void {
  if (direct) {
    for (let c = 0; c < count; c += 1) re[at + c] *= wRe;
    return;
  }
  for (let c = 0; c < count; c += 1) {
    const vRe = re[at + c];
    const vIm = im[at + c];
    re[at + c] = vRe * wRe - vIm * wIm;
    im[at + c] = vRe * wIm + vIm * wRe;
  }
}
