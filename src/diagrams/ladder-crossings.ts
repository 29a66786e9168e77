import type {CircuitRows, Row, Vertical} from './ladder-row.ts';

/** A vertical that passes a row it is not joined to, and the place among the row's items at which it passes. */
export interface Crossing {
  readonly row: number;
  readonly index: number;
  readonly column: number;
}

/** Where verticals cut through rows that they are not joined to. */
export function crossingsOf(circuit: CircuitRows): Crossing[] {
  const after = neighbours(circuit.rows);
  return circuit.verticals.flatMap((vertical) =>
    passed(vertical).flatMap((row): Crossing[] => {
      const {items} = circuit.rows[row]!;
      const reached = reachable(vertical.column, after);
      // all of the row stands to one side: the vertical goes by
      if (items.length === 0 || reached.has(items[0]!.column)) return [];
      if (reachable(items[items.length - 1]!.column, after).has(vertical.column)) return [];
      for (let index = items.length - 1; index > 0; index--) {
        const [before, next] = [items[index - 1]!.column, items[index]!.column];
        if (!reached.has(before) && !reachable(next, after).has(vertical.column))
          return [{row, index, column: vertical.column}];
      }
      return [];
    }),
  );
}

/** The rows with an item wherever a vertical crosses one, so that nothing else is put there. */
export function withCrossings(circuit: CircuitRows): CircuitRows {
  let {rows} = circuit;
  for (const {row, index, column} of crossingsOf(circuit)) {
    const {items, links} = rows[row]!;
    const link = links[index - 1];
    const changed: Row = {
      items: [...items.slice(0, index), {is: 'crossing', column}, ...items.slice(index)],
      links: [...links.slice(0, index - 1), link, link, ...links.slice(index)],
    };
    rows = rows.map((it, i) => (i === row ? changed : it));
  }
  return {...circuit, rows};
}

const passed = ({rows}: Vertical): number[] => {
  const [first, last] = [rows[0]!, rows[rows.length - 1]!];
  return Array.from({length: Math.max(0, last - first - 1)}, (_, i) => first + 1 + i).filter(
    (row) => !rows.includes(row),
  );
};

function neighbours(rows: readonly Row[]): Map<number, number[]> {
  const after = new Map<number, number[]>();
  for (const {items} of rows)
    for (let i = 1; i < items.length; i++) {
      const from = items[i - 1]!.column;
      after.set(from, [...(after.get(from) ?? []), items[i]!.column]);
    }
  return after;
}

function reachable(
  from: number,
  after: ReadonlyMap<number, readonly number[]>,
): ReadonlySet<number> {
  const seen = new Set([from]);
  const queue = [from];
  for (let at = queue.pop(); at !== undefined; at = queue.pop())
    for (const next of after.get(at) ?? [])
      if (!seen.has(next)) {
        seen.add(next);
        queue.push(next);
      }
  return seen;
}
