import type {BenchView, LogEntry} from './bench-view.ts';

export interface LockOutStep {
  readonly id: 'open' | 'lock' | 'prove';
  readonly title: string;
  readonly detail: string;
  readonly done: boolean;
}

/** As in `proof-of-dead.ts`: a known live source shows at least this much, a dead pair at most that. */
const knownLiveVolts = 20;
const deadVolts = 5;

/**
 * How far the lock-out of one isolating part has come, from what the student has done and read: opened,
 * locked and tagged, and since then proved dead on its load side with the meter.
 * Live, dead, live: the meter must have shown a live source before the dead reading and again after it.
 * The order follows 29 CFR 1910.147(d) and 1910.333(b)(2), from memory: isolate, lock and tag, verify.
 */
export function lockOutSteps(view: BenchView, part: string): readonly LockOutStep[] {
  const control = view.controls.find((each) => each.part === part && each.control.isolates);
  const open = control?.value === 'open' || control?.value === 'off';
  const locked = open && control?.locked === true;
  const tested = proofOf(view.log, part);
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
      detail: proofDetail(tested, part),
      done: locked && tested === 'proved',
    },
  ];
}

type Proof = 'none' | 'tested' | 'proved';

function proofDetail(proof: Proof, part: string): string {
  return proof === 'none'
    ? `Read a source you know is live, then each load terminal of ${part} to the others and to ground, then the live source again.`
    : `It read dead. Now the meter must prove itself: read the source you know is live, before and after the dead reading.`;
}

/** What the log proves of the part's load side since its lock was hung; a dead reading before that proves nothing. */
function proofOf(log: readonly LogEntry[], part: string): Proof {
  const hung = log.findLastIndex(
    (entry) => entry.kind === 'done' && entry.text === `Hung lock and tag on ${part}`,
  );
  const dead = hung < 0 ? [] : log.filter((entry, at) => at > hung && readsDead(entry, part));
  if (dead.length === 0) return 'none';
  const live = log.filter((entry) => (voltsRead(entry) ?? 0) >= knownLiveVolts);
  const proved = dead.some(
    ({index}) =>
      live.some((entry) => entry.index < index) && live.some((entry) => entry.index > index),
  );
  return proved ? 'proved' : 'tested';
}

function readsDead(entry: LogEntry, part: string): boolean {
  const onLoadSide = [entry.red, entry.black].some(
    (lead) => lead?.startsWith(`${part}.T`) === true,
  );
  const value = voltsRead(entry);
  return onLoadSide && value !== undefined && value <= deadVolts;
}

function voltsRead(entry: LogEntry): number | undefined {
  if (entry.function !== 'ac-volts' && entry.function !== 'low-impedance-volts') return undefined;
  const value = entry.display?.value;
  return value === undefined ? undefined : Math.abs(value);
}
