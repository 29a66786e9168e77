import type {LadderCircuit} from '../content/unit.ts';
import type {Drawing, Junction, Label, NetFlag, PartOutline, PlacedSymbol, PlainLine, Point, TerminalMark, WireDrawing} from './drawing.ts';
import {placeColumns, type ColumnWishes, type Spacing} from './ladder-columns.ts';
import {flagWidth, leastBetween, letter, RING, dotted, type Lettered, type References} from './ladder-lettering.ts';
import type {RailGround} from './ladder-plan.ts';
import type {CircuitRows, Item, Link, Row} from './ladder-rows.ts';
import {labelWidth} from './text-width.ts';
import {isHidden, type Wiring} from './wiring.ts';

type Pieces = Pick<Drawing, 'parts' | 'symbols' | 'wires' | 'lines' | 'terminals' | 'junctions' | 'labels' | 'flags'>;

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
const TITLE_HEIGHT = 22;
/** From a winding's middle to the outline of its machine: its terminals stand on the outline. */
const MACHINE_REACH = 31;
const RAIL_NAME_HEIGHT = 20;
const BETWEEN_ROWS = 4;
const LEAST_PITCH = 40;

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
    return row.items.map((item) => letter(item, wiring, branching.has(item.column), references, crowded));
  });
  const least = Math.max(stretchTo - GUTTER - RIGHT_GUTTER, labelWidth(circuit.title, 'circuit'), 200);
  const xs = placeColumns(rows.columns, spacingsOf(rows, lettered), wishesOf(rows, lettered), least).map((x) => x + GUTTER);
  const {ys, height: bottom} = placeRows(rows, lettered);
  const sheet: MutablePieces = {parts: [], symbols: [], wires: [], lines: [], terminals: [], junctions: [], labels: [], flags: []};
  drawFrame(sheet, circuit, rows, wiring, xs, ys);
  lettered.forEach((items, i) => {
    const number = numbers[i];
    if (number !== undefined)
      sheet.labels.push({x: GUTTER - 10, y: ys[i]! + 4, text: String(number), role: 'rung', anchor: 'end'});
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
      const wide = to > width ? drawCircuit(circuit, grounds, rows, wiring, numbers, references, to) : undefined;
      return {...(wide ?? {width, height, at: () => wide!}), drawing: move(wide?.drawing ?? pieces, x, y)} as CircuitDrawing;
    },
  };
}

interface MutablePieces {
  readonly parts: PartOutline[];
  readonly symbols: PlacedSymbol[];
  readonly wires: WireDrawing[];
  readonly lines: PlainLine[];
  readonly terminals: TerminalMark[];
  readonly junctions: Junction[];
  readonly labels: Label[];
  readonly flags: NetFlag[];
}

function spacingsOf(rows: CircuitRows, lettered: readonly (readonly Lettered[])[]): Spacing[] {
  const spacings: Spacing[] = [];
  for (const items of lettered) {
    // letters keep off the rails, and rows that no rail holds keep inside them
    for (const it of items) {
      if (it.item.is === 'rail' || it.item.is === 'tap' || it.item.is === 'crossing') continue;
      const loose = it === items[0] || it === items[items.length - 1] ? 14 : 5;
      spacings.push({left: rows.leftRail, right: it.item.column, least: reachOf(it, 0) + loose});
      spacings.push({left: it.item.column, right: rows.rightRail, least: reachOf(it, 1) + loose});
    }
    for (let i = 0; i < items.length; i++)
      for (let j = i + 1; j < items.length; j++) {
        const [left, right] = [items[i]!, items[j]!];
        const least = leastBetween(left, right, j === i + 1);
        if (least > 0) spacings.push({left: left.item.column, right: right.item.column, least});
      }
  }
  return spacings;
}

const reachOf = ({tracks}: Lettered, side: 0 | 1): number => Math.max(0, ...tracks.map((reach) => reach?.[side] ?? 0));

function wishesOf(rows: CircuitRows, lettered: readonly (readonly Lettered[])[]): ColumnWishes {
  const branching = new Set(rows.verticals.map(({column}) => column));
  const toTheRight = new Set<number>();
  const inTheMiddle = new Set<number>();
  const windings = new Map<string, number[]>();
  lettered.forEach((items, row) => {
    if (rows.hasHeader && row === 0) {
      const sources = items.flatMap(({item}, i) => (isSource(item) ? [i] : []));
      // with the terminals on either side
      for (let i = (sources[0] ?? 1) - 1; i <= (sources[sources.length - 1] ?? -2) + 1; i++)
        if (items[i]!.item.is !== 'rail') inTheMiddle.add(items[i]!.item.column);
      return;
    }
    // flags stand beside what they tie, not at the far side of an empty line
    const tied = items[items.length - 1]?.item.is !== 'flag';
    items.forEach(({item, symbol}, i) => {
      if (item.is !== 'symbol') return;
      const load = symbol!.load || item.edge.part.kind === 'psc-motor';
      const before = items[i - 1]?.item;
      if (load && tied) {
        toTheRight.add(item.column);
        // the load's own terminal stays with it, unless other branches leave from it
        if (before?.is === 'terminal' && !branching.has(before.column)) toTheRight.add(before.column);
      }
      if (symbol!.symbol === 'winding')
        windings.set(item.edge.part.id, [...(windings.get(item.edge.part.id) ?? []), item.column]);
    });
  });
  const together = [...windings.values()].flatMap(([first, ...others]) =>
    others.map((other) => [first!, other] as const),
  );
  return {toTheRight, inTheMiddle, together};
}

const isSource = (item: Item): boolean =>
  item.is === 'symbol' && (item.edge.element.is === 'acSource' || item.edge.winding.startsWith('secondary'));

function placeRows(rows: CircuitRows, lettered: readonly (readonly Lettered[])[]): {ys: number[]; height: number} {
  const ys: number[] = [];
  let bottom = TITLE_HEIGHT;
  lettered.forEach((items, i) => {
    const machine = rows.rows[i]!.items.some((item) => item.is === 'symbol' && item.edge.winding === 'main');
    const above = Math.max(...items.map((it) => it.above), 14) + (machine ? 20 : 0);
    const below = Math.max(...items.map((it) => it.below), 12);
    const previous = ys[i - 1];
    const y = Math.max(bottom + above, previous === undefined ? 0 : previous + LEAST_PITCH);
    ys.push(y);
    bottom = y + below + (rows.hasHeader && i === 0 ? RAIL_NAME_HEIGHT : BETWEEN_ROWS);
  });
  return {ys, height: bottom + 4};
}

function drawFrame(sheet: MutablePieces, circuit: LadderCircuit, rows: CircuitRows, wiring: Wiring, xs: readonly number[], ys: readonly number[]): void {
  const [left, right] = [xs[rows.leftRail]!, xs[rows.rightRail]!];
  const first = ys[0] ?? TITLE_HEIGHT + 50;
  const top = rows.hasHeader ? first : first - 30;
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
    sheet.labels.push({x: x + (start ? -4 : 4), y: top - 9, text: dotted(terminal), role: 'strip', anchor: start ? 'start' : 'end', terminal});
    sheet.labels.push({x: x + (start ? 8 : -8), y: top + 30, text: circuit.railTitles[side]!, role: 'rail', anchor: start ? 'start' : 'end'});
  });
}

/** A rail that is grounded on purpose ends in its ground wire, the terminal on the metal and the earth sign. */
function drawGrounds(sheet: MutablePieces, grounds: readonly RailGround[], rails: readonly number[], foot: number, wiring: Wiring): number {
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
  sheet.labels.push({x: x + side * 10, y: y + 4, text: dotted(first.ground), role: 'strip', anchor, terminal: first.ground});
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

function mark(sheet: MutablePieces, terminal: string, x: number, y: number, wiring: Wiring): void {
  const part = wiring.partOf(terminal);
  sheet.terminals.push({terminal, part: part.id, x, y, shape: 'ring', width: 2 * RING, height: 2 * RING, enclosure: part.enclosure});
}

function drawRow(sheet: MutablePieces, row: Row, items: readonly Lettered[], xs: readonly number[], y: number, wiring: Wiring): void {
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
        ...(it.symbol!.inside !== undefined && !it.letters.some(({text, role}) => role === 'tag' && text === it.symbol!.inside)
          ? {tag: it.symbol!.inside}
          : {}),
      });
    if (item.is === 'flag')
      sheet.flags.push({terminal: item.terminal, text: dotted(item.terminal), x, y, points: item.side === 'left' ? 'right' : 'left', width: flagWidth(item.terminal)});
    // a line runs on under what crosses it
    let after = i + 1;
    while (items[after]?.item.is === 'crossing') after++;
    const next = items[after];
    const link = row.links[i];
    if (next && link && item.is !== 'crossing') drawLink(sheet, link, x + it.half, xs[next.item.column]! - next.half, y);
  });
}

function drawLink(sheet: MutablePieces, link: Link, from: number, to: number, y: number): void {
  const points: Point[] = [
    {x: from, y},
    {x: to, y},
  ];
  if (link.by === 'wire') sheet.wires.push({id: link.wire.id, colour: link.wire.colour, paths: [points]});
  else if (link.by === 'inside') sheet.lines.push({kind: 'inside', points, part: link.part});
  else sheet.lines.push({kind: 'joint', points, terminal: link.terminal});
}

function drawVerticals(sheet: MutablePieces, rows: CircuitRows, xs: readonly number[], ys: readonly number[]): void {
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
    for (const row of span.slice(isHidden(terminal) ? 0 : 1, -1)) sheet.junctions.push({x, y: ys[row]!});
    if (isHidden(terminal) && span.length > 1 && !sheet.junctions.some((it) => it.x === x && it.y === first))
      sheet.junctions.push({x, y: first});
  }
}

/** Dashed outlines around the windings and overload of one machine, where they stand on neighbouring rows. */
function outlineMachines(sheet: MutablePieces, rows: CircuitRows, xs: readonly number[], ys: readonly number[]): void {
  const found = new Map<string, {title: string; left: number; right: number; rows: number[]}>();
  rows.rows.forEach(({items}, row) =>
    items.forEach((item, i) => {
      if (item.is !== 'symbol' || item.edge.part.kind !== 'psc-motor') return;
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
    sheet.parts.push({part, style: 'dashed', x: left, y: top, width: right - left, height: ys[last]! + 9 - top});
    sheet.labels.push({x: (left + right) / 2, y: top - 5, text: `${part}  ${title}`, role: 'tag', anchor: 'middle', part});
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
    wires: pieces.wires.map((wire) => ({...wire, paths: wire.paths.map((path) => path.map(shift))})),
  };
}
