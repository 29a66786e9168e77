import type {Unit} from '../content/unit.ts';
import type {Fault} from '../faults/fault.ts';
import {inSequence} from '../bench/complaint.ts';
import {controlsOf} from '../bench/bench-controls.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';

/** A unit brought into one state in which readings can be taken. */
export interface OperatingState {
  readonly id: string;
  readonly operating: OperatingUnit;
  /** Line voltage is off: resistance can be read. */
  readonly isolated: boolean;
}

/**
 * Every state of a unit in which readings are compared: each sequence of operation when it has established
 * itself, and the unit at rest with every isolating switch open.
 */
export function* operatingStates(unit: Unit, faults: readonly Fault[]): Generator<OperatingState> {
  let last: OperatingUnit | undefined;
  for (const sequence of unit.sequences) {
    last = inSequence(unit, faults, sequence);
    yield {id: sequence.id, operating: last, isolated: false};
  }
  if (last) yield {id: 'isolated', operating: isolate(unit, last.fork()), isolated: true};
}

/** Opens every isolating switch, as for a lock-out. */
export function isolate(unit: Unit, operating: OperatingUnit): OperatingUnit {
  for (const {target, control} of controlsOf(unit)) {
    if (!control.isolates) continue;
    const open = control.choices?.find((choice) => choice.value === 'open' || choice.value === 'off');
    if (open) operating.set(target, open.value);
  }
  return operating;
}
