import {parse} from 'csv-parse/sync';
import {afterAll, beforeAll, expect, test} from 'vitest';
import WebSocket from 'ws';
import type {Poll} from '../../../src/classroom/protocol/poll.ts';
import type {InstructorAnswer} from '../../../src/classroom/protocol/instructor-messages.ts';
import type {
  ClassDebrief,
  ClassDetail,
  Gradebook,
  WallLink,
} from '../../../src/classroom/protocol/rest.ts';
import type {WallAnswer} from '../../../src/classroom/protocol/wall-messages.ts';
import type {WorkSet} from '../../../src/classroom/protocol/work-set.ts';
import {xapiStatement} from '../../../src/classroom/xapi-schema.ts';
import {ClassAtWork, type Device} from './class-at-work.ts';

let at: ClassAtWork;
let period: ClassDetail;
let set: WorkSet;
let ana: Device;
let ben: Device;
beforeAll(async () => {
  at = await ClassAtWork.open();
  await at.firstStart();
  period = await at.classOf('=Ana', 'Ben', 'Chi');
  set = await at.get<WorkSet>('POST', `/classes/${period.id}/sets`, {
    kind: 'same',
    title: 'Monday',
    unit: 'practice-panel',
    faults: ['W8:open'],
    coach: true,
    open: true,
  });
  ana = await at.join(period, '=Ana');
  ben = await at.join(period, 'Ben');
}, 60_000);
afterAll(() => at.close(), 60_000);

/** A socket of the instructor or the wall, with everything it heard. */
async function listen<A extends {is: string}>(path: string, first: unknown) {
  const socket = new WebSocket(`${at.url.replace('http', 'ws')}/api/socket/${path}`, {
    headers: {origin: at.url, cookie: at.cookie},
  });
  const heard: A[] = [];
  const ears = new Set<() => void>();
  socket.on('message', (data: Buffer) => {
    heard.push(JSON.parse(data.toString()) as A);
    for (const ear of ears) ear();
  });
  await new Promise((resolve, reject) => {
    socket.on('open', resolve);
    socket.on('error', reject);
  });
  socket.send(JSON.stringify(first));
  const until = (fits: (answer: A) => boolean): Promise<A> =>
    new Promise((resolve) => {
      const look = (): void => {
        const found = heard.findLast(fits);
        if (found) {
          ears.delete(look);
          resolve(found);
        }
      };
      ears.add(look);
      look();
    });
  return {socket, heard, until, send: (message: unknown) => socket.send(JSON.stringify(message))};
}

const assignmentOf = async (device: Device): Promise<string> =>
  (await device.desk()).items[0].assignment;

test('the live view tells the instructor where a student measures and how many suspects are left', async () => {
  const live = await listen<InstructorAnswer>('instructor', {is: 'watch', class: period.id});
  const call = await assignmentOf(ana);
  await ana.open(call);
  const [red, black] = at.school.content.unit('practice-panel').circuits[0].rails;
  await ana.act(call, 1, {do: 'open-cover', enclosure: 'panel'});
  const read = await ana.act(call, ana.heard.some((a) => a.is === 'refused') ? 1 : 2, {
    do: 'read',
    red,
    black,
  });
  expect(read.is).toBe('done');
  const answer = await live.until(
    (each) =>
      each.is === 'live' &&
      each.rows.some(
        (row) => row.name === '=Ana' && row.suspects !== undefined && row.readings > 0,
      ),
  );
  const row = answer.is === 'live' ? answer.rows.find(({name}) => name === '=Ana')! : undefined;
  expect(row).toMatchObject({online: true, stage: 'working', readings: 1});
  expect(row!.suspects).toBeLessThanOrEqual(row!.suspectsAtStart!);
  live.send({is: 'follow', assignment: call});
  const log = await live.until(({is}) => is === 'log');
  expect(log).toMatchObject({name: '=Ana'});
  const note = ana.next((each) => each.is === 'note');
  live.send({is: 'note', student: row!.student, text: 'Look at the lamp first.'});
  expect(await note).toMatchObject({note: {kind: 'note', text: 'Look at the lamp first.'}});
  const hint = ben.next((each) => each.is === 'note');
  live.send({is: 'hint', set: set.id, text: 'Half-split.'});
  expect(await hint).toMatchObject({note: {kind: 'hint', text: 'Half-split.'}});
  live.socket.terminate();
});

test('the coach may be asked, and what it says goes into the log before anything else', async () => {
  const call = await assignmentOf(ana);
  const opened = await ana.open(call);
  const told = (await ana.question({is: 'coach', assignment: call, level: 1})) as {
    level: 1;
    text: string;
  };
  expect(told.text.length).toBeGreaterThan(10);
  const next = opened.last + 1;
  expect(await ana.act(call, next, {do: 'note', text: 'no hint'})).toMatchObject({is: 'refused'});
  expect(await ana.act(call, next, {do: 'hint', level: 1, text: 'made up'})).toMatchObject({
    is: 'refused',
  });
  expect(await ana.act(call, next, {do: 'hint', level: 1, text: told.text})).toMatchObject({
    is: 'done',
  });
});

test('no debrief before a name; then the verdict, and a grade in the gradebook', async () => {
  const call = await assignmentOf(ana);
  expect(await ana.question({is: 'debrief', assignment: call})).toHaveProperty('refused');
  const {last} = await ana.open(call);
  await ana.act(call, last + 1, {do: 'name', fault: 'W8:open', evidence: []});
  expect(await ana.question({is: 'debrief', assignment: call})).toMatchObject({
    what: 'debrief',
    debrief: {verdict: 'right'},
  });
  const book = await at.get<Gradebook>('GET', `/classes/${period.id}/gradebook`);
  const cell = book.rows.find(({name}) => name === '=Ana')!.cells[0];
  expect(cell).toMatchObject({verdict: 'right', stage: 'named'});
  expect(cell.points).toBeGreaterThan(0);
});

test('the class debrief lists the routes beside the best one', async () => {
  const debrief = await at.get<ClassDebrief>('GET', `/sets/${set.id}/debrief`);
  expect(debrief.calls).toHaveLength(1);
  expect(debrief.calls[0]).toMatchObject({students: 1, right: 1});
  expect(debrief.calls[0].bestRoute!.readings).toBeGreaterThan(0);
  expect(debrief.calls[0].routes[0].steps).toHaveLength(1);
});

test('a CSV opens as text in a spreadsheet: a name that begins with = is no formula', async () => {
  const text = await (await at.ask('GET', `/classes/${period.id}/gradebook.csv`)).text();
  expect(text).not.toMatch(/(^|,)=Ana/m);
  const rows: Record<string, string>[] = parse(text, {columns: true, bom: true});
  expect(rows[0]).toMatchObject({name: "'=Ana", verdict: 'right'});
  const actions = await (await at.ask('GET', `/classes/${period.id}/actions.csv`)).text();
  expect(parse(actions, {columns: true, bom: true})).toHaveLength(
    (await at.school.work.actions(await assignmentOf(ana))).length,
  );
});

test('xAPI statements keep the rules of the specification, and are the same when made again', async () => {
  const statements = await at.get<unknown[]>('GET', `/classes/${period.id}/xapi.json`);
  expect(statements.length).toBeGreaterThan(3);
  for (const statement of statements)
    expect(xapiStatement.safeParse(statement).error).toBeUndefined();
  expect(await at.get<unknown[]>('GET', `/classes/${period.id}/xapi.json`)).toEqual(statements);
});

test('students hide a fault for each other within the limits, and both are graded', async () => {
  const pairs = await at.get<WorkSet>('POST', `/classes/${period.id}/sets`, {
    kind: 'in-pairs',
    title: 'Pairs',
    unit: 'practice-panel',
    allowed: ['easy'],
    open: true,
  });
  const deskWith = async (device: Device, kind: string) => {
    const found = (): boolean =>
      device.heard.some(
        (a) => a.is === 'desk' && a.desk.items.some((i) => i.kind === kind && i.title === 'Pairs'),
      );
    while (!found()) await device.next((a) => a.is === 'desk');
    const desk = device.heard.findLast((a) => a.is === 'desk')!;
    return desk.is === 'desk'
      ? desk.desk.items.find((i) => i.kind === kind && i.title === 'Pairs')!
      : undefined!;
  };
  const hide = await deskWith(ana, 'hide');
  expect(hide.forName).toBe('Ben');
  const waiting = await deskWith(ben, 'call');
  expect(waiting.stage).toBe('waiting');
  const {lines} = (await ana.question({is: 'choices', assignment: hide.assignment})) as {
    lines: {id: string; difficulty: string}[];
  };
  expect(new Set(lines.map(({difficulty}) => difficulty))).toEqual(new Set(['easy']));
  expect(
    await ana.question({is: 'hide', assignment: hide.assignment, fault: 'nonsense'}),
  ).toHaveProperty('refused');
  const ready = ben.next(
    (a) =>
      a.is === 'desk' &&
      a.desk.items.some((i) => i.assignment === waiting.assignment && i.stage === 'new'),
  );
  expect(await ana.question({is: 'hide', assignment: hide.assignment, fault: lines[0].id})).toEqual(
    {what: 'hidden'},
  );
  expect(
    await ana.question({is: 'hide', assignment: hide.assignment, fault: lines[0].id}),
  ).toHaveProperty('refused');
  await ready;
  await ben.open(waiting.assignment);
  await ben.act(waiting.assignment, 1, {do: 'name', fault: lines[0].id, evidence: []});
  await ben.question({is: 'debrief', assignment: waiting.assignment});
  const book = await at.get<Gradebook>('GET', `/classes/${period.id}/gradebook`);
  const cells = book.rows.flatMap(({cells}) => cells).filter((cell) => cell.set === pairs.id);
  expect(cells.find((cell) => cell.assignment === waiting.assignment)!.points).toBeDefined();
  expect(cells.find((cell) => cell.assignment === hide.assignment)).toMatchObject({
    verdict: 'found',
  });
});

test('a poll is answered before the change is made, and then the readings move', async () => {
  const wallLink = await at.get<WallLink>('POST', `/classes/${period.id}/wall`);
  const wall = await listen<WallAnswer>('wall', {is: 'join', token: wallLink.token});
  const unit = at.school.content.unit('practice-panel');
  const [red, black] = unit.circuits[0].rails;
  const asked = ben.next((a) => a.is === 'poll' && a.poll.state === 'open');
  const poll = await at.get<Poll>('POST', `/classes/${period.id}/polls`, {
    question: 'What will the meter show?',
    answers: ['The same', 'Nothing'],
    right: 0,
    unit: unit.id,
    actions: [],
    change: {fault: 'W8:open'},
    watch: [{function: 'ac-volts', red, black}],
  });
  expect(poll.readings[0].after).toBeUndefined();
  expect(await asked).not.toHaveProperty('poll.changed');
  const counted = ben.next((a) => a.is === 'poll' && a.poll.mine !== undefined);
  ben.send({is: 'vote', poll: poll.id, answer: 1});
  expect(await counted).toMatchObject({poll: {mine: 1, committed: 1}});
  ben.send({is: 'vote', poll: poll.id, answer: 0});
  const shown = await at.get<Poll>('PATCH', `/polls/${poll.id}`, {state: 'shown'});
  expect(shown).toMatchObject({counts: [0, 1], right: 0});
  expect(shown.readings[0].after).toBeDefined();
  const seen = await wall.until((a) => a.is === 'wall' && a.wall.poll?.state === 'shown');
  expect(seen).toMatchObject({wall: {code: period.code, names: false}});
  if (seen.is === 'wall')
    expect(seen.wall.progress.every((each) => each.name === undefined)).toBe(true);
  wall.socket.terminate();
});

test('a newer device takes over, and the older one says so', async () => {
  const over = ana.next((a) => a.is === 'taken-over');
  const newer = await at.join(period, '=Ana');
  await over;
  await expect.poll(() => ana.closedWith).toBe(4001);
  expect((await newer.desk()).name).toBe('=Ana');
  // the older one's network comes back by itself: the newer device stays at work
  const back = await at.connect(ana.token);
  await expect.poll(() => back.closedWith).toBe(4001);
  expect(back.heard.at(-1)).toEqual({is: 'taken-over'});
  expect(newer.closedWith).toBeUndefined();
});

test('"Go on here" takes the work back at once, in turn on either device, until the instructor sends them away', async () => {
  const student = period.roster.find(({name}) => name === 'Chi')!;
  const first = await at.join(period, 'Chi');
  const call = (await first.desk()).items.find(({kind}) => kind === 'call')!.assignment;
  await first.open(call);
  await first.act(call, 1, {do: 'note', text: 'On the phone.'});
  const second = await at.join(period, 'Chi');
  await expect.poll(() => first.closedWith).toBe(4001);
  const third = await at.connect(first.token, true);
  expect(await third.open(call)).toMatchObject({last: 1});
  await expect.poll(() => second.closedWith).toBe(4001);
  expect(await third.act(call, 2, {do: 'note', text: 'And again.'})).toMatchObject({is: 'done'});
  const fourth = await at.connect(second.token, true);
  expect(await fourth.open(call)).toMatchObject({last: 2});
  await expect.poll(() => third.closedWith).toBe(4001);
  await at.get('PATCH', `/students/${student.id}`, {sendAway: true});
  await expect.poll(() => fourth.closedWith).toBe(4401);
  for (const token of [first.token, second.token]) {
    const away = await at.connect(token, true);
    await expect.poll(() => away.closedWith).toBe(4401);
  }
});

test("a student's records are exported whole, then erased whole", async () => {
  const student = period.roster.find(({name}) => name === 'Ben')!;
  const kept = await at.get<{attempts: unknown[]}>('GET', `/students/${student.id}/records`);
  expect(kept.attempts.length).toBeGreaterThan(0);
  const left = await at.get<ClassDetail>('DELETE', `/students/${student.id}`);
  expect(left.roster.map(({name}) => name)).not.toContain('Ben');
  const {db} = at.school.database;
  for (const table of ['assignments', 'votes'] as const) {
    expect(
      await db.selectFrom(table).selectAll().where('student', '=', student.id).execute(),
    ).toEqual([]);
  }
  const orphans = await db
    .selectFrom('actions')
    .leftJoin('assignments', 'assignments.id', 'actions.assignment')
    .select('actions.assignment')
    .where('assignments.id', 'is', null)
    .execute();
  expect(orphans).toEqual([]);
  await expect.poll(() => ben.closedWith).toBe(4401);
});
