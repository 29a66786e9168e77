import type {Unit} from '../content/unit.ts';
import type {SafetyFinding} from '../bench/bench-view.ts';
import type {LogEntry} from '../bench/bench-view.ts';
import type {Fault} from '../faults/fault.ts';
import type {Occasion} from './mastery.ts';
import {skillsOf} from './skills.ts';

/** A finished call, as far as skills are judged by it. */
export interface FinishedCall {
  readonly unit: Unit;
  readonly faults: readonly Fault[];
  /** Found, and proved by the log, without being told a reading to take. */
  readonly proved: boolean;
  readonly log: readonly LogEntry[];
  readonly safety: readonly SafetyFinding[];
}

/**
 * Occasions that a finished call was: the skills of its faults, right when the fault was proved; meter safety in
 * every call with a reading; lock-out where something was locked or should have been. A call on which the coach told a
 * reading counts as not shown, as asking for help does in the model (Corbett and Anderson, 1995).
 */
export function occasionsOf({
  unit,
  faults,
  proved,
  log,
  safety,
}: FinishedCall): Omit<Occasion, 'day'>[] {
  const asked = new Set(faults.flatMap((fault) => skillsOf(unit, fault)));
  const occasions = [...asked].map((skill) => ({skill, right: proved}));
  const metering = /^(resistance-on-live)/;
  const locking = /^(lifted-live|no-lock|not-tested|not-proved|live-end|ground-lifted)/;
  if (log.some(({kind}) => kind === 'reading'))
    occasions.push({skill: 'meter-safety', right: !safety.some(({id}) => metering.test(id))});
  const locked = log.some(({text}) => text?.startsWith('Hung lock') ?? false);
  const breached = safety.some(({id}) => locking.test(id));
  if (locked || breached) occasions.push({skill: 'lock-out', right: !breached});
  return occasions;
}
