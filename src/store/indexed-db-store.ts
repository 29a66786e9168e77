import {openDB} from 'idb';
import type {DBSchema, IDBPDatabase} from 'idb';
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
import {alreadyHere, movedOn, notFound, outOfStep} from './memory-store.ts';
import {TabSignal} from './tab-signal.ts';

interface Schema extends DBSchema {
  /** One row per attempt. `tab` is the tab that works on it. */
  heads: {key: string; value: AttemptHead & {readonly tab?: string}};
  /** One row per action, under [attempt id, index]: an append writes two small rows whatever the attempt's length. */
  actions: {key: [string, number]; value: Action};
  units: {key: string; value: KeptUnit};
  settings: {key: string; value: string};
  hookups: {key: string; value: KeptHookup};
  tasks: {key: string; value: KeptTask};
}

/** What is written in transactions of several steps. */
type Written = 'heads' | 'actions' | 'hookups';

/** The store in IndexedDB. Opened by {@link openIndexedDbStore}. */
export class IndexedDbStore implements AttemptStore {
  readonly kept = true;
  private readonly db: IDBPDatabase<Schema>;
  private readonly signal: TabSignal;

  constructor(db: IDBPDatabase<Schema>, signal: TabSignal) {
    this.db = db;
    this.signal = signal;
  }

  async begin(start: NewAttempt): Promise<AttemptHead> {
    const head = headOfNew(start);
    await refusing(this.db.add('heads', {...head, tab: this.signal.tab}));
    this.signal.changed({what: 'attempt', id: head.id});
    return head;
  }

  async add(
    record: AttemptRecord,
    more: {unitTitle: string; purpose: AttemptPurpose; progress: AttemptProgress},
  ): Promise<AttemptHead> {
    const head = headOfRecord(record, more);
    await refusing(
      this.write(['heads', 'actions'], async (tx) => {
        if (await tx.objectStore('heads').get(record.id)) throw alreadyHere(record.id);
        await tx.objectStore('heads').put(head);
        const actions = tx.objectStore('actions');
        await Promise.all(
          record.actions.map((action, index) => actions.put(action, [record.id, index])),
        );
      }),
    );
    this.signal.changed({what: 'attempt', id: record.id});
    return head;
  }

  async list(): Promise<AttemptHead[]> {
    return (await refusing(this.db.getAll('heads'))).sort(byTouched);
  }

  async head(id: string): Promise<AttemptHead | undefined> {
    return refusing(this.db.get('heads', id));
  }

  async get(id: string): Promise<AttemptRecord | undefined> {
    return refusing(
      (async () => {
        // one transaction, so that head and actions are of the same moment
        const tx = this.db.transaction(['heads', 'actions']);
        const head = await tx.objectStore('heads').get(id);
        const actions = await tx.objectStore('actions').getAll(allOf(id));
        await tx.done;
        return head && recordOf(head, actions);
      })(),
    );
  }

  async claim(id: string): Promise<void> {
    await refusing(
      this.write(['heads'], async (tx) => {
        const head = await tx.objectStore('heads').get(id);
        if (!head) throw notFound(id);
        await tx.objectStore('heads').put({...head, tab: this.signal.tab});
      }),
    );
    this.signal.claimed(id);
  }

  async append(
    id: string,
    index: number,
    action: Action,
    progress?: AttemptProgress,
  ): Promise<void> {
    await refusing(
      this.write(['heads', 'actions'], async (tx) => {
        const head = await tx.objectStore('heads').get(id);
        if (!head) throw notFound(id);
        if (head.tab !== undefined && head.tab !== this.signal.tab) throw takenOver();
        if (index !== head.actionCount) throw outOfStep(index, head.actionCount);
        const touchedAt = new Date().toISOString();
        await tx.objectStore('actions').add(action, [id, index]);
        await tx
          .objectStore('heads')
          .put({...head, ...progress, tab: this.signal.tab, actionCount: index + 1, touchedAt});
      }),
    );
    this.signal.changed({what: 'attempt', id, action});
  }

  async mark(id: string, progress: AttemptProgress): Promise<void> {
    await refusing(
      this.write(['heads'], async (tx) => {
        const head = await tx.objectStore('heads').get(id);
        if (!head) throw notFound(id);
        await tx.objectStore('heads').put({...head, ...progress});
      }),
    );
    this.signal.changed({what: 'attempt', id});
  }

  async remove(id: string): Promise<void> {
    await refusing(
      this.write(['heads', 'actions'], async (tx) => {
        await tx.objectStore('heads').delete(id);
        await tx.objectStore('actions').delete(allOf(id));
      }),
    );
    this.signal.changed({what: 'attempt', id});
  }

  onTakenOver(id: string, tell: () => void): () => void {
    return this.signal.onTakenOver(id, tell);
  }

  onChange(tell: (change: StoreChange) => void): () => void {
    return this.signal.onChange(tell);
  }

  async putUnit(unit: KeptUnit): Promise<void> {
    await refusing(this.db.put('units', unit, unit.id));
    this.signal.changed({what: 'unit', id: unit.id});
  }

  async units(): Promise<KeptUnit[]> {
    return refusing(this.db.getAll('units'));
  }

  async removeUnit(id: string): Promise<void> {
    await refusing(this.db.delete('units', id));
    this.signal.changed({what: 'unit', id});
  }

  async putHookup(work: KeptHookup, before: number): Promise<void> {
    await refusing(
      this.write(['hookups'], async (tx) => {
        const rows = tx.objectStore('hookups');
        const count = (await rows.get(work.id))?.deedCount ?? 0;
        if (count !== before) throw movedOn();
        await rows.put(work);
      }),
    );
    this.signal.changed({what: 'hookup', id: work.id});
  }

  async hookups(): Promise<KeptHookup[]> {
    return (await refusing(this.db.getAll('hookups'))).sort(byTouched);
  }

  async hookup(id: string): Promise<KeptHookup | undefined> {
    return refusing(this.db.get('hookups', id));
  }

  async removeHookup(id: string): Promise<void> {
    await refusing(this.db.delete('hookups', id));
    this.signal.changed({what: 'hookup', id});
  }

  async putTask(task: KeptTask): Promise<void> {
    await refusing(this.db.put('tasks', task, task.id));
    this.signal.changed({what: 'task', id: task.id});
  }

  async tasks(): Promise<KeptTask[]> {
    return refusing(this.db.getAll('tasks'));
  }

  async removeTask(id: string): Promise<void> {
    await refusing(this.db.delete('tasks', id));
    this.signal.changed({what: 'task', id});
  }

  async setting(name: string): Promise<string | undefined> {
    return refusing(this.db.get('settings', name));
  }

  async putSetting(name: string, value: string): Promise<void> {
    await refusing(this.db.put('settings', value, name));
    this.signal.changed({what: 'setting', id: name});
  }

  /** Closes the database and stops hearing other tabs. */
  close(): void {
    this.signal.close();
    this.db.close();
  }

  /** Runs `work` in one read-write transaction; whatever it throws undoes all of it. */
  private async write<Name extends Written>(
    names: Name[],
    work: (tx: ReturnType<typeof this.transact<Name>>) => Promise<void>,
  ): Promise<void> {
    const tx = this.transact(names);
    // the abort below also rejects `done`; its cause is the error that is already on its way
    tx.done.catch(() => undefined);
    try {
      await work(tx);
    } catch (error) {
      try {
        tx.abort();
      } catch {
        // a failed request has aborted it already
      }
      throw error;
    }
    await tx.done;
  }

  private transact<Name extends Written>(names: Name[]) {
    return this.db.transaction(names, 'readwrite', {durability: 'strict'});
  }
}

/**
 * Opens (or makes) the database. Rejects when the browser does not allow it. `onLost` is called when the browser or a
 * newer version of the tutor in another tab takes the database away.
 */
export async function openIndexedDbStore(
  onLost: (reason: string) => void,
  name = 'rungbench',
): Promise<IndexedDbStore> {
  const db = await openDB<Schema>(name, 2, {
    upgrade(database, from) {
      if (from < 1) {
        database.createObjectStore('heads', {keyPath: 'id'});
        database.createObjectStore('actions');
        database.createObjectStore('units');
        database.createObjectStore('settings');
      }
      database.createObjectStore('hookups', {keyPath: 'id'});
      database.createObjectStore('tasks');
    },
    blocking(_current, _wanted, event) {
      // let the newer version through at once: this tab must reload to go on
      (event.target as IDBDatabase).close();
      onLost(
        'A newer version of Rungbench is open in another tab. Reload this page to go on; nothing is lost.',
      );
    },
    terminated() {
      onLost(
        'The browser closed the storage. Reload this page; everything up to your last action is kept.',
      );
    },
  });
  return new IndexedDbStore(db, new TabSignal(name));
}

function takenOver(): StoreError {
  return new StoreError(
    'taken-over',
    'This call is open in a newer tab, which goes on with it. Use that tab, or reload here to take it back.',
  );
}

function allOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER]);
}

/** Passes a StoreError through and gives every other failure of the browser's storage one sentence. */
async function refusing<T>(work: Promise<T>): Promise<T> {
  try {
    return await work;
  } catch (error) {
    if (error instanceof StoreError) throw error;
    const name = error instanceof DOMException ? error.name : '';
    if (name === 'QuotaExceededError') {
      throw new StoreError(
        'full',
        'The storage of this browser is full. Export or delete old calls in the history, then try again.',
      );
    }
    throw new StoreError(
      'failed',
      `The browser could not write to its storage (${name || String(error)}). Reload the page and try again.`,
    );
  }
}
