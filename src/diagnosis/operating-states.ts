import {controlsOf} from '../bench/bench-controls.ts';
import type {OperatingSequence, Unit} from '../content/unit.ts';
import type {Fault} from '../faults/fault.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {restingUnit} from './replayed-unit.ts';

/** A unit with its faults, run into a mode from rest until the mode has established itself. */
export function established(
  unit: Unit,
  faults: readonly Fault[],
  sequence: OperatingSequence,
): OperatingUnit {
  const operating = restingUnit(unit, faults);
  for (const {target, value} of sequence.set) operating.set(target, value);
  operating.advance(Math.round(sequence.waitSeconds * 1000));
  return operating;
}

/** Opens every isolating switch, as for a lock-out. */
export function isolate(unit: Unit, operating: OperatingUnit): OperatingUnit {
  for (const {target, control} of controlsOf(unit)) {
    if (!control.isolates) continue;
    const open = control.choices?.find(
      (choice) => choice.value === 'open' || choice.value === 'off',
    );
    if (open) operating.set(target, open.value);
  }
  return operating;
}
