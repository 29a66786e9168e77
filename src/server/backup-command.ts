import {resolve} from 'node:path';
import {backUp, restore} from './data/backup.ts';
import {openFileDatabase, openPostgres} from './data/school-database.ts';
import {readSettings} from './settings.ts';

/** `npm run backup -- FILE` and `npm run restore -- FILE`: while the server runs or not. */
async function run(): Promise<void> {
  const [what, file, ...rest] = process.argv.slice(2);
  if ((what !== 'backup' && what !== 'restore') || file === undefined) {
    throw new Error('Give a file: npm run backup -- FILE, or npm run restore -- FILE.');
  }
  const settings = readSettings(rest, process.env, resolve(import.meta.dirname, '../..'));
  const database = settings.postgres
    ? await openPostgres(settings.postgres)
    : await openFileDatabase(settings.dataFolder);
  try {
    const path = resolve(file);
    const {rows} = await (what === 'backup' ? backUp(database, path) : restore(database, path));
    console.log(
      what === 'backup'
        ? `${rows} rows of ${database.where} are in ${path}. It holds what is hidden and the names of students: keep it safe.`
        : `${rows} rows of ${path} are in ${database.where} now. Everybody signs in again; students reload their page.`,
    );
  } finally {
    await database.close();
  }
}

run().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
