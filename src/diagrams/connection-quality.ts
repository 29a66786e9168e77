import type {Box, Point} from './drawing.ts';

/** What is counted of a set of routed wires. */
export interface Quality {
  readonly crossings: number;
  /** Crossings of two wires of one colour: hard to follow. */
  readonly sameColour: number;
  readonly bends: number;
  /** Stretches on which two wires lie on one another. */
  readonly overlaps: number;
  /** Wires that run through a part. */
  readonly through: number;
  readonly length: number;
}

export interface RoutedWire {
  readonly id: string;
  readonly colour: string;
  readonly points: readonly Point[];
}

interface Segment {
  readonly wire: RoutedWire;
  readonly flat: boolean;
  /** Along the segment's own direction. */
  readonly low: number;
  readonly high: number;
  /** Across it. */
  readonly at: number;
}

function segmentsOf(wires: readonly RoutedWire[]): Segment[] {
  return wires.flatMap((wire) =>
    wire.points.slice(1).map((to, i) => {
      const from = wire.points[i]!;
      const flat = Math.abs(from.y - to.y) < Math.abs(from.x - to.x);
      return {
        wire,
        flat,
        low: flat ? Math.min(from.x, to.x) : Math.min(from.y, to.y),
        high: flat ? Math.max(from.x, to.x) : Math.max(from.y, to.y),
        at: flat ? from.y : from.x,
      };
    }),
  );
}

/** Counts crossings, bends, overlaps and wires through parts. Wires must be orthogonal. */
export function measureWires(wires: readonly RoutedWire[], parts: readonly Box[]): Quality {
  const segments = segmentsOf(wires);
  const flat = segments.filter((segment) => segment.flat);
  const upright = segments.filter((segment) => !segment.flat);
  let crossings = 0;
  let sameColour = 0;
  for (const h of flat)
    for (const v of upright) {
      if (h.wire === v.wire || v.at <= h.low + 0.5 || v.at >= h.high - 0.5) continue;
      if (h.at <= v.low + 0.5 || h.at >= v.high - 0.5) continue;
      crossings++;
      if (h.wire.colour === v.wire.colour) sameColour++;
    }
  let overlaps = 0;
  for (const group of [flat, upright]) {
    const sorted = [...group].sort((a, b) => a.at - b.at);
    for (let i = 0; i < sorted.length; i++)
      for (let j = i + 1; j < sorted.length && sorted[j]!.at - sorted[i]!.at < 3; j++) {
        const [a, b] = [sorted[i]!, sorted[j]!];
        if (a.wire !== b.wire && Math.min(a.high, b.high) - Math.max(a.low, b.low) > 1) overlaps++;
      }
  }
  let through = 0;
  for (const box of parts)
    for (const {flat: isFlat, low, high, at} of segments) {
      const across = isFlat ? [box.y, box.y + box.height] : [box.x, box.x + box.width];
      const along = isFlat ? [box.x, box.x + box.width] : [box.y, box.y + box.height];
      if (
        at > across[0]! + 1 &&
        at < across[1]! - 1 &&
        Math.min(high, along[1]!) - Math.max(low, along[0]!) > 1
      )
        through++;
    }
  return {
    crossings,
    sameColour,
    overlaps,
    through,
    bends: wires.reduce((sum, {points}) => sum + Math.max(0, points.length - 2), 0),
    length: segments.reduce((sum, {low, high}) => sum + high - low, 0),
  };
}
