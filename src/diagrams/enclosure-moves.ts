import type {ColumnRange} from './connection-columns.ts';
import {LanePlan} from './lane-plan.ts';

type Random = () => number;

interface Stand {
  low: number;
  high: number;
  /** Where it stands among the others, from the top: 0 to 1. */
  height: number;
}

/**
 * The same drawing with one enclosure elsewhere: in other columns, in one column more or fewer, above or below the
 * others. Lanes are laid anew; parts keep their terminals. Undefined where the dice fell on what cannot be changed.
 */
export function withEnclosureMoved(plan: LanePlan, random: Random): LanePlan | undefined {
  const {unit} = plan;
  const column = [...plan.column];
  const stands = plan.ranges.map((range, e): Stand | undefined => {
    if (!range) return undefined;
    const items = plan.layers[range.low]!;
    const middle = (items.indexOf(plan.topOf(e)) + items.indexOf(plan.bottomOf(e))) / 2;
    return {...range, height: middle / items.length};
  });
  const moved = Math.floor(random() * stands.length);
  const stand = stands[moved];
  if (!stand) return undefined;
  const own = plan.parts.flatMap((_, part) => (plan.home[part] === moved ? [part] : []));
  const dice = random();
  if (dice < 0.4) {
    const by = Math.floor(random() * (plan.columnCount + 2)) - 1 - stand.low;
    if (by === 0) return undefined;
    stand.low += by;
    stand.high += by;
    for (const part of own) column[part]! += by;
    if (random() < 0.5) stand.height = random() < 0.5 ? -0.1 : 1.1;
  } else if (dice < 0.55) {
    if (stand.high - stand.low + 1 >= own.length) return undefined;
    if (random() < 0.5) stand.low--;
    else stand.high++;
  } else if (dice < 0.7) {
    if (stand.low === stand.high) return undefined;
    if (random() < 0.5) stand.low++;
    else stand.high--;
    for (const part of own) column[part] = Math.max(stand.low, Math.min(stand.high, column[part]!));
  } else if (dice < 0.85) {
    stand.height = random() < 0.5 ? -0.1 : 1.1;
  } else {
    // a column more for all that stands across it, so that there is room beside
    const at = Math.floor(random() * plan.columnCount);
    for (const it of stands) {
      if (it && it.low > at) it.low++;
      if (it && it.high > at) it.high++;
    }
    for (const part of column.keys()) if (column[part]! > at) column[part]!++;
  }
  const placed = stands.flatMap((it) => (it ? [it] : []));
  const used = [
    ...new Set(
      placed.flatMap(({low, high}) => Array.from({length: high - low + 1}, (_, i) => low + i)),
    ),
  ].sort((a, b) => a - b);
  if (used.length > MOST_COLUMNS) return undefined;
  const ranges = new Map(
    plan.parts.map(({id}, part): [string, ColumnRange] => {
      const {low, high} = stands[plan.home[part]!]!;
      return [id, {low: used.indexOf(low), high: used.indexOf(high)}];
    }),
  );
  const changed = new LanePlan(unit, ranges, {
    seed: 0,
    columns: Object.fromEntries(plan.parts.map(({id}, part) => [id, used.indexOf(column[part]!)])),
    parts: Object.fromEntries(plan.parts.map(({id}, part) => [id, plan.decisions[part]!])),
  });
  const share = (part: number): number =>
    plan.rank[part]! / plan.layers[plan.column[part]!]!.length;
  const fromTop = [...stands.keys()]
    .filter((e) => stands[e])
    .sort((a, b) => stands[a]!.height - stands[b]!.height);
  for (let c = 0; c < changed.columnCount; c++)
    changed.setLayer(
      c,
      fromTop
        .filter((e) => changed.stands(e, c))
        .flatMap((e) => [
          changed.topOf(e),
          ...changed.parts
            .flatMap((_, part) =>
              changed.home[part] === e && changed.column[part] === c ? [part] : [],
            )
            .sort((a, b) => share(a) - share(b)),
          changed.bottomOf(e),
        ]),
    );
  const length = (wire: number): number => changed.high[wire]! - changed.low[wire]!;
  changed.relay(...[...changed.low.keys()].sort((a, b) => length(a) - length(b)));
  changed.commit();
  return changed;
}

/** More columns than this are never narrower than a laptop's screen. */
const MOST_COLUMNS = 10;
