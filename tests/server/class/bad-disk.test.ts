import {execFileSync} from 'node:child_process';
import {copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir, userInfo} from 'node:os';
import {join} from 'node:path';
import {afterAll, beforeAll, expect, test} from 'vitest';
import type {ClassDetail} from '../../../src/classroom/protocol/rest.ts';
import type {WorkSet} from '../../../src/classroom/protocol/work-set.ts';
import {databaseFile, openFileDatabase} from '../../../src/server/data/school-database.ts';
import {ClassAtWork} from './class-at-work.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'disk-'));
});
afterAll(() => rmSync(folder, {recursive: true, force: true}));

/** A small file system of its own; undefined where this user may not mount one. */
function tinyDisk(size: string): {path: string; release: () => void} | undefined {
  const path = join(folder, 'tiny');
  mkdirSync(path, {recursive: true});
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${size}`, 'tmpfs', path], {stdio: 'ignore'});
  } catch {
    return undefined;
  }
  return {path, release: () => execFileSync('umount', ['-l', path])};
}

/** Lets the database grow no further, as a full disk would: SQLite then gives the same error (SQLITE_FULL). */
async function fillUp(at: ClassAtWork): Promise<() => Promise<void>> {
  const {sql} = await import('kysely');
  const {db} = at.school.database;
  await sql`pragma wal_checkpoint(truncate)`.execute(db);
  const pages = await sql<{page_count: number}>`pragma page_count`.execute(db);
  await sql.raw(`pragma max_page_count = ${pages.rows[0].page_count}`).execute(db);
  return async () => {
    await sql.raw('pragma max_page_count = 1073741823').execute(db);
  };
}

test('a full disk: the action is not confirmed, a sentence says why, and nothing confirmed is lost', async () => {
  const at = await ClassAtWork.open();
  await at.firstStart();
  const period: ClassDetail = await at.classOf('Ana');
  await at.get<WorkSet>('POST', `/classes/${period.id}/sets`, {
    kind: 'same',
    unit: 'practice-panel',
    faults: [],
    complaint: 'Routine.',
    open: true,
  });
  const ana = await at.join(period, 'Ana');
  const call = (await ana.desk()).items[0].assignment;
  await ana.open(call);
  const note = (text: string) => ({do: 'note' as const, text: text.padEnd(1500, '.')});
  await ana.act(call, 1, note('before'));
  const free = await fillUp(at);
  let confirmed = 1;
  try {
    // what is left in the last pages still takes a few
    for (let number = 2; number < 60; number++) {
      const answer = await ana.act(call, number, note('while full'));
      if (answer.is === 'done') confirmed = number;
    }
  } catch {
    // the server has closed the socket
  }
  expect(confirmed).toBeLessThan(59);
  expect(ana.heard.at(-1)).toMatchObject({is: 'closing'});
  expect(ana.texts.at(-1)).toMatch(/could not be kept, so it was not done/);
  const refused = await at.ask('POST', '/classes', {name: 'x'.repeat(70)});
  expect([200, 503]).toContain(refused.status);
  await free();
  const again = await at.connect(ana.token);
  const opened = await again.open(call);
  expect(opened.last).toBe(confirmed);
  expect(await again.act(call, confirmed + 1, note('after'))).toMatchObject({is: 'done'});
  await at.close();
}, 120_000);

test('a disk that is too small from the start is told in a sentence', async (context) => {
  const disk = tinyDisk('64k');
  if (!disk) {
    console.log('The test on a tiny disk DID NOT RUN: this user may not mount one.');
    return context.skip();
  }
  try {
    await expect(openFileDatabase(join(disk.path, 'data'))).rejects.toThrow(/is full|cannot be/);
  } finally {
    disk.release();
  }
});

test('a data folder that cannot be made or written is told before anything else', async () => {
  const file = join(folder, 'a-file');
  writeFileSync(file, '');
  await expect(openFileDatabase(join(file, 'data'))).rejects.toThrow(/cannot be written.*--data/);
  if (userInfo().uid === 0) return; // root may write anywhere
  await expect(openFileDatabase('/proc/rungbench')).rejects.toThrow(/cannot be written/);
});

test.each([
  [
    'another kind of file',
    (file: string) => writeFileSync(file, 'this is no database'.repeat(400)),
  ],
  [
    'a file with its middle overwritten',
    (file: string) => {
      const bytes = readFileSync(file);
      bytes.fill(0xa5, 4096, bytes.length - 100);
      writeFileSync(file, bytes);
    },
  ],
])(
  'a damaged database (%s) is left as it is, and the message says what to do',
  async (_what, damage) => {
    const data = mkdtempSync(join(folder, 'damaged-'));
    const database = await openFileDatabase(data);
    await database.close();
    const file = databaseFile(data);
    damage(file);
    copyFileSync(file, `${file}.copy`);
    await expect(openFileDatabase(data)).rejects.toThrow(/is damaged.*npm run restore/);
    expect(readFileSync(file)).toEqual(readFileSync(`${file}.copy`));
  },
);

test('data of a newer release is not touched', async () => {
  const data = mkdtempSync(join(folder, 'newer-'));
  const database = await openFileDatabase(data);
  await database.db.updateTable('school').set({value: '999'}).where('key', '=', 'tables').execute();
  await database.close();
  await expect(openFileDatabase(data)).rejects.toThrow(/newer Rungbench/);
});
