import {afterAll, beforeAll, describe, expect, test} from 'vitest';
import type {ClassDetail} from '../../../src/classroom/protocol/rest.ts';
import type {WorkSet} from '../../../src/classroom/protocol/work-set.ts';
import {openPostgres} from '../../../src/server/data/school-database.ts';
import {PostgresBus} from '../../../src/server/data/postgres-bus.ts';
import {ClassAtWork} from './class-at-work.ts';
import {startPostgres, whyNoPostgres, type RealPostgres} from './real-postgres.ts';

const why = whyNoPostgres();
if (why) console.log(`The tests with a real Postgres DID NOT RUN: ${why}.`);

describe.skipIf(why !== undefined)('a school of two processes on one Postgres', () => {
  let postgres: RealPostgres;
  let one: ClassAtWork;
  let two: ClassAtWork;
  let period: ClassDetail;
  let call: string;
  beforeAll(async () => {
    postgres = await startPostgres();
    const open = async (): Promise<ClassAtWork> =>
      ClassAtWork.open(
        undefined,
        await openPostgres(postgres.url),
        {},
        await PostgresBus.connect(postgres.url),
      );
    // both make the tables at once: one waits for the other
    [one, two] = await Promise.all([open(), open()]);
    await one.firstStart();
    period = await one.classOf('Ana', 'Ben');
    await one.get<WorkSet>('POST', `/classes/${period.id}/sets`, {
      kind: 'same',
      unit: 'practice-panel',
      faults: ['W8:open'],
      complaint: 'Dark.',
      open: true,
    });
  }, 120_000);
  afterAll(async () => {
    await one?.close();
    await two?.close();
    await postgres?.stop();
  }, 60_000);

  test('a sign-in on one process holds on the other', async () => {
    two.cookie = one.cookie;
    two.csrf = one.csrf;
    expect(await two.get<ClassDetail[]>('GET', '/classes')).toHaveLength(1);
  });

  test('a student who comes back on the other process finds every confirmed action', async () => {
    const ana = await one.join(period, 'Ana');
    call = (await ana.desk()).items[0].assignment;
    await ana.open(call);
    for (let number = 1; number <= 5; number++) {
      const done = await ana.act(call, number, {do: 'note', text: `Note ${number}`});
      expect(done.is).toBe('done');
    }
    const over = ana.next(({is}) => is === 'taken-over');
    const again = await two.connect(ana.token);
    await over;
    const opened = await again.open(call);
    expect(opened.last).toBe(5);
    expect(await again.act(call, 6, {do: 'wait', seconds: 10})).toMatchObject({is: 'done'});
  });

  test('two processes that both believe in a number keep one of the actions', async () => {
    const row = (await one.school.work.assignment(call))!;
    await two.school.benches.open(row);
    one.school.benches.forget(call);
    const kept = await Promise.all([
      one.school.benches.act(row, 7, {do: 'note', text: 'from one'}, 1),
      two.school.benches.act(row, 7, {do: 'note', text: 'from two'}, 2),
    ]);
    expect(kept.filter(({is}) => is === 'done')).toHaveLength(1);
    expect(kept.filter(({is}) => is === 'apart')).toHaveLength(1);
    expect(await one.school.work.actions(call)).toHaveLength(7);
  });

  test('a process that starts later learns who joined before, on which process ever', async () => {
    const ben = await one.join(period, 'Ben');
    await ben.desk();
    const three = await ClassAtWork.open(
      undefined,
      await openPostgres(postgres.url),
      {},
      await PostgresBus.connect(postgres.url),
    );
    const [ana, here] = period.roster;
    await expect.poll(() => three.school.presence.isOnline(here.id), {timeout: 20_000}).toBe(true);
    await expect.poll(() => three.school.presence.isOnline(ana.id), {timeout: 20_000}).toBe(true);
    ben.drop();
    await expect.poll(() => three.school.presence.isOnline(here.id), {timeout: 20_000}).toBe(false);
    await three.close();
  });

  test('times come back as numbers', async () => {
    const row = (await one.school.work.assignment(call))!;
    expect(typeof row.opened_at).toBe('number');
  });
});
