import type {Insertable, Kysely, Selectable, Updateable} from 'kysely';
import type {Action} from '../../bench/actions.ts';
import type {CallRecord} from '../../classroom/long-jobs.ts';
import type {MeterFlaw} from '../../meter/meter-condition.ts';
import type {SchoolTables} from './tables.ts';

export type SetRow = Selectable<SchoolTables['work_sets']>;
export type AssignmentRow = Selectable<SchoolTables['assignments']>;

/** Rules of a set beside its kind and unit, as they are kept. */
export interface SetRules {
  readonly limitMinutes?: number;
  readonly coach: boolean;
  readonly debriefWhen: 'named' | 'closed';
  readonly difficulty?: 'easy' | 'medium' | 'hard';
  readonly allowed?: readonly ('easy' | 'medium' | 'hard')[];
  readonly faults?: readonly string[];
  readonly complaint?: string;
  readonly meterFlaw?: MeterFlaw;
}

/** Sets of work, what each student has to do of them, and the actions done. */
export class WorkRecords {
  private readonly db: Kysely<SchoolTables>;

  constructor(db: Kysely<SchoolTables>) {
    this.db = db;
  }

  async addSet(row: SetRow): Promise<void> {
    await this.db.insertInto('work_sets').values(row).execute();
  }

  sets(classId: string): Promise<SetRow[]> {
    return this.db
      .selectFrom('work_sets')
      .selectAll()
      .where('class', '=', classId)
      .orderBy('created_at', 'desc')
      .execute();
  }

  set(id: string): Promise<SetRow | undefined> {
    return this.db.selectFrom('work_sets').selectAll().where('id', '=', id).executeTakeFirst();
  }

  async changeSet(id: string, change: Updateable<SchoolTables['work_sets']>): Promise<void> {
    if (Object.keys(change).length === 0) return;
    await this.db.updateTable('work_sets').set(change).where('id', '=', id).execute();
  }

  async removeSet(id: string): Promise<void> {
    await this.db.deleteFrom('work_sets').where('id', '=', id).execute();
  }

  async addAssignments(rows: readonly Insertable<SchoolTables['assignments']>[]): Promise<void> {
    // some 25 values a row, and SQLite takes 32,766 in a statement
    for (let i = 0; i < rows.length; i += 500) {
      await this.db
        .insertInto('assignments')
        .values(rows.slice(i, i + 500))
        .execute();
    }
  }

  assignment(id: string): Promise<AssignmentRow | undefined> {
    return this.db.selectFrom('assignments').selectAll().where('id', '=', id).executeTakeFirst();
  }

  ofSet(set: string): Promise<AssignmentRow[]> {
    return this.db
      .selectFrom('assignments')
      .selectAll()
      .where('set', '=', set)
      .orderBy('created_at')
      .execute();
  }

  ofClass(classId: string): Promise<AssignmentRow[]> {
    return this.db
      .selectFrom('assignments')
      .selectAll()
      .where('class', '=', classId)
      .orderBy('created_at')
      .execute();
  }

  ofStudent(student: string): Promise<AssignmentRow[]> {
    return this.db
      .selectFrom('assignments')
      .selectAll()
      .where('student', '=', student)
      .orderBy('created_at')
      .execute();
  }

  /** Who hides for this call. */
  hiderOf(call: string): Promise<AssignmentRow | undefined> {
    return this.db
      .selectFrom('assignments')
      .selectAll()
      .where('hides_for', '=', call)
      .executeTakeFirst();
  }

  async change(id: string, change: Updateable<SchoolTables['assignments']>): Promise<void> {
    await this.db.updateTable('assignments').set(change).where('id', '=', id).execute();
  }

  /** Marks the first opening; a later one changes nothing. */
  async opened(id: string, at: number): Promise<void> {
    await this.db
      .updateTable('assignments')
      .set({opened_at: at, progressed_at: at, stage: 'working'})
      .where('id', '=', id)
      .where('opened_at', 'is', null)
      .execute();
  }

  /**
   * What a student hides for another: both rows or none. False where the other call has something hidden already, so that
   * two taps hide once.
   */
  hide(
    hideId: string,
    callId: string,
    hidden: {faults: readonly string[]; complaint: string},
    at: number,
  ): Promise<boolean> {
    return this.db.transaction().execute(async (trx) => {
      const done = await trx
        .updateTable('assignments')
        .set({faults: JSON.stringify(hidden.faults), complaint: hidden.complaint, stage: 'new'})
        .where('id', '=', callId)
        .where('stage', '=', 'waiting')
        .executeTakeFirst();
      if (done.numUpdatedRows === 0n) return false;
      await trx
        .updateTable('assignments')
        .set({faults: JSON.stringify(hidden.faults), stage: 'done', finished_at: at})
        .where('id', '=', hideId)
        .execute();
      return true;
    });
  }

  async actions(assignment: string): Promise<Action[]> {
    const rows = await this.db
      .selectFrom('actions')
      .select('action')
      .where('assignment', '=', assignment)
      .orderBy('number')
      .execute();
    return rows.map(({action}) => JSON.parse(action) as Action);
  }

  async timedActions(assignment: string): Promise<{number: number; action: Action; at: number}[]> {
    const rows = await this.db
      .selectFrom('actions')
      .select(['number', 'action', 'at'])
      .where('assignment', '=', assignment)
      .orderBy('number')
      .execute();
    return rows.map((row) => ({...row, action: JSON.parse(row.action) as Action}));
  }

  /** What is kept of a student beside the attempts' actions; of what is hidden, only what the student hid. */
  async allOf(student: string) {
    const own = (await this.ofStudent(student)).map(({id}) => id);
    const [notes, votes, coachHints, hookupChecks] = await Promise.all([
      this.db
        .selectFrom('notes')
        .select(['kind', 'text', 'at'])
        .where('student', '=', student)
        .execute(),
      this.db.selectFrom('votes').selectAll().where('student', '=', student).execute(),
      own.length === 0
        ? []
        : this.db.selectFrom('coach_hints').selectAll().where('assignment', 'in', own).execute(),
      own.length === 0
        ? []
        : this.db.selectFrom('hookup_checks').selectAll().where('assignment', 'in', own).execute(),
    ]);
    return {notes, votes, coachHints, hookupChecks};
  }

  /** Erases a student and every record of theirs, whole. Calls hidden by them stay with whom they were hidden for. */
  async erase(student: string): Promise<void> {
    await this.db.transaction().execute(async (trx) => {
      const own = await trx
        .selectFrom('assignments')
        .select('id')
        .where('student', '=', student)
        .execute();
      // who was to hide for this student has nobody to hide for
      if (own.length > 0) {
        await trx
          .deleteFrom('assignments')
          .where(
            'hides_for',
            'in',
            own.map(({id}) => id),
          )
          .execute();
      }
      // the rest goes with it: every table that names the student or an assignment cascades
      await trx.deleteFrom('students').where('id', '=', student).execute();
    });
  }

  /** Every reading of these sets, for the map of where a class has probed. */
  async readingsOf(sets: readonly string[]): Promise<{unit: string; action: Action}[]> {
    if (sets.length === 0) return [];
    const rows = await this.db
      .selectFrom('actions')
      .innerJoin('assignments', 'assignments.id', 'actions.assignment')
      .select(['assignments.unit', 'actions.action'])
      .where('assignments.set', 'in', sets)
      .where((e) =>
        e.or([
          e('actions.action', 'like', '{"do":"read"%'),
          e('actions.action', 'like', '{"do":"clamp"%'),
        ]),
      )
      .execute();
    return rows.map(({unit, action}) => ({unit, action: JSON.parse(action) as Action}));
  }

  /** A call with its actions, as another thread or a judge takes it. */
  async call(row: AssignmentRow): Promise<CallRecord> {
    return {...hiddenIn(row), actions: await this.actions(row.id)};
  }

  /** Latest time in the records, to see whether the computer's clock runs behind them; 0 where there are none. */
  async latest(): Promise<number> {
    const rows = await Promise.all([
      this.db
        .selectFrom('actions')
        .select((e) => e.fn.max('at').as('at'))
        .executeTakeFirst(),
      this.db
        .selectFrom('assignments')
        .select((e) => e.fn.max('created_at').as('at'))
        .executeTakeFirst(),
      this.db
        .selectFrom('classes')
        .select((e) => e.fn.max('created_at').as('at'))
        .executeTakeFirst(),
    ]);
    return Math.max(0, ...rows.map((row) => Number(row?.at ?? 0)));
  }
}

/** What is hidden in a call, as it can be handed to another thread. */
export const hiddenIn = (row: AssignmentRow): Omit<CallRecord, 'actions'> => ({
  unit: row.unit,
  faults: JSON.parse(row.faults ?? '[]') as string[],
  complaint: row.complaint ?? '',
  seed: row.seed,
  ...(row.meter === null ? {} : {meterFlaw: row.meter as MeterFlaw}),
});

export const rulesOf = (row: SetRow): SetRules => JSON.parse(row.rules) as SetRules;
