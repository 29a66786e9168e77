import type {LadderCircuit} from '../content/unit.ts';
import type {Drawing, Point, WireDrawing} from './drawing.ts';
import {placeColumns} from './ladder-columns.ts';
import {drawFrame, drawGrounds, mark, outlineMachines, type MutablePieces} from './ladder-frame.ts';
import {dotted, flagWidth, letter, type Lettered, type References} from './ladder-lettering.ts';
import type {RailGround} from './ladder-plan.ts';
import type {CircuitRows, Link, Row} from './ladder-row.ts';
import {placeRows, spacingsOf, TITLE_HEIGHT, wishesOf} from './ladder-spacing.ts';
import {labelWidth} from './text-width.ts';
import {isHidden, type Wiring} from './wiring.ts';

type Pieces = Pick<
  Drawing,
  'parts' | 'symbols' | 'wires' | 'lines' | 'terminals' | 'junctions' | 'labels' | 'flags'
>;

/** One circuit of the ladder, at its own origin until it is placed on the sheet. */
export interface CircuitDrawing {
  readonly width: number;
  readonly height: number;
  readonly drawing: Pieces;
  /** The same circuit with its corner at (x, y), its right rail drawn out to `width`. */
  at(x: number, y: number, width: number): CircuitDrawing;
}

/** Room left of the rail for rung numbers, and right of it for rail names. */
const GUTTER = 26;
const RIGHT_GUTTER = 10;

/** Draws one circuit from its rows. */
export function drawCircuit(
  circuit: LadderCircuit,
  grounds: readonly RailGround[],
  rows: CircuitRows,
  wiring: Wiring,
  numbers: readonly (number | undefined)[],
  references: References,
  stretchTo = 0,
): CircuitDrawing {
  const branching = new Set(rows.verticals.map(({column}) => column));
  const lettered = rows.rows.map((row) => {
    // captions run on in one line where a row has room to spare
    const crowded = row.items.filter((item) => item.is === 'symbol').length > 3;
    return row.items.map((item) =>
      letter(item, wiring, branching.has(item.column), references, crowded),
    );
  });
  const least = Math.max(
    stretchTo - GUTTER - RIGHT_GUTTER,
    labelWidth(circuit.title, 'circuit'),
    200,
  );
  const xs = placeColumns(
    rows.columns,
    spacingsOf(rows, lettered),
    wishesOf(rows, lettered),
    least,
  ).map((x) => x + GUTTER);
  const {ys, height: bottom} = placeRows(rows, lettered);
  const sheet: MutablePieces = {
    parts: [],
    symbols: [],
    wires: [],
    lines: [],
    terminals: [],
    junctions: [],
    labels: [],
    flags: [],
  };
  drawFrame(sheet, circuit, rows, wiring, xs, ys);
  lettered.forEach((items, i) => {
    const number = numbers[i];
    if (number !== undefined)
      sheet.labels.push({
        x: GUTTER - 10,
        y: ys[i]! + 4,
        text: String(number),
        role: 'rung',
        anchor: 'end',
      });
    drawRow(sheet, rows.rows[i]!, items, xs, ys[i]!, wiring);
  });
  drawVerticals(sheet, rows, xs, ys);
  outlineMachines(sheet, rows, xs, ys);
  const foot = (ys[ys.length - 1] ?? TITLE_HEIGHT + 50) + 14;
  const drop = drawGrounds(sheet, grounds, [xs[rows.leftRail]!, xs[rows.rightRail]!], foot, wiring);
  const pieces: Pieces = {...sheet, wires: mergeWires(sheet.wires)};
  const width = xs[rows.rightRail]! + RIGHT_GUTTER;
  const height = Math.max(bottom, foot + drop);
  return {
    width,
    height,
    drawing: pieces,
    at: (x, y, to) => {
      const wide =
        to > width
          ? drawCircuit(circuit, grounds, rows, wiring, numbers, references, to)
          : undefined;
      return {
        ...(wide ?? {width, height, at: () => wide!}),
        drawing: move(wide?.drawing ?? pieces, x, y),
      } as CircuitDrawing;
    },
  };
}

function drawRow(
  sheet: MutablePieces,
  row: Row,
  items: readonly Lettered[],
  xs: readonly number[],
  y: number,
  wiring: Wiring,
): void {
  items.forEach((it, i) => {
    const {item} = it;
    const x = xs[item.column]!;
    const part = item.is === 'symbol' ? item.edge.part.id : undefined;
    for (const {dx, dy, text, role, anchor} of it.letters)
      sheet.labels.push({
        x: x + dx,
        y: y + dy,
        text,
        role,
        anchor,
        ...(part ? {part} : {}),
        ...(item.is === 'terminal' ? {terminal: item.terminal} : {}),
      });
    if (item.is === 'terminal') mark(sheet, item.terminal, x, y, wiring);
    if (item.is === 'symbol')
      sheet.symbols.push({
        symbol: it.symbol!.symbol,
        part: item.edge.part.id,
        element: item.edge.id,
        x,
        y,
        turns: 0,
        mirrored: item.reversed,
        width: it.half * 2,
        ...(it.symbol!.inside !== undefined &&
        !it.letters.some(({text, role}) => role === 'tag' && text === it.symbol!.inside)
          ? {tag: it.symbol!.inside}
          : {}),
      });
    if (item.is === 'flag')
      sheet.flags.push({
        terminal: item.terminal,
        text: dotted(item.terminal),
        x,
        y,
        points: item.side === 'left' ? 'right' : 'left',
        width: flagWidth(item.terminal),
      });
    // a line runs on under what crosses it
    let after = i + 1;
    while (items[after]?.item.is === 'crossing') after++;
    const next = items[after];
    const link = row.links[i];
    if (next && link && item.is !== 'crossing')
      drawLink(sheet, link, x + it.half, xs[next.item.column]! - next.half, y);
  });
}

function drawLink(sheet: MutablePieces, link: Link, from: number, to: number, y: number): void {
  const points: Point[] = [
    {x: from, y},
    {x: to, y},
  ];
  if (link.by === 'wire')
    sheet.wires.push({id: link.wire.id, colour: link.wire.colour, paths: [points]});
  else if (link.by === 'inside') sheet.lines.push({kind: 'inside', points, part: link.part});
  else sheet.lines.push({kind: 'joint', points, terminal: link.terminal});
}

function drawVerticals(
  sheet: MutablePieces,
  rows: CircuitRows,
  xs: readonly number[],
  ys: readonly number[],
): void {
  for (const {column, terminal, rows: span} of rows.verticals) {
    const x = xs[column]!;
    const [first, last] = [ys[span[0]!]!, ys[span[span.length - 1]!]!];
    sheet.lines.push({
      kind: 'joint',
      terminal,
      points: [
        {x, y: first},
        {x, y: last},
      ],
    });
    for (const row of span.slice(isHidden(terminal) ? 0 : 1, -1))
      sheet.junctions.push({x, y: ys[row]!});
    if (
      isHidden(terminal) &&
      span.length > 1 &&
      !sheet.junctions.some((it) => it.x === x && it.y === first)
    )
      sheet.junctions.push({x, y: first});
  }
}

function mergeWires(wires: readonly WireDrawing[]): WireDrawing[] {
  const merged = new Map<string, WireDrawing>();
  for (const wire of wires) {
    const known = merged.get(wire.id);
    merged.set(wire.id, known ? {...known, paths: [...known.paths, ...wire.paths]} : wire);
  }
  return [...merged.values()];
}

function move(pieces: Pieces, dx: number, dy: number): Pieces {
  const shift = <T extends Point>(it: T): T => ({...it, x: it.x + dx, y: it.y + dy});
  return {
    parts: pieces.parts.map(shift),
    symbols: pieces.symbols.map(shift),
    terminals: pieces.terminals.map(shift),
    junctions: pieces.junctions.map(shift),
    labels: pieces.labels.map(shift),
    flags: pieces.flags.map(shift),
    lines: pieces.lines.map((line) => ({...line, points: line.points.map(shift)})),
    wires: pieces.wires.map((wire) => ({
      ...wire,
      paths: wire.paths.map((path) => path.map(shift)),
    })),
  };
}
