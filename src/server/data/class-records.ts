import type {Kysely, Selectable} from 'kysely';
import {classCode, codeRandoms} from '../../classroom/class-code.ts';
import {nameKey} from '../../classroom/roster.ts';
import {randomId, randomNumbers, randomToken, tokenHash} from '../class/secrets.ts';
import type {SchoolTables} from './tables.ts';

export type ClassRow = Selectable<SchoolTables['classes']>;
export type StudentRow = Selectable<SchoolTables['students']>;

/** Classes, their codes and rosters, and the devices that have joined. */
export class ClassRecords {
  private readonly db: Kysely<SchoolTables>;
  private readonly now: () => number;

  constructor(db: Kysely<SchoolTables>, now: () => number) {
    this.db = db;
    this.now = now;
  }

  async all(instructor: string): Promise<(ClassRow & {students: number})[]> {
    const rows = await this.db
      .selectFrom('classes')
      .leftJoin('students', 'students.class', 'classes.id')
      .selectAll('classes')
      .select((e) => e.fn.count<number>('students.id').as('students'))
      .where('instructor', '=', instructor)
      .groupBy('classes.id')
      .orderBy('classes.created_at', 'desc')
      .execute();
    return rows.map((row) => ({...row, students: Number(row.students)}));
  }

  /** A class of this instructor; what belongs to another is as if it were not there. */
  async find(id: string, instructor: string): Promise<ClassRow | undefined> {
    return this.db
      .selectFrom('classes')
      .selectAll()
      .where('id', '=', id)
      .where('instructor', '=', instructor)
      .executeTakeFirst();
  }

  byId(id: string): Promise<ClassRow | undefined> {
    return this.db.selectFrom('classes').selectAll().where('id', '=', id).executeTakeFirst();
  }

  byCode(code: string): Promise<ClassRow | undefined> {
    return this.db
      .selectFrom('classes')
      .selectAll()
      .where('code', '=', code)
      .where('open', '=', 1)
      .executeTakeFirst();
  }

  async add(instructor: string, name: string): Promise<ClassRow> {
    const row = {
      id: randomId(),
      instructor,
      name,
      code: await this.freeCode(),
      open: 1,
      names_on_wall: 0,
      wall: null,
      created_at: this.now(),
    };
    await this.db.insertInto('classes').values(row).execute();
    return row;
  }

  async change(
    id: string,
    {name, open, newCode}: {name?: string; open?: boolean; newCode?: boolean},
  ): Promise<void> {
    const set = {
      ...(name === undefined ? {} : {name}),
      ...(open === undefined ? {} : {open: Number(open)}),
      ...(newCode ? {code: await this.freeCode()} : {}),
    };
    if (Object.keys(set).length === 0) return;
    await this.db.updateTable('classes').set(set).where('id', '=', id).execute();
  }

  async namesOnWall(id: string, names: boolean): Promise<void> {
    await this.db
      .updateTable('classes')
      .set({names_on_wall: Number(names)})
      .where('id', '=', id)
      .execute();
  }

  async remove(id: string): Promise<void> {
    await this.db.deleteFrom('classes').where('id', '=', id).execute();
  }

  /** A new token for the wall; the one before opens nothing any more. */
  async newWall(id: string): Promise<string> {
    const token = randomToken();
    await this.db
      .updateTable('classes')
      .set({wall: tokenHash(token)})
      .where('id', '=', id)
      .execute();
    return token;
  }

  byWall(token: string): Promise<ClassRow | undefined> {
    return this.db
      .selectFrom('classes')
      .selectAll()
      .where('wall', '=', tokenHash(token))
      .executeTakeFirst();
  }

  /** In the order of the roster. */
  roster(id: string): Promise<StudentRow[]> {
    return this.db
      .selectFrom('students')
      .selectAll()
      .where('class', '=', id)
      .orderBy('created_at')
      .orderBy('name')
      .execute();
  }

  /** Adds names that are not there yet; gives the new rows. */
  async addStudents(id: string, names: readonly string[]): Promise<StudentRow[]> {
    const known = new Set((await this.roster(id)).map(({name}) => nameKey(name)));
    const at = this.now();
    const rows = names
      .filter((name) => !known.has(nameKey(name)))
      // a millisecond apart, so that they stay in the order of the list
      .map((name, i) => ({
        id: randomId(),
        class: id,
        name,
        device: null,
        device_before: null,
        created_at: at + i,
      }));
    if (rows.length > 0) await this.db.insertInto('students').values(rows).execute();
    return rows;
  }

  /** A student of one of this instructor's classes. */
  async student(id: string, instructor: string): Promise<StudentRow | undefined> {
    return this.db
      .selectFrom('students')
      .innerJoin('classes', 'classes.id', 'students.class')
      .selectAll('students')
      .where('students.id', '=', id)
      .where('classes.instructor', '=', instructor)
      .executeTakeFirst();
  }

  async rename(student: string, name: string): Promise<void> {
    await this.db.updateTable('students').set({name}).where('id', '=', student).execute();
  }

  /** A device joins as this student. The token of the one before opens nothing any more, except to take the work back. */
  async join(student: string): Promise<string> {
    const token = randomToken();
    await this.db
      .updateTable('students')
      .set((e) => ({device: tokenHash(token), device_before: e.ref('device')}))
      .where('id', '=', student)
      .execute();
    return token;
  }

  async sendAway(student: string): Promise<void> {
    await this.db
      .updateTable('students')
      .set({device: null, device_before: null})
      .where('id', '=', student)
      .execute();
  }

  /** Whether this is the token of a device that another one has taken over from. */
  async isTakenOver(token: string): Promise<boolean> {
    const row = await this.db
      .selectFrom('students')
      .select('id')
      .where('device_before', '=', tokenHash(token))
      .executeTakeFirst();
    return row !== undefined;
  }

  /** The device that was taken over from becomes the one at work; the other may take the work back in turn. */
  async takeBack(token: string): Promise<void> {
    const hash = tokenHash(token);
    await this.db
      .updateTable('students')
      .set((e) => ({device: hash, device_before: e.ref('device')}))
      .where('device_before', '=', hash)
      .execute();
  }

  byToken(token: string): Promise<(StudentRow & {className: string}) | undefined> {
    return this.db
      .selectFrom('students')
      .innerJoin('classes', 'classes.id', 'students.class')
      .selectAll('students')
      .select('classes.name as className')
      .where('students.device', '=', tokenHash(token))
      .executeTakeFirst();
  }

  private async freeCode(): Promise<string> {
    for (;;) {
      const code = classCode(randomNumbers(codeRandoms));
      const taken = await this.db
        .selectFrom('classes')
        .select('id')
        .where('code', '=', code)
        .executeTakeFirst();
      if (!taken) return code;
    }
  }
}
