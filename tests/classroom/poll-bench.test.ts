import {expect, test} from 'vitest';
import {heatOf} from '../../src/classroom/heat-map.ts';
import {pollReadings} from '../../src/classroom/poll-bench.ts';
import {pollBody} from '../../src/classroom/protocol/poll.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';

const unit = readShippedUnit('practice-panel');
const [red, black] = unit.circuits[0].rails;
const service = unit.parts.find(({controls}) => controls.some((control) => control.isolates))!;
const control = service.controls.find((each) => each.isolates)!;
const target = `${service.id}.${control.id}`;

test('opening the breaker takes the volts off the rails: before and after, by an exact meter', () => {
  const poll = pollBody.parse({
    question: 'What will the meter show?',
    answers: ['The same', 'Nothing'],
    unit: unit.id,
    actions: [],
    change: {actions: [{do: 'set', target, value: 'off'}]},
    watch: [{function: 'ac-volts', red, black}],
  });
  const {readings, changed} = pollReadings(unit, poll);
  expect(readings[0].before.value).toBeGreaterThan(20);
  expect(Math.abs(readings[0].after.value ?? 0)).toBeLessThan(5);
  expect(changed).not.toBe('');
});

test('a name that the unit does not have is told in a sentence', () => {
  const poll = pollBody.parse({
    question: '?',
    answers: ['a', 'b'],
    unit: unit.id,
    actions: [],
    change: {fault: 'W8:open'},
    watch: [{function: 'ac-volts', red: 'NO.SUCH', black}],
  });
  expect(() => pollReadings(unit, poll)).toThrow(/has no "NO.SUCH"/);
});

test('the heat map counts each lead where it was put, and clamps by wire', () => {
  expect(
    heatOf('u', 'Unit', [
      {do: 'read', red: 'A.1', black: 'B.1'},
      {do: 'read', red: 'A.1', black: 'A.1'},
      {do: 'clamp', wire: 'W3'},
      {do: 'note', text: 'no place'},
    ]),
  ).toEqual({unit: 'u', title: 'Unit', terminals: {'A.1': 2, 'B.1': 1}, wires: {W3: 1}});
});
