import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {decompose, edgesIn, reverse, type SpTree} from '../../src/diagrams/series-parallel.ts';

interface TestEdge {
  readonly id: number;
  readonly a: string;
  readonly b: string;
}

/** A series-parallel shape, before it has nodes and edges. */
type Shape = 'edge' | {readonly series: readonly Shape[]} | {readonly parallel: readonly Shape[]};

const shapes = fc.letrec<{shape: Shape}>((tie) => ({
  shape: fc.oneof(
    {maxDepth: 4},
    fc.constant<Shape>('edge'),
    fc.record({series: fc.array(tie('shape'), {minLength: 2, maxLength: 4})}),
    fc.record({parallel: fc.array(tie('shape'), {minLength: 2, maxLength: 3})}),
  ),
})).shape;

/** Edges of a shape between two nodes, each turned one way or the other. */
function wire(
  shape: Shape,
  from: string,
  to: string,
  edges: TestEdge[],
  nodes: {next: number},
): void {
  if (shape === 'edge') {
    const id = edges.length;
    edges.push(id % 3 === 0 ? {id, a: to, b: from} : {id, a: from, b: to});
  } else if ('parallel' in shape)
    for (const part of shape.parallel) wire(part, from, to, edges, nodes);
  else
    shape.series.reduce((at, part, i) => {
      const next = i === shape.series.length - 1 ? to : `n${nodes.next++}`;
      wire(part, at, next, edges, nodes);
      return next;
    }, from);
}

/** Ends of every edge as the tree has them, nodes named afresh by walking it. */
function rebuild(
  tree: SpTree<TestEdge>,
  from: string,
  to: string,
  out: {id: number; from: string; to: string}[],
  nodes: {next: number},
): void {
  if (tree.kind === 'edge') out.push({id: tree.edge.id, from, to});
  else if (tree.kind === 'parallel')
    for (const part of tree.parts) rebuild(part, from, to, out, nodes);
  else
    tree.parts.reduce((at, part, i) => {
      const next = i === tree.parts.length - 1 ? to : `m${nodes.next++}`;
      rebuild(part, at, next, out, nodes);
      return next;
    }, from);
}

/** Which edges meet at a node, as a canonical text: two networks are the same if these are. */
function meetings(ends: readonly {id: number; from: string; to: string}[]): string[] {
  const at = new Map<string, number[]>();
  for (const {id, from, to} of ends)
    for (const node of [from, to]) at.set(node, [...(at.get(node) ?? []), id]);
  return [...at.values()].map((ids) => [...ids].sort((a, b) => a - b).join(',')).sort();
}

describe('series-parallel decomposition', () => {
  test('a random series-parallel network comes back whole: same edges, same joints', () => {
    fc.assert(
      fc.property(shapes, (shape) => {
        const edges: TestEdge[] = [];
        wire(shape, 's', 't', edges, {next: 0});
        const {tree, cut, loose} = decompose(edges, 's', 't');
        expect(cut).toEqual([]);
        expect(loose).toEqual([]);
        const out: {id: number; from: string; to: string}[] = [];
        rebuild(tree!, 's', 't', out, {next: 0});
        expect(out).toHaveLength(edges.length);
        expect(meetings(out)).toEqual(meetings(edges.map(({id, a, b}) => ({id, from: a, to: b}))));
      }),
      {numRuns: 300},
    );
  });

  test('every edge is walked in the direction in which the tree runs', () => {
    fc.assert(
      fc.property(shapes, (shape) => {
        const edges: TestEdge[] = [];
        wire(shape, 's', 't', edges, {next: 0});
        const out: {id: number; from: string; to: string}[] = [];
        const {tree} = decompose(edges, 's', 't');
        rebuild(tree!, 's', 't', out, {next: 0});
        const startOf = new Map<string, string>([
          ['s', 's'],
          ['t', 't'],
        ]);
        const walk = (at: SpTree<TestEdge>): void => {
          if (at.kind !== 'edge') return at.parts.forEach(walk);
          const {from, to} = out.find(({id}) => id === at.edge.id)!;
          const [first, last] = at.reversed ? [at.edge.b, at.edge.a] : [at.edge.a, at.edge.b];
          for (const [named, real] of [
            [from, first],
            [to, last],
          ] as const) {
            expect(startOf.get(named) ?? real).toBe(real);
            startOf.set(named, real);
          }
        };
        walk(tree!);
      }),
      {numRuns: 200},
    );
  });

  test('walked from the other end, the same edges come in the opposite order', () => {
    fc.assert(
      fc.property(shapes, (shape) => {
        const edges: TestEdge[] = [];
        wire(shape, 's', 't', edges, {next: 0});
        const {tree} = decompose(edges, 's', 't');
        expect(reverse(reverse(tree!))).toEqual(tree);
      }),
      {numRuns: 100},
    );
  });

  test('a bridge is cut open at one branch, and nothing is lost', () => {
    const bridge: TestEdge[] = [
      {id: 0, a: 's', b: 'u'},
      {id: 1, a: 's', b: 'v'},
      {id: 2, a: 'u', b: 't'},
      {id: 3, a: 'v', b: 't'},
      {id: 4, a: 'u', b: 'v'},
    ];
    const {tree, cut, loose} = decompose(bridge, 's', 't');
    expect(loose).toEqual([]);
    expect(cut).toHaveLength(1);
    expect(edgesIn(cut[0]!.tree).map(({id}) => id)).toEqual([4]);
    expect(
      edgesIn(tree!)
        .map(({id}) => id)
        .sort(),
    ).toEqual([0, 1, 2, 3]);
  });

  test('a heavy bridge is left whole and the lighter branch beside it is cut', () => {
    const edges: TestEdge[] = [
      {id: 0, a: 's', b: 'u'},
      {id: 1, a: 's', b: 'v'},
      {id: 2, a: 'u', b: 't'},
      {id: 3, a: 'v', b: 't'},
      {id: 4, a: 'u', b: 'w'},
      {id: 5, a: 'w', b: 'x'},
      {id: 6, a: 'x', b: 'v'},
    ];
    const {cut} = decompose(edges, 's', 't');
    expect(cut).toHaveLength(1);
    expect(edgesIn(cut[0]!.tree)).toHaveLength(1);
  });

  test('every edge of any network is drawn once: in the tree, cut out or loose', () => {
    const node = fc.constantFrom('s', 't', 'u', 'v', 'w', 'x');
    fc.assert(
      fc.property(fc.array(fc.tuple(node, node), {maxLength: 12}), (pairs) => {
        const edges = pairs.map(([a, b], id) => ({id, a, b}));
        const {tree, cut, loose} = decompose(edges, 's', 't');
        const drawn = [
          ...(tree ? edgesIn(tree) : []),
          ...[...cut, ...loose].flatMap((branch) => edgesIn(branch.tree)),
        ];
        expect(drawn.map(({id}) => id).sort((a, b) => a - b)).toEqual(edges.map(({id}) => id));
      }),
      {numRuns: 400},
    );
  });
});
