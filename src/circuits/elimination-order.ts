/**
 * The pattern of an elimination: which unknown goes when, and where the fill lands. Pattern only, no numbers.
 *
 * Edges are the entries off the diagonal. Edge `e` of column k joins k with a later unknown `row[e]`;
 * column k owns the edges `start[k] … start[k + 1] − 1`, rows ascending.
 */
export interface Elimination {
  readonly size: number;
  /** Length size: position in the elimination of each unknown. */
  readonly position: Int32Array;
  /** Length size + 1. */
  readonly start: Int32Array;
  /** Length edgeCount: later position of each edge. */
  readonly row: Int32Array;
  /**
   * For each column, its edge pairs (p, q) with p before q, in order: the edge that joins row[p] with row[q].
   * Length Σ d(d−1)/2 over the columns' degrees d.
   */
  readonly target: Int32Array;
}

/**
 * Minimum-degree order with exact degrees (Davis, Direct Methods for Sparse Linear Systems, §7.1; here on the
 * plain elimination graph, since electrical networks keep degrees of two to four).
 *
 * `pairs` holds two unknowns per edge, repeats allowed.
 */
export function planElimination(size: number, pairs: readonly number[]): Elimination {
  const neighbours: Set<number>[] = Array.from({length: size}, () => new Set<number>());
  for (let i = 0; i < pairs.length; i += 2) {
    const p = pairs[i];
    const q = pairs[i + 1];
    if (p === q) continue;
    neighbours[p].add(q);
    neighbours[q].add(p);
  }

  // buckets by degree; entries go stale when a degree changes and are skipped when met
  const buckets: number[][] = [];
  const put = (unknown: number): void => {
    const degree = neighbours[unknown].size;
    (buckets[degree] ??= []).push(unknown);
  };
  for (let unknown = size - 1; unknown >= 0; unknown -= 1) put(unknown);

  const position = new Int32Array(size).fill(-1);
  const columns: number[][] = [];
  let lowest = 0;
  while (columns.length < size) {
    const bucket = buckets[lowest];
    const unknown = bucket?.pop();
    if (unknown === undefined) {
      lowest += 1;
      continue;
    }
    if (position[unknown] !== -1 || neighbours[unknown].size !== lowest) continue;
    position[unknown] = columns.length;
    const around = [...neighbours[unknown]];
    columns.push(around);
    // star to mesh: the neighbours become joined to one another
    for (const p of around) {
      const set = neighbours[p];
      set.delete(unknown);
      for (const q of around) if (q !== p) set.add(q);
      put(p);
      lowest = Math.min(lowest, set.size);
    }
  }
  return numberEdges(size, position, columns);
}

function numberEdges(
  size: number,
  position: Int32Array,
  columns: readonly number[][],
): Elimination {
  const start = new Int32Array(size + 1);
  for (let k = 0; k < size; k += 1) start[k + 1] = start[k] + columns[k].length;
  const row = new Int32Array(start[size]);
  let pairCount = 0;
  for (let k = 0; k < size; k += 1) {
    const rows = columns[k].map((unknown) => position[unknown]).sort((p, q) => p - q);
    row.set(rows, start[k]);
    pairCount += (rows.length * (rows.length - 1)) / 2;
  }
  const target = new Int32Array(pairCount);
  let at = 0;
  for (let k = 0; k < size; k += 1)
    for (let p = start[k]; p < start[k + 1]; p += 1)
      for (let q = p + 1; q < start[k + 1]; q += 1) {
        target[at] = findEdge(start, row, row[p], row[q]);
        at += 1;
      }
  return {size, position, start, row, target};
}

/** Edge between two positions, or −1 when there is none. */
export function edgeBetween(plan: Elimination, p: number, q: number): number {
  return findEdge(plan.start, plan.row, Math.min(p, q), Math.max(p, q));
}

function findEdge(start: Int32Array, row: Int32Array, k: number, later: number): number {
  let low = start[k];
  let high = start[k + 1] - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const found = row[middle];
    if (found === later) return middle;
    if (found < later) low = middle + 1;
    else high = middle - 1;
  }
  return -1;
}
