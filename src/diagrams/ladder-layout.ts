import type {Unit} from '../content/unit.ts';
import type {Drawing} from './drawing.ts';
import {drawCircuit, type CircuitDrawing} from './ladder-circuit.ts';
import {planLadder} from './ladder-plan.ts';
import {layRows} from './ladder-rows.ts';
import {crossReferences, numberRungs} from './ladder-references.ts';

export interface LadderOptions {
  /** Width over height of the place it is shown in; the number of columns of circuits follows from it. */
  readonly aspect: number;
}

const BETWEEN_COLUMNS = 44;
const BETWEEN_CIRCUITS = 26;
const MARGIN = 16;

/**
 * The ladder print of a unit: one block per circuit, rails left and right, contacts left and loads right.
 * From the netlist alone; the same unit and options give the same drawing.
 */
export function layoutLadder(unit: Unit, {aspect}: LadderOptions): Drawing {
  const plan = planLadder(unit);
  const rows = plan.circuits.map((circuit) => layRows(circuit, plan.wiring));
  const numbers = numberRungs(rows);
  const references = crossReferences(rows, numbers);
  const circuits = plan.circuits.map((circuit, i) =>
    drawCircuit(circuit.circuit, circuit.grounds, rows[i]!, plan.wiring, numbers[i]!, references),
  );
  return arrange(circuits, aspect);
}

/** Circuits in order, split into columns so that the whole shows as large as it can at this aspect. */
function arrange(circuits: readonly CircuitDrawing[], aspect: number): Drawing {
  let best: {columns: CircuitDrawing[][]; score: number} | undefined;
  for (const columns of splits(circuits)) {
    const width = columnsWidth(columns);
    const height = Math.max(...columns.map(columnHeight)) + 2 * MARGIN;
    const score = Math.min(aspect / width, 1 / height);
    if (!best || score > best.score * 1.001) best = {columns, score};
  }
  const columns = best?.columns ?? [];
  const moved: CircuitDrawing[] = [];
  let x = MARGIN;
  for (const column of columns) {
    let y = MARGIN;
    const width = Math.max(...column.map((circuit) => circuit.width));
    for (const circuit of column) {
      moved.push(circuit.at(x, y, width));
      y += circuit.height + BETWEEN_CIRCUITS;
    }
    x += width + BETWEEN_COLUMNS;
  }
  const all = <T>(pick: (drawing: CircuitDrawing['drawing']) => readonly T[]): T[] =>
    moved.flatMap(({drawing}) => pick(drawing));
  const wires = new Map<string, Drawing['wires'][number]>();
  for (const wire of moved.flatMap((circuit) => circuit.drawing.wires)) {
    const known = wires.get(wire.id);
    wires.set(wire.id, known ? {...known, paths: [...known.paths, ...wire.paths]} : wire);
  }
  return {
    view: 'ladder',
    width: columnsWidth(columns),
    height: Math.max(0, ...columns.map(columnHeight)) + 2 * MARGIN,
    enclosures: [],
    parts: all((it) => it.parts),
    symbols: all((it) => it.symbols),
    wires: [...wires.values()],
    lines: all((it) => it.lines),
    terminals: all((it) => it.terminals),
    junctions: all((it) => it.junctions),
    labels: all((it) => it.labels),
    flags: all((it) => it.flags),
  };
}

const columnHeight = (column: readonly CircuitDrawing[]): number =>
  column.reduce((sum, {height}) => sum + height + BETWEEN_CIRCUITS, -BETWEEN_CIRCUITS);

const columnsWidth = (columns: readonly (readonly CircuitDrawing[])[]): number =>
  columns.reduce((sum, column) => sum + Math.max(...column.map(({width}) => width)), 0) +
  BETWEEN_COLUMNS * Math.max(0, columns.length - 1) +
  2 * MARGIN;

/** Every way to cut a list into runs that keep its order. */
function* splits<T>(list: readonly T[]): Generator<T[][]> {
  for (let cuts = 0; cuts < 2 ** Math.max(0, list.length - 1); cuts++) {
    const columns: T[][] = [[]];
    list.forEach((entry, i) => {
      if (i > 0 && cuts & (1 << (i - 1))) columns.push([]);
      columns[columns.length - 1]!.push(entry);
    });
    yield columns;
  }
}
