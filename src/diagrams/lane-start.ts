import type {Unit} from '../content/unit.ts';
import type {ColumnRange} from './connection-columns.ts';
import type {Decisions, Placement} from './connection-graph.ts';
import {partGeometry} from './connection-part.ts';
import type {Box} from './drawing.ts';
import {LanePlan} from './lane-plan.ts';
import {decisionsOf, wirePoints, type LayoutFile} from './layout-file.ts';

/**
 * The plan of a laid-out unit: parts in its columns by height, lanes where the placed wires pass the columns.
 * What stands in a column but not in the column's enclosures goes over or under them.
 */
export function planOf(
  unit: Unit,
  ranges: ReadonlyMap<string, ColumnRange>,
  {decisions, placement}: {readonly decisions: Decisions; readonly placement: Placement},
): LanePlan {
  const plan = new LanePlan(unit, ranges, decisions);
  for (let column = 0; column < plan.columnCount; column++)
    plan.setLayer(column, orderIn(plan, column, placement));
  plan.commit();
  return plan;
}

/**
 * The plan of a layout file that was placed from a plan: parts of one column have one middle. A search goes on from
 * there.
 */
export function planOfFile(unit: Unit, file: LayoutFile): LanePlan {
  const decided = decisionsOf(unit, file);
  const parts = Object.fromEntries(
    unit.parts.map((part) => {
      const [x, y] = file.parts[part.id]!;
      const {width, height} = partGeometry(part, decided[part.id]!);
      return [part.id, {x, y, width, height}] as const;
    }),
  );
  const middleOf = (part: string): number => parts[part]!.x + parts[part]!.width / 2;
  const middles = unit.parts.map(({id}) => middleOf(id)).sort((a, b) => a - b);
  // places are rounded to halves
  const centres = middles.filter((x, i) => i === 0 || x - middles[i - 1]! > 2);
  const columnOf = (part: string): number =>
    centres.findLastIndex((x) => x <= middleOf(part) + 0.01);
  const boxes = Object.fromEntries(
    Object.entries(file.enclosures).map(([id, [x, y, width, height]]) => [
      id,
      {x, y, width, height},
    ]),
  );
  const ranges = new Map(
    unit.parts.map(({id, enclosure}): [string, ColumnRange] => {
      const {x, width} = boxes[enclosure]!;
      const within = (it: number): boolean => it > x && it < x + width;
      return [id, {low: centres.findIndex(within), high: centres.findLastIndex(within)}];
    }),
  );
  const [width, height] = file.size;
  return planOf(unit, ranges, {
    decisions: {
      seed: file.seed,
      columns: Object.fromEntries(unit.parts.map(({id}) => [id, columnOf(id)])),
      parts: decided,
    },
    placement: {
      width,
      height,
      enclosures: boxes,
      parts,
      wires: Object.fromEntries(unit.wires.map(({id}) => [id, wirePoints(file, id)])),
    },
  });
}

interface Entry {
  readonly item: number;
  readonly y: number;
}

const byHeight = (a: {readonly y: number}, b: {readonly y: number}): number => a.y - b.y;

function orderIn(plan: LanePlan, column: number, placement: Placement): number[] {
  const {unit} = plan;
  const boxOf = (part: number): Box => placement.parts[plan.parts[part]!.id]!;
  const parts = plan.parts.flatMap((_, part) => (plan.column[part] === column ? [part] : []));
  const middles = parts.map((part) => boxOf(part).x + boxOf(part).width / 2);
  const x = middles.reduce((a, b) => a + b, 0) / Math.max(1, parts.length);
  const boxes = plan.ranges.flatMap((_, e) => (plan.stands(e, column) ? [e] : []));
  const held = new Map(
    boxes.map((e) => [
      e,
      parts
        .filter((part) => plan.home[part] === e)
        .map((part): Entry => ({item: part, y: boxOf(part).y + boxOf(part).height / 2})),
    ]),
  );
  const spans = (e: number, at: number): boolean => {
    const {y, height} = placement.enclosures[unit.enclosures[e]!.id]!;
    return at > y && at < y + height;
  };
  const free: Entry[] = [];
  unit.wires.forEach(({id}, wire) => {
    if (column < plan.low[wire]! || column >= plan.high[wire]!) return;
    const entry = {item: plan.lane(wire, column), y: heightAt(placement.wires[id] ?? [], x)};
    const own = boxes.find(
      (e) => plan.mayHold(e, wire) && (plan.staysIn(e, wire) || spans(e, entry.y)),
    );
    (own === undefined ? free : held.get(own)!).push(entry);
  });
  const blocks = boxes.map((e) => {
    const {y, height} = placement.enclosures[unit.enclosures[e]!.id]!;
    const inside = held.get(e)!.sort(byHeight);
    return {
      y: y + height / 2,
      items: [plan.topOf(e), ...inside.map(({item}) => item), plan.bottomOf(e)],
    };
  });
  return [...blocks, ...free.map(({item, y}) => ({y, items: [item]}))]
    .sort(byHeight)
    .flatMap(({items}) => items);
}

/** Height at which a routed wire passes an upright line, or the nearest that it comes to it. */
function heightAt(points: readonly {readonly x: number; readonly y: number}[], x: number): number {
  let best = 0;
  let nearest = Infinity;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const apart = Math.max(0, Math.min(a.x, b.x) - x, x - Math.max(a.x, b.x));
    if (apart < nearest) {
      nearest = apart;
      best = (a.y + b.y) / 2;
    }
  }
  return best;
}
