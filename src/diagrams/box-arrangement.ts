import type {Unit} from '../content/unit.ts';
import {rowsOf, type ColumnRange} from './connection-columns.ts';
import {seededRandom} from '../parts/seeded-random.ts';

/** An enclosure to be given columns. */
interface BoxToPlace {
  readonly parts: readonly string[];
  /** Height of all its parts one above the other. */
  readonly height: number;
  readonly tallest: number;
  /** Power comes in here. */
  readonly source: boolean;
}

interface Stand {
  readonly low: number;
  readonly columns: number;
}

/** How enclosures stand: each in its columns, from the top downward in `order`. */
interface Arrangement {
  readonly stands: readonly Stand[];
  readonly order: readonly number[];
}

const ROW = 27;
const COLUMN = 158;
const BOX_EDGES = 58;
/** Lanes and gaps that a column's parts leave between them. */
const LOOSENESS = 1.12;
const STEPS = 4000;
const NEARLY_AS_GOOD = 12;

/**
 * Ways to stand a unit's enclosures on the sheet, the most promising first: each a range of columns for
 * every part. Small enclosures may stand beside one another under or over a large one. Judged by the size of
 * the sheet and by how far wires between enclosures go; deterministic for a seed.
 */
export function arrangements(
  unit: Unit,
  seed: number,
  count: number,
): ReadonlyMap<string, ColumnRange>[] {
  const boxes = unit.enclosures.flatMap(({id}): (BoxToPlace & {id: string})[] => {
    const parts = unit.parts.filter(({enclosure}) => enclosure === id);
    if (parts.length === 0) return [];
    const heights = parts.map((part) => rowsOf(unit, part.id) * ROW);
    return [
      {
        id,
        parts: parts.map((part) => part.id),
        height: heights.reduce((a, b) => a + b, 0),
        tallest: Math.max(...heights),
        source: parts.some(({kind}) => kind === 'supply'),
      },
    ];
  });
  const home = new Map(boxes.flatMap(({parts}, i) => parts.map((part) => [part, i] as const)));
  const partOf = (terminal: string): string => terminal.slice(0, terminal.indexOf('.'));
  const between = unit.wires
    .map(({from, to}) => [home.get(partOf(from))!, home.get(partOf(to))!] as const)
    .filter(([a, b]) => a !== b);
  const found = new Map<string, {arrangement: Arrangement; cost: number}>();
  // many short searches find many good ways; one long one finds the best way many times
  const note = (arrangement: Arrangement, cost: number): void => {
    const key = JSON.stringify(arrangement.stands);
    const known = found.get(key);
    if (!known || cost < known.cost) found.set(key, {arrangement, cost});
  };
  for (let run = 0; run < count + 4; run++) search(boxes, between, seed + run, note);
  return [...found.values()]
    .sort((a, b) => a.cost - b.cost)
    .slice(0, count)
    .map(
      ({arrangement}) =>
        new Map(
          boxes.flatMap(({parts}, i) => {
            const {low, columns} = arrangement.stands[i]!;
            return parts.map((part) => [part, {low, high: low + columns - 1}] as const);
          }),
        ),
    );
}

function search(
  boxes: readonly BoxToPlace[],
  between: readonly (readonly [number, number])[],
  seed: number,
  note: (arrangement: Arrangement, cost: number) => void,
): void {
  const random = seededRandom(seed);
  const die = (n: number): number => Math.floor(random() * n);
  const most = boxes.map(({parts}) => Math.min(6, Math.ceil(parts.length / 2)));
  let present: Arrangement = {
    stands: boxes.map((_, i) => ({low: die(6), columns: 1 + die(most[i]!)})),
    order: boxes.map((_, i) => i),
  };
  let cost = costOf(boxes, between, present);
  let best = cost;
  for (let step = 0; step < STEPS; step++) {
    const heat = 10 * (1 - step / STEPS) ** 2 + 0.1;
    const stands = [...present.stands];
    const order = [...present.order];
    const i = die(boxes.length);
    const dice = random();
    if (dice < 0.35) order.splice(die(order.length), 0, ...order.splice(die(order.length), 1));
    else if (dice < 0.8) stands[i] = {...stands[i]!, low: die(9)};
    else stands[i] = {...stands[i]!, columns: 1 + die(most[i]!)};
    const tried = {stands, order};
    const triedCost = costOf(boxes, between, tried);
    if (triedCost > cost && random() >= Math.exp((cost - triedCost) / heat)) continue;
    present = tried;
    cost = triedCost;
    best = Math.min(best, cost);
    if (cost < best + NEARLY_AS_GOOD) note(closedUp(present), cost);
  }
}

/** Without columns that nothing stands in. */
function closedUp({stands, order}: Arrangement): Arrangement {
  const used = new Set(
    stands.flatMap(({low, columns}) => Array.from({length: columns}, (_, i) => low + i)),
  );
  const numbers = [...used].sort((a, b) => a - b);
  return {order, stands: stands.map(({low, columns}) => ({low: numbers.indexOf(low), columns}))};
}

function costOf(
  boxes: readonly BoxToPlace[],
  between: readonly (readonly [number, number])[],
  {stands, order}: Arrangement,
): number {
  const skyline: number[] = [];
  for (const i of order) {
    const {low, columns} = stands[i]!;
    const {height, tallest} = boxes[i]!;
    const own = Math.max(tallest, (height * LOOSENESS) / columns) + BOX_EDGES;
    let top = 0;
    for (let c = low; c < low + columns; c++) top = Math.max(top, skyline[c] ?? 0);
    for (let c = low; c < low + columns; c++) skyline[c] = top + own;
  }
  const used = skyline.filter((it) => it !== undefined);
  const width = used.length * COLUMN + 40;
  const height = Math.max(...used);
  let wires = 0;
  for (const [a, b] of between) {
    const [left, right] =
      stands[a]!.low <= stands[b]!.low ? [stands[a]!, stands[b]!] : [stands[b]!, stands[a]!];
    const apart = right.low - (left.low + left.columns);
    // one above the other, wires leave by the side and come back
    wires += apart < 0 ? 0.5 : apart * 0.25;
  }
  const left = boxes.reduce((sum, {source}, i) => sum + (source ? stands[i]!.low * 0.3 : 0), 0);
  return (
    90 * Math.max(width / 1280, height / 800) + 20 * (width / 1280 + height / 800) + wires + left
  );
}
