import {afterAll, beforeAll, expect, test} from 'vitest';
import {Bench} from '../../../src/bench/bench.ts';
import type {Action} from '../../../src/bench/actions.ts';
import type {ClassDetail} from '../../../src/classroom/protocol/rest.ts';
import type {StudentAnswer} from '../../../src/classroom/protocol/student-messages.ts';
import type {WorkSet} from '../../../src/classroom/protocol/work-set.ts';
import {catalogue} from '../../../src/faults/catalogue.ts';
import type {Fault} from '../../../src/faults/fault.ts';
import {meterFlaws, type MeterFlaw} from '../../../src/meter/meter-condition.ts';
import {ClassAtWork} from './class-at-work.ts';

/**
 * Non-interference (Goguen and Meseguer, "Security Policies and Security Models", 1982; from memory): what a device
 * receives is the same for two hidden faults as long as what was seen, heard and read is the same.
 */

const unitId = 'practice-panel';
let at: ClassAtWork;
let period: ClassDetail;
beforeAll(async () => {
  at = await ClassAtWork.open();
  await at.firstStart();
  period = await at.classOf('Ana');
}, 60_000);
afterAll(() => at.close(), 60_000);

/** Actions that any student might do first: covers, controls, waiting, readings, some of them impossible. */
function route(): Action[] {
  const unit = at.school.content.unit(unitId);
  const terminals = unit.parts.flatMap(({id, terminals}) =>
    terminals.map((name) => `${id}.${name}`),
  );
  const [a, b] = unit.circuits[0].rails;
  return [
    ...unit.enclosures
      .filter(({cover}) => cover)
      .map(({id}): Action => ({do: 'open-cover', enclosure: id})),
    {do: 'read', red: a, black: b},
    {do: 'meter', function: 'low-impedance-volts'},
    {do: 'read', red: terminals[0], black: b, expected: {value: 24}},
    {do: 'read', red: 'NO.SUCH', black: b},
    {do: 'wait', seconds: 30},
    {do: 'name', fault: 'no such fault', evidence: []},
    {do: 'meter', function: 'ac-volts'},
    ...terminals.slice(0, 12).map((red): Action => ({do: 'read', red, black: b})),
    {do: 'note', text: 'So far the same.'},
  ];
}

/** What is hidden in a call. */
interface Hidden {
  readonly faults: readonly Fault[];
  readonly meterFlaw?: MeterFlaw;
}

/** What a bench shows for the route, so that what is hidden can be told apart by what it lets be seen. */
function shown(hidden: Hidden, actions: readonly Action[]): string[] {
  const unit = at.school.content.unit(unitId);
  // seed 0: an exact meter, as set below
  const bench = new Bench({unit, complaint: '', seed: 0, ...hidden});
  const views = [JSON.stringify(bench.view())];
  for (const action of actions) {
    const result = bench.act(action);
    views.push('refused' in result ? 'refused' : JSON.stringify(bench.view()));
  }
  return views;
}

/**
 * Everything one device receives for a call with a hidden fault. Ids are random and no two calls share them, so those of
 * set, call, student and note are masked by their place in the traffic; nothing else is.
 */
async function traffic({faults, ...meter}: Hidden, actions: readonly Action[]): Promise<string[]> {
  const set = await at.get<WorkSet>('POST', `/classes/${period.id}/sets`, {
    kind: 'same',
    title: 'Call',
    unit: unitId,
    faults: faults.map(({id}) => id),
    ...meter,
    complaint: 'It does not work.',
    open: true,
  });
  const [row] = await at.school.work.ofSet(set.id);
  await at.school.work.change(row.id, {seed: 0});
  const device = await at.join(period, 'Ana');
  await device.desk();
  await device.question({is: 'catalogue', assignment: row.id});
  await device.open(row.id);
  let number = 1;
  for (const action of actions) {
    const answer = await device.act(row.id, number, action);
    if (answer.is === 'done') number += 1;
  }
  await device.question({is: 'debrief', assignment: row.id});
  await device.question({is: 'coach', assignment: row.id, level: 3});
  // a gap in the numbers, and an action that was done already: both are answered
  await device.act(row.id, number + 5, {do: 'wait', seconds: 1});
  await device.act(row.id, 1, actions[0]);
  const texts = [...device.texts];
  device.drop();
  await at.get('DELETE', `/sets/${set.id}`).catch(() => undefined);
  await at.school.work.removeSet(set.id);
  return texts.map((text) => text.replaceAll(row.id, 'CALL'));
}

/** Groups of what may be hidden that the route cannot tell apart. */
function alikeAmong(all: readonly Hidden[], actions: readonly Action[]): Hidden[][] {
  const groups = new Map<string, Hidden[]>();
  for (const hidden of all) {
    const key = JSON.stringify(shown(hidden, actions));
    groups.set(key, [...(groups.get(key) ?? []), hidden]);
  }
  return [...groups.values()].filter((each) => each.length > 1);
}

test('two faults that show the same so far send the same bytes: messages, sizes, order, errors', async () => {
  const actions = route();
  const all = catalogue(at.school.content.unit(unitId)).map((fault) => ({faults: [fault]}));
  const alike = alikeAmong(all, actions);
  expect(alike.length).toBeGreaterThan(2);
  for (const group of alike.slice(0, 3)) {
    expect(await traffic(group.at(-1)!, actions)).toEqual(await traffic(group[0], actions));
  }
  // and the test can fail: faults that show something else send something else
  const [p, q] = alike;
  expect(await traffic(p[0], actions)).not.toEqual(await traffic(q[0], actions));
}, 240_000);

test('the same holds for two faults at once, and for one beside two', async () => {
  const actions = route();
  const singles = catalogue(at.school.content.unit(unitId));
  // each single fault, and each with the open wire W17 as a second
  const [second] = singles.filter(({id}) => id === 'W17:open');
  const all = singles
    .filter((fault) => fault !== second)
    .flatMap((fault): Hidden[] => [{faults: [fault]}, {faults: [fault, second]}]);
  const alike = alikeAmong(all, actions);
  const mixed = alike.find((group) => new Set(group.map(({faults}) => faults.length)).size > 1);
  const pairs = alike.find((group) => group.filter(({faults}) => faults.length > 1).length > 1)!;
  // two faults may show what one shows: nothing sent may tell that there are two
  const one = mixed!.find(({faults}) => faults.length === 1)!;
  const two = mixed!.find(({faults}) => faults.length === 2)!;
  expect(await traffic(two, actions)).toEqual(await traffic(one, actions));
  const [p, q] = pairs.filter(({faults}) => faults.length === 2);
  expect(await traffic(p, actions)).toEqual(await traffic(q, actions));
}, 240_000);

test('what is wrong with the student’s own meter is told by what it shows, and by nothing else', async () => {
  const actions = route();
  const faults = catalogue(at.school.content.unit(unitId)).slice(0, 1);
  const flawed = (meterFlaw: MeterFlaw): Hidden => ({faults, meterFlaw});
  // the fuse of the microamps input says nothing until microamps are read
  expect(await traffic(flawed('blown-fuse'), actions)).toEqual(
    await traffic(flawed('sound'), actions),
  );
  const used: Action[] = [
    ...actions,
    {do: 'meter', function: 'dc-microamps'},
    {do: 'renew', what: 'fuse'},
  ];
  expect(await traffic(flawed('broken-lead'), used)).not.toEqual(
    await traffic(flawed('sound'), used),
  );
  // a meter that is to be proved says so, whether it is sound or not
  expect(await traffic(flawed('sound'), actions)).not.toEqual(await traffic({faults}, actions));
}, 240_000);

test('nothing that goes down before a name tells a fault: only the list of all faults holds their names', async () => {
  const before = at.sentDown.length;
  const all = catalogue(at.school.content.unit(unitId));
  const hidden = [
    {faults: [all[5]]},
    {faults: [all.at(-3)!]},
    {faults: [all[7], all[9]], meterFlaw: 'broken-lead' as const},
  ];
  for (const each of hidden) await traffic(each, route());
  const texts = at.sentDown.slice(before);
  const isCatalogue = (text: string): boolean => {
    const answer = JSON.parse(text) as StudentAnswer;
    return answer.is === 'told' && answer.told.what === 'catalogue';
  };
  const lists = texts.filter(isCatalogue);
  expect(new Set(lists.map((text) => text.replace(/"ask":\d+/, ''))).size).toBe(1);
  for (const text of texts.filter((each) => !isCatalogue(each))) {
    for (const flaw of meterFlaws.filter((each) => each !== 'sound'))
      expect(text).not.toContain(flaw);
    for (const {id, name} of all) {
      expect(text).not.toContain(id);
      expect(text).not.toContain(name);
    }
  }
});

test('no route of the server tells a student a hidden fault, nor anything to who has not signed in', async () => {
  const set = await at.get<WorkSet>('POST', `/classes/${period.id}/sets`, {
    kind: 'same',
    unit: unitId,
    faults: ['W8:open'],
    complaint: 'Dark.',
    open: true,
  });
  const {cookie, csrf} = at;
  Object.assign(at, {cookie: '', csrf: ''});
  const paths = [
    `/classes/${period.id}`,
    `/classes/${period.id}/sets`,
    `/sets/${set.id}/debrief`,
    `/classes/${period.id}/gradebook`,
    `/classes/${period.id}/gradebook.csv`,
    `/classes/${period.id}/actions.csv`,
    `/classes/${period.id}/xapi.json`,
    `/students/${period.roster[0].id}/records`,
    `/units/${unitId}/catalogue`,
  ];
  for (const path of paths) {
    const response = await at.ask('GET', path);
    expect([path, response.status]).toEqual([path, 401]);
    expect(await response.text()).not.toContain('W8:open');
  }
  for (const path of ['/hello', `/join/${period.code}`]) {
    expect(await (await at.ask('GET', path)).text()).not.toContain('W8');
  }
  Object.assign(at, {cookie, csrf});
});
