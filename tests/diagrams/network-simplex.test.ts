import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {
  solveHeights,
  type Attraction,
  type Separation,
} from '../../src/diagrams/network-simplex.ts';

const costOf = (
  heights: ArrayLike<number>,
  separations: readonly Separation[],
  attractions: readonly Attraction[],
): number =>
  separations.reduce(
    (sum, {from, to, length, weight}) => sum + weight * (heights[to]! - heights[from]! - length),
    0,
  ) +
  attractions.reduce(
    (sum, {a, b, aOffset, bOffset, weight}) =>
      sum + weight * Math.abs(heights[a]! + aOffset - heights[b]! - bOffset),
    0,
  );

/** The least cost over all whole heights up to `most`, by trying each: node 0 stays at 0. */
function leastByTrying(
  count: number,
  separations: readonly Separation[],
  attractions: readonly Attraction[],
  most: number,
): number {
  let least = Infinity;
  const heights = Array.from({length: count}, () => 0);
  const go = (node: number): void => {
    if (node === count) {
      if (separations.every(({from, to, length}) => heights[to]! - heights[from]! >= length))
        least = Math.min(least, costOf(heights, separations, attractions));
      return;
    }
    for (heights[node] = 0; heights[node]! <= most; heights[node]!++) go(node + 1);
  };
  go(1);
  return least;
}

describe('heights by network simplex', () => {
  test('two nodes that want to be level are, where nothing keeps them apart', () => {
    const separations = [
      {from: 0, to: 1, length: 4, weight: 0},
      {from: 0, to: 2, length: 9, weight: 0},
    ];
    const heights = solveHeights(3, separations, [
      {a: 1, b: 2, aOffset: 3, bOffset: 1, weight: 2},
    ])!;
    expect(heights[1]! + 3).toBe(heights[2]! + 1);
  });

  test('separations that go round in a ring have no heights', () => {
    const ring = [
      {from: 0, to: 1, length: 1, weight: 0},
      {from: 1, to: 2, length: 1, weight: 0},
      {from: 2, to: 1, length: 1, weight: 0},
    ];
    expect(solveHeights(3, ring, [])).toBeUndefined();
  });

  test('no other heights cost less: every small case, against all heights tried', () => {
    const nodes = 4;
    const separation = fc
      .tuple(fc.nat(nodes - 2), fc.nat(nodes - 1), fc.nat(2), fc.nat(2))
      .map(([from, step, length, weight]): Separation => ({
        from,
        to: Math.min(nodes - 1, from + 1 + (step % (nodes - from))),
        length,
        weight,
      }));
    const attraction = fc
      .record({
        a: fc.nat(nodes - 1),
        b: fc.nat(nodes - 1),
        aOffset: fc.nat(2),
        bOffset: fc.nat(2),
        weight: fc.integer({min: 1, max: 3}),
      })
      .filter(({a, b}) => a !== b);
    fc.assert(
      fc.property(
        fc.array(separation, {maxLength: 4}),
        fc.array(attraction, {maxLength: 4}),
        (some, attractions) => {
          // everything stands below the sheet's upper edge, as in a drawing
          const separations = [
            ...Array.from({length: nodes - 1}, (_, i) => ({
              from: 0,
              to: i + 1,
              length: 0,
              weight: 0,
            })),
            ...some,
          ];
          const heights = solveHeights(nodes, separations, attractions)!;
          for (const {from, to, length} of separations)
            expect(heights[to]! - heights[from]!).toBeGreaterThanOrEqual(length - 1e-9);
          expect(costOf(heights, separations, attractions)).toBeCloseTo(
            leastByTrying(nodes, separations, attractions, 9),
            9,
          );
        },
      ),
      {numRuns: 150},
    );
  });
});
