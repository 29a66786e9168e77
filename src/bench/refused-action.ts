import type {Action} from './actions.ts';

/** An action that the bench would not do, with its sentence, so that it can be shown where it was asked for. */
export interface RefusedAction {
  readonly action: Action;
  readonly sentence: string;
}

/** What an action acts on: the place on the page where its refusal belongs. */
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
    case 'meter':
    case 'keep':
    case 'renew':
    case 'discharge':
    case 'read':
    case 'clamp':
      return 'meter';
    default:
      return action.do;
  }
}
