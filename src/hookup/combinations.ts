import {pathAndCutSets} from './condition.ts';
import type {HookupTask} from './hookup-task.ts';

/** Up to this many switches every combination is run: 4096 of them. */
export const combinationLimit = 12;

export interface Combinations {
  /** Bit i is 1 while input i is closed. */
  readonly masks: readonly number[];
  readonly method: 'all' | 'path-and-cut-sets';
  /** How it was done, for the report. */
  readonly sentence: string;
}

/**
 * The combinations that prove a task: all of them, or beyond the limit each minimal path set with everything else
 * open, and each minimal cut set open with everything else closed. The second is a proof while closing a switch can
 * never take a load off, which the loader asks of the rules.
 */
export function combinationsOf(task: HookupTask): Combinations {
  const order = task.inputs.map(({id}) => id);
  const n = order.length;
  if (n <= combinationLimit) {
    const masks = Array.from({length: 2 ** n}, (_, mask) => mask);
    return {
      masks,
      method: 'all',
      sentence: `All ${masks.length} combinations of ${n} switches were run.`,
    };
  }
  const every = 2 ** n - 1;
  const masks = new Set([0, every]);
  for (const {when} of task.rules) {
    const {paths, cuts} = pathAndCutSets(when, order);
    for (const path of paths) masks.add(path);
    for (const cut of cuts) masks.add(every & ~cut);
  }
  return {
    masks: [...masks],
    method: 'path-and-cut-sets',
    sentence:
      `${n} switches have ${2 ** n} combinations, more than are run one by one (${2 ** combinationLimit}). ` +
      `Instead ${masks.size} were run: every smallest set of closed switches that must make a load work, and every smallest set of open ones that must stop it.`,
  };
}
