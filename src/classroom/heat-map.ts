import type {Action} from '../bench/actions.ts';
import type {HeatMap} from './protocol/wall-messages.ts';

/** Counts where leads and clamps were put, over all attempts at one unit. A lifted end counts for itself. */
export function heatOf(unit: string, title: string, actions: Iterable<Action>): HeatMap {
  const terminals: Record<string, number> = {};
  const wires: Record<string, number> = {};
  const add = (counts: Record<string, number>, name: string): void => {
    counts[name] = (counts[name] ?? 0) + 1;
  };
  for (const action of actions) {
    if (action.do === 'read') {
      add(terminals, action.red);
      if (action.black !== action.red) add(terminals, action.black);
    } else if (action.do === 'clamp') add(wires, action.wire);
  }
  return {unit, title, terminals, wires};
}
