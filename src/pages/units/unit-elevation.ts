import type {Unit, WireColour} from '../../content/unit.ts';

/** A unit's elevation: its enclosures side by side, its parts in them, every wire in its own colour. Pixels. */
export interface Elevation {
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly {readonly id: string; readonly x: number; readonly y: number; readonly width: number; readonly height: number}[];
  readonly glyphs: readonly {readonly part: string; readonly kind: string; readonly x: number; readonly y: number}[];
  readonly wires: readonly {readonly id: string; readonly colour: WireColour; readonly points: readonly (readonly [number, number])[]}[];
}

export const glyphSize = 24;
const pitch = 40;
const trackPitch = 3;
const padding = 12;
const gap = 26;

interface Cell {
  readonly box: number;
  readonly row: number;
  readonly column: number;
}

/** Numbers tracks so that pieces on one track never overlap: pieces sorted by start take the first free track. */
function trackLanes(pieces: {from: number; to: number; wire: string}[]): Map<string, number> {
  const ends: number[] = [];
  const lanes = new Map<string, number>();
  for (const piece of [...pieces].sort((a, b) => a.from - b.from || a.to - b.to)) {
    let lane = ends.findIndex((end) => end < piece.from);
    if (lane < 0) lane = ends.length;
    ends[lane] = piece.to;
    lanes.set(piece.wire, lane);
  }
  return lanes;
}

/**
 * Draws the elevation. Wires leave a part at its lower edge, run in the gutter below its row, and change rows or boxes
 * in the channel at the right of the box; between boxes they lie along the floor.
 */
export function drawElevation(unit: Unit): Elevation {
  const used = unit.enclosures.filter((box) => unit.parts.some((part) => part.enclosure === box.id));
  const cells = new Map<string, Cell>();
  const plans = used.map((box, index) => {
    const parts = unit.parts.filter((part) => part.enclosure === box.id);
    const columns = Math.min(parts.length, Math.max(1, Math.ceil(Math.sqrt(parts.length * 1.5))));
    parts.forEach((part, i) => cells.set(part.id, {box: index, row: Math.floor(i / columns), column: i % columns}));
    return {box, columns, rows: Math.ceil(parts.length / columns)};
  });
  const cellOf = (terminal: string): Cell | undefined => cells.get(terminal.split('.')[0]);
  const wires = unit.wires.flatMap((wire) => {
    const from = cellOf(wire.from);
    const to = cellOf(wire.to);
    return from && to ? [{wire, from, to, pins: [pinX(unit, wire.from), pinX(unit, wire.to)] as const}] : [];
  });

  // who runs where, in coordinates local to each box; the channel lies right of everything
  const gutters = new Map<string, {from: number; to: number; wire: string}[]>();
  const channels = new Map<number, {from: number; to: number; wire: string}[]>();
  const floor: {from: number; to: number; wire: string}[] = [];
  const put = <K>(map: Map<K, {from: number; to: number; wire: string}[]>, key: K, from: number, to: number, wire: string) =>
    map.set(key, [...(map.get(key) ?? []), {from: Math.min(from, to), to: Math.max(from, to), wire}]);
  const far = 1e6;
  for (const {wire, from, to, pins} of wires) {
    const [x1, x2] = [from.column * pitch + pins[0], to.column * pitch + pins[1]];
    if (from.box === to.box && from.row === to.row) {
      put(gutters, `${from.box}/${from.row}`, x1, x2, wire.id);
    } else {
      put(gutters, `${from.box}/${from.row}`, x1, far, `${wire.id}<`);
      put(gutters, `${to.box}/${to.row}`, x2, far, `${wire.id}>`);
      if (from.box === to.box) put(channels, from.box, from.row, to.row, wire.id);
      else {
        put(channels, from.box, from.row, far, wire.id);
        put(channels, to.box, to.row, far, wire.id);
        floor.push({from: Math.min(from.box, to.box), to: Math.max(from.box, to.box) - 0.5, wire: wire.id});
      }
    }
  }
  const gutterLanes = new Map([...gutters].map(([key, pieces]) => [key, trackLanes(pieces)]));
  const channelLanes = new Map([...channels].map(([key, pieces]) => [key, trackLanes(pieces)]));
  const floorLanes = trackLanes(floor);

  const lanesIn = (lanes: Map<string, number> | undefined): number => (lanes?.size ? Math.max(...lanes.values()) + 1 : 0);
  const sizes = plans.map(({columns, rows}, index) => {
    const gutterHeights = Array.from({length: rows}, (_, row) => 8 + lanesIn(gutterLanes.get(`${index}/${row}`)) * trackPitch);
    const channel = lanesIn(channelLanes.get(index)) * trackPitch;
    const height = 2 * padding + rows * glyphSize + gutterHeights.reduce((a, b) => a + b, 0);
    return {width: 2 * padding + columns * pitch - (pitch - glyphSize) + channel + 6, height, gutterHeights, columns};
  });
  const floorY = Math.max(...sizes.map(({height}) => height)) + 2;
  let left = 1;
  const boxes = plans.map(({box}, index) => {
    const {width, height} = sizes[index];
    const placed = {id: box.id, x: left, y: floorY - height - 1, width, height};
    left += width + gap;
    return placed;
  });

  const rowTop = (cell: Cell): number =>
    boxes[cell.box].y + padding + cell.row * glyphSize + sizes[cell.box].gutterHeights.slice(0, cell.row).reduce((a, b) => a + b, 0);
  const cellX = (cell: Cell): number => boxes[cell.box].x + padding + cell.column * pitch;
  const gutterY = (cell: Cell, wire: string): number =>
    rowTop(cell) + glyphSize + 6 + (gutterLanes.get(`${cell.box}/${cell.row}`)?.get(wire) ?? 0) * trackPitch;
  const channelX = (cell: Cell, wire: string): number =>
    boxes[cell.box].x + padding + sizes[cell.box].columns * pitch - (pitch - glyphSize) + 6 + (channelLanes.get(cell.box)?.get(wire) ?? 0) * trackPitch;

  const drawn = wires.map(({wire, from, to, pins}) => {
    const [x1, x2] = [cellX(from) + pins[0], cellX(to) + pins[1]];
    const [y1, y2] = [rowTop(from) + glyphSize, rowTop(to) + glyphSize];
    let between: [number, number][];
    if (from.box === to.box && from.row === to.row) {
      const y = gutterY(from, wire.id);
      between = [[x1, y], [x2, y]];
    } else {
      const [g1, g2] = [gutterY(from, `${wire.id}<`), gutterY(to, `${wire.id}>`)];
      const [c1, c2] = [channelX(from, wire.id), channelX(to, wire.id)];
      const y = floorY + 6 + (floorLanes.get(wire.id) ?? 0) * trackPitch;
      between = from.box === to.box ? [[x1, g1], [c1, g1], [c1, g2], [x2, g2]] : [[x1, g1], [c1, g1], [c1, y], [c2, y], [c2, g2], [x2, g2]];
    }
    return {id: wire.id, colour: wire.colour, points: [[x1, y1], ...between, [x2, y2]] as [number, number][]};
  });

  return {
    width: left - gap + 1,
    height: floorY + (floor.length ? 10 + lanesIn(floorLanes) * trackPitch : 2),
    boxes,
    glyphs: unit.parts.flatMap((part) => {
      const cell = cells.get(part.id);
      return cell ? [{part: part.id, kind: part.kind, x: cellX(cell), y: rowTop(cell)}] : [];
    }),
    wires: drawn,
  };
}

/** Where along the part's lower edge a terminal's wires come out. */
function pinX(unit: Unit, terminal: string): number {
  const [id, name] = terminal.split('.');
  const terminals = unit.parts.find((part) => part.id === id)?.terminals ?? [];
  const index = Math.max(0, terminals.indexOf(name));
  return terminals.length < 2 ? glyphSize / 2 : 2 + (index * (glyphSize - 4)) / (terminals.length - 1);
}
