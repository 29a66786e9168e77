import {afterAll, beforeAll, expect, test} from 'vitest';
import WebSocket from 'ws';
import type {Poll} from '../../../src/classroom/protocol/poll.ts';
import type {ClassDetail, WallLink} from '../../../src/classroom/protocol/rest.ts';
import type {Wall, WallAnswer} from '../../../src/classroom/protocol/wall-messages.ts';
import type {WorkSet} from '../../../src/classroom/protocol/work-set.ts';
import {ClassAtWork, type Device} from './class-at-work.ts';

let at: ClassAtWork;
let period: ClassDetail;
let ana: Device;
let ben: Device;
let wall: WebSocket;
const seen: Wall[] = [];
const unitId = 'practice-panel';
beforeAll(async () => {
  at = await ClassAtWork.open();
  await at.firstStart();
  period = await at.classOf('Ana', 'Ben');
  await at.get<WorkSet>('POST', `/classes/${period.id}/sets`, {
    kind: 'same',
    unit: unitId,
    faults: ['W8:open'],
    open: true,
  });
  ana = await at.join(period, 'Ana');
  ben = await at.join(period, 'Ben');
  const {token} = await at.get<WallLink>('POST', `/classes/${period.id}/wall`);
  wall = await socket('wall', (text) => {
    const answer = JSON.parse(text) as WallAnswer;
    if (answer.is === 'wall') seen.push(answer.wall);
  });
  wall.send(JSON.stringify({is: 'join', token}));
}, 60_000);
afterAll(async () => {
  wall.terminate();
  await at.close();
}, 60_000);

async function socket(path: string, hear: (text: string) => void): Promise<WebSocket> {
  const made = new WebSocket(`${at.url.replace('http', 'ws')}/api/socket/${path}`, {
    headers: {origin: at.url, cookie: at.cookie},
  });
  made.on('message', (data: Buffer) => hear(data.toString()));
  await new Promise((resolve, reject) => {
    made.on('open', resolve);
    made.on('error', reject);
  });
  return made;
}

const wallShows = (fits: (wall: Wall) => boolean): Promise<void> =>
  expect
    .poll(() => seen.some(fits), {timeout: 10_000})
    .toBe(true)
    .then(() => undefined);

test('progress stands there without names, and with them once the instructor wants it', async () => {
  await wallShows(({progress}) => progress.length === 2);
  expect(JSON.stringify(seen)).not.toMatch(/Ana|Ben/);
  const instructor = await socket('instructor', () => undefined);
  instructor.send(JSON.stringify({is: 'wall-names', class: period.id, names: true}));
  await wallShows(({progress}) => progress.map(({name}) => name).join() === 'Ana,Ben');
  const before = seen.length;
  instructor.send(JSON.stringify({is: 'wall-names', class: period.id, names: false}));
  await expect
    .poll(() => seen.slice(before).some(({progress}) => progress.every(({name}) => !name)), {
      timeout: 10_000,
    })
    .toBe(true);
  instructor.terminate();
});

test('the heat map counts where the class has put its leads, all students together', async () => {
  const unit = at.school.content.unit(unitId);
  const [red, black] = unit.circuits[0].rails;
  for (const device of [ana, ben]) {
    const call = (await device.desk()).items[0].assignment;
    let {last} = await device.open(call);
    for (const {id, cover} of unit.enclosures) {
      if (!cover) continue;
      const done = await device.act(call, last + 1, {do: 'open-cover', enclosure: id});
      if (done.is === 'done') last += 1;
    }
    expect(await device.act(call, last + 1, {do: 'read', red, black})).toMatchObject({is: 'done'});
  }
  await wallShows(({heat}) => heat[0]?.terminals[red] === 2 && heat[0].terminals[black] === 2);
  expect(seen.at(-1)!.heat[0]).toMatchObject({unit: unitId, title: unit.title});
});

test('what will happen if a control is moved: answers first, one each; then the readings move for all to see', async () => {
  const unit = at.school.content.unit(unitId);
  const [red, black] = unit.circuits[0].rails;
  const breaker = unit.parts.find(({controls}) => controls.some(({isolates}) => isolates))!;
  const target = `${breaker.id}.${breaker.controls.find(({isolates}) => isolates)!.id}`;
  const poll = await at.get<Poll>('POST', `/classes/${period.id}/polls`, {
    question: 'What does the meter show once this is switched off?',
    answers: ['The same', 'Nothing'],
    right: 1,
    unit: unitId,
    actions: [],
    change: {actions: [{do: 'set', target, value: 'off'}]},
    watch: [{function: 'ac-volts', red, black}],
  });
  expect(poll.readings[0].before.value).toBeGreaterThan(20);
  await wallShows((each) => each.poll?.id === poll.id && each.poll.state === 'open');
  for (const each of seen.filter((wall) => wall.poll?.state === 'open')) {
    expect(each.poll).not.toHaveProperty('changed');
    expect(each.poll!.readings[0]).not.toHaveProperty('after');
    expect(each.poll).not.toHaveProperty('right');
  }
  ana.send({is: 'vote', poll: poll.id, answer: 1});
  ben.send({is: 'vote', poll: poll.id, answer: 0});
  // who has committed stays committed
  ben.send({is: 'vote', poll: poll.id, answer: 1});
  await wallShows((each) => each.poll?.committed === 2);
  await at.get('PATCH', `/polls/${poll.id}`, {state: 'shown'});
  await wallShows((each) => each.poll?.state === 'shown');
  const shown = seen.findLast((each) => each.poll?.state === 'shown')!.poll!;
  expect(shown).toMatchObject({counts: [1, 1], right: 1});
  expect(Math.abs(shown.readings[0].after!.value ?? 0)).toBeLessThan(5);
  expect(shown.changed).not.toBe('');
  await at.get('PATCH', `/polls/${poll.id}`, {state: 'over'});
  await expect.poll(() => seen.at(-1)!.poll, {timeout: 10_000}).toBeUndefined();
});

test('a poll on a part that the unit does not have is refused in a sentence', async () => {
  const response = await at.ask('POST', `/classes/${period.id}/polls`, {
    question: '?',
    answers: ['a', 'b'],
    unit: unitId,
    actions: [],
    change: {actions: [{do: 'set', target: 'NO.SUCH', value: 'off'}]},
    watch: [{function: 'ac-volts', red: 'TB1.L', black: 'TB1.N'}],
  });
  expect(response.status).toBe(400);
  expect(await response.text()).toMatch(/Action 1 of the question cannot be done/);
});
