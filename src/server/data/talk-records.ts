import type {Kysely, Selectable} from 'kysely';
import {randomId} from '../class/secrets.ts';
import type {SchoolTables} from './tables.ts';

export type NoteRow = Selectable<SchoolTables['notes']>;
export type PollRow = Selectable<SchoolTables['polls']>;

/** Notes, released hints, the coach's hints, polls. */
export class TalkRecords {
  private readonly db: Kysely<SchoolTables>;
  private readonly now: () => number;

  constructor(db: Kysely<SchoolTables>, now: () => number) {
    this.db = db;
    this.now = now;
  }

  async addNote(note: Omit<NoteRow, 'id' | 'at'>): Promise<NoteRow> {
    const row = {...note, id: randomId(), at: this.now()};
    await this.db.insertInto('notes').values(row).execute();
    return row;
  }

  note(id: string): Promise<NoteRow | undefined> {
    return this.db.selectFrom('notes').selectAll().where('id', '=', id).executeTakeFirst();
  }

  /** To this student or to all of the class, the latest fifty, oldest first. */
  async notesFor(classId: string, student: string): Promise<NoteRow[]> {
    const rows = await this.db
      .selectFrom('notes')
      .selectAll()
      .where('class', '=', classId)
      .where((e) => e.or([e('student', '=', student), e('student', 'is', null)]))
      .orderBy('at', 'desc')
      .limit(50)
      .execute();
    return rows.reverse();
  }

  /** The coach has helped: entered, and counted on the assignment. */
  async addCoachHint(
    hint: Omit<Selectable<SchoolTables['coach_hints']>, 'id' | 'at'>,
  ): Promise<void> {
    await this.db.transaction().execute(async (trx) => {
      await trx
        .insertInto('coach_hints')
        .values({...hint, id: randomId(), at: this.now()})
        .execute();
      await trx
        .updateTable('assignments')
        .set((e) => ({hints: e('hints', '+', 1)}))
        .where('id', '=', hint.assignment)
        .execute();
    });
  }

  coachHints(assignment: string): Promise<Selectable<SchoolTables['coach_hints']>[]> {
    return this.db
      .selectFrom('coach_hints')
      .selectAll()
      .where('assignment', '=', assignment)
      .orderBy('at')
      .execute();
  }

  /** The wires as they were handed in, and the verdict; once right, the task is done. */
  async addHookupCheck(
    check: Omit<Selectable<SchoolTables['hookup_checks']>, 'id' | 'at'>,
  ): Promise<void> {
    const at = this.now();
    const right = check.verdict === 'right';
    await this.db.transaction().execute(async (trx) => {
      await trx
        .insertInto('hookup_checks')
        .values({...check, id: randomId(), at})
        .execute();
      await trx
        .updateTable('assignments')
        .set((e) => ({
          last: e('last', '+', 1),
          doing: right ? 'Handed in: right' : `Handed in: ${check.findings} findings`,
        }))
        .where('id', '=', check.assignment)
        .execute();
      if (!right) return;
      const checks = await trx
        .selectFrom('hookup_checks')
        .select((e) => e.fn.countAll<number>().as('count'))
        .where('assignment', '=', check.assignment)
        .executeTakeFirstOrThrow();
      await trx
        .updateTable('assignments')
        .set({
          stage: 'done',
          verdict: 'right',
          finished_at: at,
          // each wrong hand-in before the right one costs ten points: our own choice
          points: Math.max(40, 100 - 10 * (Number(checks.count) - 1)),
        })
        .where('id', '=', check.assignment)
        .where('stage', '<>', 'done')
        .execute();
    });
  }

  /** What was handed in of these assignments, oldest first. */
  async hookupChecks(
    assignments: readonly string[],
  ): Promise<Selectable<SchoolTables['hookup_checks']>[]> {
    if (assignments.length === 0) return [];
    return this.db
      .selectFrom('hookup_checks')
      .selectAll()
      .where('assignment', 'in', assignments)
      .orderBy('at')
      .execute();
  }

  async addPoll(classId: string, body: unknown, shown: unknown): Promise<PollRow> {
    const row = {
      id: randomId(),
      class: classId,
      body: JSON.stringify(body),
      shown: JSON.stringify(shown),
      state: 'open',
      at: this.now(),
    };
    await this.db.transaction().execute(async (trx) => {
      await trx.updateTable('polls').set({state: 'over'}).where('class', '=', classId).execute();
      await trx.insertInto('polls').values(row).execute();
    });
    return row;
  }

  poll(id: string): Promise<PollRow | undefined> {
    return this.db.selectFrom('polls').selectAll().where('id', '=', id).executeTakeFirst();
  }

  /** The poll that is on the wall, if there is one. */
  currentPoll(classId: string): Promise<PollRow | undefined> {
    return this.db
      .selectFrom('polls')
      .selectAll()
      .where('class', '=', classId)
      .where('state', '<>', 'over')
      .orderBy('at', 'desc')
      .executeTakeFirst();
  }

  async pollState(id: string, state: string): Promise<void> {
    await this.db.updateTable('polls').set({state}).where('id', '=', id).execute();
  }

  /** Commits a student to an answer; false where there is one already. */
  async vote(poll: string, student: string, answer: number): Promise<boolean> {
    const result = await this.db
      .insertInto('votes')
      .values({poll, student, answer, at: this.now()})
      .onConflict((on) => on.columns(['poll', 'student']).doNothing())
      .executeTakeFirst();
    return (result.numInsertedOrUpdatedRows ?? 0n) > 0n;
  }

  votes(poll: string): Promise<{student: string; answer: number}[]> {
    return this.db
      .selectFrom('votes')
      .select(['student', 'answer'])
      .where('poll', '=', poll)
      .execute();
  }
}
