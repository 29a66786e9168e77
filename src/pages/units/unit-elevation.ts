import type {Unit, WireColour} from '../../content/unit.ts';
import {Tracks} from './track-lanes.ts';

type Point = readonly [number, number];

/** A unit's elevation: its enclosures side by side, its parts in them, every wire in its own colour. Pixels. */
export interface Elevation {
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly {
    readonly id: string;
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  }[];
  readonly glyphs: readonly {
    readonly part: string;
    readonly kind: string;
    readonly x: number;
    readonly y: number;
  }[];
  readonly wires: readonly {
    readonly id: string;
    readonly colour: WireColour;
    readonly points: readonly Point[];
  }[];
}

export const glyphSize = 24;
const pitch = 38;
const trackPitch = 3;
const padding = 11;
const gap = 24;
/** Enclosures that need more than this are set in two bands, one above the other. */
const widestBand = 620;
/** Stands for the far right of a box or a band, where its channel or trunk lies. */
const far = 1e6;

interface Cell {
  readonly box: number;
  readonly row: number;
  readonly column: number;
}

interface Plan {
  readonly id: string;
  readonly columns: number;
  readonly rows: number;
  readonly band: number;
}

interface Run {
  readonly id: string;
  readonly colour: WireColour;
  readonly from: Cell;
  readonly to: Cell;
  readonly pins: readonly [number, number];
}

/**
 * Draws the elevation. Wires leave a part at its lower edge, run in the gutter below its row, change rows in the channel
 * at the right of the box, and lie along the floor below a band of boxes; a trunk at the far right joins the two floors.
 */
export function drawElevation(unit: Unit): Elevation {
  const {plans, cells} = placeParts(unit);
  const runs = unit.wires.flatMap(({id, colour, from, to}): Run[] => {
    const [a, b] = [cells.get(partOf(from)), cells.get(partOf(to))];
    return a && b ? [{id, colour, from: a, to: b, pins: [pinX(unit, from), pinX(unit, to)]}] : [];
  });
  const tracks = layTracks(plans, runs);

  const gutterHeight = (box: number, row: number): number =>
    8 + tracks.count(`gutter ${box} ${row}`) * trackPitch;
  const gutterHeights = (box: number, rows: number): number =>
    Array.from({length: rows}, (_, row) => gutterHeight(box, row)).reduce((a, b) => a + b, 0);
  const innerWidth = ({columns}: Plan): number => columns * pitch - (pitch - glyphSize);
  const sizes = plans.map((plan, box) => ({
    width: 2 * padding + innerWidth(plan) + 6 + tracks.count(`channel ${box}`) * trackPitch,
    height: 2 * padding + plan.rows * glyphSize + gutterHeights(box, plan.rows),
  }));

  // bands from top to bottom: the boxes stand on their band's floor
  const bands = Math.max(...plans.map(({band}) => band)) + 1;
  const floors: number[] = [];
  const boxes: {id: string; x: number; y: number; width: number; height: number}[] = [];
  let top = 1;
  let right = 0;
  for (let band = 0; band < bands; band++) {
    const here = plans.map((plan, box) => ({plan, box})).filter(({plan}) => plan.band === band);
    const floor = top + Math.max(...here.map(({box}) => sizes[box].height));
    let x = 1;
    for (const {plan, box} of here) {
      boxes[box] = {id: plan.id, x, y: floor - sizes[box].height, ...sizes[box]};
      x += sizes[box].width + gap;
    }
    right = Math.max(right, x - gap);
    floors[band] = floor;
    top = floor + 12 + tracks.count(`floor ${band}`) * trackPitch;
  }

  const rowTop = ({box, row}: Cell): number =>
    boxes[box].y + padding + row * glyphSize + gutterHeights(box, row);
  const cellX = ({box, column}: Cell): number => boxes[box].x + padding + column * pitch;
  const gutterY = (cell: Cell, lane: string): number =>
    rowTop(cell) + glyphSize + 6 + tracks.lane(`gutter ${cell.box} ${cell.row}`, lane) * trackPitch;
  const channelX = ({box}: Cell, wire: string): number =>
    boxes[box].x +
    padding +
    innerWidth(plans[box]) +
    6 +
    tracks.lane(`channel ${box}`, wire) * trackPitch;
  const floorY = ({box}: Cell, lane: string): number =>
    floors[plans[box].band] + 6 + tracks.lane(`floor ${plans[box].band}`, lane) * trackPitch;
  const trunkX = (wire: string): number => right + 8 + tracks.lane('trunk', wire) * trackPitch;

  const path = ({id, from, to, pins}: Run): Point[] => {
    const [x1, x2] = [cellX(from) + pins[0], cellX(to) + pins[1]];
    if (from.box === to.box && from.row === to.row) {
      const y = gutterY(from, id);
      return [
        [x1, y],
        [x2, y],
      ];
    }
    const [y1, y2] = [gutterY(from, `${id}<`), gutterY(to, `${id}>`)];
    const [c1, c2] = [channelX(from, id), channelX(to, id)];
    const across: Point[] = [];
    if (from.box !== to.box) {
      if (plans[from.box].band === plans[to.box].band)
        across.push([c1, floorY(from, id)], [c2, floorY(to, id)]);
      else {
        const [f1, f2] = [floorY(from, `${id}<`), floorY(to, `${id}>`)];
        across.push([c1, f1], [trunkX(id), f1], [trunkX(id), f2], [c2, f2]);
      }
    }
    return [[x1, y1], [c1, y1], ...across, [c2, y2], [x2, y2]];
  };

  const trunkWidth = tracks.count('trunk') ? 10 + tracks.count('trunk') * trackPitch : 0;
  return {
    width: right + 1 + trunkWidth,
    height: top - (tracks.count(`floor ${bands - 1}`) ? 4 : 10),
    boxes,
    glyphs: unit.parts.flatMap(({id, kind}) => {
      const cell = cells.get(id);
      return cell ? [{part: id, kind, x: cellX(cell), y: rowTop(cell)}] : [];
    }),
    wires: runs.map((run) => {
      const points = path(run);
      const end = (cell: Cell, [x]: Point): Point => [x, rowTop(cell) + glyphSize];
      return {
        id: run.id,
        colour: run.colour,
        points: [end(run.from, points[0]), ...points, end(run.to, points[points.length - 1])],
      };
    }),
  };
}

/** A cell for each part; enclosures in file order, broken into two bands where they are too many for one. */
function placeParts(unit: Unit): {plans: Plan[]; cells: Map<string, Cell>} {
  const cells = new Map<string, Cell>();
  const used = unit.enclosures
    .map(({id}) => ({id, parts: unit.parts.filter(({enclosure}) => enclosure === id)}))
    .filter(({parts}) => parts.length > 0);
  const shapes = used.map(({id, parts}, box) => {
    const columns = Math.min(parts.length, Math.ceil(Math.sqrt(parts.length * 1.4)));
    parts.forEach((part, i) =>
      cells.set(part.id, {box, row: Math.floor(i / columns), column: i % columns}),
    );
    return {id, columns, rows: Math.ceil(parts.length / columns)};
  });
  const widths = shapes.map(({columns}) => columns * pitch + 2 * padding + gap + 20);
  const total = widths.reduce((a, b) => a + b, 0);
  let breakAt = shapes.length;
  if (total > widestBand) {
    let least = total;
    let before = 0;
    widths.forEach((width, index) => {
      before += width;
      const widest = Math.max(before, total - before);
      if (widest < least) {
        least = widest;
        breakAt = index + 1;
      }
    });
  }
  return {plans: shapes.map((shape, box) => ({...shape, band: box < breakAt ? 0 : 1})), cells};
}

/** Says for every wire which gutters, channels, floors and trunk it runs in, and gives it a lane in each. */
function layTracks(plans: readonly Plan[], runs: readonly Run[]): Tracks {
  const tracks = new Tracks();
  for (const {id, from, to, pins} of runs) {
    const [x1, x2] = [from.column * pitch + pins[0], to.column * pitch + pins[1]];
    if (from.box === to.box && from.row === to.row) {
      tracks.put(`gutter ${from.box} ${from.row}`, x1, x2, id);
      continue;
    }
    tracks.put(`gutter ${from.box} ${from.row}`, x1, far, `${id}<`);
    tracks.put(`gutter ${to.box} ${to.row}`, x2, far, `${id}>`);
    if (from.box === to.box) {
      tracks.put(`channel ${from.box}`, from.row, to.row, id);
      continue;
    }
    tracks.put(`channel ${from.box}`, from.row, far, id);
    tracks.put(`channel ${to.box}`, to.row, far, id);
    const [band1, band2] = [plans[from.box].band, plans[to.box].band];
    if (band1 === band2) tracks.put(`floor ${band1}`, from.box, to.box, id);
    else {
      tracks.put(`floor ${band1}`, from.box, far, `${id}<`);
      tracks.put(`floor ${band2}`, to.box, far, `${id}>`);
      tracks.put('trunk', 0, 1, id);
    }
  }
  tracks.assign();
  return tracks;
}

function partOf(terminal: string): string {
  return terminal.split('.')[0];
}

/** Where along the part's lower edge a terminal's wires come out. */
function pinX(unit: Unit, terminal: string): number {
  const [id, name] = terminal.split('.');
  const terminals = unit.parts.find((part) => part.id === id)?.terminals ?? [];
  const index = Math.max(0, terminals.indexOf(name));
  return terminals.length < 2
    ? glyphSize / 2
    : 2 + (index * (glyphSize - 4)) / (terminals.length - 1);
}
