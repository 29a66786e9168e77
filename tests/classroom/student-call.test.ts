import {expect, test} from 'vitest';
import type {Action} from '../../src/bench/actions.ts';
import type {BenchView} from '../../src/bench/bench-view.ts';
import {applyAnswer} from '../../src/classroom/protocol/apply-answer.ts';
import {StudentCall} from '../../src/classroom/student-call.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';

const unit = readShippedUnit('practice-panel');
const setup = {unit, faults: [], complaint: 'Routine.', seed: 4};
const [red, black] = unit.circuits[0].rails;
const covers = unit.enclosures.filter(({cover}) => cover).map(({id}) => id);
const actions: Action[] = [
  ...covers.map((enclosure): Action => ({do: 'open-cover', enclosure})),
  {do: 'read', red, black},
  {do: 'meter', function: 'ohms'},
  // ohms on a live circuit: a safety finding
  {do: 'read', red, black},
  {do: 'wait', seconds: 60},
  {do: 'note', text: 'Live.'},
];

test('the view put together from the answers is the view of the bench', () => {
  const call = new StudentCall('a', setup, []);
  let view: BenchView = call.opened({coach: false}).view;
  actions.forEach((action, i) => {
    const acted = call.act(i + 1, action);
    expect(acted.is).toBe('new');
    if (acted.is === 'new') view = applyAnswer(view, JSON.parse(JSON.stringify(acted.answer)));
    expect(view).toEqual(JSON.parse(JSON.stringify(call.bench.view())));
  });
  expect(view.safety.length).toBeGreaterThan(0);
});

test('an action that comes twice is done once, and its answer leads to the same view', () => {
  const call = new StudentCall('a', setup, actions);
  const before = JSON.stringify(call.bench.view());
  const old = new StudentCall('a', setup, actions.slice(0, 2)).bench.view();
  const again = call.act(3, actions[2]);
  expect(again.is).toBe('again');
  expect(JSON.stringify(call.bench.view())).toBe(before);
  if (again.is === 'again') expect(applyAnswer(old, again.answer)).toEqual(call.bench.view());
});

test('a gap, or another action under a number that is taken, sets device and bench apart', () => {
  const call = new StudentCall('a', setup, actions);
  expect(call.act(actions.length + 2, {do: 'wait', seconds: 1})).toEqual({is: 'apart'});
  expect(call.act(2, {do: 'wait', seconds: 1})).toEqual({is: 'apart'});
  expect(call.last).toBe(actions.length);
});

test('a refused action leaves its number free', () => {
  const call = new StudentCall('a', setup, actions);
  const next = actions.length + 1;
  expect(call.act(next, {do: 'read', red: 'NO.SUCH', black})).toHaveProperty('sentence');
  expect(call.act(next, {do: 'wait', seconds: 1})).toMatchObject({is: 'new'});
});
