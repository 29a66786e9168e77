import {Worker} from 'node:worker_threads';
import type {LongJob, LongJobs} from '../../classroom/long-jobs.ts';

interface Waiting {
  readonly number: number;
  readonly job: LongJob;
  readonly ask: LongJobs[LongJob]['ask'];
  resolve(answer: unknown): void;
  reject(reason: Error): void;
}

/** What people wait for goes before what only an instructor's list waits for. */
type Urgency = 'waited-for' | 'idle';

/** More than this in the queue, and whoever asks is told to ask later. */
const longestQueue = 2000;

/** The long jobs in a thread of their own, one at a time, so that readings are answered meanwhile. */
export class LongWorkThread {
  private worker: Worker | undefined;
  private current: Waiting | undefined;
  private readonly queues: Readonly<Record<Urgency, Waiting[]>> = {'waited-for': [], idle: []};
  private asked = 0;
  private closed = false;

  ask<J extends LongJob>(
    job: J,
    ask: LongJobs[J]['ask'],
    urgency: Urgency = 'waited-for',
  ): Promise<LongJobs[J]['answer']> {
    const queue = this.queues[urgency];
    if (this.closed || queue.length >= longestQueue) {
      return Promise.reject(new Error('The server has too much to do. Try again in a minute.'));
    }
    return new Promise((resolve, reject) => {
      queue.push({
        number: this.asked++,
        job,
        ask,
        resolve: resolve as (answer: unknown) => void,
        reject,
      });
      this.next();
    });
  }

  async close(): Promise<void> {
    this.closed = true;
    const gone = new Error('The server is stopping.');
    for (const queue of Object.values(this.queues)) {
      for (const {reject} of queue.splice(0)) reject(gone);
    }
    this.current?.reject(gone);
    this.current = undefined;
    await this.worker?.terminate();
  }

  private next(): void {
    if (this.current || this.closed) return;
    const next = this.queues['waited-for'].shift() ?? this.queues.idle.shift();
    if (!next) return;
    this.current = next;
    const {number, job, ask} = next;
    this.thread().postMessage({number, job, ask});
  }

  private thread(): Worker {
    if (this.worker) return this.worker;
    const worker = new Worker(new URL('./long-work.thread.mjs', import.meta.url));
    // the server ends when it is told to, whatever the thread is at
    worker.unref();
    worker.on(
      'message',
      ({number, answer, failed}: {number: number; answer?: unknown; failed?: string}) => {
        const {current} = this;
        if (current?.number !== number) return;
        this.current = undefined;
        if (failed === undefined) current.resolve(answer);
        else current.reject(new Error(failed));
        this.next();
      },
    );
    worker.on('error', (error) => this.lost(worker, error));
    worker.on('exit', () => this.lost(worker, new Error('The thread ended.')));
    this.worker = worker;
    return worker;
  }

  /** The thread broke down (out of memory, say): the job is given up and the next one starts a new thread. */
  private lost(worker: Worker, error: unknown): void {
    if (this.worker !== worker) return;
    this.worker = undefined;
    const {current} = this;
    this.current = undefined;
    current?.reject(error instanceof Error ? error : new Error(String(error)));
    this.next();
  }
}
