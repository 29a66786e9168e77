import {Bench} from '../../bench/bench.ts';
import type {AttemptRecord} from '../../bench/attempt.ts';
import {complaintOf} from '../../bench/complaint.ts';
import {randomFault} from '../../bench/random-fault.ts';
import {openSealed} from '../../bench/sealed-fault.ts';
import type {Unit} from '../../content/unit.ts';
import {levelsOf, type FaultDifficulty} from '../../diagnosis/difficulty-level.ts';
import {debriefOf} from '../../diagnosis/debrief.ts';
import {skillsOf} from '../../diagnosis/skills.ts';
import {catalogue, faultsById} from '../../faults/catalogue.ts';
import type {AttemptProgress, AttemptPurpose} from '../../store/attempts.ts';
import type {WantedFault} from './desk-messages.ts';

// What needs the whole simulation; fetched by the worker when it is first asked for.

export function derivedComplaint(unit: Unit, ids: readonly string[]): string {
  return complaintOf(unit, faultsById(catalogue(unit), ids)).text;
}

export {difficultiesOf} from '../../diagnosis/fault-difficulty.ts';

/** One fault of the kind wanted that a customer would notice, frequent ones more often. Throws a sentence where there is none. */
export function pickedFault(
  unit: Unit,
  known: readonly FaultDifficulty[],
  {difficulty, skill}: WantedFault,
  seed: number,
): {readonly fault: string; readonly complaint: string} {
  const levelOf = levelsOf(known);
  const picked = randomFault(
    unit,
    (fault) => {
      const level = levelOf(fault.id);
      if (!level || (difficulty && level !== difficulty)) return false;
      return !skill || skillsOf(unit, fault).includes(skill);
    },
    seed,
  );
  if (!picked)
    throw new Error(
      `This unit has no fault ${skill ? 'for this skill' : `of this difficulty (${difficulty})`} that a customer would notice. Choose another.`,
    );
  return {fault: picked.fault.id, complaint: picked.complaint.text};
}

/** Replays an attempt to learn how far it came. Throws naming the action that cannot be done again, never a fault. */
export function appraise(
  unit: Unit,
  record: AttemptRecord,
): {progress: AttemptProgress; purpose: AttemptPurpose} {
  const opened = openSealed(record.sealed);
  if ('reason' in opened) throw new Error(opened.reason);
  const faults = catalogue(unit).filter(({id}) => opened.hidden.faults.includes(id));
  if (faults.length !== opened.hidden.faults.length) {
    throw new Error(
      'What is hidden in this call is not in the unit as it is here: its file has changed since. Open the file that the call was taken on.',
    );
  }
  const bench = Bench.replay(
    {
      unit,
      faults,
      complaint: record.complaint,
      seed: record.seed,
      ...(opened.hidden.meter ? {meterFlaw: opened.hidden.meter} : {}),
    },
    record.actions,
  );
  const {minutes, stage} = bench.view();
  const purpose = faults.length ? 'call' : 'free-run';
  if (stage === 'working') return {purpose, progress: {minutes, stage}};
  const {verdict} = debriefOf(bench);
  return {
    purpose,
    progress: {
      minutes,
      stage: verdict === 'given-up' && stage === 'named' ? 'given-up' : stage,
      verdict,
    },
  };
}
