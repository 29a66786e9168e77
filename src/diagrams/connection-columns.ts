import type {Unit} from '../content/unit.ts';
import type {Side} from './part-geometry.ts';
import {groupsOf, isStrip} from './terminal-groups.ts';
import {seededRandom} from '../parts/seeded-random.ts';

/** Column of each part, by id. Wires run from a lower to a higher column, never within one. */
export type Columns = Readonly<Record<string, number>>;

/** The columns that a part may stand in: those of its enclosure. */
export interface ColumnRange {
  readonly low: number;
  readonly high: number;
}

const partOf = (terminal: string): string => terminal.slice(0, terminal.indexOf('.'));

/** Rows that a part takes, roughly. */
export const rowsOf = (unit: Unit, part: string): number => {
  const it = unit.parts.find(({id}) => id === part)!;
  return isStrip(it) ? it.terminals.length + 1.5 : Math.ceil(it.terminals.length / 2) + 2;
};

/**
 * Folds a unit into columns by simulated annealing: short wires, no wire within a column, columns of
 * even height, contacts with one end on each side. Deterministic for a seed; `steps` moves are tried.
 */
export function foldColumns(
  unit: Unit,
  ranges: ReadonlyMap<string, ColumnRange>,
  seed: number,
  steps: number,
): Columns {
  const random = seededRandom(seed);
  const places = [...ranges].map(([part, range]) => ({part, ...range}));
  const columns = new Map(
    places.map((it) => [it.part, it.low + Math.floor(random() * (it.high - it.low + 1))]),
  );
  const cost = costOf(unit);
  let present = cost(columns);
  let best = new Map(columns);
  let bestCost = present;
  const movable = places.filter(({low, high}) => high > low);
  for (let step = 0; step < steps && movable.length > 0; step++) {
    const heat = 12 * (1 - step / steps) ** 2 + 0.01;
    const place = movable[Math.floor(random() * movable.length)]!;
    const was = columns.get(place.part)!;
    let to = place.low + Math.floor(random() * (place.high - place.low));
    if (to >= was) to++;
    columns.set(place.part, to);
    const tried = cost(columns);
    if (tried <= present || random() < Math.exp((present - tried) / heat)) present = tried;
    else columns.set(place.part, was);
    if (present < bestCost) {
      bestCost = present;
      best = new Map(columns);
    }
  }
  return Object.fromEntries(best);
}

function costOf(unit: Unit): (columns: ReadonlyMap<string, number>) => number {
  const wires = unit.wires.map(({from, to}) => [partOf(from), partOf(to)] as const);
  const heights = unit.parts.map(({id, enclosure}) => ({id, enclosure, rows: rowsOf(unit, id)}));
  const pairs = unit.parts.flatMap((part) =>
    isStrip(part)
      ? []
      : groupsOf(part).filter((group) => group.edge && group.terminals.length === 2),
  );
  const neighbours = new Map<string, string[]>();
  for (const {from, to} of unit.wires) {
    neighbours.set(from, [...(neighbours.get(from) ?? []), partOf(to)]);
    neighbours.set(to, [...(neighbours.get(to) ?? []), partOf(from)]);
  }
  return (columns) => {
    let cost = 0;
    for (const [a, b] of wires) {
      const apart = Math.abs(columns.get(a)! - columns.get(b)!);
      if (apart === 0) cost += a === b ? 0 : 40;
      else cost += (apart - 1) ** 1.5 * 2;
    }
    const stacks = new Map<string, number>();
    for (const {id, enclosure, rows} of heights) {
      const key = `${enclosure} ${columns.get(id)!}`;
      stacks.set(key, (stacks.get(key) ?? 0) + rows);
    }
    for (const rows of stacks.values()) cost += rows ** 2 * 0.12;
    // a contact that is entered and left on one side is drawn as a hairpin: harder to read
    for (const {terminals} of pairs) {
      const sides = terminals.map((terminal) => sideOf(terminal, columns, neighbours));
      if (sides[0] !== undefined && sides[0] === sides[1]) cost += 3;
    }
    return cost;
  };
}

function sideOf(
  terminal: string,
  columns: ReadonlyMap<string, number>,
  neighbours: ReadonlyMap<string, readonly string[]>,
): Side | undefined {
  const own = columns.get(partOf(terminal))!;
  let balance = 0;
  for (const other of neighbours.get(terminal) ?? [])
    balance += Math.sign(columns.get(other)! - own);
  return balance === 0 ? undefined : balance < 0 ? 'left' : 'right';
}
