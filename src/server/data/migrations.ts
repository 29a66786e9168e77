import {sql, type Kysely} from 'kysely';
import type {SchoolTables} from './tables.ts';

type Database = Kysely<SchoolTables>;

/** One step of the tables' history. A step that has been released is never changed; the next one mends it. */
interface Step {
  readonly name: string;
  run(db: Database): Promise<void>;
}

/** Milliseconds since 1970 do not fit into 32 bits; SQLite takes any integer. */
const time = 'bigint';

const steps: readonly Step[] = [
  {
    name: '1 classes, assignments, actions',
    async run(db) {
      const create = (table: keyof SchoolTables) => db.schema.createTable(table);
      await create('instructors')
        .addColumn('id', 'text', (c) => c.primaryKey())
        .addColumn('name', 'text', (c) => c.notNull().unique())
        .addColumn('passphrase', 'text', (c) => c.notNull())
        .addColumn('created_at', time, (c) => c.notNull())
        .execute();
      await create('sessions')
        .addColumn('hash', 'text', (c) => c.primaryKey())
        .addColumn('instructor', 'text', (c) =>
          c.notNull().references('instructors.id').onDelete('cascade'),
        )
        .addColumn('csrf', 'text', (c) => c.notNull())
        .addColumn('created_at', time, (c) => c.notNull())
        .addColumn('expires_at', time, (c) => c.notNull())
        .execute();
      await create('classes')
        .addColumn('id', 'text', (c) => c.primaryKey())
        .addColumn('instructor', 'text', (c) => c.notNull().references('instructors.id'))
        .addColumn('name', 'text', (c) => c.notNull())
        .addColumn('code', 'text', (c) => c.notNull().unique())
        .addColumn('open', 'integer', (c) => c.notNull())
        .addColumn('names_on_wall', 'integer', (c) => c.notNull())
        .addColumn('wall', 'text')
        .addColumn('created_at', time, (c) => c.notNull())
        .execute();
      const ofClass = (table: keyof SchoolTables) =>
        create(table)
          .addColumn('id', 'text', (c) => c.primaryKey())
          .addColumn('class', 'text', (c) =>
            c.notNull().references('classes.id').onDelete('cascade'),
          );
      await ofClass('students')
        .addColumn('name', 'text', (c) => c.notNull())
        .addColumn('device', 'text')
        .addColumn('created_at', time, (c) => c.notNull())
        .execute();
      await db.schema
        .createIndex('students_by_device')
        .on('students')
        .column('device')
        .unique()
        .execute();
      await ofClass('work_sets')
        .addColumn('kind', 'text', (c) => c.notNull())
        .addColumn('title', 'text', (c) => c.notNull())
        .addColumn('unit', 'text', (c) => c.notNull())
        .addColumn('rules', 'text', (c) => c.notNull())
        .addColumn('state', 'text', (c) => c.notNull())
        .addColumn('created_at', time, (c) => c.notNull())
        .execute();
      const count = 'integer';
      await ofClass('assignments')
        .addColumn('set', 'text', (c) => c.notNull().references('work_sets.id').onDelete('cascade'))
        .addColumn('student', 'text', (c) =>
          c.notNull().references('students.id').onDelete('cascade'),
        )
        .addColumn('kind', 'text', (c) => c.notNull())
        .addColumn('unit', 'text', (c) => c.notNull())
        .addColumn('faults', 'text')
        .addColumn('complaint', 'text')
        .addColumn('seed', 'integer', (c) => c.notNull())
        .addColumn('hides_for', 'text')
        .addColumn('stage', 'text', (c) => c.notNull())
        .addColumn('last', count, (c) => c.notNull().defaultTo(0))
        .addColumn('doing', 'text', (c) => c.notNull().defaultTo(''))
        .addColumn('readings', count, (c) => c.notNull().defaultTo(0))
        .addColumn('minutes', 'double precision', (c) => c.notNull().defaultTo(0))
        .addColumn('danger', count, (c) => c.notNull().defaultTo(0))
        .addColumn('caution', count, (c) => c.notNull().defaultTo(0))
        .addColumn('hints', count, (c) => c.notNull().defaultTo(0))
        .addColumn('suspects', count)
        .addColumn('suspects_at_start', count)
        .addColumn('created_at', time, (c) => c.notNull())
        .addColumn('opened_at', time)
        .addColumn('progressed_at', time)
        .addColumn('finished_at', time)
        .addColumn('verdict', 'text')
        .addColumn('points', 'double precision')
        .addColumn('judged', 'text')
        .execute();
      const ofAssignment = (table: keyof SchoolTables) =>
        create(table).addColumn('assignment', 'text', (c) =>
          c.notNull().references('assignments.id').onDelete('cascade'),
        );
      await ofAssignment('actions')
        .addColumn('number', count, (c) => c.notNull())
        .addColumn('action', 'text', (c) => c.notNull())
        .addColumn('at', time, (c) => c.notNull())
        .addPrimaryKeyConstraint('actions_key', ['assignment', 'number'])
        .execute();
      await ofAssignment('coach_hints')
        .addColumn('id', 'text', (c) => c.primaryKey())
        .addColumn('after_number', count, (c) => c.notNull())
        .addColumn('level', count, (c) => c.notNull())
        .addColumn('minutes', 'double precision', (c) => c.notNull())
        .addColumn('text', 'text', (c) => c.notNull())
        .addColumn('at', time, (c) => c.notNull())
        .execute();
      await ofAssignment('hookup_checks')
        .addColumn('id', 'text', (c) => c.primaryKey())
        .addColumn('wires', 'text', (c) => c.notNull())
        .addColumn('verdict', 'text', (c) => c.notNull())
        .addColumn('findings', count, (c) => c.notNull())
        .addColumn('at', time, (c) => c.notNull())
        .execute();
      await ofClass('notes')
        .addColumn('student', 'text', (c) => c.references('students.id').onDelete('cascade'))
        .addColumn('set', 'text', (c) => c.references('work_sets.id').onDelete('cascade'))
        .addColumn('kind', 'text', (c) => c.notNull())
        .addColumn('text', 'text', (c) => c.notNull())
        .addColumn('at', time, (c) => c.notNull())
        .execute();
      await ofClass('polls')
        .addColumn('body', 'text', (c) => c.notNull())
        .addColumn('shown', 'text', (c) => c.notNull())
        .addColumn('state', 'text', (c) => c.notNull())
        .addColumn('at', time, (c) => c.notNull())
        .execute();
      await create('votes')
        .addColumn('poll', 'text', (c) => c.notNull().references('polls.id').onDelete('cascade'))
        .addColumn('student', 'text', (c) =>
          c.notNull().references('students.id').onDelete('cascade'),
        )
        .addColumn('answer', count, (c) => c.notNull())
        .addColumn('at', time, (c) => c.notNull())
        .addPrimaryKeyConstraint('votes_key', ['poll', 'student'])
        .execute();
      for (const [table, column] of [
        ['students', 'class'],
        ['work_sets', 'class'],
        ['assignments', 'class'],
        ['assignments', 'student'],
        ['assignments', 'set'],
        ['assignments', 'hides_for'],
        ['coach_hints', 'assignment'],
        ['hookup_checks', 'assignment'],
        ['notes', 'class'],
        ['polls', 'class'],
      ] as const) {
        await db.schema.createIndex(`${table}_by_${column}`).on(table).column(column).execute();
      }
    },
  },
  {
    name: '2 the student’s own meter',
    async run(db) {
      await db.schema.alterTable('assignments').addColumn('meter', 'text').execute();
    },
  },
  {
    name: '3 a device takes its work back',
    async run(db) {
      await db.schema.alterTable('students').addColumn('device_before', 'text').execute();
      await db.schema
        .createIndex('students_by_device_before')
        .on('students')
        .column('device_before')
        .execute();
    },
  },
];

/** Version of the tables that this release works with. */
export const tablesVersion = steps.length;

/**
 * Brings the tables up to this release, each step whole or not at all. Several processes may start at once: one does it,
 * the others wait for the lock.
 *
 * @throws Error where the data comes from a newer release.
 */
export async function migrate(db: Database, lock: (db: Database) => Promise<void>): Promise<void> {
  await db.transaction().execute(async (trx) => {
    await lock(trx);
    await trx.schema
      .createTable('school')
      .ifNotExists()
      .addColumn('key', 'text', (c) => c.primaryKey())
      .addColumn('value', 'text', (c) => c.notNull())
      .execute();
    const row = await trx
      .selectFrom('school')
      .select('value')
      .where('key', '=', 'tables')
      .executeTakeFirst();
    const version = Number(row?.value ?? 0);
    if (version > steps.length) {
      throw new Error(
        `The data is of a newer Rungbench (tables ${version}, this one knows ${steps.length}). Start the newer release, or restore an older backup.`,
      );
    }
    for (const step of steps.slice(version)) await step.run(trx);
    await trx
      .insertInto('school')
      .values({key: 'tables', value: String(steps.length)})
      .onConflict((on) => on.column('key').doUpdateSet({value: sql`excluded.value`}))
      .execute();
  });
}
