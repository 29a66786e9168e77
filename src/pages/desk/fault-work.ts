import {Bench} from '../../bench/bench.ts';
import type {AttemptRecord} from '../../bench/attempt.ts';
import {complaintOf} from '../../bench/complaint.ts';
import {randomFault} from '../../bench/random-fault.ts';
import {openSealed} from '../../bench/sealed-fault.ts';
import type {Unit} from '../../content/unit.ts';
import {catalogue, faultsById} from '../../faults/catalogue.ts';
import type {AttemptProgress, AttemptPurpose} from '../../store/attempts.ts';
import type {Difficulty} from './desk-messages.ts';

// What needs the whole simulation; fetched by the worker when it is first asked for.

export function derivedComplaint(unit: Unit, ids: readonly string[]): string {
  return complaintOf(unit, faultsById(catalogue(unit), ids)).text;
}

/** One fault of that difficulty that a customer would notice. Throws a sentence where the unit has none. */
export function pickedFault(unit: Unit, difficulty: Difficulty, seed: number): {readonly fault: string; readonly complaint: string} {
  const picked = randomFault(unit, difficulty, seed);
  if (!picked) throw new Error(`This unit has no fault of this difficulty (${difficulty}) that a customer would notice. Choose another.`);
  return {fault: picked.fault.id, complaint: picked.complaint.text};
}

/** Replays an attempt to learn how far it came. Throws naming the action that cannot be done again. */
export function appraise(unit: Unit, record: AttemptRecord): {progress: AttemptProgress; purpose: AttemptPurpose} {
  const opened = openSealed(record.sealed);
  if ('reason' in opened) throw new Error(opened.reason);
  const faults = faultsById(catalogue(unit), opened.hidden.faults);
  const bench = Bench.replay({unit, faults, complaint: record.complaint, seed: record.seed}, record.actions);
  const {minutes, stage} = bench.view();
  return {
    purpose: faults.length ? 'call' : 'free-run',
    progress: {minutes, stage: bench.hasGivenUp && stage === 'named' ? 'given-up' : stage},
  };
}
