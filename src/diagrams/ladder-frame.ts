import {isMotor} from '../parts/motor-windings.ts';
import type {LadderCircuit} from '../content/unit.ts';
import type {
  PartOutline,
  PlacedSymbol,
  PlainLine,
  TerminalMark,
  WireDrawing,
  Junction,
  Label,
  NetFlag,
} from './drawing.ts';
import {dotted, RING} from './ladder-lettering.ts';
import type {RailGround} from './ladder-plan.ts';
import type {CircuitRows} from './ladder-row.ts';
import {BARE_RAIL_TOP, TITLE_HEIGHT} from './ladder-spacing.ts';
import type {Wiring} from './wiring.ts';

/** From a winding's middle to the outline of its machine: its terminals stand on the outline. */
const MACHINE_REACH = 31;

/** A circuit's drawing while it is put together. */
export interface MutablePieces {
  readonly parts: PartOutline[];
  readonly symbols: PlacedSymbol[];
  readonly wires: WireDrawing[];
  readonly lines: PlainLine[];
  readonly terminals: TerminalMark[];
  readonly junctions: Junction[];
  readonly labels: Label[];
  readonly flags: NetFlag[];
}

/** Title, rails with their names, and the terminals at which they begin. */
export function drawFrame(
  sheet: MutablePieces,
  circuit: LadderCircuit,
  rows: CircuitRows,
  wiring: Wiring,
  xs: readonly number[],
  ys: readonly number[],
): void {
  const [left, right] = [xs[rows.leftRail]!, xs[rows.rightRail]!];
  const first = ys[0] ?? TITLE_HEIGHT + 50;
  const top = rows.hasHeader ? first : BARE_RAIL_TOP;
  const bottom = (ys[ys.length - 1] ?? first) + 14;
  sheet.labels.push({x: left, y: 13, text: circuit.title, role: 'circuit', anchor: 'start'});
  [left, right].forEach((x, side) => {
    const terminal = circuit.rails[side]!;
    const points = [
      {x, y: top},
      {x, y: bottom},
    ];
    sheet.lines.push({kind: 'rail', points, terminal});
    mark(sheet, terminal, x, top, wiring);
    const start = side === 0;
    sheet.labels.push({
      x: x + (start ? -4 : 4),
      y: top - 9,
      text: dotted(terminal),
      role: 'strip',
      anchor: start ? 'start' : 'end',
      terminal,
    });
    sheet.labels.push({
      x: x + (start ? 8 : -8),
      y: top + 30,
      text: circuit.railTitles[side]!,
      role: 'rail',
      anchor: start ? 'start' : 'end',
    });
  });
}

/** A rail that is grounded on purpose ends in its ground wire, the terminal on the metal and the earth sign. */
export function drawGrounds(
  sheet: MutablePieces,
  grounds: readonly RailGround[],
  rails: readonly number[],
  foot: number,
  wiring: Wiring,
): number {
  const [first] = grounds;
  if (!first) return 0;
  const x = rails[first.rail]!;
  const y = foot + 27;
  sheet.wires.push({
    id: first.wire.id,
    colour: first.wire.colour,
    paths: [
      [
        {x, y: foot},
        {x, y},
      ],
    ],
  });
  mark(sheet, first.ground, x, y, wiring);
  const side = first.rail === 1 ? -1 : 1;
  const anchor = side < 0 ? 'end' : 'start';
  sheet.labels.push({
    x: x + side * 10,
    y: y + 4,
    text: dotted(first.ground),
    role: 'strip',
    anchor,
    terminal: first.ground,
  });
  const part = wiring.partOf(first.ground).id;
  sheet.lines.push({
    kind: 'inside',
    part,
    points: [
      {x, y},
      {x, y: y + 12},
    ],
  });
  sheet.symbols.push({symbol: 'earth', part, x, y: y + 14, turns: 0, width: 18});
  return 56;
}

/** A terminal's ring. */
export function mark(
  sheet: MutablePieces,
  terminal: string,
  x: number,
  y: number,
  wiring: Wiring,
): void {
  const part = wiring.partOf(terminal);
  sheet.terminals.push({
    terminal,
    part: part.id,
    x,
    y,
    shape: 'ring',
    width: 2 * RING,
    height: 2 * RING,
    enclosure: part.enclosure,
  });
}

/** Dashed outlines around the windings and overload of one machine, where they stand on neighbouring rows. */
export function outlineMachines(
  sheet: MutablePieces,
  rows: CircuitRows,
  xs: readonly number[],
  ys: readonly number[],
): void {
  const found = new Map<string, {title: string; left: number; right: number; rows: number[]}>();
  rows.rows.forEach(({items}, row) =>
    items.forEach((item, i) => {
      if (item.is !== 'symbol' || !item.edge.part.elements.some(isMotor)) return;
      const {part} = item.edge;
      const x = xs[item.column]!;
      const left = Math.max(xs[items[i - 1]!.column]!, x - MACHINE_REACH);
      const right = Math.min(xs[items[i + 1]!.column]!, x + MACHINE_REACH);
      const known = found.get(part.id);
      found.set(part.id, {
        title: part.title,
        left: Math.min(left, known?.left ?? left),
        right: Math.max(right, known?.right ?? right),
        rows: [...(known?.rows ?? []), row],
      });
    }),
  );
  for (const [part, {title, left, right, rows: span}] of found) {
    const [first, last] = [Math.min(...span), Math.max(...span)];
    const top = ys[first]! - 26;
    sheet.parts.push({
      part,
      style: 'dashed',
      x: left,
      y: top,
      width: right - left,
      height: ys[last]! + 9 - top,
    });
    sheet.labels.push({
      x: (left + right) / 2,
      y: top - 5,
      text: `${part}  ${title}`,
      role: 'tag',
      anchor: 'middle',
      part,
    });
  }
}
