import {LANE_PITCH} from './lane-spacing.ts';

/** A wire in a channel, with the heights at which it comes in from the left and from the right. */
export interface Stretch {
  readonly wire: number;
  readonly left: readonly number[];
  readonly right: readonly number[];
}

/** Two level stretches that would lie on one another: one ends where the other begins. */
export interface Clash {
  /** Its right-hand end and the other's left-hand end are at one height. */
  readonly wire: number;
  readonly other: number;
}

export interface Tracks {
  /** Track of each stretch, from the left; −1 for one that runs straight through. */
  readonly track: readonly number[];
  readonly count: number;
  readonly clashes: readonly Clash[];
}

const CLASH = 1000;
/** Level stretches nearer than this lie on one another. */
const TOO_NEAR = 6;

const straight = ({left, right}: Stretch): boolean =>
  left.length === 1 && right.length === 1 && Math.abs(left[0]! - right[0]!) < 0.25;

const spanOf = ({left, right}: Stretch): readonly [number, number] => {
  const all = [...left, ...right];
  return [Math.min(...all), Math.max(...all)];
};

/**
 * Gives each wire of a channel a track for its upright stretch so that wires cross no more often than
 * their ends ask for, in as few tracks as that allows.
 */
export function assignTracks(stretches: readonly Stretch[]): Tracks {
  const upright = stretches.flatMap((stretch, i) => (straight(stretch) ? [] : [i]));
  const spans = stretches.map(spanOf);
  // badness of one stretch standing left of another, and what must stand left of what
  const before = new Map<number, number[]>(upright.map((i) => [i, []]));
  const weight = new Map<string, number>();
  for (const i of upright)
    for (const j of upright) {
      if (j <= i) continue;
      const difference =
        badness(stretches[i]!, stretches[j]!) - badness(stretches[j]!, stretches[i]!);
      if (difference === 0) continue;
      const [first, last] = difference < 0 ? [i, j] : [j, i];
      before.get(last)!.push(first);
      weight.set(`${first} ${last}`, Math.abs(difference));
    }
  const order: number[] = [];
  const waiting = new Set(upright);
  while (waiting.size > 0) {
    // what has nothing left to wait for, the highest first; in a ring, what costs least to let go
    let next = -1;
    let least = Infinity;
    for (const i of waiting) {
      let broken = 0;
      for (const j of before.get(i)!) if (waiting.has(j)) broken += weight.get(`${j} ${i}`)!;
      const price = broken * 1e5 + spans[i]![0];
      if (price < least) {
        least = price;
        next = i;
      }
    }
    order.push(next);
    waiting.delete(next);
  }
  const track = stretches.map(() => -1);
  let count = 0;
  const placed: number[] = [];
  for (const i of order) {
    let at = 0;
    for (const j of before.get(i)!) if (placed.includes(j)) at = Math.max(at, track[j]! + 1);
    while (placed.some((j) => track[j] === at && near(spans[i]!, spans[j]!))) at++;
    track[i] = at;
    count = Math.max(count, at + 1);
    placed.push(i);
  }
  const clashes: Clash[] = [];
  for (const i of upright)
    for (const j of upright)
      if (i !== j && track[i]! <= track[j]! && lieOn(stretches[i]!, stretches[j]!))
        clashes.push({wire: stretches[i]!.wire, other: stretches[j]!.wire});
  return {track, count, clashes};
}

const near = (a: readonly [number, number], b: readonly [number, number]): boolean =>
  Math.min(a[1], b[1]) - Math.max(a[0], b[0]) > -LANE_PITCH;

/** Whether the way out of `a` to the right lies on the way into `b`, with `a` left of `b`. */
const lieOn = (a: Stretch, b: Stretch): boolean =>
  a.right.some((y) => b.left.some((other) => Math.abs(y - other) < TOO_NEAR));

/** Crossings and overlaps of two wires with `a` left of `b`. */
function badness(a: Stretch, b: Stretch): number {
  const [aTop, aBottom] = spanOf(a);
  const [bTop, bBottom] = spanOf(b);
  let bad = lieOn(a, b) ? CLASH : 0;
  for (const y of a.right) if (y > bTop && y < bBottom) bad++;
  for (const y of b.left) if (y > aTop && y < aBottom) bad++;
  return bad;
}
