import type {Action, HintLevel} from './actions.ts';

/**
 * Minutes of work that each action takes a technician at the unit. They are for comparing ways of finding a
 * fault, not for pricing a call: common practice, no source. A reading includes moving the leads; lifting a
 * wire includes marking it.
 */
const minutes: Readonly<Record<Exclude<Action['do'], 'wait' | 'hint'>, number>> = {
  set: 0.5,
  lock: 1,
  unlock: 0.5,
  'open-cover': 2,
  'close-cover': 1.5,
  meter: 0,
  keep: 0,
  renew: 3,
  discharge: 1,
  read: 0.5,
  clamp: 0.5,
  lift: 2,
  land: 2,
  jumper: 1,
  'remove-jumper': 0.5,
  note: 0.5,
  name: 1,
  clear: 15,
  'give-up': 0,
};

/** What a hint costs in minutes, as if a colleague had been telephoned. Our own choice: the more it tells, the more. */
export const hintMinutes: Readonly<Record<HintLevel, number>> = {1: 1, 2: 3, 3: 6};

/** Minutes that an action costs. Waiting costs what it lasts, a hint by what it gives away. */
export function actionCost(action: Action): number {
  switch (action.do) {
    case 'wait':
      return action.seconds / 60;
    case 'hint':
      return hintMinutes[action.level];
    default:
      return minutes[action.do];
  }
}
