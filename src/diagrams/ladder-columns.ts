/**
 * Finds where the columns of a ladder stand. Every pair of neighbours on a row keeps a least distance; the
 * longest path through these constraints gives each column's leftmost and rightmost place. Contacts take
 * the leftmost, loads and all that follows them the rightmost, so each rung's slack lies before its load.
 */
export interface Spacing {
  /** Column indices, left and right. */
  readonly left: number;
  readonly right: number;
  readonly least: number;
}

export interface ColumnWishes {
  /** Columns that want to stand right: loads. What follows them on their rows goes with them. */
  readonly toTheRight: ReadonlySet<number>;
  /** Columns that want to stand in the middle of their slack: sources. */
  readonly inTheMiddle: ReadonlySet<number>;
  /** Pairs that want one x (windings of one machine); dropped where the rows do not allow it. */
  readonly together: readonly (readonly [number, number])[];
}

/** x of every column, the first at 0; `least` is the least distance between the first column and the second (the rails). */
export function placeColumns(
  count: number,
  spacings: readonly Spacing[],
  wishes: ColumnWishes,
  least: number,
): number[] {
  let group = Array.from({length: count}, (_, i) => i);
  for (const [a, b] of wishes.together) {
    const merged = group.map((of) => (of === group[b]! ? group[a]! : of));
    if (orderOf(count, spacings, merged)) group = merged;
  }
  const order = orderOf(count, spacings, group);
  if (!order)
    throw new Error('The rows of the ladder contradict each other: no order of columns fits them.');

  const between = spacings.map(({left, right, least: gap}) => ({
    left: group[left]!,
    right: group[right]!,
    least: gap,
  }));
  const after = new Map<number, {right: number; least: number}[]>();
  for (const {left, right, least: gap} of between)
    after.set(left, [...(after.get(left) ?? []), {right, least: gap}]);

  const leftmost = new Array<number>(count).fill(0);
  for (const column of order)
    for (const {right, least: gap} of after.get(column) ?? [])
      leftmost[right] = Math.max(leftmost[right]!, leftmost[column]! + gap);
  const width = Math.max(least, leftmost[group[1]!]!, ...leftmost);
  leftmost[group[1]!] = width;

  const rightmost = new Array<number>(count).fill(width);
  for (const column of [...order].reverse())
    for (const {right, least: gap} of after.get(column) ?? [])
      rightmost[column] = Math.min(rightmost[column]!, rightmost[right]! - gap);

  const right = new Set([...wishes.toTheRight].map((column) => group[column]!));
  const middle = new Set([...wishes.inTheMiddle].map((column) => group[column]!));
  for (const column of order)
    if (right.has(column) || middle.has(column))
      for (const next of after.get(column) ?? [])
        if (right.has(column) || !middle.has(next.right)) right.add(next.right);
  return group.map((column) => {
    if (column === group[0]) return 0;
    if (column === group[1]) return width;
    if (middle.has(column) && !right.has(column))
      return (leftmost[column]! + rightmost[column]!) / 2;
    return right.has(column) ? rightmost[column]! : leftmost[column]!;
  });
}

/** Columns from left to right; undefined where the constraints run in a circle. */
function orderOf(
  count: number,
  spacings: readonly Spacing[],
  group: readonly number[],
): number[] | undefined {
  const waiting = new Array<number>(count).fill(0);
  const after = new Map<number, number[]>();
  for (const {left, right} of spacings) {
    const [from, to] = [group[left]!, group[right]!];
    if (from === to) return undefined;
    waiting[to]!++;
    after.set(from, [...(after.get(from) ?? []), to]);
  }
  const columns = [...new Set(group)];
  const ready = columns.filter((column) => waiting[column] === 0);
  const order: number[] = [];
  for (let column = ready.shift(); column !== undefined; column = ready.shift()) {
    order.push(column);
    for (const next of after.get(column) ?? []) if (--waiting[next]! === 0) ready.push(next);
  }
  return order.length === columns.length ? order : undefined;
}
