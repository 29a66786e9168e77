import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {assignTracks, type Stretch} from '../../src/diagrams/channel-tracks.ts';
import {measureWires} from '../../src/diagrams/connection-quality.ts';

/** The stretches of a channel as wires, each track 10 wide. */
function drawn(stretches: readonly Stretch[], track: readonly number[]) {
  return stretches.map(({wire, left, right}, i) => {
    const x = 10 + 10 * track[i]!;
    const ends = [...left.map((y) => ({x: 0, y})), ...right.map((y) => ({x: 1000, y}))];
    const [first, last] = ends as [{x: number; y: number}, {x: number; y: number}];
    const points = track[i]! < 0 ? [first, last] : [first, {x, y: first.y}, {x, y: last.y}, last];
    return {id: String(wire), colour: String(wire), points};
  });
}

/** Pairs of wires whose ends alternate round the channel: they must cross, however they are drawn. */
function alternating(stretches: readonly Stretch[]): number {
  const round = stretches.map(({left, right}) =>
    [...left, ...right.map((y) => 1e6 - y)].sort((a, b) => a - b),
  );
  let count = 0;
  round.forEach(([a, b], i) => {
    for (const [c, d] of round.slice(i + 1))
      if (c! < a! ? d! > a! && d! < b! : c! < b! && d! > b!) count++;
  });
  return count;
}

const heights = (count: number): fc.Arbitrary<number[]> =>
  fc.shuffledSubarray(
    Array.from({length: 24}, (_, i) => 20 + i * 20),
    {minLength: count, maxLength: count},
  );

describe('tracks of a channel', () => {
  test('a wire that comes in and goes out level needs none', () => {
    expect(assignTracks([{wire: 0, left: [40], right: [40]}])).toMatchObject({
      track: [-1],
      count: 0,
    });
  });

  test('wires that go up and down in different places share a track', () => {
    const tracks = assignTracks([
      {wire: 0, left: [10], right: [40]},
      {wire: 1, left: [100], right: [140]},
    ]);
    expect(tracks).toMatchObject({track: [0, 0], count: 1, clashes: []});
  });

  test('two wires that change places at the same heights cannot be kept apart, and that is told', () => {
    const {clashes} = assignTracks([
      {wire: 0, left: [10], right: [40]},
      {wire: 1, left: [40], right: [10]},
    ]);
    expect(clashes).toHaveLength(1);
  });

  test('wires cross exactly as often as their ends make them, and lie on one another nowhere', () => {
    fc.assert(
      fc.property(heights(8), heights(8), (left, right) => {
        // up and down, but none goes out at the height at which another comes in
        const stretches = left.map((y, i): Stretch => ({
          wire: i,
          left: [y],
          right: [right[i]! + 10],
        }));
        const {track, clashes} = assignTracks(stretches);
        expect(clashes).toEqual([]);
        expect(measureWires(drawn(stretches, track), [])).toMatchObject({
          crossings: alternating(stretches),
          overlaps: 0,
        });
      }),
    );
  });
});
