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
  const enclosures: EnclosureBox[] = unit.enclosures.flatMap(({id, title}) => {
    const box = file.enclosures[id];
    if (!box) return [];
    const [x, y, width, height] = box;
    labels.push({x: x + 12, y: y + 19, text: title, role: 'enclosure', anchor: 'start'});
    return [{id, title, x, y, width, height}];
  });
  const wires: WireDrawing[] = unit.wires.map(({id, colour}) => ({
    id,
    colour,
    paths: [wirePoints(file, id)],
  }));
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
