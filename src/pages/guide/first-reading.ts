import type {Action} from '../../bench/actions.ts';
import {firstReadingPlan} from './first-reading-plan.ts';

export type StepId = 'close' | 'read' | 'across' | 'why';

/** How far the first reading has come, from the attempt's own actions: nothing else is kept. */
export interface FirstReading {
  /** The step to do now; absent when all the readings are taken and only the question is left or done. */
  readonly now: StepId;
  readonly done: ReadonlySet<StepId>;
  /** A hint that fits what was just done instead of what was asked. */
  readonly hint?: string;
}

/** Follows the actions of a first-reading attempt. Steps count in order: a reading before its step does not. */
export function firstReading(actions: readonly Action[]): FirstReading {
  const {callSwitch, hot, common, across} = firstReadingPlan;
  const done = new Set<StepId>();
  let closed = false;
  let meter = 'ac-volts';
  let hint: string | undefined;
  for (const action of actions) {
    hint = undefined;
    if (action.do === 'meter') meter = action.function;
    if (action.do === 'set' && action.target === callSwitch) {
      closed = action.value === 'on';
      if (closed) done.add('close');
    }
    if (action.do !== 'read' || !done.has('close')) continue;
    const volts = meter === 'ac-volts' || meter === 'low-impedance-volts';
    if (!done.has('read')) {
      if (!volts) hint = 'The meter was not on AC volts. Choose V~ and read again.';
      else if (!onPair(action, hot, common))
        hint = `Those leads were elsewhere. Red on ${hot}, black on ${common}.`;
      else if (!closed) hint = 'The call switch is open again. Close it, then read.';
      else done.add('read');
    } else if (!done.has('across')) {
      if (!volts) hint = 'The meter was not on AC volts. Choose V~ and read again.';
      else if (!onPair(action, ...across))
        hint = `One lead on each side of the switch: ${across.join(' and ')}.`;
      else if (closed)
        hint =
          'That was across the closed switch: next to nothing is lost in it. Now open it and read again.';
      else done.add('across');
    }
  }
  const now = (['close', 'read', 'across'] as const).find((step) => !done.has(step)) ?? 'why';
  return {now, done, hint};
}

/** On alternating current it does not matter which lead is where. */
function onPair({red, black}: {red: string; black: string}, a: string, b: string): boolean {
  return (red === a && black === b) || (red === b && black === a);
}
