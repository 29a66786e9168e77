import type {Unit} from '../content/unit.ts';
import {catalogue} from '../faults/catalogue.ts';
import type {Fault} from '../faults/fault.ts';
import {complaintOf, type Complaint} from './complaint.ts';
import {seededRandom} from '../parts/seeded-random.ts';

/**
 * Draws a fault from a unit's catalogue, frequent ones more often, and never one that a customer would not notice. The
 * same seed draws the same fault. Undefined where none is left.
 *
 * @param wanted which faults may be drawn: those of one difficulty, say
 */
export function randomFault(
  unit: Unit,
  wanted: (fault: Fault) => boolean,
  seed: number,
): {readonly fault: Fault; readonly complaint: Complaint} | undefined {
  const random = seededRandom(seed);
  const left = catalogue(unit).filter(wanted);
  while (left.length) {
    const [fault] = left.splice(drawn(left, random()), 1);
    const complaint = complaintOf(unit, [fault]);
    if (!complaint.silent) return {fault, complaint};
  }
  return undefined;
}

/** Index drawn in proportion to the weights; `share` in [0, 1). */
function drawn(faults: readonly Fault[], share: number): number {
  const total = faults.reduce((sum, fault) => sum + fault.weight, 0);
  let rest = share * total;
  for (const [i, fault] of faults.entries()) {
    rest -= fault.weight;
    if (rest < 0) return i;
  }
  return faults.length - 1;
}
