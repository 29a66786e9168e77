import type {Action} from '../bench/actions.ts';
import type {AttemptRecord} from '../bench/attempt.ts';
import {StoreError} from './attempt-store.ts';
import type {
  AttemptHead,
  AttemptProgress,
  AttemptPurpose,
  AttemptStore,
  KeptHookup,
  KeptTask,
  KeptUnit,
  NewAttempt,
  StoreChange,
} from './attempt-store.ts';
import {byTouched, headOfNew, headOfRecord, recordOf} from './attempt-rows.ts';
import {TabSignal} from './tab-signal.ts';

/** Stands in where the browser keeps nothing for us (private mode, blocked storage). Lives as long as the tab. */
export class MemoryStore implements AttemptStore {
  readonly kept = false;
  private readonly heads = new Map<string, AttemptHead>();
  private readonly actions = new Map<string, Action[]>();
  private readonly keptUnits = new Map<string, KeptUnit>();
  private readonly works = new Map<string, KeptHookup>();
  private readonly keptTasks = new Map<string, KeptTask>();
  private readonly settings = new Map<string, string>();
  private readonly signal = new TabSignal('rungbench-memory');

  async begin(start: NewAttempt): Promise<AttemptHead> {
    return this.place(headOfNew(start), []);
  }

  async add(
    record: AttemptRecord,
    more: {unitTitle: string; purpose: AttemptPurpose; progress: AttemptProgress},
  ): Promise<AttemptHead> {
    if (this.heads.has(record.id)) throw alreadyHere(record.id);
    return this.place(headOfRecord(record, more), record.actions);
  }

  async list(): Promise<AttemptHead[]> {
    return [...this.heads.values()].sort(byTouched);
  }

  async head(id: string): Promise<AttemptHead | undefined> {
    return this.heads.get(id);
  }

  async get(id: string): Promise<AttemptRecord | undefined> {
    const head = this.heads.get(id);
    return head && recordOf(head, this.actions.get(id) ?? []);
  }

  async claim(id: string): Promise<void> {
    if (!this.heads.has(id)) throw notFound(id);
  }

  async append(
    id: string,
    index: number,
    action: Action,
    progress?: AttemptProgress,
  ): Promise<void> {
    const head = this.heads.get(id);
    if (!head) throw notFound(id);
    if (index !== head.actionCount) throw outOfStep(index, head.actionCount);
    this.actions.get(id)?.push(action);
    this.heads.set(id, {
      ...head,
      ...progress,
      actionCount: index + 1,
      touchedAt: new Date().toISOString(),
    });
    this.signal.changed({what: 'attempt', id, action});
  }

  async mark(id: string, progress: AttemptProgress): Promise<void> {
    const head = this.heads.get(id);
    if (!head) throw notFound(id);
    this.heads.set(id, {...head, ...progress});
    this.signal.changed({what: 'attempt', id});
  }

  async remove(id: string): Promise<void> {
    this.heads.delete(id);
    this.actions.delete(id);
    this.signal.changed({what: 'attempt', id});
  }

  onTakenOver(): () => void {
    // each tab has its own memory: no other tab can reach this attempt
    return () => undefined;
  }

  onChange(tell: (change: StoreChange) => void): () => void {
    return this.signal.onChange(tell);
  }

  async putUnit(unit: KeptUnit): Promise<void> {
    this.keptUnits.set(unit.id, unit);
    this.signal.changed({what: 'unit', id: unit.id});
  }

  async units(): Promise<KeptUnit[]> {
    return [...this.keptUnits.values()];
  }

  async removeUnit(id: string): Promise<void> {
    this.keptUnits.delete(id);
    this.signal.changed({what: 'unit', id});
  }

  async putHookup(work: KeptHookup, before: number): Promise<void> {
    const count = this.works.get(work.id)?.deedCount ?? 0;
    if (count !== before) throw movedOn();
    this.works.set(work.id, work);
    this.signal.changed({what: 'hookup', id: work.id});
  }

  async hookups(): Promise<KeptHookup[]> {
    return [...this.works.values()].sort(byTouched);
  }

  async hookup(id: string): Promise<KeptHookup | undefined> {
    return this.works.get(id);
  }

  async removeHookup(id: string): Promise<void> {
    this.works.delete(id);
    this.signal.changed({what: 'hookup', id});
  }

  async putTask(task: KeptTask): Promise<void> {
    this.keptTasks.set(task.id, task);
    this.signal.changed({what: 'task', id: task.id});
  }

  async tasks(): Promise<KeptTask[]> {
    return [...this.keptTasks.values()];
  }

  async removeTask(id: string): Promise<void> {
    this.keptTasks.delete(id);
    this.signal.changed({what: 'task', id});
  }

  async setting(name: string): Promise<string | undefined> {
    return this.settings.get(name);
  }

  async putSetting(name: string, value: string): Promise<void> {
    this.settings.set(name, value);
    this.signal.changed({what: 'setting', id: name});
  }

  private place(head: AttemptHead, actions: readonly Action[]): AttemptHead {
    this.heads.set(head.id, head);
    this.actions.set(head.id, [...actions]);
    this.signal.changed({what: 'attempt', id: head.id});
    return head;
  }
}

export function notFound(id: string): StoreError {
  return new StoreError(
    'not-found',
    `No attempt "${id}" is kept on this device. It may have been deleted; see the history for those that are.`,
  );
}

export function alreadyHere(id: string): StoreError {
  return new StoreError(
    'already-here',
    `Attempt "${id}" is already kept on this device. Delete it in the history first to replace it.`,
  );
}

export function outOfStep(index: number, count: number): StoreError {
  return new StoreError(
    'out-of-step',
    `Action ${index + 1} came where action ${count + 1} was due: another tab went on with this attempt. Reload to see its work.`,
  );
}

/** Another tab has written deeds that this one does not know of. */
export function movedOn(): StoreError {
  return new StoreError(
    'out-of-step',
    'Another tab went on with this task. Reload to see its work; the last thing that you did here is not kept.',
  );
}
