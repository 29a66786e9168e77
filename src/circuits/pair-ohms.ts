import type {Plan} from './plan.ts';
import {addRow, scaleRow} from './transfer-ohms.ts';
import type {Solution} from './solution.ts';

/**
 * The impedance behind each of a list of pairs of nodes, as {@link Solution.thevenin} finds it for one: of every
 * network of one plan, the list being looked through once.
 *
 * Z(p,p) + Z(q,q) − Z(p,q) − Z(q,p) needs few entries of the inverse. Those on the diagonal, and those of pairs that
 * the elimination joined, follow from the factor by a recurrence that never leaves its pattern (Takahashi, Fagan and
 * Chin, 1973; Erisman and Tinney, Communications of the ACM 18, 1975). For the other pairs, a few nodes that have one
 * end of each of them get a unit current each; as in a turning motor's network Z(p,q) is not Z(q,p), there it is done
 * once more with the matrix transposed.
 */
export class PairOhms {
  private readonly plan: Plan;
  /** Elimination position of both ends of each pair; −1 is earth. */
  private readonly first: Int32Array;
  private readonly second: Int32Array;
  /** Edge of each pair; −1 where it has none. */
  private readonly edge: Int32Array;
  /** Column of a unit current of each pair without an edge, and the end at which it is read; −1 elsewhere. */
  private readonly column: Int32Array;
  private readonly other: Int32Array;
  /** Positions of the unit currents, ascending. */
  private readonly columns: Int32Array;
  /** Where the edge pairs of each column begin in the elimination's targets. */
  private readonly pairStart: Int32Array;

  /**
   * @param first elimination position (`plan.positionOf`) of the first node of each pair; −1 is earth
   * @param second of the second
   */
  constructor(plan: Plan, first: Int32Array, second: Int32Array) {
    const {size, start} = plan.elimination;
    const count = first.length;
    this.plan = plan;
    this.first = first;
    this.second = second;
    this.edge = Int32Array.from(first, (p, i) => edgeOf(plan, p, second[i]));
    this.pairStart = new Int32Array(size + 1);
    for (let k = 0; k < size; k += 1) {
      const degree = start[k + 1] - start[k];
      this.pairStart[k + 1] = this.pairStart[k] + (degree * (degree - 1)) / 2;
    }
    this.column = new Int32Array(count).fill(-1);
    this.other = new Int32Array(count).fill(-1);
    this.columns = this.chooseColumns();
  }

  /** Writes the ohms of all pairs in one state of the network into `re` and `im`, as long as the list. */
  find(solution: Solution, re: Float64Array, im: Float64Array): void {
    const {first, second, edge, column, other, columns} = this;
    const {size} = this.plan.elimination;
    const symmetric = solution.factor.lowerRe === solution.factor.upperRe;
    this.invertPattern(solution, symmetric);
    const count = columns.length;
    const there = work.block(0, size * count);
    substituteBlock(solution, columns, there.re, there.im, false);
    const back = symmetric ? there : work.block(1, size * count);
    if (!symmetric) substituteBlock(solution, columns, back.re, back.im, true);
    const {diagonalRe, diagonalIm, upperRe, upperIm} = work;
    const {lowerRe, lowerIm} = symmetric ? {lowerRe: upperRe, lowerIm: upperIm} : work;
    for (let i = 0; i < first.length; i += 1) {
      const p = first[i];
      const q = second[i];
      let sumRe = (p < 0 ? 0 : diagonalRe[p]) + (q < 0 ? 0 : diagonalRe[q]);
      let sumIm = (p < 0 ? 0 : diagonalIm[p]) + (q < 0 ? 0 : diagonalIm[q]);
      if (p === q) {
        sumRe = 0;
        sumIm = 0;
      } else if (edge[i] >= 0) {
        sumRe -= upperRe[edge[i]] + lowerRe[edge[i]];
        sumIm -= upperIm[edge[i]] + lowerIm[edge[i]];
      } else if (column[i] >= 0) {
        const at = other[i] * count + column[i];
        sumRe -= there.re[at] + back.re[at];
        sumIm -= there.im[at] + back.im[at];
      }
      re[i] = sumRe;
      im[i] = sumIm;
    }
  }

  /** Of each pair without an edge the end that more such pairs have gets the current. */
  private chooseColumns(): Int32Array {
    const {first, second, edge, column, other} = this;
    const met = new Int32Array(this.plan.elimination.size);
    const far = (i: number): boolean =>
      edge[i] < 0 && first[i] >= 0 && second[i] >= 0 && first[i] !== second[i];
    for (let i = 0; i < first.length; i += 1)
      if (far(i)) {
        met[first[i]] += 1;
        met[second[i]] += 1;
      }
    const chosen = new Set<number>();
    const ends = Int32Array.from(first, (p, i) => {
      if (!far(i)) return -1;
      const end = met[p] >= met[second[i]] ? p : second[i];
      other[i] = end === p ? second[i] : p;
      chosen.add(end);
      return end;
    });
    const columns = Int32Array.from(chosen).sort();
    ends.forEach((end, i) => {
      if (end >= 0) column[i] = columns.indexOf(end);
    });
    return columns;
  }

  /** Entries of the inverse on the diagonal and where the factor has edges, last column first. */
  private invertPattern({factor}: Solution, symmetric: boolean): void {
    const {size, start, row, target} = this.plan.elimination;
    const {pairStart} = this;
    work.reserve(size, row.length);
    const {diagonalRe, diagonalIm, upperRe, upperIm} = work;
    const lowerRe = symmetric ? upperRe : work.lowerRe;
    const lowerIm = symmetric ? upperIm : work.lowerIm;
    for (let k = size - 1; k >= 0; k -= 1) {
      const from = start[k];
      const degree = start[k + 1] - from;
      for (let e = 0; e < degree; e += 1) {
        // rows and columns that k shares with p: those of its neighbours, which the elimination joined with one another
        let uRe = 0;
        let uIm = 0;
        let lRe = 0;
        let lIm = 0;
        for (let f = 0; f < degree; f += 1) {
          const p = row[from + e];
          let qpRe: number, qpIm: number, pqRe: number, pqIm: number;
          if (e === f) {
            qpRe = pqRe = diagonalRe[p];
            qpIm = pqIm = diagonalIm[p];
          } else {
            const low = e < f ? e : f;
            const high = e < f ? f : e;
            const t = target[pairStart[k] + low * degree - (low * (low + 1)) / 2 + high - low - 1];
            if (f < e) {
              qpRe = upperRe[t];
              qpIm = upperIm[t];
              pqRe = lowerRe[t];
              pqIm = lowerIm[t];
            } else {
              qpRe = lowerRe[t];
              qpIm = lowerIm[t];
              pqRe = upperRe[t];
              pqIm = upperIm[t];
            }
          }
          const a = factor.upperRe[from + f];
          const b = factor.upperIm[from + f];
          uRe += a * qpRe - b * qpIm;
          uIm += a * qpIm + b * qpRe;
          if (symmetric) continue;
          const c = factor.lowerRe[from + f];
          const d = factor.lowerIm[from + f];
          lRe += c * pqRe - d * pqIm;
          lIm += c * pqIm + d * pqRe;
        }
        upperRe[from + e] = uRe;
        upperIm[from + e] = uIm;
        lowerRe[from + e] = symmetric ? uRe : lRe;
        lowerIm[from + e] = symmetric ? uIm : lIm;
      }
      let re = factor.inverseRe[k];
      let im = factor.inverseIm[k];
      for (let f = from; f < from + degree; f += 1) {
        re += factor.upperRe[f] * lowerRe[f] - factor.upperIm[f] * lowerIm[f];
        im += factor.upperRe[f] * lowerIm[f] + factor.upperIm[f] * lowerRe[f];
      }
      diagonalRe[k] = re;
      diagonalIm[k] = im;
    }
  }
}

function edgeOf({elimination: {start, row}}: Plan, p: number, q: number): number {
  if (p < 0 || q < 0 || p === q) return -1;
  const k = Math.min(p, q);
  for (let e = start[k]; e < start[k + 1]; e += 1) if (row[e] === Math.max(p, q)) return e;
  return -1;
}

/**
 * Volts that a unit current into each of a few nodes makes at all of them, every source dead:
 * `re[row * columns.length + column]`.
 *
 * @param columns positions, ascending
 */
function substituteBlock(
  solution: Solution,
  columns: Int32Array,
  re: Float64Array,
  im: Float64Array,
  transposed: boolean,
): void {
  const {factor, kind, plan} = solution;
  const {size, start, row} = plan.elimination;
  const down = transposed ? factor.upperRe : factor.lowerRe;
  const downIm = transposed ? factor.upperIm : factor.lowerIm;
  const up = transposed ? factor.lowerRe : factor.upperRe;
  const upIm = transposed ? factor.lowerIm : factor.upperIm;
  const count = columns.length;
  const direct = kind === 'dc';
  re.fill(0, 0, size * count);
  im.fill(0, 0, size * count);
  for (let c = 0; c < count; c += 1) {
    re[columns[c] * count + c] = 1;
    // on its way down a current meets few nodes, so each goes by itself
    for (let k = columns[c]; k < size; k += 1) {
      const kRe = re[k * count + c];
      const kIm = im[k * count + c];
      if (kRe === 0 && kIm === 0) continue;
      for (let e = start[k]; e < start[k + 1]; e += 1) {
        const to = row[e] * count + c;
        re[to] += down[e] * kRe - downIm[e] * kIm;
        im[to] += down[e] * kIm + downIm[e] * kRe;
      }
    }
  }
  for (let k = size - 1; k >= 0; k -= 1) {
    scaleRow(re, im, k * count, count, factor.inverseRe[k], factor.inverseIm[k], direct);
    for (let e = start[k]; e < start[k + 1]; e += 1)
      addRow(re, im, k * count, row[e] * count, count, up[e], upIm[e], direct);
  }
}

/** Scratch of all lists: nothing here runs at the same time as itself. */
const work = {
  diagonalRe: new Float64Array(0),
  diagonalIm: new Float64Array(0),
  upperRe: new Float64Array(0),
  upperIm: new Float64Array(0),
  lowerRe: new Float64Array(0),
  lowerIm: new Float64Array(0),
  blocks: [] as {re: Float64Array; im: Float64Array}[],
  reserve(size: number, edges: number): void {
    if (this.diagonalRe.length < size) {
      this.diagonalRe = new Float64Array(size);
      this.diagonalIm = new Float64Array(size);
    }
    if (this.upperRe.length >= edges) return;
    this.upperRe = new Float64Array(edges);
    this.upperIm = new Float64Array(edges);
    this.lowerRe = new Float64Array(edges);
    this.lowerIm = new Float64Array(edges);
  },
  block(index: number, length: number): {re: Float64Array; im: Float64Array} {
    let block = this.blocks[index];
    if (!block || block.re.length < length)
      this.blocks[index] = block = {re: new Float64Array(length), im: new Float64Array(length)};
    return block;
  },
};
