import type {Unit} from '../content/unit.ts';
import {arrangements} from './box-arrangement.ts';
import {foldColumns, type ColumnRange, type Columns} from './connection-columns.ts';
import {place, type Decisions, type Placement, type RunLayout} from './connection-graph.ts';
import {partGeometry} from './connection-part.ts';
import {LaneCost, SIZE, SMALL_ENOUGH} from './lane-cost.ts';
import {changePlan} from './lane-moves.ts';
import type {LanePlan} from './lane-plan.ts';
import {planOf} from './lane-start.ts';
import {placeLanes} from './lane-placement.ts';
import {ROW_PITCH, type PartDecision, type Side} from './part-geometry.ts';
import {groupsOf, isStrip} from './terminal-groups.ts';
import {measureWires, type Quality} from './connection-quality.ts';
import {rearrange, type EstimatedPlan} from './rearrange.ts';
import {untangle} from './untangle.ts';
import {seededRandom} from '../parts/seeded-random.ts';

/** How much is searched. All are counts, never the clock, so that a search can be repeated. */
export interface LayoutBudget {
  /** Ways to stand the enclosures that are laid out by ELK and untangled a little. */
  readonly arrangements: number;
  /** Annealing moves per folding into columns. */
  readonly foldingSteps: number;
  /** Annealing moves of that first untangling. */
  readonly quickSteps: number;
  /** How often enclosures of the best are moved about and untangled again … */
  readonly rearrangements: number;
  /** … with so many annealing moves, and four times as many where it comes near to the best. */
  readonly rearrangedSteps: number;
  /** How many of the best are untangled thoroughly … */
  readonly finalists: number;
  /** … with this many moves each … */
  readonly thoroughSteps: number;
  /** … and polished with this many trials, each placed and measured. */
  readonly trials: number;
}

export const shippedBudget: LayoutBudget = {
  arrangements: 14,
  foldingSteps: 3000,
  quickSteps: 60_000,
  rearrangements: 90,
  rearrangedSteps: 60_000,
  finalists: 3,
  thoroughSteps: 700_000,
  trials: 700,
};
/** For a unit that a person writes: a few seconds in a worker. */
export const quickBudget: LayoutBudget = {
  arrangements: 4,
  foldingSteps: 5000,
  quickSteps: 25_000,
  rearrangements: 0,
  rearrangedSteps: 20_000,
  finalists: 1,
  thoroughSteps: 80_000,
  trials: 60,
};

export interface ConnectionLayout {
  readonly decisions: Decisions;
  readonly placement: Placement;
  readonly quality: Quality;
}

const HOT = 2.5;
const WARM = 1;
const COOL = 0.06;

/**
 * Searches a connection layout. Each promising arrangement of the enclosures is folded into columns and laid
 * out by ELK, terminals turned toward what they are wired to; ELK's order of parts and wires is then untangled
 * without coordinates, which is some thousand times faster than a layout run, and placed again. The best of
 * these has its enclosures moved about; the best are untangled longer, and polished by what the placed drawing measures. With a `present` plan the search goes on
 * from there too, and never ends with a drawing that is worse.
 */
export async function searchLayout(
  unit: Unit,
  run: RunLayout,
  budget: LayoutBudget,
  seed: number,
  progress: (stage: string, best: ConnectionLayout) => void = () => undefined,
  present?: LanePlan,
): Promise<ConnectionLayout> {
  let best: ConnectionLayout | undefined;
  const keep = (stage: string, candidate: ConnectionLayout | undefined): void => {
    if (!candidate || (best && cost(candidate) >= cost(best))) return;
    best = candidate;
    progress(stage, candidate);
  };
  const tried: (EstimatedPlan & {readonly seed: number})[] = [];
  if (present) {
    keep('as it was', placed(present, seed));
    keep('polished', polish(present, 2 * budget.trials, seed));
    tried.push({plan: present, estimate: new LaneCost(present).total(), seed});
  }
  const ways = budget.arrangements > 0 ? arrangements(unit, seed, budget.arrangements) : [];
  for (const [i, ranges] of ways.entries()) {
    const laid = await layOut(unit, run, ranges, seed + i, budget.foldingSteps);
    keep('laid out', laid);
    const plan = planOf(unit, ranges, laid);
    const steps = {steps: budget.quickSteps, from: HOT, to: COOL};
    tried.push({plan, estimate: untangle(plan, steps, seed + i), seed: seed + i});
    keep('untangled', placed(plan, seed));
  }
  tried.sort((a, b) => a.estimate - b.estimate);
  if (budget.rearrangements > 0 && tried[0]) {
    const effort = {trials: budget.rearrangements, steps: budget.rearrangedSteps};
    const found = rearrange(tried[0], effort, seed);
    if (found.plan !== tried[0].plan) tried.unshift({...found, seed});
    keep('rearranged', placed(found.plan, seed));
  }
  for (const finalist of tried.slice(0, budget.finalists)) {
    const {plan} = finalist;
    untangle(plan, {steps: budget.thoroughSteps, from: WARM, to: COOL}, finalist.seed + 1);
    keep('untangled', placed(plan, seed));
    keep('polished', polish(plan, budget.trials, finalist.seed + 2));
  }
  return best!;
}

/** One folding, laid out by ELK until turning terminals toward their neighbours no longer helps. */
async function layOut(
  unit: Unit,
  run: RunLayout,
  ranges: ReadonlyMap<string, ColumnRange>,
  seed: number,
  foldingSteps: number,
): Promise<ConnectionLayout> {
  const columns = foldColumns(unit, ranges, seed, foldingSteps);
  let decisions = firstDecisions(unit, columns, seed);
  let best: ConnectionLayout | undefined;
  for (let pass = 0; pass < 2; pass++) {
    const placement = await place(unit, decisions, run);
    const laid = {decisions, placement, quality: qualityOf(unit, placement)};
    if (best && cost(laid) >= cost(best)) break;
    best = laid;
    decisions = turnTowardNeighbours(unit, laid);
  }
  return best!;
}

/** A plan with coordinates, measured. */
function placed(plan: LanePlan, seed: number): ConnectionLayout | undefined {
  const placement = placeLanes(plan, SHEET_WEIGHT);
  if (!placement) return undefined;
  const {parts} = plan;
  const decisions: Decisions = {
    seed,
    columns: Object.fromEntries(parts.map(({id}, i) => [id, plan.column[i]!])),
    parts: Object.fromEntries(parts.map(({id}, i) => [id, plan.decisions[i]!])),
  };
  return {decisions, placement, quality: qualityOf(plan.unit, placement)};
}

/** How dear a high sheet is beside bent wires, when heights are chosen. */
const SHEET_WEIGHT = 12;
/** A change that costs this much more by estimate is not worth placing. */
const HOPELESS = 1.2;

/** Random changes that are kept where the placed drawing measures better. */
function polish(plan: LanePlan, trials: number, seed: number): ConnectionLayout | undefined {
  const random = seededRandom(seed);
  const estimate = new LaneCost(plan);
  plan.commit();
  let estimated = estimate.total();
  estimate.commit();
  let best = placed(plan, seed);
  for (let spent = 0; spent < trials;) {
    if (!changePlan(plan, random)) continue;
    const tried = estimate.total();
    let better = false;
    if (tried <= estimated + HOPELESS) {
      spent++;
      const candidate = placed(plan, seed);
      better = candidate !== undefined && (!best || cost(candidate) <= cost(best));
      if (better) best = candidate;
    }
    if (better) {
      estimated = tried;
      plan.commit();
      estimate.commit();
    } else {
      plan.rollback();
      estimate.rollback();
    }
  }
  return best;
}

/** Shown 1280 pixels wide, terminals of a drawing no wider than this are 24 pixels apart. */
const WIDEST = (ROW_PITCH * 1280) / 24;

/** What the search minimises. Size counts from the point where the drawing no longer fits 1280 × 800 at scale 1. */
export function cost({
  placement,
  quality,
}: Pick<ConnectionLayout, 'placement' | 'quality'>): number {
  const oversize = Math.max(SMALL_ENOUGH, placement.width / 1280, placement.height / 800);
  const tooWide = Math.max(0, placement.width - WIDEST);
  return (
    quality.crossings +
    quality.sameColour * 4 +
    quality.bends * 0.2 +
    quality.length / 1500 +
    oversize * SIZE +
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
export function firstDecisions(unit: Unit, columns: Columns, seed: number): Decisions {
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
