import {Bench} from '../bench/bench.ts';
import {complaintOf, inSequence} from '../bench/complaint.ts';
import type {Debrief} from '../bench/debrief.ts';
import type {OperatingSequence, Unit} from '../content/unit.ts';
import {catalogue} from '../faults/catalogue.ts';
import type {Fault} from '../faults/fault.ts';
import {differ} from '../meter/accuracy.ts';
import {operateUnit} from '../sequences/operate-unit.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import {checkStep} from '../sequences/step-check.ts';
import {expectationHolds} from './expectation.ts';
import {lookAlike} from './look-alike.ts';

/**
 * The debrief of a call that has been named or given up. Everything in it is computed: the verdict by comparing
 * the named fault with the hidden one on the unit, the healthy readings by doing the same actions on a healthy unit.
 *
 * @throws Error while the search is still on, because the debrief tells the fault.
 */
export function debriefOf(bench: Bench): Debrief {
  if (bench.view().stage === 'working') {
    throw new Error('The search is still on; name the fault or give up before the debrief.');
  }
  const {unit, faults} = bench.setup;
  const all = catalogue(unit);
  const named = bench.named.flatMap(({fault}) => all.find((each) => each.id === fault) ?? []);
  const {verdict, left} = judge(unit, faults, named, bench.hasGivenUp);
  const last = named[named.length - 1];
  return {
    verdict,
    ...(last ? {named: told(last)} : {}),
    left: left.map(told),
    faults: faults.map(told),
    sequence: brokenSequence(unit, faults),
    readings: readingsOf(bench),
    ...(bench.setup.meterFlaw ? {meter: bench.setup.meterFlaw} : {}),
    safety: bench.view().safety,
    minutes: minutesOfSearch(bench),
  };
}

/** Whether the last naming was right and another fault is still hidden: the search goes on, and no debrief tells it yet. */
export function goesOn(bench: Bench): boolean {
  const {unit, faults} = bench.setup;
  if (faults.length < 2 || bench.hasGivenUp || bench.view().stage !== 'named') return false;
  const all = catalogue(unit);
  const named = bench.named.flatMap(({fault}) => all.find((each) => each.id === fault) ?? []);
  const {verdict, left} = judge(unit, faults, named, false);
  return left.length > 0 && verdict !== 'wrong';
}

const told = ({id, name}: Fault): {id: string; name: string} => ({id, name});

/**
 * Right: the last named is one of the hidden. Equivalent: on this unit nothing tells it from one of them. What
 * is left are hidden faults that no naming has met.
 */
function judge(
  unit: Unit,
  hidden: readonly Fault[],
  named: readonly Fault[],
  gaveUp: boolean,
): {verdict: Debrief['verdict']; left: Fault[]} {
  const left = [...hidden];
  let verdict: Debrief['verdict'] = 'wrong';
  for (const fault of named) {
    const exact = left.findIndex((each) => each.id === fault.id);
    const met = exact >= 0 ? exact : left.findIndex((each) => lookAlike(unit, [each], [fault]));
    verdict = exact >= 0 ? 'right' : met >= 0 ? 'equivalent' : 'wrong';
    if (met >= 0) left.splice(met, 1);
  }
  return {verdict: gaveUp ? 'given-up' : verdict, left};
}

/** The search ends with the last naming; what is done to prove the repair does not count against it. */
function minutesOfSearch(bench: Bench): number {
  const end = bench.history.findLast(({action}) => action.do === 'name' || action.do === 'give-up');
  return end?.entry?.minutes ?? 0;
}

/** The sequence that the complaint is about, on a healthy and on the faulted unit, step by step. */
function brokenSequence(unit: Unit, faults: readonly Fault[]): Debrief['sequence'] {
  const about = complaintOf(unit, faults).sequence;
  const first = unit.sequences.find(({id}) => id === about);
  const [healthy, faulted] = [operateUnit(unit, []), operateUnit(unit, faults)];
  const compared = (first ? [first] : unit.sequences).map((sequence) =>
    compare(sequence, inSequence(healthy, sequence), inSequence(faulted, sequence)),
  );
  // a silent fault may still break a step that no customer sees
  return (
    compared.find(({steps}) => steps.some((step) => step.broke)) ??
    compared[0] ?? {title: '', steps: []}
  );
}

function compare(
  sequence: OperatingSequence,
  healthy: OperatingUnit,
  faulted: OperatingUnit,
): Debrief['sequence'] {
  let broken = false;
  const steps = sequence.steps.map(({title, check}) => {
    const [good, now] = [healthy, faulted].map((operating) => checkStep(operating, check).holds);
    const broke = !broken && good && !now;
    broken ||= broke;
    return {title, healthy: good, faulted: now, broke};
  });
  return {title: sequence.title, steps};
}

/** Each reading beside the one that the same actions give on a healthy unit with the same meter. */
function readingsOf(bench: Bench): Debrief['readings'] {
  const healthy = new Bench({...bench.setup, faults: []});
  const evidence = new Set(bench.named.flatMap((each) => each.evidence));
  const readings: Debrief['readings'][number][] = [];
  for (const {action, entry} of bench.history) {
    if (action.do === 'clear') break;
    const twin = healthy.act(action);
    if (entry?.kind !== 'reading' || !entry.display || !('entry' in twin) || !twin.entry?.display)
      continue;
    readings.push({
      logIndex: entry.index,
      read: entry.display,
      healthy: twin.entry.display,
      telling: differ(entry.function!, entry.display, twin.entry.display),
      evidence: evidence.has(entry.index),
      ...(entry.expected
        ? {expectedRight: expectationHolds(entry.function!, entry.expected, entry.display)}
        : {}),
    });
  }
  return readings;
}
