import type {CallSummary} from '../../classroom/call-summary.ts';

/** An action to be kept, with how the call stands after it. */
export interface JournalEntry {
  readonly assignment: string;
  readonly number: number;
  /** JSON of the action. */
  readonly action: string;
  readonly at: number;
  readonly summary: CallSummary;
}

interface Waiting {
  readonly entry: JournalEntry;
  resolve(): void;
  reject(error: unknown): void;
}

/** The records stand elsewhere than the bench: another process has kept an action under this number, say. */
export class NumberTakenError extends Error {}

/** An action waits so long for others to be kept with it; nobody at a meter notices. Milliseconds. */
const gatherMs = 4;

/** Where a journal keeps its actions. */
export interface JournalStore {
  /** All of them in one transaction, on disk when it resolves; or none of them. */
  commit(entries: readonly JournalEntry[]): Promise<void>;
  close(): Promise<void>;
}

/**
 * Keeps actions before they are acknowledged. What comes in while one commit is on its way to the disk goes into the
 * next one together (group commit), so that a flush serves everybody who waits for it.
 */
export class ActionJournal {
  private readonly store: JournalStore;
  private waiting: Waiting[] = [];
  private running: Promise<void> | undefined;
  /** For the benchmark: commits made, and actions in them. */
  readonly counts = {commits: 0, actions: 0};

  constructor(store: JournalStore) {
    this.store = store;
  }

  /** Resolves once the action is on disk. Rejects where it could not be kept; then nothing of it is. */
  append(entry: JournalEntry): Promise<void> {
    return new Promise((resolve, reject) => {
      this.waiting.push({entry, resolve, reject});
      this.running ??= this.run();
    });
  }

  /** Resolves when nothing waits any more. */
  async idle(): Promise<void> {
    while (this.running) await this.running;
  }

  /** Waits for what is under way, then lets the store go. */
  async close(): Promise<void> {
    await this.idle();
    await this.store.close();
  }

  private async run(): Promise<void> {
    while (this.waiting.length > 0) {
      // a commit costs the processor more than many readings do, so what comes in within a moment goes with it
      await new Promise((resolve) => setTimeout(resolve, gatherMs));
      const batch = this.waiting;
      this.waiting = [];
      try {
        await this.commit(batch.map(({entry}) => entry));
        for (const each of batch) each.resolve();
      } catch (error) {
        if (batch.length === 1) batch[0].reject(told(error));
        // one that clashes must not take the others down with it
        else await this.oneByOne(batch);
      }
    }
    this.running = undefined;
  }

  private async oneByOne(batch: readonly Waiting[]): Promise<void> {
    for (const each of batch) {
      try {
        await this.commit([each.entry]);
        each.resolve();
      } catch (error) {
        each.reject(told(error));
      }
    }
  }

  private async commit(entries: readonly JournalEntry[]): Promise<void> {
    await this.store.commit(entries);
    this.counts.commits += 1;
    this.counts.actions += entries.length;
  }
}

function told(error: unknown): unknown {
  const said = error instanceof Error ? error.message : String(error);
  return /UNIQUE constraint|duplicate key|FOREIGN KEY|foreign key/i.test(said)
    ? new NumberTakenError(said)
    : error;
}
