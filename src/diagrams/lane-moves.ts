import type {LanePlan} from './lane-plan.ts';
import type {PartDecision, Side} from './part-geometry.ts';
import {settlePart, sortGroups, sortLugs} from './lane-settling.ts';
import {groupsOf, isStrip} from './terminal-groups.ts';

type Random = () => number;

const other = (side: Side): Side => (side === 'left' ? 'right' : 'left');

const pickFrom = <T>(list: readonly T[], random: Random): T =>
  list[Math.floor(random() * list.length)]!;

/** One item of a list at another place. */
function shifted<T>(list: readonly T[], random: Random): T[] {
  const changed = [...list];
  const [item] = changed.splice(Math.floor(random() * changed.length), 1);
  changed.splice(Math.floor(random() * (changed.length + 1)), 0, item!);
  return changed;
}

/** How many changes are followed by what suits them: slower, but they get out of where single steps lead uphill. */
const SETTLED = 0.06;

/** A part is moved, turned or only looked at, and all that hangs on it is put in order. */
function settledChange(plan: LanePlan, random: Random): boolean {
  const dice = random();
  const part = Math.floor(random() * plan.parts.length);
  if (dice < 0.25) {
    sortGroups(plan, part);
    sortLugs(plan, part);
    return true;
  }
  if (dice < 0.5) return relayBundle(plan, random);
  if (dice < 0.75) movePart(plan, random, part);
  else if (dice < 0.9) changeSides(plan, random, part);
  settlePart(plan, part);
  return true;
}

/** All wires that join the parts of one wire are laid anew beside one another. */
function relayBundle(plan: LanePlan, random: Random): boolean {
  const wire = Math.floor(random() * plan.low.length);
  const ends = [plan.endPart[2 * wire]!, plan.endPart[2 * wire + 1]!];
  const bundle = plan.wiresOf[ends[0]!]!.filter((it) =>
    [plan.endPart[2 * it]!, plan.endPart[2 * it + 1]!].includes(ends[1]!),
  );
  plan.relay(...bundle);
  for (const part of ends) sortLugs(plan, part);
  return true;
}

/** One random change of a plan. False where the dice fell on something that cannot be changed. */
export function changePlan(plan: LanePlan, random: Random): boolean {
  if (random() < SETTLED) return settledChange(plan, random);
  const dice = random();
  if (dice < 0.34) return swapNeighbours(plan, random);
  if (dice < 0.46) return moveLane(plan, random);
  if (dice < 0.5) return relayWire(plan, random);
  if (dice < 0.62) return movePart(plan, random);
  if (dice < 0.68) return swapParts(plan, random);
  if (dice < 0.8) return reorderGroups(plan, random);
  if (dice < 0.9) return changeSides(plan, random);
  if (dice < 0.985) return reorderLugs(plan, random);
  return swapEnclosures(plan, random);
}

function swapNeighbours(plan: LanePlan, random: Random): boolean {
  const column = Math.floor(random() * plan.columnCount);
  const items = plan.layers[column]!;
  const at = Math.floor(random() * (items.length - 1));
  const [a, b] = [items[at], items[at + 1]];
  if (a === undefined || b === undefined) return false;
  const moves = (item: number): boolean => plan.isPart(item) || plan.isLane(item);
  if (!moves(a) || !moves(b)) return false;
  const changed = [...items];
  changed[at] = b;
  changed[at + 1] = a;
  plan.setLayer(column, changed);
  return true;
}

function moveLane(plan: LanePlan, random: Random): boolean {
  const column = Math.floor(random() * plan.columnCount);
  const lanes = plan.layers[column]!.filter((item) => plan.isLane(item));
  if (lanes.length === 0) return false;
  const lane = pickFrom(lanes, random);
  const items = plan.layers[column]!.filter((item) => item !== lane);
  const gaps = plan.gaps(plan.wireOfLane(lane), column, items);
  items.splice(pickFrom(gaps, random), 0, lane);
  plan.setLayer(column, items);
  return true;
}

function relayWire(plan: LanePlan, random: Random): boolean {
  const wire = Math.floor(random() * plan.low.length);
  if (plan.low[wire] === plan.high[wire]) return false;
  plan.relay(wire);
  return true;
}

/** A part to any place of its enclosure. */
function movePart(
  plan: LanePlan,
  random: Random,
  part = Math.floor(random() * plan.parts.length),
): boolean {
  const home = plan.home[part]!;
  const {low, high} = plan.ranges[home]!;
  const column =
    random() < 0.4 ? plan.column[part]! : low + Math.floor(random() * (high - low + 1));
  const items = plan.layers[column]!.filter((item) => item !== part);
  const top = items.indexOf(plan.topOf(home)) + 1;
  const bottom = items.indexOf(plan.bottomOf(home));
  plan.movePart(part, column, top + Math.floor(random() * (bottom - top + 1)));
  return true;
}

function swapParts(plan: LanePlan, random: Random): boolean {
  const a = Math.floor(random() * plan.parts.length);
  const b = Math.floor(random() * plan.parts.length);
  if (a === b || plan.home[a] !== plan.home[b]) return false;
  const [columnA, columnB] = [plan.column[a]!, plan.column[b]!];
  if (columnA === columnB) {
    plan.setLayer(
      columnA,
      plan.layers[columnA]!.map((item) => (item === a ? b : item === b ? a : item)),
    );
    return true;
  }
  const placeOf = (part: number): number => plan.layers[plan.column[part]!]!.indexOf(part);
  plan.movePart(a, columnB, placeOf(b));
  plan.movePart(b, columnA, Math.min(placeOfHome(plan, b, columnA), plan.layers[columnA]!.length));
  return true;
}

/** The middle of an enclosure's block in a column, for a part that comes to it. */
function placeOfHome(plan: LanePlan, part: number, column: number): number {
  const items = plan.layers[column]!;
  const home = plan.home[part]!;
  const top = items.indexOf(plan.topOf(home)) + 1;
  const bottom = items.indexOf(plan.bottomOf(home));
  return Math.floor((top + bottom) / 2);
}

function reorderGroups(plan: LanePlan, random: Random): boolean {
  const part = Math.floor(random() * plan.parts.length);
  const decision = plan.decisions[part]!;
  if (decision.order.length < 2) return false;
  const order = random() < 0.25 ? [...decision.order].reverse() : shifted(decision.order, random);
  plan.decide(part, {...decision, order});
  return true;
}

/** Takes a terminal, a pair or the whole part to the other side; on a strip one wire end. */
function changeSides(
  plan: LanePlan,
  random: Random,
  index = Math.floor(random() * plan.parts.length),
): boolean {
  const part = plan.parts[index]!;
  const decision = plan.decisions[index]!;
  if (isStrip(part)) return changeStripSide(plan, index, random);
  const groups = groupsOf(part);
  const dice = random();
  const group = pickFrom(groups, random);
  const turned = new Set(
    dice < 0.3
      ? part.terminals.map((name) => `${part.id}.${name}`)
      : dice < 0.65
        ? group.terminals
        : [pickFrom(group.terminals, random)],
  );
  const sides = decision.sides.map((side, i): Side =>
    turned.has(`${part.id}.${part.terminals[i]!}`) ? other(side) : side,
  );
  plan.decide(index, {...decision, sides});
  return true;
}

function changeStripSide(plan: LanePlan, index: number, random: Random): boolean {
  const part = plan.parts[index]!;
  const decision = plan.decisions[index]!;
  const terminal = `${part.id}.${pickFrom(part.terminals, random)}`;
  const left = [...(decision.lugs[`${terminal}:left`] ?? [])];
  const right = [...(decision.lugs[`${terminal}:right`] ?? [])];
  const all = left.length + right.length;
  if (all === 0) return false;
  const at = Math.floor(random() * all);
  const [from, to] = at < left.length ? [left, right] : [right, left];
  const [wire] = from.splice(at < left.length ? at : at - left.length, 1);
  to.splice(Math.floor(random() * (to.length + 1)), 0, wire!);
  plan.decide(
    index,
    withLugs(decision, {[`${terminal}:left`]: left, [`${terminal}:right`]: right}),
  );
  return true;
}

const withLugs = (
  decision: PartDecision,
  lugs: Readonly<Record<string, readonly string[]>>,
): PartDecision => ({...decision, lugs: {...decision.lugs, ...lugs}});

function reorderLugs(plan: LanePlan, random: Random): boolean {
  const part = Math.floor(random() * plan.parts.length);
  const decision = plan.decisions[part]!;
  const several = Object.entries(decision.lugs).filter(([, wires]) => wires.length > 1);
  if (several.length === 0) return false;
  const [key, wires] = pickFrom(several, random);
  plan.decide(part, withLugs(decision, {[key]: shifted(wires, random)}));
  return true;
}

/** Two enclosures, one right above the other, change places in every column they share. */
function swapEnclosures(plan: LanePlan, random: Random): boolean {
  const upper = Math.floor(random() * plan.ranges.length);
  const range = plan.ranges[upper];
  if (!range) return false;
  const column = range.low + Math.floor(random() * (range.high - range.low + 1));
  const order = plan.layers[column]!.filter((item) => plan.isTop(item)).map((item) =>
    plan.enclosureOf(item),
  );
  const lower = order[order.indexOf(upper) + 1];
  if (lower === undefined) return false;
  for (let c = range.low; c <= range.high; c++) {
    if (!plan.stands(lower, c)) continue;
    const items = plan.layers[c]!;
    const blocks = [upper, lower].map((e): readonly [number, number] => [
      items.indexOf(plan.topOf(e)),
      items.indexOf(plan.bottomOf(e)) + 1,
    ]);
    const [first, second] = blocks.sort((a, b) => a[0] - b[0]) as [
      readonly [number, number],
      readonly [number, number],
    ];
    plan.setLayer(c, [
      ...items.slice(0, first[0]),
      ...items.slice(...second),
      ...items.slice(first[1], second[0]),
      ...items.slice(...first),
      ...items.slice(second[1]),
    ]);
  }
  return true;
}
