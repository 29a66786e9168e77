import {mkdirSync, accessSync, constants} from 'node:fs';
import {join} from 'node:path';
import {
  CompiledQuery,
  Kysely,
  PostgresDialect,
  SqliteDialect,
  SqliteDriver,
  sql,
  type DatabaseConnection,
  type Driver,
  type SqliteDialectConfig,
  type TransactionSettings,
} from 'kysely';
import LibsqlDatabase from 'libsql';
import pg from 'pg';
import {migrate} from './migrations.ts';
import type {SchoolTables} from './tables.ts';

/** The records of a school, whichever database holds them. */
export interface SchoolDatabase {
  readonly db: Kysely<SchoolTables>;
  readonly kind: 'file' | 'postgres';
  /** The file, or the server without user and password: for messages. */
  readonly where: string;
  close(): Promise<void>;
}

/** The data cannot be used as it is; the message says why and what to do. */
export class DataError extends Error {}

const fileName = 'school.db';

/** Where the embedded database file lies in a data folder. */
export const databaseFile = (folder: string): string => join(folder, fileName);

/**
 * Opens the embedded database of a data folder, making both where there are none. An acknowledged write is on disk:
 * write-ahead log, flushed at every commit.
 *
 * @throws DataError where the folder cannot be written, or the file is damaged or of a newer release.
 */
export async function openFileDatabase(folder: string): Promise<SchoolDatabase> {
  const file = databaseFile(folder);
  try {
    mkdirSync(folder, {recursive: true, mode: 0o700});
    accessSync(folder, constants.W_OK);
  } catch (error) {
    throw new DataError(
      `The data folder ${folder} cannot be written (${codeOf(error)}). Give this user the right to write there, or choose another with --data or RUNGBENCH_DATA.`,
    );
  }
  const database = openFile(file);
  const db = new Kysely<SchoolTables>({dialect: new FileDialect({database})});
  await ready(db, file, async () => undefined);
  return {
    db,
    kind: 'file',
    where: file,
    close: async () => {
      // everything into the one file, so that a copy of it is whole; where that fails the log beside it still holds it
      await sql`pragma wal_checkpoint(truncate)`.execute(db).catch(() => undefined);
      await db.destroy();
    },
  };
}

/**
 * Takes the right to write when a transaction begins, not at its first write: the thread that keeps actions writes too, and
 * SQLite refuses at once to let a transaction write that has read what is not the latest any more.
 */
class FileDriver extends SqliteDriver {
  override async beginTransaction(
    connection: DatabaseConnection,
    settings?: TransactionSettings,
  ): Promise<void> {
    const begin = settings?.accessMode === 'read only' ? 'begin' : 'begin immediate';
    await connection.executeQuery(CompiledQuery.raw(begin));
  }
}

class FileDialect extends SqliteDialect {
  private readonly config: SqliteDialectConfig;

  constructor(config: SqliteDialectConfig) {
    super(config);
    this.config = config;
  }

  override createDriver(): Driver {
    return new FileDriver(this.config);
  }
}

function openFile(file: string): LibsqlDatabase.Database {
  let opened: LibsqlDatabase.Database | undefined;
  try {
    const database = (opened = new LibsqlDatabase(file));
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    database.pragma('foreign_keys = ON');
    database.pragma('busy_timeout = 5000');
    // one page of cache more or less is nothing beside the benches
    database.pragma('cache_size = -8000');
    const [check] = database.pragma('quick_check(1)') as {quick_check: string}[];
    if (check?.quick_check !== 'ok') throw new Error(check?.quick_check ?? 'no answer');
    return database;
  } catch (error) {
    opened?.close();
    throw damaged(file, error);
  }
}

/**
 * Opens a school's Postgres, so that several processes serve one school.
 *
 * @throws DataError where it cannot be reached or its tables are of a newer release.
 */
export async function openPostgres(url: string): Promise<SchoolDatabase> {
  // times are bigint there; all of ours are exact as numbers
  pg.types.setTypeParser(pg.types.builtins.INT8, Number);
  const pool = new pg.Pool({connectionString: url, max: 10, connectionTimeoutMillis: 10_000});
  // a connection that breaks while idle is made anew at the next query
  pool.on('error', () => undefined);
  const db = new Kysely<SchoolTables>({dialect: new PostgresDialect({pool})});
  const where = placeOf(url);
  await ready(db, where, async (trx) => {
    // one number of our own for all who migrate
    await sql`select pg_advisory_xact_lock(720463)`.execute(trx);
  });
  return {db, kind: 'postgres', where, close: () => db.destroy()};
}

async function ready(
  db: Kysely<SchoolTables>,
  where: string,
  lock: (db: Kysely<SchoolTables>) => Promise<void>,
): Promise<void> {
  try {
    await migrate(db, lock);
  } catch (error) {
    await db.destroy().catch(() => undefined);
    if (error instanceof Error && error.message.includes('newer Rungbench')) {
      throw new DataError(error.message);
    }
    throw damaged(where, error);
  }
}

/** The same words for every way in which a file or a server fails at the start. */
function damaged(where: string, error: unknown): DataError {
  const said = error instanceof Error ? error.message : String(error);
  if (/disk is full|no space|SQLITE_FULL/i.test(said)) {
    return new DataError(
      `The disk that holds ${where} is full. Make room and start again; nothing is lost.`,
    );
  }
  if (/readonly|read-only|EROFS|EACCES|unable to open/i.test(said)) {
    return new DataError(
      `${where} cannot be written (${said}). Give this user the right to write there, or choose another folder with --data or RUNGBENCH_DATA.`,
    );
  }
  if (/malformed|not a database|corrupt|quick_check|row .* missing|Tree|Page/i.test(said)) {
    return new DataError(
      `${where} is damaged (${said}). It has been left as it is. Restore the last backup (npm run restore -- FILE), or start with another folder.`,
    );
  }
  return new DataError(`${where} cannot be opened: ${said}.`);
}

const codeOf = (error: unknown): string =>
  (error as NodeJS.ErrnoException).code ?? (error instanceof Error ? error.message : String(error));

/** A Postgres address without user and password. */
function placeOf(url: string): string {
  try {
    const {host, pathname} = new URL(url);
    return `Postgres at ${host}${pathname}`;
  } catch {
    return 'Postgres';
  }
}
