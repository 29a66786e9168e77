import type {Kysely} from 'kysely';
import {NumberTakenError, type JournalEntry, type JournalStore} from './action-journal.ts';
import type {SchoolTables} from './tables.ts';

/** Rows of one INSERT; four values each, well below what Postgres takes (65,535). */
const rowsAtOnce = 500;

/** Keeps a journal's actions in a school's Postgres, where the flush to the disk does not hold this process up. */
export class JournalInPostgres implements JournalStore {
  private readonly db: Kysely<SchoolTables>;

  constructor(db: Kysely<SchoolTables>) {
    this.db = db;
  }

  async commit(entries: readonly JournalEntry[]): Promise<void> {
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
  }

  // the connections are the database's
  async close(): Promise<void> {}
}
