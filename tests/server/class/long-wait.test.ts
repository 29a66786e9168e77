import {monitorEventLoopDelay} from 'node:perf_hooks';
import {afterAll, beforeAll, expect, test} from 'vitest';
import type {ClassDetail} from '../../../src/classroom/protocol/rest.ts';
import type {WorkSet} from '../../../src/classroom/protocol/work-set.ts';
import {Bench} from '../../../src/bench/bench.ts';
import {faultsById, catalogue} from '../../../src/faults/catalogue.ts';
import {ClassAtWork} from './class-at-work.ts';

let at: ClassAtWork;
let period: ClassDetail;
beforeAll(async () => {
  at = await ClassAtWork.open();
  await at.firstStart();
  period = await at.classOf('Ana', 'Ben');
  await at.get<WorkSet>('POST', `/classes/${period.id}/sets`, {
    kind: 'same',
    unit: 'furnace-split-cooling',
    faults: [],
    complaint: 'Routine.',
    open: true,
  });
}, 60_000);
afterAll(() => at.close(), 60_000);

test('while one student lets a whole day pass, the readings of the others are answered', async () => {
  const ana = await at.join(period, 'Ana');
  const ben = await at.join(period, 'Ben');
  const [long, short] = [
    (await ana.desk()).items[0].assignment,
    (await ben.desk()).items[0].assignment,
  ];
  await ana.open(long);
  await ben.open(short);
  // a heating call, so that the furnace goes on and off all day
  await ana.act(long, 1, {do: 'set', target: 'TS.mode', value: 'heat'});
  await ana.act(long, 2, {do: 'set', target: 'TS.setPointDegF', value: 90});
  const unit = at.school.content.unit('furnace-split-cooling');
  let number = 0;
  for (const {id, cover} of unit.enclosures) {
    if (cover) await ben.act(short, ++number, {do: 'open-cover', enclosure: id});
  }
  const delay = monitorEventLoopDelay({resolution: 2});
  delay.enable();
  let over = false;
  const day = ana.act(long, 3, {do: 'wait', seconds: 86_400}).finally(() => (over = true));
  const [red, black] = unit.circuits[0].rails;
  let answered = 0;
  // a socket takes two hundred at once
  while (!over && answered < 100) {
    expect((await ben.act(short, ++number, {do: 'read', red, black})).is).toBe('done');
    if (!over) answered += 1;
  }
  const done = await day;
  delay.disable();
  console.log(
    `${answered} readings answered during one wait of a day; longest block ${(delay.max / 1e6).toFixed(0)} ms.`,
  );
  expect(answered).toBeGreaterThan(10);
  // in steps it comes to the same as at once
  const row = (await at.school.work.assignment(long))!;
  const call = await at.school.work.call(row);
  const whole = Bench.replay(
    {...call, unit, faults: faultsById(catalogue(unit), call.faults)},
    call.actions,
  );
  const {log: _log, safety: _safety, ...now} = whole.view();
  expect(done).toMatchObject({is: 'done', number: 3, now: JSON.parse(JSON.stringify(now))});
}, 120_000);

test('what is sent meanwhile for the same call is done after the wait, in order', async () => {
  const ben = await at.join(period, 'Ben');
  const call = (await ben.desk()).items[0].assignment;
  const {last} = await ben.open(call);
  const wait = ben.act(call, last + 1, {do: 'wait', seconds: 86_400});
  const note = ben.act(call, last + 2, {do: 'note', text: 'After the wait.'});
  // another device asks for the call in the midst of it
  const seen = await at.school.benches.open((await at.school.work.assignment(call))!);
  expect(seen.bench.view().timeMs % 86_400_000).toBe(0);
  expect(await wait).toMatchObject({is: 'done', number: last + 1});
  expect(await note).toMatchObject({is: 'done', number: last + 2});
}, 120_000);
