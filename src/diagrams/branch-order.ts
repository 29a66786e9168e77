import type {NetEdge} from './ladder-plan.ts';
import {edgesIn, type SpTree} from './series-parallel.ts';
import {treeOver, type NetTree, type Wiring} from './wiring.ts';

/**
 * Orders parallel branches: the one with a coil or a main winding on top, then the longest; branches that
 * hang on one terminal stay together, so that verticals do not cross.
 */
export function orderBranches(
  tree: SpTree<NetEdge>,
  wiring: Wiring,
  before: string | undefined,
): SpTree<NetEdge> {
  if (tree.kind === 'edge') return tree;
  if (tree.kind === 'series') {
    let last = before;
    return {
      kind: 'series',
      parts: tree.parts.map((part) => {
        const ordered = orderBranches(part, wiring, last);
        const ends = terminalsAt(part, 'right');
        last = ends.length === 1 ? ends[0] : 'any';
        return ordered;
      }),
    };
  }
  const keyed = tree.parts
    .map((part) => ({part: orderBranches(part, wiring, before), key: branchKey(part)}))
    .sort((a, b) => a.key - b.key);
  if (before === undefined || before === 'any')
    return {kind: 'parallel', parts: keyed.map(({part}) => part)};
  const walk: string[] = [];
  const visit = (node: NetTree): void => {
    walk.push(node.terminal);
    node.children.forEach(visit);
  };
  visit(
    treeOver(
      wiring,
      before,
      keyed.flatMap(({part}) => terminalsAt(part, 'left')),
    ),
  );
  const rank = (part: SpTree<NetEdge>): number =>
    Math.min(...terminalsAt(part, 'left').map((end) => walk.indexOf(end)));
  return {
    kind: 'parallel',
    parts: keyed
      .map(({part}, i) => ({part, i, rank: rank(part)}))
      .sort((a, b) => a.rank - b.rank || a.i - b.i)
      .map(({part}) => part),
  };
}

/** Terminals at which a tree's left or right side ends, top row first. */
export function terminalsAt(tree: SpTree<NetEdge>, side: 'left' | 'right'): string[] {
  if (tree.kind === 'edge') {
    const {edge} = tree.edge;
    return [(side === 'left') === tree.reversed ? edge.b : edge.a];
  }
  if (tree.kind === 'parallel') return tree.parts.flatMap((part) => terminalsAt(part, side));
  return terminalsAt(tree.parts[side === 'left' ? 0 : tree.parts.length - 1]!, side);
}

function branchKey(tree: SpTree<NetEdge>): number {
  const edges = edgesIn(tree).map(({edge}) => edge);
  const leads = edges.some(({element, winding}) => element.is === 'coil' || winding === 'main');
  return (leads ? 0 : 1e6) - edges.length * 1e3 + Math.min(...edges.map(({order}) => order)) / 1e3;
}

/** More orders than this are not tried. */
const MOST_ORDERS = 500;

/** Every order of the parallel branches of a tree, the given one first, up to a bound. */
export function branchOrders(tree: SpTree<NetEdge>): SpTree<NetEdge>[] {
  if (tree.kind === 'edge') return [tree];
  const parts = tree.parts.map(branchOrders);
  let lists: SpTree<NetEdge>[][] = [[]];
  for (const choices of parts)
    lists = lists
      .flatMap((list) => choices.map((choice) => [...list, choice]))
      .slice(0, MOST_ORDERS);
  if (tree.kind === 'series') return lists.map((list) => ({kind: 'series', parts: list}));
  return lists
    .flatMap((list) => permutations(list))
    .slice(0, MOST_ORDERS)
    .map((list) => ({kind: 'parallel', parts: list}));
}

function permutations<T>(list: readonly T[]): T[][] {
  if (list.length < 2 || list.length > 5) return [[...list]];
  return list.flatMap((first, i) =>
    permutations([...list.slice(0, i), ...list.slice(i + 1)]).map((rest) => [first, ...rest]),
  );
}
