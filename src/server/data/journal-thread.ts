import {Worker} from 'node:worker_threads';
import {NumberTakenError, type JournalEntry, type JournalStore} from './action-journal.ts';

/** An entry as the thread takes it. */
export interface JournalTask {
  readonly number: number;
  readonly entries: readonly (Omit<JournalEntry, 'summary'> & {
    /** Columns of the assignment after the action. */
    readonly columns: Readonly<Record<string, string | number>>;
  })[];
}

/** What the thread answers: kept, or why nothing of it was. */
export interface JournalResult {
  readonly number: number;
  readonly failed?: string;
  /** The records stand at another number than the entry follows on. */
  readonly taken?: boolean;
}

interface Waiting {
  resolve(): void;
  reject(error: Error): void;
}

/**
 * Keeps a journal's actions in the database file, in a thread of its own: a flush takes milliseconds in which a thread can
 * do nothing else, and the main one has the next readings to work out.
 */
export class JournalThread implements JournalStore {
  private readonly file: string;
  private readonly waiting = new Map<number, Waiting>();
  private worker: Worker | undefined;
  private asked = 0;
  private closed = false;

  /** @param file the database file, which has its tables already */
  constructor(file: string) {
    this.file = file;
    this.worker = this.start();
  }

  commit(entries: readonly JournalEntry[]): Promise<void> {
    if (this.closed) return Promise.reject(new Error('The server is stopping.'));
    const number = this.asked++;
    const task: JournalTask = {
      number,
      entries: entries.map(({summary, ...entry}) => {
        const finished = summary.stage === 'named' || summary.stage === 'given-up';
        return {...entry, columns: {...summary, ...(finished ? {finished_at: entry.at} : {})}};
      }),
    };
    return new Promise((resolve, reject) => {
      this.waiting.set(number, {resolve, reject});
      this.worker ??= this.start();
      this.worker.ref();
      this.worker.postMessage(task);
    });
  }

  async close(): Promise<void> {
    this.closed = true;
    const {worker} = this;
    if (!worker) return;
    const ended = new Promise((resolve) => worker.once('exit', resolve));
    worker.postMessage('close');
    await ended;
  }

  private start(): Worker {
    // plain JavaScript, so that it starts at once: nothing to be translated first
    const worker = new Worker(new URL('./journal.thread.mjs', import.meta.url), {
      workerData: this.file,
      execArgv: [],
    });
    worker.unref();
    worker.on('message', ({number, failed, taken}: JournalResult) => {
      const waiting = this.waiting.get(number);
      this.waiting.delete(number);
      // it keeps the process alive only while something is under way
      if (this.waiting.size === 0) worker.unref();
      if (failed === undefined) waiting?.resolve();
      else waiting?.reject(taken ? new NumberTakenError(failed) : new Error(failed));
    });
    const lost = (error: Error): void => {
      if (this.worker !== worker) return;
      // whether what was under way is kept nobody knows here: the bench is made again from the records
      this.worker = undefined;
      for (const {reject} of this.waiting.values()) reject(error);
      this.waiting.clear();
    };
    worker.on('error', (error) => lost(error as Error));
    worker.on('exit', () => lost(new Error('The thread that keeps actions ended.')));
    return worker;
  }
}
