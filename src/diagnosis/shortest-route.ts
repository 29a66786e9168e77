import type {Action} from '../bench/actions.ts';
import {Bench} from '../bench/bench.ts';
import type {Unit} from '../content/unit.ts';
import type {Fault} from '../faults/fault.ts';
import {Planner, stepsOf, type Proposal} from './planner.ts';
import {Suspects} from './suspects.ts';

/** The way the planner finds a fault from the complaint on, with an exact meter. */
export interface Route {
  readonly steps: readonly {
    readonly proposal: Proposal;
    /** What the meter showed, with its unit. */
    readonly shown: string;
    readonly suspectsLeft: number;
  }[];
  readonly readings: number;
  readonly minutes: number;
  /** Suspects that no reading tells from the fault. */
  readonly left: readonly string[];
}

/** No fault of a shipped unit takes as many. */
const mostReadings = 30;
/** From here on it pays to think about other states of the unit too. */
const fewSuspects = 40;

/**
 * Finds hidden faults as the planner would: the mode that the complaint is about first, then each time the reading
 * with the greatest expected gain per minute. Only what a person can see, hear and read is used.
 *
 * @param sequence mode that the complaint is about; absent = the planner begins with the unit at rest
 * @param tell hears how many suspects are left after each step
 * @param afterSeconds how long the unit runs before what the customer complains of is noticed
 */
export function shortestRoute(
  unit: Unit,
  faults: readonly Fault[],
  sequence?: string,
  tell: (left: number) => void = () => undefined,
  afterSeconds = 0,
): Route {
  const bench = new Bench({unit, faults, complaint: '', seed: 0});
  const suspects = new Suspects(unit);
  const planner = new Planner(suspects);
  let readings = 0;
  const act = (action: Action): string => {
    const result = bench.act(action);
    if ('refused' in result)
      throw new Error(`The planner's ${action.do} was refused: ${result.refused}`);
    const {entry} = result;
    suspects.step(action, entry, bench.operating.observations());
    tell(suspects.count);
    if (entry?.kind === 'reading') readings += 1;
    return entry?.display ? `${entry.display.text} ${entry.display.unit}` : '';
  };
  const mode = unit.sequences.find(({id}) => id === sequence);
  if (mode) {
    for (const {target, value} of mode.set) act({do: 'set', target, value});
    act({do: 'wait', seconds: mode.waitSeconds});
    if (afterSeconds) act({do: 'wait', seconds: afterSeconds});
  }
  const steps: Route['steps'][number][] = [];
  while (readings < mostReadings && suspects.count > 1) {
    const [proposal] = planner.best(1, suspects.count <= fewSuspects);
    if (!proposal) break;
    let shown = '';
    for (const action of stepsOf(proposal, bench.view().meter.function)) shown = act(action);
    steps.push({proposal, shown, suspectsLeft: suspects.count});
  }
  return {
    steps,
    readings,
    minutes: bench.view().minutes,
    left: suspects.open.map(({hypothesis}) => hypothesis.id),
  };
}
