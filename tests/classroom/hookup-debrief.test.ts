import {expect, test} from 'vitest';
import {hookupDebrief} from '../../src/classroom/hookup-debrief.ts';
import {checkHookup} from '../../src/hookup/check-hookup.ts';
import {readShippedTask} from '../../src/hookup/node/read-shipped-task.ts';

const task = readShippedTask('three-safeties');
const wire = (id: string, from: string, to: string) =>
  ({id, from, to, gauge: 18, colour: 'red'}) as const;
const right = checkHookup(task, task.answer);
const bypassed = checkHookup(task, [...task.answer, wire('X1', 'HPS.1', 'HPS.2')]);
const spare = checkHookup(task, [...task.answer, wire('X2', 'TB2.C', 'GND1.E')]);

test('a mistake is counted by students, not by hand-ins; the dangerous one stands first, with a cause', () => {
  const {findings, ways} = hookupDebrief([
    {name: 'Ben', stage: 'working', checks: [bypassed, bypassed]},
    {name: 'Ana', stage: 'done', points: 90, checks: [bypassed, right]},
    {name: 'Chi', stage: 'done', points: 100, checks: [spare]},
  ]);
  expect(findings.map(({text, students, dangerous}) => [text, students, dangerous])).toEqual([
    ['Safety bypassed', 2, true],
  ]);
  expect(findings[0].cause).toMatch(/HPS|high-pressure/i);
  expect(ways.map(({name, handIns, firstRight}) => [name, handIns, firstRight])).toEqual([
    ['Chi', 1, true],
    ['Ana', 2, false],
    ['Ben', 2, false],
  ]);
});

test('a wire that does no harm is no mistake', () => {
  expect(spare.verdict).toBe('right');
  expect(hookupDebrief([{name: 'Chi', stage: 'done', checks: [spare]}]).findings).toEqual([]);
});
