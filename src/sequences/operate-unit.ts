import type {Unit} from '../content/unit.ts';
import type {Fault} from '../faults/fault.ts';
import {plantOf} from '../plant/plant-of.ts';
import {wire} from './live-network.ts';
import {startPart, type OperatedPart} from './operated-part.ts';
import type {OperatingUnit} from './operating-unit.ts';
import {RunningUnit} from './running-unit.ts';
import {alterationsOf} from '../faults/alterations.ts';

/**
 * Puts a unit into operation with its faults present, power on, every control at its initial position, and lets it
 * settle at time 0. Throws where a fault changes something that the unit does not have.
 */
export function operateUnit(unit: Unit, faults: readonly Fault[]): OperatingUnit {
  const parts = unit.parts
    .map(startPart)
    .filter((part): part is OperatedPart => part !== undefined);
  let plant = plantOf(unit.plant.kind, unit.plant.start);
  for (const fault of faults) plant = plant.hold(fault.plant, 0);
  return new RunningUnit({
    unit,
    faults,
    timeMs: 0,
    parts,
    plant,
    controls: new Map([
      ...unit.parts.flatMap((part) =>
        part.controls.map((control) => [`${part.id}.${control.id}`, control.initial] as const),
      ),
      ...unit.enclosures.filter(({cover}) => cover).map(({id}) => [`${id}.tap`, ''] as const),
    ]),
    lifted: [],
    jumpers: [],
    wired: wire(unit, alterationsOf(faults, [], [])),
    settling: undefined,
  });
}
