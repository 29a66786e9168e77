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
  /** Where it works at first: how long it has run when it is noticed. */
  readonly afterSeconds?: number;
}

const routineCheck =
  'Routine check: the customer has noticed nothing wrong and asks to have the unit looked over.';

const extraRunning = 'Something runs that nobody has asked for.';

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
  const rest = operateUnit(unit, faults);
  const runs = unit.sequences.map((sequence, i) => ({
    sequence,
    healthy: healthySightings(unit)[i],
    running: inSequence(rest, sequence),
  }));
  const early = firstDifference(runs.map((run) => ({...run, sighting: run.healthy.early})));
  if (early) return {...early, silent: false};
  // a mode that a healthy unit leaves by itself meanwhile (defrost) is no measure then, nor is air on its way to warm
  const lasting = runs.filter(({healthy}) => sameNotices(healthy.early, healthy.late));
  for (const {running} of lasting) running.advance(laterSeconds * 1000);
  const late = firstDifference(
    lasting.map((run) => ({...run, sighting: {...run.healthy.late, supplyAir: undefined}})),
  );
  if (late)
    return {
      text: `It starts as it should. After a while: ${late.text}`,
      sequence: late.sequence,
      afterSeconds: laterSeconds,
      silent: false,
    };
  return {text: routineCheck, silent: true};
}

/**
 * A unit run into a sequence of operation from rest until the mode has established itself.
 *
 * @param rest The unit as it stands with its faults when power has just come on; it is left as it is.
 */
export function inSequence(rest: OperatingUnit, sequence: OperatingSequence): OperatingUnit {
  const operating = rest.fork();
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

function sameNotices(a: Sighting, b: Sighting): boolean {
  return a.notices.every((notice, i) => notice.is === b.notices[i]?.is);
}

/** A healthy unit does the same every time, so it is run once for each unit. */
const known = new WeakMap<Unit, {early: Sighting; late: Sighting}[]>();

function healthySightings(unit: Unit): {early: Sighting; late: Sighting}[] {
  let sightings = known.get(unit);
  if (!sightings) {
    const rest = operateUnit(unit, []);
    sightings = unit.sequences.map((sequence) => {
      const operating = inSequence(rest, sequence);
      const early = sightingOf(operating);
      operating.advance(laterSeconds * 1000);
      return {early, late: sightingOf(operating)};
    });
    known.set(unit, sightings);
  }
  return sightings;
}

interface Compared {
  readonly sequence: OperatingSequence;
  readonly sighting: Sighting;
  readonly running: OperatingUnit;
}

/** What comes with a failure rather than being what the unit is for. */
const besides: ReadonlySet<string> = new Set(['breaker', 'noise']);

/**
 * The first mode in which the unit does not do what it is for; where it does in all of them, the first in which
 * something else is noticed: a tripped breaker, a rattle, a blank display.
 */
function firstDifference(runs: readonly Compared[]): {text: string; sequence: string} | undefined {
  let aside: {text: string; sequence: string} | undefined;
  for (const {sequence, sighting, running} of runs) {
    const now = sightingOf(running);
    const before = (notice: Notice): Notice | undefined =>
      sighting.notices.find((each) => each.about === notice.about);
    const changed = now.notices.filter((notice) => before(notice)?.is !== notice.is);
    // a unit that is to stand still fails by running, not by being dead
    const atRest = !sighting.notices.some((notice) => notice.works);
    const failing = changed.filter(
      (notice) => !besides.has(notice.about) && (!atRest || notice.works),
    );
    const air = airDifference(sighting.supplyAir, now.supplyAir);
    if (failing.length || (air && !atRest)) {
      // the mode's own complaint is about what it should do and does not
      const lost = changed.length === 0 || failing.some((notice) => before(notice)?.works);
      // beside what is wrong, a customer also tells what still works
      const told = now.notices.filter(
        (notice) => changed.includes(notice) || before(notice)?.works,
      );
      const says = [
        ...told.flatMap((notice) => notice.says ?? []),
        ...(air && changed.length === 0 ? [air] : []),
      ];
      return {
        text: sentences(lost || atRest ? sequence.complaint : extraRunning, says),
        sequence: sequence.id,
      };
    }
    if (changed.length && !aside) {
      const says = changed.flatMap((notice) => notice.says ?? []);
      if (says.length) aside = {text: says.join(' '), sequence: sequence.id};
    }
  }
  return aside;
}

/** Nobody says the same thing twice. */
function sentences(complaint: string, says: readonly string[]): string {
  const clauses = (text: string): string[] => text.toLowerCase().split(/[,.;]\s*/);
  const said = new Set(clauses(complaint));
  const more = says.filter((each) => clauses(each).some((clause) => clause && !said.has(clause)));
  return [complaint, ...more].join(' ');
}

function airDifference(
  healthy: number | undefined,
  faulted: number | undefined,
): string | undefined {
  if (healthy === undefined || faulted === undefined || Math.abs(faulted - healthy) < feltDegF)
    return undefined;
  return faulted < healthy
    ? 'The air is colder than it used to be.'
    : 'The air is warmer than it used to be.';
}
