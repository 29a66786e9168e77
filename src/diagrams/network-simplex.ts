/** `to` stands at least `length` below `from`. */
export interface Separation {
  readonly from: number;
  readonly to: number;
  readonly length: number;
  /** What each unit beyond `length` costs. */
  readonly weight: number;
}

/** Two nodes that want to be level: `a` with `aOffset` added and `b` with `bOffset` added. */
export interface Attraction {
  readonly a: number;
  readonly b: number;
  readonly aOffset: number;
  readonly bOffset: number;
  readonly weight: number;
}

/**
 * Heights of `count` nodes that keep all separations and cost least: the weighted sum of what separations
 * are exceeded by and of the distances of attracted pairs. Network simplex, as for layered drawings in
 * Gansner, Koutsofios, North and Vo, "A Technique for Drawing Directed Graphs", 1993, section 4; cut
 * values here are sums of a node's weights over a subtree, since inner edges cancel.
 *
 * The separations must connect all nodes. Undefined where they contradict one another.
 */
export function solveHeights(
  count: number,
  separations: readonly Separation[],
  attractions: readonly Attraction[],
): Float64Array | undefined {
  // |p - q| is the least of (p - n) + (q - n) over an n above both: one more node for each attraction
  const nodes = count + attractions.length;
  const edges: Separation[] = [
    ...separations,
    ...attractions.flatMap(({a, b, aOffset, bOffset, weight}, i) => [
      {from: count + i, to: a, length: -aOffset, weight},
      {from: count + i, to: b, length: -bOffset, weight},
    ]),
  ];
  const heights = firstHeights(nodes, count, edges);
  if (!heights) return undefined;
  const tree = tightTree(nodes, edges, heights);
  if (!tree) return undefined;
  pivot(nodes, edges, heights, tree);
  return heights.slice(0, count);
}

const slackOf = ({from, to, length}: Separation, heights: Float64Array): number =>
  heights[to]! - heights[from]! - length;

/** Every node as high as its separations allow; an attraction's node goes down to the pair it holds. */
function firstHeights(
  nodes: number,
  count: number,
  edges: readonly Separation[],
): Float64Array | undefined {
  const waiting = new Int32Array(nodes);
  const after = Array.from({length: nodes}, (): Separation[] => []);
  for (const edge of edges) {
    after[edge.from]!.push(edge);
    if (edge.from < count) waiting[edge.to]!++;
  }
  const heights = new Float64Array(nodes);
  const ready: number[] = [];
  for (let node = 0; node < count; node++) if (waiting[node] === 0) ready.push(node);
  let done = 0;
  for (let node = ready.pop(); node !== undefined; node = ready.pop()) {
    done++;
    for (const {to, length} of after[node]!) {
      heights[to] = Math.max(heights[to]!, heights[node]! + length);
      if (--waiting[to]! === 0) ready.push(to);
    }
  }
  if (done < count) return undefined;
  for (let node = count; node < nodes; node++)
    heights[node] = Math.min(...after[node]!.map(({to, length}) => heights[to]! - length));
  return heights;
}

/** A spanning tree of edges with no slack, gained by moving what is joined already toward the rest. */
function tightTree(
  nodes: number,
  edges: readonly Separation[],
  heights: Float64Array,
): Set<number> | undefined {
  const touching = Array.from({length: nodes}, (): number[] => []);
  edges.forEach(({from, to}, i) => {
    touching[from]!.push(i);
    touching[to]!.push(i);
  });
  const inTree = new Uint8Array(nodes);
  const joined: number[] = [];
  const tree = new Set<number>();
  const join = (start: number): void => {
    inTree[start] = 1;
    joined.push(start);
    const open = [start];
    for (let node = open.pop(); node !== undefined; node = open.pop())
      for (const i of touching[node]!) {
        const edge = edges[i]!;
        const other = edge.from === node ? edge.to : edge.from;
        if (inTree[other] || Math.abs(slackOf(edge, heights)) > 1e-6) continue;
        tree.add(i);
        inTree[other] = 1;
        joined.push(other);
        open.push(other);
      }
  };
  join(0);
  while (joined.length < nodes) {
    let least = -1;
    let leastSlack = Infinity;
    for (let i = 0; i < edges.length; i++) {
      const edge = edges[i]!;
      if (inTree[edge.from] === inTree[edge.to]) continue;
      const slack = slackOf(edge, heights);
      if (slack < leastSlack) {
        leastSlack = slack;
        least = i;
      }
    }
    if (least < 0) return undefined;
    const edge = edges[least]!;
    const shift = inTree[edge.from] ? leastSlack : -leastSlack;
    for (const node of joined) heights[node]! += shift;
    tree.add(least);
    join(inTree[edge.from] ? edge.to : edge.from);
  }
  return tree;
}

/** Trades tree edges that cost for edges that do not, until none is left. */
function pivot(
  nodes: number,
  edges: readonly Separation[],
  heights: Float64Array,
  tree: Set<number>,
): void {
  const gain = new Float64Array(nodes);
  for (const {from, to, weight} of edges) {
    gain[from]! += weight;
    gain[to]! -= weight;
  }
  const parentEdge = new Int32Array(nodes);
  const order = new Int32Array(nodes);
  const enter = new Int32Array(nodes);
  const leave = new Int32Array(nodes);
  const net = new Float64Array(nodes);
  const branches = Array.from({length: nodes}, (): number[] => []);
  for (const i of tree) {
    branches[edges[i]!.from]!.push(i);
    branches[edges[i]!.to]!.push(i);
  }
  const otherEnd = (i: number, node: number): number =>
    edges[i]!.from === node ? edges[i]!.to : edges[i]!.from;
  const survey = (): void => {
    let clock = 0;
    const stack: number[] = [0];
    parentEdge[0] = -1;
    while (stack.length > 0) {
      const node = stack.pop()!;
      enter[node] = clock;
      order[clock++] = node;
      for (const i of branches[node]!)
        if (i !== parentEdge[node]) {
          const other = otherEnd(i, node);
          parentEdge[other] = i;
          stack.push(other);
        }
    }
    leave.set(enter);
    net.set(gain);
    for (let k = nodes - 1; k > 0; k--) {
      const node = order[k]!;
      const parent = otherEnd(parentEdge[node]!, node);
      net[parent]! += net[node]!;
      if (leave[node]! > leave[parent]!) leave[parent] = leave[node]!;
    }
  };
  // each pivot makes the whole no dearer; the bound is for ties that would go round for ever
  for (let round = 0; round < 40 * nodes; round++) {
    survey();
    let out = -1;
    let worst = -1e-7;
    let below = 0;
    for (let k = 1; k < nodes; k++) {
      const node = order[k]!;
      const i = parentEdge[node]!;
      const cut = edges[i]!.from === node ? net[node]! : -net[node]!;
      if (cut < worst) {
        worst = cut;
        out = i;
        below = node;
      }
    }
    if (out < 0) return;
    const [first, last] = [enter[below]!, leave[below]!];
    const inside = (node: number): boolean => enter[node]! >= first && enter[node]! <= last;
    // the side of the edge's lower end goes down until another edge holds it
    const lowerInside = edges[out]!.to === below;
    let into = -1;
    let least = Infinity;
    for (let i = 0; i < edges.length; i++) {
      const edge = edges[i]!;
      if (inside(edge.from) !== lowerInside || inside(edge.to) === lowerInside) continue;
      const slack = slackOf(edge, heights);
      if (slack < least) {
        least = slack;
        into = i;
      }
    }
    if (into < 0) return;
    const shift = lowerInside ? least : -least;
    if (shift !== 0) for (let k = first; k <= last; k++) heights[order[k]!]! += shift;
    for (const end of [edges[out]!.from, edges[out]!.to])
      branches[end]!.splice(branches[end]!.indexOf(out), 1);
    branches[edges[into]!.from]!.push(into);
    branches[edges[into]!.to]!.push(into);
  }
}
