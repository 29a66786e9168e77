import type {Unit} from '../content/unit.ts';
import {columnRanges, foldColumns, type ColumnRange, type Columns} from './connection-columns.ts';
import {place, type Decisions, type Placement, type RunLayout} from './connection-graph.ts';
import {partGeometry} from './connection-part.ts';
import {ROW_PITCH, type PartDecision, type Side} from './part-geometry.ts';
import {groupsOf, isStrip} from './terminal-groups.ts';
import {measureWires, type Quality} from './connection-quality.ts';
import {seededRandom} from '../parts/seeded-random.ts';

export interface LayoutBudget {
  /** Layout runs in all. The search stops by this count, never by the clock, so it can be repeated. */
  readonly evaluations: number;
  /** Annealing moves per folding. */
  readonly foldingSteps: number;
  /** Foldings that are tried before the best is improved. */
  readonly foldings: number;
}

export const shippedBudget: LayoutBudget = {evaluations: 700, foldingSteps: 20000, foldings: 20};
/** For a unit that a person writes: a few seconds in a worker. */
export const quickBudget: LayoutBudget = {evaluations: 36, foldingSteps: 20000, foldings: 3};

export interface ConnectionLayout {
  readonly decisions: Decisions;
  readonly placement: Placement;
  readonly quality: Quality;
}

/**
 * Searches a connection layout: several foldings into columns, each improved by turning terminals toward
 * what they are wired to, then hill-climbing on the best, one change at a time, with ELK as evaluator.
 */
export async function searchLayout(
  unit: Unit,
  run: RunLayout,
  budget: LayoutBudget,
  seed: number,
  progress: (spent: number, best: ConnectionLayout) => void = () => undefined,
): Promise<ConnectionLayout> {
  let spent = 0;
  const evaluate = async (decisions: Decisions): Promise<ConnectionLayout> => {
    spent++;
    const placement = await place(unit, decisions, run);
    return {decisions, placement, quality: qualityOf(unit, placement)};
  };
  let best: ConnectionLayout | undefined;
  const keep = (candidate: ConnectionLayout): boolean => {
    if (best && cost(candidate) >= cost(best)) return false;
    best = candidate;
    progress(spent, candidate);
    return true;
  };
  let bestRank = 0;
  for (let folding = 0; folding < budget.foldings; folding++) {
    // the estimate of how enclosures stand is rough: several of its best are tried
    const rank = Math.floor(folding / 2);
    let decisions = firstDecisions(
      unit,
      foldColumns(unit, seed + folding, budget.foldingSteps, rank),
      seed + folding,
    );
    for (let pass = 0; pass < 3 && spent < budget.evaluations; pass++) {
      const laid = await evaluate(decisions);
      if (keep(laid)) bestRank = rank;
      decisions = turnTowardNeighbours(unit, laid);
    }
  }
  const random = seededRandom(seed);
  const ranges = columnRanges(unit, bestRank);
  while (spent < budget.evaluations) {
    const candidate = await evaluate(change(unit, best!, ranges, random));
    keep(candidate);
  }
  return best!;
}

/** Shown 1280 pixels wide, terminals of a drawing no wider than this are 24 pixels apart. */
const WIDEST = (ROW_PITCH * 1280) / 24;

/** What the search minimises. Size counts from the point where the drawing no longer fits 1280 × 800 at scale 1. */
export function cost({
  placement,
  quality,
}: Pick<ConnectionLayout, 'placement' | 'quality'>): number {
  const oversize = Math.max(placement.width / 1280, placement.height / 800);
  const tooWide = Math.max(0, placement.width - WIDEST);
  return (
    quality.crossings +
    quality.sameColour * 4 +
    quality.bends * 0.2 +
    quality.length / 1500 +
    oversize * 90 +
    tooWide * 0.5 +
    (quality.overlaps + quality.through) * 60
  );
}

export function qualityOf(unit: Unit, placement: Placement): Quality {
  const wires = unit.wires.map(({id, colour}) => ({id, colour, points: placement.wires[id] ?? []}));
  return measureWires(wires, Object.values(placement.parts));
}

const partOf = (terminal: string): string => terminal.slice(0, terminal.indexOf('.'));

/** Natural order of groups, sides by the columns of what each terminal is wired to. */
function firstDecisions(unit: Unit, columns: Columns, seed: number): Decisions {
  const parts = Object.fromEntries(
    unit.parts.map((part): [string, PartDecision] => {
      const sides = part.terminals.map((name): Side => {
        const terminal = `${part.id}.${name}`;
        let balance = 0;
        for (const wire of unit.wires)
          for (const [own, other] of [
            [wire.from, wire.to],
            [wire.to, wire.from],
          ] as const)
            if (own === terminal) balance += Math.sign(columns[partOf(other)]! - columns[part.id]!);
        return balance > 0 ? 'right' : 'left';
      });
      return [
        part.id,
        {
          order: isStrip(part) ? part.terminals.map((_, i) => i) : groupsOf(part).map((_, i) => i),
          sides,
          lugs: {},
        },
      ];
    }),
  );
  return withLugs(unit, {seed, columns, parts: parts});
}

/** Puts every wire end on a lug of its terminal, keeping the order that the decisions already give. */
function withLugs(
  unit: Unit,
  decisions: Decisions,
  height: (wire: string, terminal: string) => number = () => 0,
): Decisions {
  const ends = new Map<string, {wire: string; y: number}[]>();
  const strips = new Set(unit.parts.filter(isStrip).map(({id}) => id));
  for (const {id, from, to} of unit.wires)
    for (const [own, other] of [
      [from, to],
      [to, from],
    ] as const) {
      const higher = decisions.columns[partOf(other)]! > decisions.columns[partOf(own)]!;
      const key = strips.has(partOf(own)) ? `${own}:${higher ? 'right' : 'left'}` : own;
      ends.set(key, [...(ends.get(key) ?? []), {wire: id, y: height(id, other)}]);
    }
  const parts: Record<string, PartDecision> = {};
  for (const part of unit.parts) {
    const lugs: Record<string, readonly string[]> = {};
    for (const name of part.terminals)
      for (const key of [
        `${part.id}.${name}`,
        `${part.id}.${name}:left`,
        `${part.id}.${name}:right`,
      ]) {
        const list = ends.get(key);
        if (list) lugs[key] = [...list].sort((a, b) => a.y - b.y).map(({wire}) => wire);
      }
    parts[part.id] = {...decisions.parts[part.id]!, lugs};
  }
  return {...decisions, parts};
}

/** Orders groups and lugs by the height at which their wires go on. */
function turnTowardNeighbours(unit: Unit, {decisions, placement}: ConnectionLayout): Decisions {
  const at = new Map<string, number>();
  for (const part of unit.parts) {
    const box = placement.parts[part.id]!;
    for (const {wire, terminal, y} of partGeometry(part, decisions.parts[part.id]!).lugs)
      at.set(`${wire} ${terminal}`, box.y + y);
  }
  const farEnd = new Map<string, number[]>();
  for (const {id, from, to} of unit.wires)
    for (const [own, other] of [
      [from, to],
      [to, from],
    ] as const)
      farEnd.set(own, [...(farEnd.get(own) ?? []), at.get(`${id} ${other}`) ?? 0]);
  const parts = Object.fromEntries(
    unit.parts.map((part): [string, PartDecision] => {
      const groups = isStrip(part)
        ? part.terminals.map((name) => ({terminals: [`${part.id}.${name}`]}))
        : groupsOf(part);
      const middle = (index: number): number => {
        const heights = groups[index]!.terminals.flatMap((terminal) => farEnd.get(terminal) ?? []);
        return heights.length > 0
          ? heights.reduce((a, b) => a + b, 0) / heights.length
          : placement.parts[part.id]!.y;
      };
      const decision = decisions.parts[part.id]!;
      return [
        part.id,
        {...decision, order: [...decision.order].sort((a, b) => middle(a) - middle(b))},
      ];
    }),
  );
  return withLugs(
    unit,
    {...decisions, parts},
    (wire, terminal) => at.get(`${wire} ${terminal}`) ?? 0,
  );
}

/** One random change: an order, a side, a column, lugs, or ELK's own seed. */
function change(
  unit: Unit,
  best: ConnectionLayout,
  ranges: ReadonlyMap<string, ColumnRange>,
  random: () => number,
): Decisions {
  const {decisions} = best;
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const part = pick(unit.parts);
  const decision = decisions.parts[part.id]!;
  const withPart = (changed: PartDecision): Decisions => ({
    ...decisions,
    parts: {...decisions.parts, [part.id]: changed},
  });
  const kind = random();
  if (kind < 0.3 && decision.order.length > 1) {
    const order = [...decision.order];
    const i = Math.floor(random() * order.length);
    const j = Math.floor(random() * order.length);
    order.splice(j, 0, ...order.splice(i, 1));
    return withPart({...decision, order});
  }
  if (kind < 0.45 && !isStrip(part)) {
    const group = pick(groupsOf(part));
    const whole = random() < 0.6 ? group.terminals : [pick(group.terminals)];
    const sides = decision.sides.map((side, i): Side =>
      whole.includes(`${part.id}.${part.terminals[i]!}`)
        ? side === 'left'
          ? 'right'
          : 'left'
        : side,
    );
    return withPart({...decision, sides});
  }
  if (kind < 0.6) {
    const several = Object.entries(decision.lugs).filter(([, wires]) => wires.length > 1);
    if (several.length > 0) {
      const [key, wires] = pick(several);
      const order = [...wires];
      const i = Math.floor(random() * order.length);
      order.splice(Math.floor(random() * order.length), 0, ...order.splice(i, 1));
      return withPart({...decision, lugs: {...decision.lugs, [key]: order}});
    }
  }
  const range = ranges.get(part.id)!;
  if (kind < 0.8 && range.high > range.low) {
    const to = range.low + Math.floor(random() * (range.high - range.low + 1));
    const columns = {...decisions.columns, [part.id]: to};
    const moved = firstDecisions(unit, columns, decisions.seed);
    const ordered = {
      ...decisions,
      columns,
      parts: {...decisions.parts, [part.id]: {...moved.parts[part.id]!, order: decision.order}},
    };
    return turnTowardNeighbours(unit, {...best, decisions: withLugs(unit, ordered)});
  }
  if (kind < 0.9) return {...decisions, seed: Math.floor(random() * 1e6)};
  return turnTowardNeighbours(unit, best);
}
