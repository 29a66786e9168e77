import type {OperatingSequence, Unit} from '../content/unit.ts';
import type {Fault} from '../faults/fault.ts';
import {operateUnit} from '../sequences/operate-unit.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {customerNotices, supplyAirDegF, type Notice} from './customer-notices.ts';

/** What a customer complains of, and what it follows from. */
export interface Complaint {
  readonly text: string;
  /** True where a customer notices nothing at all: no call would be made for this fault. */
  readonly silent: boolean;
  /** Sequence of operation in which it is noticed. */
  readonly sequence?: string;
}

const routineCheck =
  'Routine check: the customer has noticed nothing wrong and asks to have the unit looked over.';

/** A difference of supply air that people feel at the register. */
const feltDegF = 5;

/** Some faults show only after the unit has run a while. */
const laterSeconds = 15 * 60;

/**
 * The complaint that follows from faults, found by running every sequence of operation on a healthy unit and on
 * the faulted one, and telling what a customer would notice of the difference. First just after the mode has
 * established itself; where nothing shows in any mode, a quarter of an hour later.
 */
export function complaintOf(unit: Unit, faults: readonly Fault[]): Complaint {
  const pending: {sequence: OperatingSequence; healthy: Sighting; running: OperatingUnit}[] = [];
  for (const [i, sequence] of unit.sequences.entries()) {
    const healthy = healthySightings(unit)[i];
    const running = inSequence(unit, faults, sequence);
    const text = difference(sequence, healthy.early, sightingOf(running));
    if (text) return {text, silent: false, sequence: sequence.id};
    pending.push({sequence, healthy: healthy.late, running});
  }
  for (const {sequence, healthy, running} of pending) {
    running.advance(laterSeconds * 1000);
    const text = difference(sequence, healthy, sightingOf(running));
    if (text) return {text: `It starts as it should. After a while: ${text}`, silent: false, sequence: sequence.id};
  }
  return {text: routineCheck, silent: true};
}

/** A unit with its faults, run into a sequence of operation from rest until the mode has established itself. */
export function inSequence(unit: Unit, faults: readonly Fault[], sequence: OperatingSequence): OperatingUnit {
  const operating = operateUnit(unit, faults);
  for (const {target, value} of sequence.set) operating.set(target, value);
  operating.advance(Math.round(sequence.waitSeconds * 1000));
  return operating;
}

interface Sighting {
  readonly notices: readonly Notice[];
  readonly supplyAir: number | undefined;
}

function sightingOf(operating: OperatingUnit): Sighting {
  return {notices: customerNotices(operating), supplyAir: supplyAirDegF(operating)};
}

/** A healthy unit does the same every time, so it is run once for each unit. */
const known = new WeakMap<Unit, {early: Sighting; late: Sighting}[]>();

function healthySightings(unit: Unit): {early: Sighting; late: Sighting}[] {
  let sightings = known.get(unit);
  if (!sightings) {
    sightings = unit.sequences.map((sequence) => {
      const operating = inSequence(unit, [], sequence);
      const early = sightingOf(operating);
      operating.advance(laterSeconds * 1000);
      return {early, late: sightingOf(operating)};
    });
    known.set(unit, sightings);
  }
  return sightings;
}

/** The complaint about one mode, or undefined where a customer would notice no difference. */
function difference(sequence: OperatingSequence, healthy: Sighting, faulted: Sighting): string | undefined {
  const changed = faulted.notices.filter(
    (notice) => healthy.notices.find((each) => each.about === notice.about)?.is !== notice.is,
  );
  const air = airDifference(healthy.supplyAir, faulted.supplyAir);
  if (changed.length === 0 && !air) return undefined;
  // beside what is wrong, a customer also tells what still works
  const says = faulted.notices.flatMap((notice) => notice.says ?? []);
  return [sequence.complaint, ...says, ...(air && changed.length === 0 ? [air] : [])].join(' ');
}

function airDifference(healthy: number | undefined, faulted: number | undefined): string | undefined {
  if (healthy === undefined || faulted === undefined || Math.abs(faulted - healthy) < feltDegF) return undefined;
  return faulted < healthy ? 'The air is colder than it used to be.' : 'The air is warmer than it used to be.';
}
