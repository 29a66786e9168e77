import {gutterWidth, type BoardLayout, type BoardTerminal} from './board-layout.ts';

export interface WireEnds {
  readonly id: string;
  readonly from: string;
  readonly to: string;
}

export interface WireRoute {
  readonly id: string;
  /** Corners of the wire, from its first end to its second. */
  readonly points: readonly (readonly [number, number])[];
}

/**
 * Routes every wire by itself: out of its terminal into the gutter beside it, along a lane that no other wire has,
 * and where its ends lie at different gutters across the top in a lane of its own. Wires never lie on each other but
 * for the last bit at a shared terminal, where they fan out.
 */
export function routeWires(layout: BoardLayout, wires: readonly WireEnds[]): WireRoute[] {
  const terminals = new Map(
    layout.parts.flatMap((part) =>
      part.terminals.map((each): [string, BoardTerminal] => [each.terminal, each]),
    ),
  );
  const gutterOf = ({x, side}: BoardTerminal): number =>
    side === 'left'
      ? layout.gutters.findLastIndex((at) => at <= x)
      : layout.gutters.findIndex((at) => at >= x - 1);
  const known = wires.flatMap((wire) => {
    const [from, to] = [terminals.get(wire.from), terminals.get(wire.to)];
    return from && to ? [{wire, from, to, gutters: [gutterOf(from), gutterOf(to)] as const}] : [];
  });
  const lanes = layout.gutters.map(() => 0);
  const totals = layout.gutters.map(
    (_, g) => known.filter(({gutters}) => gutters.includes(g)).length,
  );
  const crossing = known.filter(({gutters}) => gutters[0] !== gutters[1]).length;
  const fans = new Map<string, number>();
  const landings = new Map<string, number>();
  for (const {wire} of known)
    for (const end of [wire.from, wire.to]) landings.set(end, (landings.get(end) ?? 0) + 1);
  let bus = 0;
  return known.map(({wire, from, to, gutters}) => {
    const lane = (g: number): number => {
      lanes[g]++;
      return layout.gutters[g] + 14 + ((gutterWidth - 28) * lanes[g]) / (totals[g] + 1);
    };
    /** Where it lands: several wires on one terminal lie a little apart. */
    const landing = ({terminal, y}: BoardTerminal): number => {
      const k = fans.get(terminal) ?? 0;
      fans.set(terminal, k + 1);
      const pitch = Math.min(5, 16 / landings.get(terminal)!);
      return y + (k - (landings.get(terminal)! - 1) / 2) * pitch;
    };
    const [fromY, toY] = [landing(from), landing(to)];
    const first = lane(gutters[0]);
    const points: [number, number][] = [
      [from.x, fromY],
      [first, fromY],
    ];
    if (gutters[0] !== gutters[1]) {
      bus++;
      const across = layout.busY + 8 + (54 * bus) / (crossing + 1);
      const second = lane(gutters[1]);
      points.push([first, across], [second, across], [second, toY]);
    } else points.push([first, toY]);
    points.push([to.x, toY]);
    return {id: wire.id, points};
  });
}

/** How far from its terminal a wire's handle lies, so that a finger can tell the two apart. */
const handleReach = 26;

/**
 * Where the handle of a wire's end lies: on the wire, some way from its terminal; nearer on a short wire, whose two
 * handles stay a finger apart.
 */
export function handleAt(
  {points}: WireRoute,
  end: 'from' | 'to',
): {readonly x: number; readonly y: number} {
  const way = end === 'from' ? points : [...points].reverse();
  const legs = way.slice(1).map(([x, y], i) => Math.hypot(x - way[i][0], y - way[i][1]));
  const whole = legs.reduce((sum, leg) => sum + leg, 0);
  let left = Math.min(handleReach, Math.max(0, whole / 2 - handleReach / 2));
  for (const [i, leg] of legs.entries()) {
    const [[x1, y1], [x2, y2]] = [way[i], way[i + 1]];
    if (left <= leg)
      return leg === 0
        ? {x: x1, y: y1}
        : {x: x1 + ((x2 - x1) * left) / leg, y: y1 + ((y2 - y1) * left) / leg};
    left -= leg;
  }
  const [x, y] = way[way.length - 1];
  return {x, y};
}
