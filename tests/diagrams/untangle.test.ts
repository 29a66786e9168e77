import {createRequire} from 'node:module';
import type {ELK} from 'elkjs/lib/elk-api.js';
import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {arrangements} from '../../src/diagrams/box-arrangement.ts';
import {foldColumns} from '../../src/diagrams/connection-columns.ts';
import {place} from '../../src/diagrams/connection-graph.ts';
import {
  cost,
  firstDecisions,
  qualityOf,
  searchLayout,
  type LayoutBudget,
} from '../../src/diagrams/connection-layout.ts';
import {LaneCost} from '../../src/diagrams/lane-cost.ts';
import {changePlan} from '../../src/diagrams/lane-moves.ts';
import {placeLanes} from '../../src/diagrams/lane-placement.ts';
import type {LanePlan} from '../../src/diagrams/lane-plan.ts';
import {planOf, planOfFile} from '../../src/diagrams/lane-start.ts';
import {toLayoutFile} from '../../src/diagrams/layout-file.ts';
import {withEnclosureMoved} from '../../src/diagrams/enclosure-moves.ts';
import {rearrange} from '../../src/diagrams/rearrange.ts';
import {untangle} from '../../src/diagrams/untangle.ts';
import {seededRandom} from '../../src/parts/seeded-random.ts';

const Bundled = createRequire(import.meta.url)('elkjs/lib/elk.bundled.js') as {new (): ELK};
const elk = new Bundled();
const unit = readShippedUnit('gas-furnace');
const panel = readShippedUnit('practice-panel');

/** Enclosures arranged, parts folded into columns and laid out once by ELK. */
async function startingPlan(): Promise<{plan: LanePlan; crossings: number}> {
  const [ranges] = arrangements(unit, 1, 1);
  const decisions = firstDecisions(unit, foldColumns(unit, ranges!, 1, 500), 1);
  const placement = await place(unit, decisions, (graph) => elk.layout(graph));
  return {
    plan: planOf(unit, ranges!, {decisions, placement}),
    crossings: qualityOf(unit, placement).crossings,
  };
}

const start = startingPlan();

describe('a plan without coordinates', () => {
  test('holds every part once, and a lane for a wire in each column that it passes', async () => {
    const {plan} = await start;
    const items = plan.layers.flat();
    expect(items.filter((item) => plan.isPart(item)).sort((a, b) => a - b)).toEqual(
      unit.parts.map((_, i) => i),
    );
    const passed = unit.wires.reduce((sum, _, wire) => sum + plan.high[wire]! - plan.low[wire]!, 0);
    expect(items.filter((item) => plan.isLane(item))).toHaveLength(passed);
  });

  test('a change that is taken back leaves nothing behind', async () => {
    const {plan} = await start;
    const random = seededRandom(3);
    const before = JSON.stringify(plan.snapshot());
    const spans = [[...plan.low], [...plan.high], [...plan.endY], [...plan.rank]];
    const total = new LaneCost(plan).total();
    for (let i = 0; i < 400; i++) {
      changePlan(plan, random);
      plan.rollback();
    }
    expect(JSON.stringify(plan.snapshot())).toBe(before);
    expect([[...plan.low], [...plan.high], [...plan.endY]]).toEqual(spans.slice(0, 3));
    expect(new LaneCost(plan).total()).toBe(total);
  });

  test('crossings counted channel by channel are those counted from scratch', async () => {
    const {plan} = await start;
    const random = seededRandom(4);
    const kept = plan.snapshot();
    const counted = new LaneCost(plan);
    for (let i = 0; i < 200; i++) {
      if (!changePlan(plan, random)) continue;
      expect(counted.total()).toBeCloseTo(new LaneCost(plan).total(), 9);
      plan.commit();
      counted.commit();
    }
    plan.restore(kept);
  });

  test('is placed with no wire on another and none through a part, and crosses less once untangled', async () => {
    const {plan, crossings} = await start;
    const kept = plan.snapshot();
    const before = new LaneCost(plan).total();
    const after = untangle(plan, {steps: 6000, from: 2, to: 0.1}, 1);
    expect(after).toBeLessThan(before);
    expect(new LaneCost(plan).total()).toBeCloseTo(after, 9);
    const placement = placeLanes(plan, 12)!;
    const quality = qualityOf(unit, placement);
    expect(quality).toMatchObject({overlaps: 0, through: 0});
    expect(quality.crossings).toBeLessThan(crossings);
    plan.restore(kept);
  });
});

describe('an enclosure that is moved', () => {
  test('takes its parts along, and every wire has its lanes again', async () => {
    const {plan} = await start;
    const random = seededRandom(6);
    let moved = 0;
    for (let i = 0; i < 60; i++) {
      const changed = withEnclosureMoved(plan, random);
      if (!changed) continue;
      moved++;
      changed.parts.forEach((_, part) => {
        const {low, high} = changed.ranges[changed.home[part]!]!;
        expect(changed.column[part]).toBeGreaterThanOrEqual(low);
        expect(changed.column[part]).toBeLessThanOrEqual(high);
        expect(changed.layers[changed.column[part]!]).toContain(part);
      });
      const lanes = changed.layers.flat().filter((item) => changed.isLane(item));
      const passed = changed.unit.wires.flatMap((_, wire) =>
        Array.from({length: changed.high[wire]! - changed.low[wire]!}, (_lane, k) =>
          changed.lane(wire, changed.low[wire]! + k),
        ),
      );
      expect(lanes.sort((a, b) => a - b)).toEqual(passed.sort((a, b) => a - b));
    }
    expect(moved).toBeGreaterThan(20);
  });

  test('is kept where the unit then crosses less by estimate, and the start is never made worse', async () => {
    const {plan} = await start;
    const kept = plan.snapshot();
    const estimate = new LaneCost(plan).total();
    const found = rearrange({plan, estimate}, {trials: 4, steps: 1500}, 2);
    expect(found.estimate).toBeLessThan(estimate);
    expect(new LaneCost(found.plan).total()).toBeCloseTo(found.estimate, 9);
    expect(plan.snapshot()).toEqual(kept);
  });
});

describe('a layout file', () => {
  test('gives back the plan that it was placed from', async () => {
    const {plan} = await start;
    const placement = placeLanes(plan, 12)!;
    const decisions = {
      seed: 1,
      columns: Object.fromEntries(plan.parts.map(({id}, i) => [id, plan.column[i]!])),
      parts: Object.fromEntries(plan.parts.map(({id}, i) => [id, plan.decisions[i]!])),
    };
    const again = planOfFile(unit, toLayoutFile(unit, {decisions, placement}));
    expect(again.layers).toEqual(plan.layers);
    expect(again.column).toEqual(plan.column);
    expect([...again.endY]).toEqual([...plan.endY]);
  });
});

describe('the search of a layout', () => {
  const budget: LayoutBudget = {
    arrangements: 1,
    foldingSteps: 500,
    quickSteps: 1500,
    rearrangements: 3,
    rearrangedSteps: 400,
    finalists: 1,
    thoroughSteps: 1500,
    trials: 5,
  };

  test('gives the same drawing for the same seed, better at each step', async () => {
    const costs: number[] = [];
    const search = () =>
      searchLayout(
        panel,
        (graph) => elk.layout(graph),
        budget,
        5,
        (_, best) => costs.push(cost(best)),
      );
    const [one, other] = [await search(), await search()];
    expect(toLayoutFile(panel, one)).toEqual(toLayoutFile(panel, other));
    const first = costs.slice(0, costs.length / 2);
    expect(first.length).toBeGreaterThan(1);
    expect([...first].sort((a, b) => b - a)).toEqual(first);
  });
});
