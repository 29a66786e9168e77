import {createReadStream, createWriteStream, existsSync, renameSync, rmSync} from 'node:fs';
import {createInterface} from 'node:readline';
import {once} from 'node:events';
import {finished} from 'node:stream/promises';
import type {Kysely} from 'kysely';
import {tablesVersion} from './migrations.ts';
import {DataError, type SchoolDatabase} from './school-database.ts';
import type {SchoolTables} from './tables.ts';

/** Tables in an order in which each refers only to those before it. Sign-ins are not kept: people sign in again. */
const tables = [
  'school',
  'instructors',
  'classes',
  'students',
  'work_sets',
  'assignments',
  'actions',
  'coach_hints',
  'notes',
  'polls',
  'votes',
  'hookup_checks',
] as const satisfies readonly (keyof SchoolTables)[];

const format = 'rungbench-backup';
const rowsAtOnce = 200;

/**
 * Writes everything into one file, a JSON line a row, as it stands at one moment, while the server goes on. The same file
 * fits both databases. It appears under its name only when it is whole.
 */
export async function backUp({db, kind}: SchoolDatabase, file: string): Promise<{rows: number}> {
  const part = `${file}.part`;
  const out = createWriteStream(part, {mode: 0o600, flush: true});
  const write = async (value: unknown): Promise<void> => {
    if (!out.write(`${JSON.stringify(value)}\n`)) await once(out, 'drain');
  };
  let rows = 0;
  try {
    const all = async (trx: Kysely<SchoolTables>): Promise<void> => {
      await write({format, version: 1, tables: tablesVersion});
      for (const table of tables) {
        for await (const row of trx.selectFrom(table).selectAll().stream(rowsAtOnce)) {
          await write({table, row});
          rows += 1;
        }
      }
      await write({end: true, rows});
    };
    // one moment for all tables, whatever is written meanwhile
    if (kind === 'postgres') {
      await db.transaction().setIsolationLevel('repeatable read').execute(all);
    } else {
      // only reading: whoever writes is not held up, and the database file grows beside it
      await db.transaction().setAccessMode('read only').execute(all);
    }
    out.end();
    await finished(out);
    renameSync(part, file);
  } catch (error) {
    out.destroy();
    rmSync(part, {force: true});
    throw error;
  }
  return {rows};
}

/**
 * Puts a backup in the place of everything that is there, in one transaction: afterwards either all of it is restored, or
 * nothing has changed. Works while the server runs; students' devices find their calls as the backup knows them.
 *
 * @throws DataError where the file is no whole backup of this or an earlier release
 */
export async function restore({db}: SchoolDatabase, file: string): Promise<{rows: number}> {
  if (!existsSync(file)) throw new DataError(`There is no file ${file}.`);
  return db.transaction().execute(async (trx) => {
    const lines = createInterface({input: createReadStream(file), crlfDelay: Infinity});
    let rows = 0;
    let isWhole = false;
    let begun = false;
    let batch: {table: (typeof tables)[number]; rows: Record<string, unknown>[]} | undefined;
    const insert = async (): Promise<void> => {
      if (batch?.rows.length)
        await trx
          .insertInto(batch.table)
          .values(batch.rows as never)
          .execute();
      batch = undefined;
    };
    for await (const line of lines) {
      const value = readLine(line, file);
      if (!begun) {
        if (value.format !== format || value.version !== 1) {
          throw new DataError(`${file} is no backup of Rungbench.`);
        }
        if (Number(value.tables) > tablesVersion) {
          throw new DataError(`${file} is of a newer Rungbench. Restore it with that release.`);
        }
        begun = true;
        await trx.deleteFrom('sessions').execute();
        for (const table of [...tables].reverse()) await trx.deleteFrom(table).execute();
      } else if (value.end) {
        isWhole = value.rows === rows;
      } else {
        const table = tables.find((each) => each === value.table);
        if (!table || !value.row) throw new DataError(`${file} is damaged at row ${rows + 1}.`);
        if (batch && (batch.table !== table || batch.rows.length >= rowsAtOnce)) await insert();
        batch ??= {table, rows: []};
        batch.rows.push(asOfNow(table, value.row));
        rows += 1;
      }
    }
    if (!isWhole)
      throw new DataError(`${file} is cut short, so nothing was restored. Take another backup.`);
    await insert();
    return {rows};
  });
}

/** The tables are those of this release, whichever release the backup is of. */
const asOfNow = (table: string, row: Record<string, unknown>): Record<string, unknown> =>
  table === 'school' && row['key'] === 'tables' ? {...row, value: String(tablesVersion)} : row;

interface Line {
  readonly format?: string;
  readonly version?: number;
  readonly tables?: number;
  readonly table?: string;
  readonly row?: Record<string, unknown>;
  readonly end?: boolean;
  readonly rows?: number;
}

function readLine(line: string, file: string): Line {
  try {
    return JSON.parse(line) as Line;
  } catch {
    throw new DataError(`${file} is damaged or cut short, so nothing was restored.`);
  }
}
