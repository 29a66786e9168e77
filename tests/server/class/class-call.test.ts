import {afterAll, beforeAll, expect, test} from 'vitest';
import {applyAnswer} from '../../../src/classroom/protocol/apply-answer.ts';
import type {ClassDetail} from '../../../src/classroom/protocol/rest.ts';
import type {WorkSet} from '../../../src/classroom/protocol/work-set.ts';
import {join} from 'node:path';
import {backUp, restore} from '../../../src/server/data/backup.ts';
import {ClassAtWork} from './class-at-work.ts';

let at: ClassAtWork;
let period: ClassDetail;
let set: WorkSet;
beforeAll(async () => {
  at = await ClassAtWork.open();
  await at.firstStart();
  period = await at.classOf('Ana', 'Ben', 'Chi');
  set = await at.get<WorkSet>('POST', `/classes/${period.id}/sets`, {
    kind: 'same',
    unit: 'practice-panel',
    faults: ['W8:open'],
    complaint: 'The lamp stays dark.',
    open: true,
  });
}, 60_000);
afterAll(() => at.close(), 60_000);

test('a student joins with code and name, reads, and finds everything again after the network went', async () => {
  const ana = await at.join(period, 'Ana');
  const [item] = (await ana.desk()).items;
  expect(item).toMatchObject({
    kind: 'call',
    unit: 'practice-panel',
    stage: 'new',
    complaint: 'The lamp stays dark.',
  });
  const opened = await ana.open(item.assignment);
  expect(opened.last).toBe(0);
  const cover = opened.view.enclosures.find(({open}) => !open);
  let number = 0;
  let view = opened.view;
  if (cover) {
    const done = await ana.act(item.assignment, ++number, {do: 'open-cover', enclosure: cover.id});
    expect(done.is).toBe('done');
    if (done.is === 'done') view = applyAnswer(view, done);
  }
  const unit = at.school.content.unit('practice-panel');
  const [red, black] = unit.circuits[0].rails;
  const read = await ana.act(item.assignment, ++number, {do: 'read', red, black});
  expect(read.is).toBe('done');
  if (read.is === 'done') view = applyAnswer(view, read);
  expect(view.log.at(-1)).toMatchObject({kind: 'reading', red, black});
  ana.drop();
  const again = await at.connect(ana.token);
  const resumed = await again.open(item.assignment);
  expect(resumed.last).toBe(number);
  expect(resumed.view).toEqual(view);
});

test('the instructor sees the set begun', async () => {
  const [shown] = await at.get<WorkSet[]>('GET', `/classes/${period.id}/sets`);
  expect(shown).toMatchObject({id: set.id, counts: {students: 3, begun: 1, finished: 0}});
});

test('when time is up nothing is measured any more, but the fault can still be named', async () => {
  const chi = await at.join(period, 'Chi');
  const call = (await chi.desk()).items[0].assignment;
  await chi.open(call);
  await at.school.work.change(call, {opened_at: at.school.clock.now() - 120_000});
  const told = chi.next((answer) => answer.is === 'desk');
  await at.get('PATCH', `/sets/${set.id}`, {limitMinutes: 1});
  await told;
  const [red, black] = at.school.content.unit('practice-panel').circuits[0].rails;
  expect(await chi.act(call, 1, {do: 'read', red, black})).toMatchObject({
    is: 'refused',
    sentence: expect.stringMatching(/Time is up/),
  });
  expect(await chi.act(call, 1, {do: 'name', fault: 'W8:open', evidence: []})).toMatchObject({
    is: 'done',
  });
});

test('a backup restored in mid-lesson: the device finds its call as the backup knows it, and goes on', async () => {
  const ben = await at.join(period, 'Ben');
  const call = (await ben.desk()).items[0].assignment;
  await ben.open(call);
  await ben.act(call, 1, {do: 'note', text: 'Before the backup.'});
  const file = join(at.folder, 'lesson.backup');
  await backUp(at.school.database, file);
  for (const number of [2, 3]) await ben.act(call, number, {do: 'note', text: 'After it.'});
  await restore(at.school.database, file);
  const answer = await ben.act(call, 4, {do: 'note', text: 'Too far on.'});
  expect(answer).toMatchObject({is: 'opened', last: 1});
  expect(await ben.act(call, 2, {do: 'note', text: 'Again.'})).toMatchObject({
    is: 'done',
    number: 2,
  });
});
