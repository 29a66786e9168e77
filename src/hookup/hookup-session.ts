import type {HookupReport} from './check-hookup.ts';
import type {HookupTask, HookupWire} from './hookup-task.ts';

/** What a student has done at a task, as it is kept: every state of the wires, and what counts. */
export interface HookupSession {
  readonly version: 1;
  readonly task: string;
  readonly wires: readonly HookupWire[];
  /** Former states of the wires, oldest first, and those that were undone, last undone first. */
  readonly past: readonly (readonly HookupWire[])[];
  readonly future: readonly (readonly HookupWire[])[];
  /** Number of the next wire: ids are never used again. */
  readonly next: number;
  readonly checks: number;
  /** Wrong verdicts before the first right one. */
  readonly corrections: number;
  readonly solved: boolean;
  readonly energisings: number;
  readonly unsafeEnergisings: number;
  /** Readings on the dead circuit before power. */
  readonly deadReadings: number;
  readonly minutes: number;
}

export function beginSession(task: HookupTask): HookupSession {
  return {
    version: 1,
    task: task.id,
    wires: task.begin,
    past: [],
    future: [],
    next: task.begin.length + 1,
    checks: 0,
    corrections: 0,
    solved: false,
    energisings: 0,
    unsafeEnergisings: 0,
    deadReadings: 0,
    minutes: 0,
  };
}

/** The session that was kept for a task, or a new one where none was or it is not ours. */
export function resumeSession(task: HookupTask, kept: string | undefined): HookupSession {
  try {
    const found = JSON.parse(kept ?? 'null') as HookupSession | null;
    const terminals = new Set(
      task.parts.flatMap(({id, terminals: names}) => names.map((name) => `${id}.${name}`)),
    );
    if (
      found?.version === 1 &&
      found.task === task.id &&
      found.wires.every(({from, to}) => terminals.has(from) && terminals.has(to))
    )
      return found;
  } catch {
    // unreadable: begin anew
  }
  return beginSession(task);
}

const changed = (session: HookupSession, wires: readonly HookupWire[]): HookupSession => ({
  ...session,
  wires,
  past: [...session.past, session.wires],
  future: [],
});

/** Puts a wire in. Refused (the same session) where it would join a terminal to itself or double a wire. */
export function putWire(session: HookupSession, wire: Omit<HookupWire, 'id'>): HookupSession {
  const {from, to} = wire;
  const isThere = session.wires.some(
    (each) => (each.from === from && each.to === to) || (each.from === to && each.to === from),
  );
  if (from === to || isThere) return session;
  return {
    ...changed(session, [...session.wires, {...wire, id: `H${session.next}`}]),
    next: session.next + 1,
  };
}

export const takeWire = (session: HookupSession, id: string): HookupSession =>
  changed(
    session,
    session.wires.filter((wire) => wire.id !== id),
  );

/** Moves an end, or changes colour or gauge. */
export const alterWire = (
  session: HookupSession,
  id: string,
  change: Partial<Omit<HookupWire, 'id'>>,
): HookupSession =>
  changed(
    session,
    session.wires.map((wire) => (wire.id === id ? {...wire, ...change} : wire)),
  );

export function undo(session: HookupSession): HookupSession {
  const before = session.past.at(-1);
  if (!before) return session;
  return {
    ...session,
    wires: before,
    past: session.past.slice(0, -1),
    future: [session.wires, ...session.future],
  };
}

export function redo(session: HookupSession): HookupSession {
  const [after, ...rest] = session.future;
  if (!after) return session;
  return {...session, wires: after, past: [...session.past, session.wires], future: rest};
}

/** Counts a check and its verdict. */
export const checked = (session: HookupSession, {verdict}: HookupReport): HookupSession => ({
  ...session,
  checks: session.checks + 1,
  corrections: session.corrections + (verdict === 'wrong' && !session.solved ? 1 : 0),
  solved: session.solved || verdict === 'right',
});

/** Whether power on these wires is a danger: a short, a path that no fuse guards, metal that is not bonded. */
export const isUnsafe = ({findings}: HookupReport): boolean =>
  findings.some(
    ({kind}) => kind === 'dead-short' || kind === 'unfused-path' || kind === 'not-bonded',
  );

export const energised = (session: HookupSession, report: HookupReport): HookupSession => ({
  ...session,
  energisings: session.energisings + 1,
  unsafeEnergisings: session.unsafeEnergisings + (isUnsafe(report) ? 1 : 0),
});

export const readDead = (session: HookupSession): HookupSession => ({
  ...session,
  deadReadings: session.deadReadings + 1,
});
