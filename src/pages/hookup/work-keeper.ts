import type {Deed} from '../../hookup/hookup-deed.ts';
import type {HookupAttempt} from '../../hookup/hookup-attempt.ts';
import {resultOf} from '../../hookup/hookup-result.ts';
import {HookupWork, type Outcome} from '../../hookup/hookup-work.ts';
import type {AttemptStore, KeptHookup} from '../../store/attempts.ts';
import {randomName} from '../../store/tab-signal.ts';
import type {KnownTask} from './known-tasks.ts';

/** Longer pauses between two deeds are not work. */
const longestPauseMinutes = 5;

/** One person's work at a task, kept on this device at every deed, and the minutes that it took. */
export class WorkKeeper {
  readonly attempt: Omit<HookupAttempt, 'deeds'>;
  readonly work: HookupWork;
  private readonly store: AttemptStore;
  private keptDeeds: number;
  private lastDeedAt = Date.now();
  private writing: Promise<void> = Promise.resolve();

  private constructor(
    store: AttemptStore,
    attempt: Omit<HookupAttempt, 'deeds'>,
    work: HookupWork,
    keptDeeds: number,
  ) {
    this.store = store;
    this.attempt = attempt;
    this.work = work;
    this.keptDeeds = keptDeeds;
  }

  /** Goes on with the work that was begun on this device and not put away, or begins. */
  static async resume(store: AttemptStore, known: KnownTask): Promise<WorkKeeper> {
    const kept = (await store.hookups()).find(
      ({task, closed}) => task === known.task.id && !closed,
    );
    if (!kept) return WorkKeeper.begin(store, known);
    try {
      const {deeds, ...attempt} = attemptOf(kept);
      return new WorkKeeper(store, attempt, HookupWork.replay(known.task, deeds), deeds.length);
    } catch {
      // the task's file has changed since, and its old deeds no longer fit: put away, and begun anew
      await store.putHookup({...kept, closed: true}, kept.deedCount);
      return WorkKeeper.begin(store, known);
    }
  }

  static begin(store: AttemptStore, {task, text}: KnownTask): WorkKeeper {
    const attempt = {
      format: 'rungbench-hookup' as const,
      version: 1 as const,
      id: randomName(16),
      task: task.id,
      ...(text === undefined ? {} : {taskText: text}),
      begunAt: new Date().toISOString(),
    };
    return new WorkKeeper(store, attempt, new HookupWork(task), 0);
  }

  /** Does a deed and keeps it. `kept` rejects where the browser could not write it down. */
  do(deed: Deed): Outcome & {readonly kept: Promise<void>} {
    const now = Date.now();
    const before = this.work.counts.minutes;
    const pause = Math.min(longestPauseMinutes, (now - this.lastDeedAt) / 60_000);
    const outcome = this.work.do({...deed, atMinutes: before + pause});
    if (outcome.refused !== undefined) return {...outcome, kept: Promise.resolve()};
    this.lastDeedAt = now;
    return {...outcome, kept: this.write(false)};
  }

  /** Puts the work away: the history keeps it, and the task's page begins anew. */
  async close(): Promise<void> {
    if (this.work.deeds.length > 0) await this.write(true);
  }

  /** Writes the work as it stands when its turn comes: deeds done while another write is under way share the next one. */
  private write(closed: boolean): Promise<void> {
    const next = this.writing
      .catch(() => undefined)
      .then(async () => {
        const {deeds} = this.work;
        if (deeds.length === this.keptDeeds && !closed) return;
        const row = rowOf({...this.attempt, deeds}, this.work, closed);
        await this.store.putHookup(row, this.keptDeeds);
        this.keptDeeds = row.deedCount;
      });
    this.writing = next;
    return next;
  }

  /** Whether everything that was done is written down. */
  get isKept(): boolean {
    return this.work.deeds.length === this.keptDeeds;
  }
}

/** The row of a work as the store keeps it. */
export function rowOf(attempt: HookupAttempt, work: HookupWork, closed: boolean): KeptHookup {
  return {
    id: attempt.id,
    task: attempt.task,
    taskTitle: work.task.title,
    begunAt: attempt.begunAt,
    touchedAt: new Date().toISOString(),
    deedCount: attempt.deeds.length,
    ...(closed ? {closed} : {}),
    attempt: JSON.stringify(attempt),
    result: JSON.stringify(resultOf(work)),
  };
}

/** The work of a row. Written by this tutor, so its shape is not asked for again. */
export const attemptOf = (row: KeptHookup): HookupAttempt =>
  JSON.parse(row.attempt) as HookupAttempt;
