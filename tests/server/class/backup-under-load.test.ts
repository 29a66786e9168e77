import {spawn} from 'node:child_process';
import {join, resolve} from 'node:path';
import {afterAll, beforeAll, expect, test} from 'vitest';
import type {ClassDetail} from '../../../src/classroom/protocol/rest.ts';
import type {WorkSet} from '../../../src/classroom/protocol/work-set.ts';
import {openFileDatabase} from '../../../src/server/data/school-database.ts';
import {ClassAtWork} from './class-at-work.ts';

let at: ClassAtWork;
let period: ClassDetail;
const names = ['Ana', 'Ben', 'Cem', 'Dot'];
beforeAll(async () => {
  at = await ClassAtWork.open();
  await at.firstStart();
  period = await at.classOf(...names);
  await at.get<WorkSet>('POST', `/classes/${period.id}/sets`, {
    kind: 'same',
    unit: 'practice-panel',
    faults: ['W8:open'],
    complaint: 'Dark.',
    open: true,
  });
}, 60_000);
afterAll(() => at.close(), 60_000);

/** The one command, in a process of its own as a person would start it. */
const command = (what: 'backup' | 'restore', file: string, data: string): Promise<number | null> =>
  new Promise((end) => {
    const root = resolve(import.meta.dirname, '../../..');
    const script = join(root, 'src/server/backup-command.ts');
    const args = ['--import', 'tsx', script, what, file, '--data', data];
    spawn(process.execPath, args, {cwd: root, stdio: 'inherit'}).on('exit', end);
  });

test('a backup by one command while the class works holds one moment, and nobody is held up', async () => {
  const file = join(at.folder, 'school.backup');
  const confirmed = new Map<string, number>();
  let over = false;
  const students = names.map(async (name) => {
    const device = await at.join(period, name);
    const {assignment} = (await device.desk()).items[0];
    await device.open(assignment);
    for (let number = 1; !over || number < 4; number++) {
      const text = `${name}, note ${number}`;
      expect((await device.act(assignment, number, {do: 'note', text})).is).toBe('done');
      confirmed.set(assignment, number);
      // a socket takes twenty a second for long
      await new Promise((resolve) => setTimeout(resolve, 60));
    }
  });
  await expect.poll(() => confirmed.size, {timeout: 30_000}).toBe(names.length);
  const before = new Map(confirmed);
  expect(await command('backup', file, join(at.folder, 'data'))).toBe(0);
  const after = new Map(confirmed);
  over = true;
  await Promise.all(students);

  const elsewhere = join(at.folder, 'elsewhere');
  expect(await command('restore', file, elsewhere)).toBe(0);
  const {db, close} = await openFileDatabase(elsewhere);
  let held = 0;
  for (const [assignment, least] of before) {
    const rows = await db
      .selectFrom('actions')
      .select(['number', 'action'])
      .where('assignment', '=', assignment)
      .orderBy('number')
      .execute();
    const row = await db
      .selectFrom('assignments')
      .select('last')
      .where('id', '=', assignment)
      .executeTakeFirstOrThrow();
    // everything confirmed before it began, no gap, and row and actions of one moment
    expect(rows.map(({number}) => number)).toEqual(rows.map((_, i) => i + 1));
    expect(rows.length).toBeGreaterThanOrEqual(least);
    expect(rows.length).toBeLessThanOrEqual(after.get(assignment)! + 1);
    expect(row.last).toBe(rows.length);
    held += rows.length;
  }
  await close();
  expect(held).toBeGreaterThan(names.length);
}, 120_000);
