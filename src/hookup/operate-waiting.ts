import type {Unit} from '../content/unit.ts';
import {alterationsOf} from '../faults/alterations.ts';
import {plantOf} from '../plant/plant-of.ts';
import {wire} from '../sequences/live-network.ts';
import {after, startPart, type OperatedPart} from '../sequences/operated-part.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {RunningUnit} from '../sequences/running-unit.ts';

/**
 * Puts a unit that was just wired into operation with every breaker and disconnect open: nothing has had power yet, so
 * a short waits for the moment at which somebody closes one. Where a task has none, it is live from the start.
 */
export function operateWaiting(unit: Unit): OperatingUnit {
  const controls = new Map(
    unit.parts.flatMap((part) =>
      part.controls.map(
        (control) => [`${part.id}.${control.id}`, openOf(control) ?? control.initial] as const,
      ),
    ),
  );
  const parts = unit.parts.flatMap((part): OperatedPart[] => {
    const resting = startPart(part);
    if (!resting) return [];
    const isolator = part.controls.find(({isolates}) => isolates);
    const open = isolator && openOf(isolator);
    if (open === undefined) return [resting];
    // a breaker has a handle, a disconnect a lever
    const opened =
      part.kind === 'breaker' ? {type: 'handle.moved', to: open, atMs: 0} : {type: 'lever.opened'};
    return [after(resting, opened)];
  });
  return new RunningUnit({
    unit,
    faults: [],
    timeMs: 0,
    parts,
    plant: plantOf(unit.plant.kind, unit.plant.start),
    controls,
    lifted: [],
    jumpers: [],
    wired: wire(unit, alterationsOf([], [], [])),
    settling: undefined,
  });
}

/** The open position of a control that isolates. */
const openOf = ({
  isolates,
  choices,
}: Unit['parts'][number]['controls'][number]): string | undefined =>
  isolates ? choices?.find(({value}) => value === 'off' || value === 'open')?.value : undefined;
