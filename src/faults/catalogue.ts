import type {Unit} from '../content/unit.ts';
import type {Fault} from './fault.ts';
import {intermittents} from './intermittents.ts';
import {liveMetal, miswirings} from './miswiring.ts';
import {partFaults} from './part-faults.ts';
import {plantFaults} from './plant-faults.ts';
import {wireFaults} from './wire-faults.ts';

/**
 * Every single fault that a unit can have, enumerated from its wires, parts and plant: wires in file order,
 * then parts in file order, then the plant, then miswirings, live metal and loose joints. Ids are stable as long as the unit's own ids are.
 */
export function catalogue(unit: Unit): Fault[] {
  return [
    ...wireFaults(unit),
    ...partFaults(unit),
    ...plantFaults(unit),
    ...miswirings(unit),
    ...liveMetal(unit),
    ...intermittents(unit),
  ];
}

/** Finds faults by id. Throws an Error naming the first id that the unit does not have, or that is given twice. */
export function faultsById(all: readonly Fault[], ids: readonly string[]): Fault[] {
  const twice = ids.find((id, at) => ids.indexOf(id) < at);
  if (twice !== undefined)
    throw new Error(`The fault "${twice}" is given twice. Give it once, or two that differ.`);
  return ids.map((id) => {
    const fault = all.find((each) => each.id === id);
    if (!fault) throw new Error(`There is no fault "${id}" in this unit's catalogue.`);
    return fault;
  });
}
