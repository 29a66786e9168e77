// Keeps actions in the database file: see journal-thread.ts, which starts this and whose types it speaks.
import {parentPort, workerData} from 'node:worker_threads';
import LibsqlDatabase from 'libsql';

/** @typedef {import('./journal-thread.ts').JournalTask} JournalTask */

const database = new LibsqlDatabase(/** @type {string} */ (workerData));
// flushed at every commit: what is answered is on the disk
database.pragma('synchronous = FULL');
database.pragma('foreign_keys = ON');
database.pragma('busy_timeout = 5000');

class NumberTaken extends Error {}

const insert = database.prepare(
  'insert into actions (assignment, number, action, at) values (?, ?, ?, ?)',
);
/** @type {Map<string, ReturnType<typeof database.prepare>>} */
const updates = new Map();

/** @param {readonly string[]} columns names that the server itself chose */
function updateOf(columns) {
  const key = columns.join();
  let found = updates.get(key);
  if (!found) {
    const set = ['last', ...columns].map((name) => `"${name}" = ?`).join(', ');
    found = database.prepare(`update assignments set ${set} where id = ? and last = ?`);
    updates.set(key, found);
  }
  return found;
}

/** @param {JournalTask['entries']} entries */
function keep(entries) {
  /** @type {Map<string, {first: number, latest: JournalTask['entries'][number]}>} */
  const calls = new Map();
  for (const entry of entries) {
    const {assignment, number, action, at} = entry;
    insert.run([assignment, number, action, at]);
    calls.set(assignment, {first: calls.get(assignment)?.first ?? number, latest: entry});
  }
  for (const [id, {first, latest}] of calls) {
    const names = Object.keys(latest.columns);
    const values = Object.values(latest.columns);
    const {changes} = updateOf(names).run([latest.number, ...values, id, first - 1]);
    // a backup was restored meanwhile, or the student erased: the bench in memory is not this one's any more
    if (changes === 0) throw new NumberTaken('The records stand at another number.');
  }
}

parentPort?.on('message', (/** @type {JournalTask | 'close'} */ task) => {
  if (task === 'close') {
    database.close();
    parentPort?.close();
    return;
  }
  const {number, entries} = task;
  try {
    database.exec('begin immediate');
    keep(entries);
    database.exec('commit');
    parentPort?.postMessage({number});
  } catch (error) {
    try {
      database.exec('rollback');
    } catch {
      // SQLite has taken it back by itself, as it does where the disk is full
    }
    const failed = error instanceof Error ? error.message : String(error);
    parentPort?.postMessage({number, failed, taken: error instanceof NumberTaken});
  }
});
