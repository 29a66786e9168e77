import type {Action} from './actions.ts';

/** An action that was refused, with the sentence that says why. */
export interface Refusal {
  readonly action: Action;
  readonly sentence: string;
}

/** Where on the page a refusal belongs: beside the control, part or cover that was worked, or in its section. */
export function placeOf(action: Action): string {
  switch (action.do) {
    case 'set':
      return action.target;
    case 'lock':
    case 'unlock':
      return action.part;
    case 'open-cover':
    case 'close-cover':
      return action.enclosure;
    case 'lift':
    case 'land':
      return 'wires';
    case 'jumper':
    case 'remove-jumper':
      return 'jumpers';
    default:
      return action.do;
  }
}
