import type {Kysely} from 'kysely';
import {randomId, randomToken, tokenHash} from '../class/secrets.ts';
import type {SchoolTables} from './tables.ts';

/** A lesson's day: after that the instructor signs in again. */
const sessionMs = 12 * 60 * 60_000;

export interface Session {
  readonly instructor: string;
  readonly name: string;
  readonly csrf: string;
}

/** Instructors and their sign-ins. */
export class Accounts {
  private readonly db: Kysely<SchoolTables>;
  private readonly now: () => number;

  constructor(db: Kysely<SchoolTables>, now: () => number) {
    this.db = db;
    this.now = now;
  }

  async isEmpty(): Promise<boolean> {
    const row = await this.db.selectFrom('instructors').select('id').limit(1).executeTakeFirst();
    return row === undefined;
  }

  /** False where the name is taken. */
  async add(name: string, passphrase: string): Promise<boolean> {
    const result = await this.db
      .insertInto('instructors')
      .values({id: randomId(), name, passphrase, created_at: this.now()})
      .onConflict((on) => on.column('name').doNothing())
      .executeTakeFirst();
    return (result.numInsertedOrUpdatedRows ?? 0n) > 0n;
  }

  /** The very first instructor; false where there is one already, also when two try at once. */
  addFirst(name: string, passphrase: string): Promise<boolean> {
    return this.db.transaction().execute(async (trx) => {
      // the key of this row can be taken once only
      const claimed = await trx
        .insertInto('school')
        .values({key: 'first-start', value: String(this.now())})
        .onConflict((on) => on.column('key').doNothing())
        .executeTakeFirst();
      if ((claimed.numInsertedOrUpdatedRows ?? 0n) === 0n) return false;
      await trx
        .insertInto('instructors')
        .values({id: randomId(), name, passphrase, created_at: this.now()})
        .execute();
      return true;
    });
  }

  async byName(name: string): Promise<{id: string; name: string; passphrase: string} | undefined> {
    return this.db
      .selectFrom('instructors')
      .select(['id', 'name', 'passphrase'])
      .where('name', '=', name)
      .executeTakeFirst();
  }

  /** Signs in: gives the cookie's value and the session. */
  async begin(instructor: {id: string; name: string}): Promise<{cookie: string; session: Session}> {
    const cookie = randomToken();
    const csrf = randomToken();
    const at = this.now();
    await this.db.deleteFrom('sessions').where('expires_at', '<', at).execute();
    await this.db
      .insertInto('sessions')
      .values({
        hash: tokenHash(cookie),
        instructor: instructor.id,
        csrf,
        created_at: at,
        expires_at: at + sessionMs,
      })
      .execute();
    return {cookie, session: {instructor: instructor.id, name: instructor.name, csrf}};
  }

  async session(cookie: string | undefined): Promise<Session | undefined> {
    if (!cookie) return undefined;
    return this.db
      .selectFrom('sessions')
      .innerJoin('instructors', 'instructors.id', 'sessions.instructor')
      .select(['instructors.id as instructor', 'instructors.name as name', 'sessions.csrf as csrf'])
      .where('sessions.hash', '=', tokenHash(cookie))
      .where('sessions.expires_at', '>', this.now())
      .executeTakeFirst();
  }

  /** A new passphrase; every other sign-in of this instructor ends. */
  async changePassphrase(instructor: string, passphrase: string, cookie: string): Promise<void> {
    await this.db.transaction().execute(async (trx) => {
      await trx.updateTable('instructors').set({passphrase}).where('id', '=', instructor).execute();
      await trx
        .deleteFrom('sessions')
        .where('instructor', '=', instructor)
        .where('hash', '<>', tokenHash(cookie))
        .execute();
    });
  }

  async end(cookie: string): Promise<void> {
    await this.db.deleteFrom('sessions').where('hash', '=', tokenHash(cookie)).execute();
  }
}
