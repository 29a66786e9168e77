import {withEnclosureMoved} from './enclosure-moves.ts';
import type {LanePlan} from './lane-plan.ts';
import {untangle} from './untangle.ts';
import {seededRandom} from '../parts/seeded-random.ts';

/** A plan and what it costs by estimate. */
export interface EstimatedPlan {
  readonly plan: LanePlan;
  readonly estimate: number;
}

/** Untangled for a quarter of the steps, a plan that costs this much more than the best is given up. */
const HOPELESS = 32;
/** One that comes this near to the best is worth untangling longer. */
const PROMISING = 6;
/** How often two enclosures are moved at once. */
const TWICE = 0.35;

/**
 * Moves enclosures about, untangles each plan that comes of it, and goes on from the best: how enclosures stand
 * decides more about crossings than anything within them, and only an untangled plan tells how good it is. Deterministic
 * for a seed.
 */
export function rearrange(
  first: EstimatedPlan,
  {trials, steps}: {readonly trials: number; readonly steps: number},
  seed: number,
): EstimatedPlan {
  const random = seededRandom(seed);
  let best = first;
  for (let trial = 0; trial < trials; trial++) {
    let plan = withEnclosureMoved(best.plan, random);
    if (!plan) continue;
    if (random() < TWICE) plan = withEnclosureMoved(plan, random) ?? plan;
    let estimate = untangle(plan, {steps: steps / 4, from: 1.6, to: 0.15}, seed + trial);
    if (estimate > best.estimate + HOPELESS) continue;
    estimate = untangle(plan, {steps, from: 1.2, to: 0.08}, seed + trial);
    if (estimate < best.estimate + PROMISING)
      estimate = untangle(plan, {steps: 3 * steps, from: 0.8, to: 0.05}, seed + trial);
    if (estimate < best.estimate) best = {plan, estimate};
  }
  return best;
}
