import type {Unit} from '../content/unit.ts';
import {partGeometry} from './connection-part.ts';
import type {
  Drawing,
  EnclosureBox,
  Label,
  PartOutline,
  PlacedSymbol,
  PlainLine,
  Point,
  TerminalMark,
  WireDrawing,
} from './drawing.ts';
import {labelWidth} from './text-width.ts';
import {decisionsOf, wirePoints, type LayoutFile} from './layout-file.ts';

/** The connection drawing of a unit from its layout file. Throws where the file was made for another unit. */
export function drawConnections(unit: Unit, file: LayoutFile): Drawing {
  if (file.unit !== unit.id)
    throw new Error(`The layout is for unit "${file.unit}", not "${unit.id}": run npm run layout.`);
  const decisions = decisionsOf(unit, file);
  const parts: PartOutline[] = [];
  const symbols: PlacedSymbol[] = [];
  const lines: PlainLine[] = [];
  const terminals: TerminalMark[] = [];
  const labels: Label[] = [];
  for (const part of unit.parts) {
    const [x, y] = file.parts[part.id]!;
    const shape = partGeometry(part, decisions[part.id]!);
    const move = (point: Point): Point => ({x: point.x + x, y: point.y + y});
    parts.push({part: part.id, style: 'box', x, y, width: shape.width, height: shape.height});
    for (const {edge, ...symbol} of shape.symbols)
      symbols.push({
        ...symbol,
        ...move(symbol),
        part: part.id,
        ...(edge ? {element: edge.id} : {}),
      });
    for (const points of shape.lines)
      lines.push({kind: 'inside', part: part.id, points: points.map(move)});
    for (const {terminal, points} of shape.lugLines)
      lines.push({kind: 'lug', part: part.id, terminal, points: points.map(move)});
    for (const terminal of shape.terminals)
      terminals.push({...terminal, ...move(terminal), part: part.id, enclosure: part.enclosure});
    for (const label of shape.labels) labels.push({...label, ...move(label), part: part.id});
  }
  const wires: WireDrawing[] = unit.wires.map(({id, colour}) => ({
    id,
    colour,
    paths: [wirePoints(file, id)],
  }));
  const enclosures: EnclosureBox[] = unit.enclosures.flatMap(({id, title}) => {
    const box = file.enclosures[id];
    if (!box) return [];
    const [x, y, width, height] = box;
    const enclosure = {id, title, x, y, width, height};
    labels.push({...titlePlace(enclosure, wires), text: title, role: 'enclosure', anchor: 'start'});
    return [enclosure];
  });
  const [width, height] = file.size;
  return {
    view: 'connection',
    width,
    height,
    enclosures,
    parts,
    symbols,
    wires,
    lines,
    terminals,
    junctions: [],
    labels,
    flags: [],
  };
}

const TITLE_INSET = 12;
const TITLE_BASELINE = 19;

/** At the head of an enclosure, from the left the first place that no wire runs through. */
function titlePlace(box: EnclosureBox, wires: readonly WireDrawing[]): Point {
  const width = labelWidth(box.title, 'enclosure');
  const [top, bottom] = [box.y + 5, box.y + TITLE_BASELINE + 5];
  const crossings = wires.flatMap(({paths}) =>
    paths.flatMap((points) =>
      points.slice(1).flatMap((to, i) => {
        const from = points[i]!;
        const passes = Math.min(from.y, to.y) < bottom && Math.max(from.y, to.y) > top;
        return passes ? [[Math.min(from.x, to.x), Math.max(from.x, to.x)] as const] : [];
      }),
    ),
  );
  const y = box.y + TITLE_BASELINE;
  const last = box.x + box.width - TITLE_INSET - width;
  for (let x = box.x + TITLE_INSET; x <= last; x += 4)
    if (!crossings.some(([low, high]) => high > x - 4 && low < x + width + 4)) return {x, y};
  return {x: box.x + TITLE_INSET, y};
}
