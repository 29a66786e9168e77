import type {BenchView, LogEntry} from './bench-view.ts';

export interface LockOutStep {
  readonly id: 'open' | 'lock' | 'prove';
  readonly title: string;
  readonly detail: string;
  readonly done: boolean;
}

/** Volts below which a conductor counts as dead on the meter here; the employer's procedure may ask for less. */
const deadVolts = 1;

/**
 * How far the lock-out of one isolating part has come, from what the student has done and read: opened,
 * locked and tagged, and since then proved dead on its load side with the meter.
 * The order follows 29 CFR 1910.147(d) and 1910.333(b)(2), from memory: isolate, lock and tag, verify.
 */
export function lockOutSteps(view: BenchView, part: string): readonly LockOutStep[] {
  const control = view.controls.find((each) => each.part === part && each.control.isolates);
  const open = control?.value === 'open' || control?.value === 'off';
  const locked = open && control?.locked === true;
  return [
    {
      id: 'open',
      title: 'Open it',
      detail: 'Stand to one side. Switch the loads off first where you can.',
      done: open,
    },
    {
      id: 'lock',
      title: 'Hang your lock and tag',
      detail: 'Your own lock, your name on the tag, the key in your pocket.',
      done: locked,
    },
    {
      id: 'prove',
      title: 'Prove it dead',
      detail: `Read a source you know is live, then each load terminal of ${part} to the others and to ground, then the live source again.`,
      done: locked && sinceLocked(view.log, part).some((entry) => provesDead(entry, part)),
    },
  ];
}

/** Entries after the lock was hung; a reading before it proves nothing now. */
function sinceLocked(log: readonly LogEntry[], part: string): readonly LogEntry[] {
  const hung = log.findLastIndex(
    (entry) => entry.kind === 'done' && entry.text === `Hung lock and tag on ${part}`,
  );
  return hung < 0 ? [] : log.slice(hung + 1);
}

function provesDead(entry: LogEntry, part: string): boolean {
  if (
    entry.kind !== 'reading' ||
    (entry.function !== 'ac-volts' && entry.function !== 'low-impedance-volts')
  )
    return false;
  const onLoadSide = [entry.red, entry.black].some(
    (lead) => lead?.startsWith(`${part}.T`) === true,
  );
  const value = entry.display?.value;
  return onLoadSide && value !== undefined && Math.abs(value) < deadVolts;
}
