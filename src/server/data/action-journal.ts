import type {Kysely} from 'kysely';
import type {CallSummary} from '../../classroom/call-summary.ts';
import type {SchoolTables} from './tables.ts';

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

/** Rows of one INSERT; four values each, well below what SQLite takes (32,766). */
const rowsAtOnce = 500;

/**
 * Keeps actions before they are acknowledged. What comes in while one commit is on its way to the disk goes into the
 * next one together (group commit), so that a flush serves everybody who waits for it.
 */
export class ActionJournal {
  private readonly db: Kysely<SchoolTables>;
  private waiting: Waiting[] = [];
  private running: Promise<void> | undefined;
  /** For the benchmark: commits made, and actions in them. */
  readonly counts = {commits: 0, actions: 0};

  constructor(db: Kysely<SchoolTables>) {
    this.db = db;
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

  private async run(): Promise<void> {
    // let everything that has already arrived at the sockets come in first
    await new Promise((resolve) => setImmediate(resolve));
    while (this.waiting.length > 0) {
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
    await this.db.transaction().execute(async (trx) => {
      for (let i = 0; i < entries.length; i += rowsAtOnce) {
        const rows = entries.slice(i, i + rowsAtOnce);
        await trx
          .insertInto('actions')
          .values(
            rows.map(({assignment, number, action, at}) => ({assignment, number, action, at})),
          )
          .execute();
      }
      const latest = new Map(entries.map((entry) => [entry.assignment, entry]));
      const first = new Map(
        [...entries].reverse().map((entry) => [entry.assignment, entry.number]),
      );
      // always in one order: two processes must not wait for each other
      for (const id of [...latest.keys()].sort()) {
        const {number, summary, at} = latest.get(id)!;
        const finished = summary.stage === 'named' || summary.stage === 'given-up';
        const updated = await trx
          .updateTable('assignments')
          .set({
            last: number,
            ...summary,
            ...(finished ? {finished_at: at} : {}),
          })
          .where('id', '=', id)
          .where('last', '=', first.get(id)! - 1)
          .executeTakeFirst();
        // a backup was restored meanwhile, or the student erased: the bench in memory is not this one's any more
        if (updated.numUpdatedRows === 0n) {
          throw new NumberTakenError('The records stand at another number.');
        }
      }
    });
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
