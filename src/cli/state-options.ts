import type {Unit} from '../content/unit.ts';
import {catalogue, faultsById} from '../faults/catalogue.ts';
import {operateUnit} from '../sequences/operate-unit.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {doAction} from './do-action.ts';
import {UsageError} from './usage-error.ts';

/** Options that bring a unit into a state, shared by every command that reads one. */
export const stateOptions = {
  fault: {type: 'string', multiple: true},
  do: {type: 'string', multiple: true},
} as const;

/** The unit in operation with the faults asked for, after everything that was to be done. */
export function stateOf(
  unit: Unit,
  options: {readonly fault?: readonly string[]; readonly do?: readonly string[]},
): OperatingUnit {
  const all = catalogue(unit);
  const ids = all.map((fault) => fault.id);
  for (const id of options.fault ?? [])
    if (!ids.includes(id)) throw UsageError.unknown('fault', id, ids);
  if (new Set(options.fault).size < (options.fault?.length ?? 0))
    throw new UsageError('A fault is given twice. Give each --fault once.');
  const operating = operateUnit(unit, faultsById(all, options.fault ?? []));
  for (const action of options.do ?? []) doAction(action, unit, operating);
  return operating;
}
