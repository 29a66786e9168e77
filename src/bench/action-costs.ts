import type {Action} from './actions.ts';

/**
 * Minutes of work that each action takes a technician at the unit. They are for comparing ways of finding a
 * fault, not for pricing a call: common practice, no source. A reading includes moving the leads; lifting a
 * wire includes marking it.
 */
const minutes: Readonly<Record<Exclude<Action['do'], 'wait'>, number>> = {
  set: 0.5,
  lock: 1,
  unlock: 0.5,
  'open-cover': 2,
  'close-cover': 1.5,
  meter: 0,
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

/** Minutes that an action costs. Waiting costs what it lasts. */
export function actionCost(action: Action): number {
  return action.do === 'wait' ? action.seconds / 60 : minutes[action.do];
}
