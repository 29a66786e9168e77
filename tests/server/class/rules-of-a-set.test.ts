import {readFileSync} from 'node:fs';
import {parse} from 'csv-parse/sync';
import {afterAll, beforeAll, expect, test} from 'vitest';
import type {ClassDebrief, ClassDetail, Gradebook} from '../../../src/classroom/protocol/rest.ts';
import type {WorkSet} from '../../../src/classroom/protocol/work-set.ts';
import type {XapiStatement} from '../../../src/classroom/xapi-schema.ts';
import {ClassAtWork, type Device} from './class-at-work.ts';

let at: ClassAtWork;
let period: ClassDetail;
let ana: Device;
let ben: Device;
beforeAll(async () => {
  at = await ClassAtWork.open();
  await at.firstStart();
  period = await at.classOf('Ana', 'Ben', 'Chi');
  ana = await at.join(period, 'Ana');
  ben = await at.join(period, 'Ben');
}, 60_000);
afterAll(() => at.close(), 60_000);

const unit = 'practice-panel';
const give = (body: Record<string, unknown>): Promise<WorkSet> =>
  at.get('POST', `/classes/${period.id}/sets`, {open: true, ...body});
const shown = async (set: WorkSet): Promise<WorkSet> => {
  const sets = await at.get<WorkSet[]>('GET', `/classes/${period.id}/sets`);
  return sets.find(({id}) => id === set.id)!;
};

async function rowOf(device: Device, set: WorkSet, kind?: string) {
  const rows = await at.school.work.ofSet(set.id);
  const {student} = await device.desk();
  return rows.find((row) => row.student === student && (!kind || row.kind === kind))!;
}

/** As if the student had opened it so long ago. */
const ago = (assignment: string, minutes: number): Promise<void> =>
  at.school.work.change(assignment, {opened_at: at.school.clock.now() - minutes * 60_000});

/** Readings and minutes that the planner needs, as content/difficulty holds them. */
function needed(fault: string): {readings: number; minutes: number} {
  const file = new URL(`../../../content/difficulty/${unit}.json`, import.meta.url);
  const {faults} = JSON.parse(readFileSync(file, 'utf8')) as {faults: Record<string, number[]>};
  const [, , readings, minutes] = faults[fault];
  return {readings, minutes};
}

test('"different per student": as hard for each by what the planner needs, as worked out beforehand', async () => {
  const easy = await give({kind: 'different', unit, difficulty: 'easy'});
  const hard = await give({kind: 'different', unit, difficulty: 'hard'});
  const dealt = async (set: WorkSet): Promise<string[]> =>
    (await at.school.work.ofSet(set.id)).map(({faults}) => (JSON.parse(faults!) as [string])[0]);
  const [simple, long] = [await dealt(easy), await dealt(hard)];
  expect(new Set(simple).size).toBe(3);
  for (const fault of simple) {
    const {readings, minutes} = needed(fault);
    expect([fault, readings <= 3 && minutes <= 8]).toEqual([fault, true]);
  }
  for (const fault of long) {
    const {readings, minutes} = needed(fault);
    expect([fault, readings > 5 || minutes > 15]).toEqual([fault, true]);
  }
});

test('without the coach’s leave the server tells no hint, whatever the page asks; with it, until time is up or the set is closed', async () => {
  const silent = await give({kind: 'same', unit, faults: ['W8:open'], coach: false});
  const quiet = (await rowOf(ana, silent)).id;
  await ana.open(quiet);
  expect(await ana.question({is: 'coach', assignment: quiet, level: 3})).toMatchObject({
    refused: expect.stringMatching(/not allowed the coach/),
  });
  // nor is a hint taken into the log that the coach has not said
  expect(await ana.act(quiet, 1, {do: 'hint', level: 3, text: 'W8'})).toMatchObject({
    is: 'refused',
  });
  const coached = await give({
    kind: 'same',
    unit,
    faults: ['W8:open'],
    coach: true,
    limitMinutes: 10,
  });
  const call = (await rowOf(ana, coached)).id;
  await ana.open(call);
  await ago(call, 11);
  await ana.open(call);
  expect(await ana.question({is: 'coach', assignment: call, level: 1})).toMatchObject({
    refused: expect.stringMatching(/Time is up/),
  });
  const other = (await rowOf(ben, coached)).id;
  await ben.open(other);
  await at.get('PATCH', `/sets/${coached.id}`, {state: 'closed'});
  expect(await ben.question({is: 'coach', assignment: other, level: 1})).toMatchObject({
    refused: expect.stringMatching(/closed/),
  });
  expect(await ben.act(other, 1, {do: 'wait', seconds: 1})).toMatchObject({
    is: 'refused',
    sentence: expect.stringMatching(/closed/),
  });
});

test('a set in pairs counts students, each once, and as finished when both parts are done', async () => {
  const set = await give({kind: 'in-pairs', unit, allowed: ['easy']});
  // Chi has no device, so Ana and Ben hide for each other
  expect((await shown(set)).counts).toEqual({students: 2, begun: 0, finished: 0});
  for (const device of [ana, ben]) {
    const {id} = await rowOf(device, set, 'hide');
    const {lines} = (await device.question({is: 'choices', assignment: id})) as {
      lines: {id: string}[];
    };
    await device.question({is: 'hide', assignment: id, fault: lines[0].id});
  }
  expect((await shown(set)).counts).toEqual({students: 2, begun: 2, finished: 0});
  const call = (await rowOf(ana, set, 'call')).id;
  await ana.open(call);
  await ana.act(call, 1, {do: 'give-up'});
  expect((await shown(set)).counts).toEqual({students: 2, begun: 2, finished: 1});
});

test('a wiring task: its time runs from when it is seen; after it nothing is taken any more; what was wrong is in the debrief', async () => {
  const task = 'three-safeties';
  const set = await give({kind: 'hookup', task, limitMinutes: 30});
  const right = at.school.content
    .task(task)
    .answer.map(({id, from, to, gauge, colour}) => ({id, from, to, gauge, colour}));
  const bypass = {id: 'X1', from: 'HPS.1', to: 'HPS.2', gauge: 18, colour: 'red'};
  const [a, b] = [(await rowOf(ana, set)).id, (await rowOf(ben, set)).id];
  const handIn = (device: Device, assignment: string, wires: readonly unknown[]) =>
    device.question({is: 'check-hookup', assignment, wires});

  const begun = ana.next(
    (each) =>
      each.is === 'desk' &&
      each.desk.items.some((item) => item.assignment === a && item.leftMs !== undefined),
  );
  expect(await ana.question({is: 'begin', assignment: a})).toEqual({what: 'begun'});
  await begun;
  expect(await handIn(ana, a, [...right, bypass])).toMatchObject({report: {verdict: 'wrong'}});
  expect(await handIn(ana, a, [...right, bypass])).toMatchObject({report: {verdict: 'wrong'}});
  expect(await handIn(ana, a, right)).toMatchObject({report: {verdict: 'right'}});

  await ben.question({is: 'begin', assignment: b});
  await handIn(ben, b, right.slice(1));
  await ago(b, 31);
  // the server's own clock counts, not the page's
  const again = await at.connect(ben.token);
  await again.desk();
  expect(await handIn(again, b, right)).toMatchObject({
    refused: expect.stringMatching(/Time is up/),
  });

  const book = await at.get<Gradebook>('GET', `/classes/${period.id}/gradebook`);
  const cells = book.rows.flatMap((row) => row.cells).filter((cell) => cell.set === set.id);
  expect(cells.find(({assignment}) => assignment === a)).toMatchObject({
    verdict: 'right',
    points: 80,
  });
  // what was handed in is among the actions of the attempt, in both exports
  const text = await (await at.ask('GET', `/classes/${period.id}/actions.csv`)).text();
  const rows: Record<string, string>[] = parse(text, {columns: true, bom: true});
  const handed = rows.filter(({attempt, action}) => attempt === a && action === 'hand-in');
  expect(handed.map(({details}) => (JSON.parse(details) as {verdict: string}).verdict)).toEqual([
    'wrong',
    'wrong',
    'right',
  ]);
  expect(rows.filter(({action}) => action === 'hide')).toHaveLength(2);
  const statements = await at.get<XapiStatement[]>('GET', `/classes/${period.id}/xapi.json`);
  const answered = statements.filter(({object}) => object.id.endsWith('xapi/action/hand-in'));
  expect(answered.map(({result}) => result!.success)).toEqual([false, false, true, false]);
  expect(new Set(statements.map(({id}) => id)).size).toBe(statements.length);

  const {hookup, calls} = await at.get<ClassDebrief>('GET', `/sets/${set.id}/debrief`);
  expect(calls).toEqual([]);
  expect(hookup).toMatchObject({students: 2, right: 1, handIns: 4});
  // handed in twice by one student: one student made the mistake
  expect(hookup!.findings[0]).toMatchObject({
    text: 'Safety bypassed',
    dangerous: true,
    students: 1,
  });
  expect(hookup!.ways[0]).toMatchObject({
    name: 'Ana',
    handIns: 3,
    firstRight: false,
    wrong: [['Safety bypassed'], ['Safety bypassed'], []],
  });
});
