import {isMotor} from '../parts/motor-windings.ts';
import type {ColumnWishes, Spacing} from './ladder-columns.ts';
import {leastBetween, type Lettered} from './ladder-lettering.ts';
import type {CircuitRows, Item} from './ladder-row.ts';

/** Height of a circuit's title over its first row. */
export const TITLE_HEIGHT = 22;
/** Where the rails begin in a circuit that no source feeds. */
export const BARE_RAIL_TOP = TITLE_HEIGHT + 24;
const RAIL_NAME_HEIGHT = 20;
const BETWEEN_ROWS = 4;
const LEAST_PITCH = 40;

/** Least distances between the items of each row, and from the rails. */
export function spacingsOf(
  rows: CircuitRows,
  lettered: readonly (readonly Lettered[])[],
): Spacing[] {
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

const reachOf = ({tracks}: Lettered, side: 0 | 1): number =>
  Math.max(0, ...tracks.map((reach) => reach?.[side] ?? 0));

/** Which columns go right, which go to the middle, which stand over one another. */
export function wishesOf(
  rows: CircuitRows,
  lettered: readonly (readonly Lettered[])[],
): ColumnWishes {
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
      const load = symbol!.load || item.edge.part.elements.some(isMotor);
      const before = items[i - 1]?.item;
      if (load && tied) {
        toTheRight.add(item.column);
        // the load's own terminal stays with it, unless other branches leave from it
        if (before?.is === 'terminal' && !branching.has(before.column))
          toTheRight.add(before.column);
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
  item.is === 'symbol' &&
  (item.edge.element.is === 'acSource' || item.edge.winding.startsWith('secondary'));

/** Height of each row's line, and of the whole. */
export function placeRows(
  rows: CircuitRows,
  lettered: readonly (readonly Lettered[])[],
): {ys: number[]; height: number} {
  const ys: number[] = [];
  // without a header the rails begin bare: room for their terminals and names above the first rung
  let bottom = rows.hasHeader ? TITLE_HEIGHT : BARE_RAIL_TOP + 30 + RAIL_NAME_HEIGHT / 2;
  lettered.forEach((items, i) => {
    const machine = rows.rows[i]!.items.some(
      (item) => item.is === 'symbol' && item.edge.winding === 'main',
    );
    const above = Math.max(...items.map((it) => it.above), 14) + (machine ? 20 : 0);
    const below = Math.max(...items.map((it) => it.below), 12);
    const previous = ys[i - 1];
    const y = Math.max(bottom + above, previous === undefined ? 0 : previous + LEAST_PITCH);
    ys.push(y);
    bottom = y + below + (rows.hasHeader && i === 0 ? RAIL_NAME_HEIGHT : BETWEEN_ROWS);
  });
  return {ys, height: bottom + 4};
}
