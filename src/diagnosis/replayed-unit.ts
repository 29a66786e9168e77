import type {Action} from '../bench/actions.ts';
import {bleedOhms, bleedSeconds} from '../bench/meter-practice.ts';
import type {Unit} from '../content/unit.ts';
import type {Fault} from '../faults/fault.ts';
import {operateUnit} from '../sequences/operate-unit.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';

/** Units at rest with their fault, by fault: every attempt and every question begins with a copy of one. */
const resting = new WeakMap<Unit, Map<string, OperatingUnit>>();

/** A copy of the unit with its faults, power on, before anything is done. The network is compiled once for each. */
export function restingUnit(unit: Unit, faults: readonly Fault[]): OperatingUnit {
  let known = resting.get(unit);
  if (!known) resting.set(unit, (known = new Map()));
  // pairs are too many to keep
  if (faults.length > 1) return operateUnit(unit, faults);
  const key = faults[0]?.id ?? '';
  let operating = known.get(key);
  if (!operating) known.set(key, (operating = operateUnit(unit, faults)));
  return operating.fork();
}

/** Whether an action does something to the unit, so that it must be done to every suspect as well. */
export function changesUnit(action: Action): boolean {
  switch (action.do) {
    case 'set':
    case 'lift':
    case 'land':
    case 'jumper':
    case 'remove-jumper':
    case 'discharge':
    case 'wait':
      return true;
    default:
      return false;
  }
}

/** Does to a suspect's unit what was done to the real one. */
export function redo(operating: OperatingUnit, action: Action): void {
  switch (action.do) {
    case 'set':
      operating.set(action.target, action.value);
      break;
    case 'lift':
      operating.lift(action.end);
      break;
    case 'land':
      operating.land(action.end);
      break;
    case 'jumper':
      operating.jumper(action.from, action.to);
      break;
    case 'remove-jumper':
      operating.removeJumper(action.from, action.to);
      break;
    case 'discharge':
      operating.bleed(action.from, action.to, bleedOhms, bleedSeconds);
      break;
    case 'wait':
      operating.advance(Math.round(action.seconds * 1000));
      break;
    default:
      break;
  }
}
