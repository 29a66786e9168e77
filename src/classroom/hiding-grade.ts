import type {Debrief} from '../bench/debrief.ts';
import type {Reasoning} from '../diagnosis/reasoning.ts';

// Our own choice: a fault hidden for somebody is good when it can be found, and better when it takes some finding.
const findable = 40;
const wasFound = 30;
const forReadings = 30;
/** From so many readings of the planner's way on, a fault has taken some finding. */
const manyReadings = 5;

/**
 * Points out of 100 for hiding a fault: that it can be found by readings at all, that the other found it, and how many
 * readings the planner itself needs for it.
 */
export function hidingPoints(
  verdict: Debrief['verdict'],
  {route}: Pick<Reasoning, 'route'>,
): number {
  const left = route.steps.at(-1)?.suspectsLeft;
  // the planner's own way must narrow it down
  const canBeFound = left !== undefined && left >= 1;
  const found = verdict === 'right' || verdict === 'equivalent';
  const readings = Math.min(1, route.readings / manyReadings);
  return Math.round(
    (canBeFound ? findable : 0) +
      (found ? wasFound : 0) +
      (canBeFound ? forReadings * readings : 0),
  );
}
