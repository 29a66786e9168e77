import type {LanePlan} from './lane-plan.ts';
import {LaneCost} from './lane-cost.ts';
import {changePlan} from './lane-moves.ts';
import {seededRandom} from '../parts/seeded-random.ts';

export interface Annealing {
  readonly steps: number;
  /** Temperatures in units of one crossing. */
  readonly from: number;
  readonly to: number;
}

/**
 * Untangles a plan by simulated annealing: one random change at a time, kept where wires cross less and,
 * the cooler it gets the more rarely, where they cross more. Ends at the best plan found. Deterministic for a seed.
 */
export function untangle(plan: LanePlan, {steps, from, to}: Annealing, seed: number): number {
  const random = seededRandom(seed);
  const cost = new LaneCost(plan);
  plan.commit();
  let present = cost.total();
  cost.commit();
  let best = present;
  let bestPlan = plan.snapshot();
  for (let step = 0; step < steps; step++) {
    const heat = from * (to / from) ** (step / steps);
    if (!changePlan(plan, random)) continue;
    const limit = present - heat * Math.log(random());
    const tried = cost.total(limit);
    if (tried <= limit) {
      present = tried;
      plan.commit();
      cost.commit();
      if (present < best - 1e-9) {
        best = present;
        bestPlan = plan.snapshot();
      }
    } else {
      plan.rollback();
      cost.rollback();
    }
  }
  plan.restore(bestPlan);
  return best;
}
