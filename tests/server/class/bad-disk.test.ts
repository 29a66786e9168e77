import {execFileSync} from 'node:child_process';
import {
  appendFileSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
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

/** A small file system of its own, which refuses even root; undefined where this user may not mount one. */
function tinyDisk(size: string): TinyDisk | undefined {
  const path = mkdtempSync(join(folder, 'tiny-'));
  const mount = (...args: string[]): void =>
    void execFileSync('mount', [...args, path], {stdio: 'ignore'});
  try {
    mount('-t', 'tmpfs', '-o', `size=${size}`, 'tmpfs');
  } catch {
    return undefined;
  }
  const filler = join(path, 'filler');
  return {
    path,
    fillUp: () => {
      // down to the last block
      for (const bytes of [65_536, 4096, 512]) {
        try {
          for (;;) appendFileSync(filler, Buffer.alloc(bytes));
        } catch {
          // ENOSPC
        }
      }
    },
    makeRoom: () => rmSync(filler),
    readOnly: (on) => mount('-o', `remount,${on ? 'ro' : 'rw'}`),
    release: () => execFileSync('umount', ['-l', path]),
  };
}

interface TinyDisk {
  readonly path: string;
  fillUp(): void;
  makeRoom(): void;
  readOnly(on: boolean): void;
  release(): void;
}

/** Runs on a disk of its own, or says that it did not. */
const onTinyDisk = (title: string, size: string, run: (disk: TinyDisk) => Promise<void>): void =>
  test(
    title,
    async (context) => {
      const disk = tinyDisk(size);
      if (!disk) {
        console.log(`"${title}" DID NOT RUN: this user may not mount a small disk.`);
        return context.skip();
      }
      try {
        await run(disk);
      } finally {
        disk.release();
      }
    },
    120_000,
  );

onTinyDisk(
  'a full disk: the action is not confirmed, a sentence says why, and nothing confirmed is lost',
  '4m',
  async (disk) => {
    const at = await ClassAtWork.open(
      mkdtempSync(join(folder, 'class-')),
      await openFileDatabase(join(disk.path, 'data')),
    );
    await at.firstStart();
    const period: ClassDetail = await at.classOf('Ana', 'Ben');
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
    disk.fillUp();
    let confirmed = 1;
    const most = 2000;
    try {
      // the log beside the database has been written further before, and is written over from its start now and then
      for (let number = 2; number < most; number++) {
        const answer = await ana.act(call, number, note('while full'));
        if (answer.is === 'done') confirmed = number;
        if (number % 150 === 0) await new Promise((resolve) => setTimeout(resolve, 6000));
      }
    } catch {
      // the server has closed the socket
    }
    expect(confirmed).toBeLessThan(most - 1);
    expect(ana.heard.at(-1)).toMatchObject({is: 'closing'});
    expect(ana.texts.at(-1)).toMatch(/could not be kept, so it was not done/);
    const refused = await at.ask('POST', '/classes', {name: 'x'.repeat(70)});
    expect(refused.status).toBe(503);
    expect(((await refused.json()) as {error: string}).error).toMatch(/disk is full/);
    disk.makeRoom();
    const again = await at.connect(ana.token);
    const opened = await again.open(call);
    expect(opened.last).toBe(confirmed);
    expect(await again.act(call, confirmed + 1, note('after'))).toMatchObject({is: 'done'});
    await at.close();
  },
);

onTinyDisk(
  'a data folder on a read-only disk is told before anything else, and is whole afterwards',
  '4m',
  async (disk) => {
    // made elsewhere: a disk with a file that is open for writing cannot be made read-only
    const made = mkdtempSync(join(folder, 'made-'));
    await (await openFileDatabase(made)).close();
    const data = join(disk.path, 'data');
    mkdirSync(data);
    copyFileSync(databaseFile(made), databaseFile(data));
    const before = readFileSync(databaseFile(data));
    disk.readOnly(true);
    await expect(openFileDatabase(data)).rejects.toThrow(/cannot be written.*EROFS.*--data/);
    await expect(openFileDatabase(join(disk.path, 'new'))).rejects.toThrow(/cannot be written/);
    disk.readOnly(false);
    expect(readFileSync(databaseFile(data))).toEqual(before);
    await (await openFileDatabase(data)).close();
  },
);

test('a folder in the place of the database file is told', async () => {
  const data = mkdtempSync(join(folder, 'directory-'));
  mkdirSync(databaseFile(data));
  await expect(openFileDatabase(data)).rejects.toThrow(/school\.db (cannot be|is)/);
});

onTinyDisk('a disk that is too small from the start is told in a sentence', '64k', async (disk) => {
  await expect(openFileDatabase(join(disk.path, 'data'))).rejects.toThrow(/is full|cannot be/);
});

test('a data folder that cannot be made or written is told before anything else', async () => {
  const file = join(folder, 'a-file');
  writeFileSync(file, '');
  await expect(openFileDatabase(join(file, 'data'))).rejects.toThrow(/cannot be written.*--data/);
  // root may write anywhere, so for root the read-only disk above is the test
  if (userInfo().uid === 0) return;
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
