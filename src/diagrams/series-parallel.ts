/**
 * Series-parallel decomposition of a two-terminal network: series and parallel reductions until one
 * branch is left (Valdes, Tarjan and Lawler, "The recognition of series parallel digraphs", SIAM J.
 * Comput. 11, 1982, used here on undirected networks). What does not reduce is cut open, lightest
 * branch first, until the rest does.
 */
export interface NetworkEdge {
  readonly a: string;
  readonly b: string;
}

export type SpTree<E extends NetworkEdge> =
  /** `reversed` where the path runs from the edge's b to its a. */
  | {readonly kind: 'edge'; readonly edge: E; readonly reversed: boolean}
  | {readonly kind: 'series'; readonly parts: readonly SpTree<E>[]}
  | {readonly kind: 'parallel'; readonly parts: readonly SpTree<E>[]};

/** A branch between two nodes. */
export interface Branch<E extends NetworkEdge> {
  readonly from: string;
  readonly to: string;
  readonly tree: SpTree<E>;
}

export interface Decomposition<E extends NetworkEdge> {
  /** The whole between the two ends; absent where nothing joins them. */
  readonly tree?: SpTree<E>;
  /** Branches cut out because they bridge; each runs between two nodes of the tree or of another cut. */
  readonly cut: readonly Branch<E>[];
  /** Branches that lead nowhere: spare contacts, unused taps. */
  readonly loose: readonly Branch<E>[];
}

/** The same tree walked from its other end. */
export function reverse<E extends NetworkEdge>(tree: SpTree<E>): SpTree<E> {
  if (tree.kind === 'edge') return {...tree, reversed: !tree.reversed};
  if (tree.kind === 'parallel') return {kind: 'parallel', parts: tree.parts.map(reverse)};
  return {kind: 'series', parts: tree.parts.map(reverse).reverse()};
}

/** Edges of a tree, in drawing order. */
export function edgesIn<E extends NetworkEdge>(tree: SpTree<E>): E[] {
  return tree.kind === 'edge' ? [tree.edge] : tree.parts.flatMap(edgesIn);
}

function combine<E extends NetworkEdge>(
  kind: 'series' | 'parallel',
  trees: readonly SpTree<E>[],
): SpTree<E> {
  return {kind, parts: trees.flatMap((tree) => (tree.kind === kind ? tree.parts : [tree]))};
}

/**
 * Decomposes `edges` between nodes `from` and `to`. Edge ends are node names (nets).
 * Parallel branches keep the order in which their first edges were given.
 */
export function decompose<E extends NetworkEdge>(
  edges: readonly E[],
  from: string,
  to: string,
): Decomposition<E> {
  const cut: Branch<E>[] = [];
  const loose: Branch<E>[] = [];
  let branches: Branch<E>[] = edges.map((edge) => ({
    from: edge.a,
    to: edge.b,
    tree: {kind: 'edge', edge, reversed: false},
  }));
  for (;;) {
    const reduced = reduce(branches, from, to);
    loose.push(...reduced.loose);
    branches = reduced.branches;
    if (branches.length <= 1) break;
    const victim = lightestBridge(branches, from, to);
    cut.push(victim);
    branches = branches.filter((branch) => branch !== victim);
  }
  const [whole] = branches;
  if (!whole) return {cut, loose};
  return {tree: whole.from === from ? whole.tree : reverse(whole.tree), cut, loose};
}

function reduce<E extends NetworkEdge>(
  start: readonly Branch<E>[],
  from: string,
  to: string,
): {branches: Branch<E>[]; loose: Branch<E>[]} {
  let branches = [...start];
  const loose: Branch<E>[] = [];
  for (let changed = true; changed;) {
    changed = false;
    const merged = mergeParallel(branches);
    if (merged.length < branches.length) changed = true;
    branches = merged;
    const at = new Map<string, Branch<E>[]>();
    for (const branch of branches)
      for (const node of new Set([branch.from, branch.to]))
        at.set(node, [...(at.get(node) ?? []), branch]);
    for (const branch of branches)
      // both ends on one node, or an end that nothing else shares
      if (
        branch.from === branch.to ||
        [branch.from, branch.to].some(
          (node) => node !== from && node !== to && at.get(node)!.length === 1,
        )
      ) {
        loose.push(branch);
        branches = branches.filter((other) => other !== branch);
        changed = true;
        break;
      }
    if (changed) continue;
    for (const [node, meeting] of at) {
      if (node === from || node === to || meeting.length !== 2) continue;
      const [one, other] = meeting as [Branch<E>, Branch<E>];
      const before = one.to === node ? one : {from: one.to, to: node, tree: reverse(one.tree)};
      const after =
        other.from === node ? other : {from: node, to: other.from, tree: reverse(other.tree)};
      const joined = {
        from: before.from,
        to: after.to,
        tree: combine('series', [before.tree, after.tree]),
      };
      branches = branches.flatMap((branch) =>
        branch === one ? [joined] : branch === other ? [] : [branch],
      );
      changed = true;
      break;
    }
  }
  return {branches, loose};
}

function mergeParallel<E extends NetworkEdge>(branches: readonly Branch<E>[]): Branch<E>[] {
  const between = new Map<string, Branch<E>[]>();
  for (const branch of branches) {
    const key = [branch.from, branch.to].sort().join('\n');
    between.set(key, [...(between.get(key) ?? []), branch]);
  }
  return [...between.values()]
    .map((group) => {
      const [first] = group as [Branch<E>];
      if (group.length === 1 || first.from === first.to)
        return group.length === 1 ? [first] : group;
      const trees = group.map((branch) =>
        branch.from === first.from ? branch.tree : reverse(branch.tree),
      );
      return [{from: first.from, to: first.to, tree: combine('parallel', trees)}];
    })
    .flat();
}

/** The branch with fewest edges whose removal lets the rest reduce; failing that, lets it reduce furthest. */
function lightestBridge<E extends NetworkEdge>(
  branches: readonly Branch<E>[],
  from: string,
  to: string,
): Branch<E> {
  let best = branches[0]!;
  let bestScore = Infinity;
  for (const branch of branches) {
    const rest = reduce(
      branches.filter((other) => other !== branch),
      from,
      to,
    );
    // left-over branches weigh most, then what would be stranded, then the size of the cut itself
    const stranded = rest.loose.reduce((sum, {tree}) => sum + edgesIn(tree).length, 0);
    // of equals, the one in the middle: it is the bridge that a reader looks for
    const outer = [branch.from, branch.to].some((node) => node === from || node === to);
    const score =
      Math.abs(rest.branches.length - 1) * 1e6 +
      stranded * 1e3 +
      edgesIn(branch.tree).length +
      (outer ? 0.5 : 0);
    if (score < bestScore) {
      best = branch;
      bestScore = score;
    }
  }
  return best;
}
