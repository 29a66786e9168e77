import type {Unit} from '../content/unit.ts';
import {groupsOf, isStrip, type Side} from './connection-part.ts';
import {seededRandom} from './seeded-random.ts';

/** Column of each part, by id. Wires run from a lower to a higher column, never within one. */
export type Columns = Readonly<Record<string, number>>;

interface Place {
  readonly part: string;
  readonly low: number;
  readonly high: number;
  readonly height: number;
  readonly strip: boolean;
}

const LARGE = 7;

/**
 * Folds a unit into columns by simulated annealing: short wires, no wire within a column, columns of
 * even height, contacts with one end on each side. Large enclosures take four columns each, one after
 * another; small ones stand anywhere. Deterministic for a seed; `steps` moves are tried.
 */
export function foldColumns(unit: Unit, seed: number, steps: number): Columns {
  const random = seededRandom(seed);
  const places = placesOf(unit);
  const columns = new Map(places.map((it) => [it.part, it.low + Math.floor(random() * (it.high - it.low + 1))]));
  const cost = costOf(unit, places);
  let present = cost(columns);
  let best = new Map(columns);
  let bestCost = present;
  for (let step = 0; step < steps; step++) {
    const heat = 12 * (1 - step / steps) ** 2 + 0.01;
    const place = places[Math.floor(random() * places.length)]!;
    if (place.high === place.low) continue;
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

/** Columns that each part may stand in. */
function placesOf(unit: Unit): Place[] {
  const inside = new Map(unit.enclosures.map(({id}) => [id, unit.parts.filter(({enclosure}) => enclosure === id)]));
  const large = unit.enclosures.filter(({id}) => inside.get(id)!.length >= LARGE);
  const wide = 4;
  const first = new Map<string, number>();
  // room on the left for what feeds the first large box; the second follows without a gap
  let next = large.length < unit.enclosures.length ? 1 : 0;
  for (const {id} of large) {
    first.set(id, next);
    next += wide;
  }
  const last = Math.max(next - 1, 2);
  return unit.enclosures.flatMap(({id}) =>
    inside.get(id)!.map((part) => ({
      part: part.id,
      low: first.get(id) ?? 0,
      high: first.has(id) ? first.get(id)! + wide - 1 : last,
      height: isStrip(part) ? part.terminals.length + 1 : Math.ceil(part.terminals.length / 2) + 1.5,
      strip: isStrip(part),
    })),
  );
}

function costOf(unit: Unit, places: readonly Place[]): (columns: ReadonlyMap<string, number>) => number {
  const partOf = (terminal: string): string => terminal.slice(0, terminal.indexOf('.'));
  const wires = unit.wires.map(({from, to}) => [partOf(from), partOf(to)] as const);
  const enclosureOf = new Map(unit.parts.map(({id, enclosure}) => [id, enclosure]));
  const pairs = unit.parts.flatMap((part) =>
    isStrip(part) ? [] : groupsOf(part).filter((group) => group.edge && group.terminals.length === 2),
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
    const heights = new Map<string, number>();
    const whole = new Map<number, number>();
    const spread = new Map<string, [number, number]>();
    for (const {part, height} of places) {
      const column = columns.get(part)!;
      const enclosure = enclosureOf.get(part)!;
      const key = `${enclosure} ${column}`;
      heights.set(key, (heights.get(key) ?? 0) + height);
      whole.set(column, (whole.get(column) ?? 0) + height);
      const [low, high] = spread.get(enclosure) ?? [column, column];
      spread.set(enclosure, [Math.min(low, column), Math.max(high, column)]);
    }
    for (const height of heights.values()) cost += height ** 2 * 0.06;
    for (const height of whole.values()) cost += height ** 2 * 0.05;
    for (const [low, high] of spread.values()) if (high - low > 3) cost += 20 * (high - low - 3);
    // a contact that is entered and left on one side is drawn as a hairpin: harder to read
    for (const {terminals} of pairs) {
      const sides = terminals.map((terminal) => sideOf(terminal, columns, neighbours, partOf));
      if (sides[0] !== undefined && sides[0] === sides[1]) cost += 3;
    }
    return cost;
  };
}

function sideOf(
  terminal: string,
  columns: ReadonlyMap<string, number>,
  neighbours: ReadonlyMap<string, readonly string[]>,
  partOf: (terminal: string) => string,
): Side | undefined {
  const own = columns.get(partOf(terminal))!;
  let balance = 0;
  for (const other of neighbours.get(terminal) ?? []) balance += Math.sign(columns.get(other)! - own);
  return balance === 0 ? undefined : balance < 0 ? 'left' : 'right';
}
