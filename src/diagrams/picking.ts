import type {Box, Drawing, Point, TerminalMark} from './drawing.ts';
import {symbols} from './symbols.ts';

/** What a person may point at just now. */
export interface Pickable {
  readonly terminals: readonly TerminalMark[];
  readonly wires: readonly {readonly id: string; readonly paths: readonly (readonly Point[])[]}[];
  readonly parts: readonly (Box & {readonly part: string})[];
  /** Boxes whose covers hide what lies under them. */
  readonly lids: readonly Box[];
}

export type Picked =
  | {readonly is: 'terminal'; readonly mark: TerminalMark}
  | {readonly is: 'wire'; readonly wire: string; readonly at: Point}
  | {readonly is: 'part'; readonly part: string};

/** Reach of a pointer in CSS pixels. A fingertip covers more than a mouse's arrow. */
export const reachOf = (pointer: string): {readonly terminal: number; readonly wire: number} =>
  pointer === 'touch' ? {terminal: 22, wire: 16} : {terminal: 13, wire: 8};

export const inBox = ({x, y}: Point, box: Box): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;

/** Distance from a point to a terminal's mark: to its edge for a pill or a tag, to its middle for a ring. */
export function distanceToMark(at: Point, mark: TerminalMark): number {
  const dx = Math.max(0, Math.abs(at.x - mark.x) - Math.max(0, mark.width / 2 - 4.5));
  const dy = Math.max(0, Math.abs(at.y - mark.y) - Math.max(0, mark.height / 2 - 4.5));
  return Math.hypot(dx, dy);
}

/** Nearest point of a polyline, and how far it is. */
export function nearestOn(
  at: Point,
  path: readonly Point[],
): {readonly distance: number; readonly at: Point} {
  let best = {distance: Infinity, at};
  for (let i = 1; i < path.length; i++) {
    const [from, to] = [path[i - 1]!, path[i]!];
    const length2 = (to.x - from.x) ** 2 + (to.y - from.y) ** 2;
    const along =
      length2 === 0
        ? 0
        : ((at.x - from.x) * (to.x - from.x) + (at.y - from.y) * (to.y - from.y)) / length2;
    const t = Math.min(1, Math.max(0, along));
    const near = {x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y)};
    const distance = Math.hypot(at.x - near.x, at.y - near.y);
    if (distance < best.distance) best = {distance, at: near};
  }
  return best;
}

/**
 * What a person means who points at `at` (drawing units): the nearest terminal within reach, else the
 * nearest wire, else the part around it. `scale` turns the pointer's reach in pixels into drawing units.
 */
export function pick(
  at: Point,
  scale: number,
  pointer: string,
  from: Pickable,
): Picked | undefined {
  const reach = reachOf(pointer);
  const terminal = nearest(from.terminals, (mark) => distanceToMark(at, mark));
  if (terminal && terminal.distance * scale <= reach.terminal)
    return {is: 'terminal', mark: terminal.item};
  if (from.lids.some((lid) => inBox(at, lid))) return undefined;
  const paths = from.wires.flatMap(({id, paths: own}) => own.map((path) => ({id, path})));
  const wire = nearest(paths, ({path}) => nearestOn(at, path).distance);
  if (wire && wire.distance * scale <= reach.wire)
    return {is: 'wire', wire: wire.item.id, at: nearestOn(at, wire.item.path).at};
  const [part] = from.parts
    .filter((box) => inBox(at, box))
    .sort((a, b) => a.width * a.height - b.width * b.height);
  return part ? {is: 'part', part: part.part} : undefined;
}

/** Terminals within reach of a pointer; more than one differing means that the finger cannot tell them apart. */
export function withinReach(
  at: Point,
  scale: number,
  pointer: string,
  terminals: readonly TerminalMark[],
): readonly TerminalMark[] {
  return terminals.filter((mark) => distanceToMark(at, mark) * scale <= reachOf(pointer).terminal);
}

function nearest<T>(
  list: readonly T[],
  distance: (item: T) => number,
): {item: T; distance: number} | undefined {
  let best: {item: T; distance: number} | undefined;
  for (const item of list) {
    const d = distance(item);
    if (!best || d < best.distance) best = {item, distance: d};
  }
  return best;
}

/** Where an arrow key goes: the nearest point in that direction, sideways distance counting double. */
export function nextInDirection<T extends Point>(
  from: Point,
  list: readonly T[],
  direction: 'left' | 'right' | 'up' | 'down',
): T | undefined {
  const [ux, uy] = {left: [-1, 0], right: [1, 0], up: [0, -1], down: [0, 1]}[direction] as [
    number,
    number,
  ];
  return nearest(
    list.filter(({x, y}) => (x - from.x) * ux + (y - from.y) * uy > 1),
    ({x, y}) => {
      const along = (x - from.x) * ux + (y - from.y) * uy;
      const across = Math.abs((x - from.x) * uy + (y - from.y) * ux);
      // a target far off to the side is not what the arrow means, however near it is ahead
      return along + across * 2.5;
    },
  )?.item;
}

/** Boxes that stand for the parts of a drawing: their outlines, and their symbols where they have none. */
export function partBoxes(drawing: Drawing): (Box & {readonly part: string})[] {
  return [
    ...drawing.parts,
    ...drawing.symbols.map(({part, symbol, x, y, width}) => {
      const half = (width ?? 48) / 2 + 2;
      const above = Math.max(symbols[symbol].above, 8) + 17;
      return {
        part,
        x: x - half,
        y: y - above,
        width: 2 * half,
        height: above + Math.max(symbols[symbol].below, 6) + 3,
      };
    }),
  ];
}
