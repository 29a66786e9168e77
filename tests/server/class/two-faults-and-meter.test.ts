import {afterAll, beforeAll, expect, test} from 'vitest';
import type {Debrief} from '../../../src/bench/debrief.ts';
import type {ClassDebrief, ClassDetail, Gradebook} from '../../../src/classroom/protocol/rest.ts';
import type {WorkSet} from '../../../src/classroom/protocol/work-set.ts';
import type {Reasoning} from '../../../src/diagnosis/reasoning.ts';
import {ClassAtWork, type Device} from './class-at-work.ts';

let at: ClassAtWork;
let period: ClassDetail;
let ana: Device;
let ben: Device;
beforeAll(async () => {
  at = await ClassAtWork.open();
  await at.firstStart();
  period = await at.classOf('Ana', 'Ben');
  ana = await at.join(period, 'Ana');
  ben = await at.join(period, 'Ben');
}, 60_000);
afterAll(() => at.close(), 60_000);

const give = (body: Record<string, unknown>): Promise<WorkSet> =>
  at.get('POST', `/classes/${period.id}/sets`, {
    kind: 'same',
    unit: 'practice-panel',
    complaint: 'It does not work.',
    open: true,
    ...body,
  });

async function callOf(device: Device, set: WorkSet): Promise<string> {
  const rows = await at.school.work.ofSet(set.id);
  const {student} = await device.desk();
  return rows.find((row) => row.student === student)!.id;
}

const cellOf = async (call: string) => {
  const book = await at.get<Gradebook>('GET', `/classes/${period.id}/gradebook`);
  return book.rows.flatMap(({cells}) => cells).find(({assignment}) => assignment === call)!;
};

test('with two faults hidden, naming one lets the search go on; the debrief comes with the other', async () => {
  const set = await give({faults: ['W17:open', 'HPS:stuck-open']});
  const call = await callOf(ana, set);
  await ana.open(call);
  const first = await ana.act(call, 1, {do: 'name', fault: 'HPS:stuck-open', evidence: []});
  expect(first).toMatchObject({is: 'done', now: {more: true}});
  expect(await ana.question({is: 'debrief', assignment: call})).toMatchObject({
    refused: expect.stringContaining('everything that is hidden'),
  });
  expect(await cellOf(call)).toMatchObject({stage: 'working'});
  // nobody may mend the unit under a fault that is still to be found
  expect(await ana.act(call, 2, {do: 'clear'})).toMatchObject({is: 'refused'});
  expect(await ana.act(call, 2, {do: 'wait', seconds: 1})).toMatchObject({now: {more: true}});
  // what is told again, and what is made again from the records, knows it too
  expect(await ana.act(call, 1, {do: 'name', fault: 'HPS:stuck-open', evidence: []})).toMatchObject(
    {
      now: {more: true},
    },
  );
  at.school.benches.forget(call);
  expect(await ana.open(call)).toMatchObject({view: {more: true}, last: 2});
  const second = await ana.act(call, 3, {do: 'name', fault: 'W17:open', evidence: []});
  expect(second).toMatchObject({is: 'done', now: {stage: 'named'}});
  expect(second).not.toHaveProperty('now.more');
  const told = (await ana.question({is: 'debrief', assignment: call})) as {debrief: Debrief};
  expect(told.debrief).toMatchObject({verdict: 'right', left: []});
  expect(told.debrief.faults).toHaveLength(2);
  expect(await cellOf(call)).toMatchObject({stage: 'named', verdict: 'right'});
});

test('who gives the second one up, or names it wrongly, is told what was left', async () => {
  const set = await give({faults: ['W17:open', 'HPS:stuck-open']});
  const [a, b] = [await callOf(ana, set), await callOf(ben, set)];
  await ana.open(a);
  await ana.act(a, 1, {do: 'name', fault: 'W17:open', evidence: []});
  await ana.act(a, 2, {do: 'give-up'});
  expect(await ana.question({is: 'debrief', assignment: a})).toMatchObject({
    debrief: {verdict: 'given-up', left: [{id: 'HPS:stuck-open'}]},
  });
  await ben.open(b);
  // a wrong name ends the search, as with one fault
  const wrong = await ben.act(b, 1, {do: 'name', fault: 'LT1:open', evidence: []});
  expect(wrong).not.toHaveProperty('now.more');
  expect(await ben.question({is: 'debrief', assignment: b})).toMatchObject({
    debrief: {verdict: 'wrong'},
  });
  const {calls} = await at.get<ClassDebrief>('GET', `/sets/${set.id}/debrief`);
  expect(calls).toHaveLength(1);
  expect(calls[0].faults).toHaveLength(2);
  expect(calls[0]).toMatchObject({students: 2, right: 0});
});

test('a broken lead of the student’s own meter: the call says that it is to be proved, and not what it is', async () => {
  const set = await give({faults: ['W8:open'], meterFlaw: 'broken-lead'});
  expect(set.meterFlaw).toBe('broken-lead');
  const call = await callOf(ana, set);
  const opened = await ana.open(call);
  expect(opened.view.meter.toProve).toBe(true);
  expect(JSON.stringify(await ana.desk())).not.toContain('broken-lead');
  const [red, black] = at.school.content.unit('practice-panel').circuits[0].rails;
  await ana.act(call, 1, {do: 'open-cover', enclosure: 'panel'});
  const last = (await ana.open(call)).last;
  const read = await ana.act(call, last + 1, {do: 'read', red, black});
  // leads that carry nothing read nothing on a live supply
  expect(read).toMatchObject({is: 'done', log: [{toProve: true}]});
  const volts = read.is === 'done' ? read.log[0].display!.value : undefined;
  expect(Math.abs(volts!)).toBeLessThan(1);
  await ana.act(call, last + 2, {do: 'renew', what: 'leads'});
  const again = await ana.act(call, last + 3, {do: 'read', red, black});
  expect(again.is === 'done' && again.log[0].display!.value).toBeGreaterThan(100);
  await ana.act(call, last + 4, {do: 'name', fault: 'W8:open', evidence: []});
  const told = (await ana.question({is: 'debrief', assignment: call})) as {debrief: Debrief};
  expect(told.debrief).toMatchObject({verdict: 'right', meter: 'broken-lead'});
  // the grade reasons with a meter that was not proved yet: its first reading rules nobody out
  const {reasoning} = (await ana.question({is: 'reasoning', assignment: call})) as {
    reasoning: Reasoning;
  };
  const [unproved] = reasoning.steps.filter(({kind}) => kind === 'reading');
  expect(unproved.suspectsAfter).toBe(unproved.suspectsBefore);
});

test('a wiring task has no meter that could be at fault', async () => {
  const response = await at.ask('POST', `/classes/${period.id}/sets`, {
    kind: 'hookup',
    task: 'three-safeties',
    meterFlaw: 'broken-lead',
  });
  expect(response.status).toBe(400);
});
