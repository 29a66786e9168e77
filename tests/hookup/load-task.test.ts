import {readFileSync} from 'node:fs';
import {describe, expect, test} from 'vitest';
import {formatContentError} from '../../src/content/content-error.ts';
import {loadTask} from '../../src/hookup/load-task.ts';
import {loadWires} from '../../src/hookup/load-wires.ts';
import {readShippedTask} from '../../src/hookup/node/read-shipped-task.ts';

const text = readFileSync(
  new URL('../../content/hookups/lamp-and-switch.yaml', import.meta.url),
  'utf8',
);

/** Errors of the shipped task with one thing written differently, and the line on which it stands. */
function errorsWith(right: string, wrong: string): {lines: string[]; line: number} {
  const changed = text.replace(right, wrong);
  expect(changed).not.toBe(text);
  const line = changed.slice(0, changed.indexOf(wrong)).split('\n').length;
  return {lines: loadTask(changed, 'task.yaml').errors.map(formatContentError), line};
}

describe('a task file with a mistake tells where it is and how to mend it', () => {
  test.each([
    [
      'a load that is not there',
      'LT1.filament at least',
      'LT1.coil at least',
      'there is no load LT1.coil',
    ],
    [
      'a rule without numbers',
      'at least 85 % of rated exactly',
      'works exactly',
      'this is no rule that can be checked',
    ],
    ['a switch that is not there', 'when S1 is', 'when S7 is', 'there is no input S7'],
    [
      'a contact that is not there',
      'contact: S1.contact',
      'contact: S1.pole',
      'there is no contact S1.pole',
    ],
    [
      'a terminal of the answer that is not there',
      'to: LT1.1,',
      'to: LT1.9,',
      'there is no terminal LT1.9',
    ],
    ['a part kind that is not there', 'kind: lamp', 'kind: lmap', 'there is no part kind "lmap"'],
    ['a key that is not known', 'bonded:', 'bondet:', 'the key `bondet` is not known here'],
    ['a share that is no different from off', '85 %', '15 %', '15 % cannot be told from off'],
  ])('%s', (_, right, wrong, message) => {
    const {lines, line} = errorsWith(right, wrong);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(new RegExp(`^task\\.yaml:${line}:\\d+ `));
    expect(lines[0]).toContain(message);
    expect(lines[0]).toContain(' — ');
  });

  test('all mistakes are told at once, in file order', () => {
    const changed = text.replace('kind: lamp', 'kind: lmap').replace('level: 1', 'level: 9');
    expect(loadTask(changed, 't').errors.map(({line}) => line)).toEqual(
      loadTask(changed, 't')
        .errors.map(({line}) => line)
        .sort((a, b) => a - b),
    );
    expect(loadTask(changed, 't').errors).toHaveLength(2);
  });
});

describe('a file of wires', () => {
  const task = readShippedTask('lamp-and-switch');
  test('gives wires without ids the ids H1, H2 …', () => {
    const {wires} = loadWires('wires:\n  - {from: S1.1, to: CB1.T1, gauge: 14}\n', 'w.yaml', task);
    expect(wires).toEqual([{id: 'H1', from: 'S1.1', to: 'CB1.T1', gauge: 14, colour: 'black'}]);
  });
  test('tells a terminal that the task does not have', () => {
    const {errors} = loadWires('wires:\n  - {from: S1.1, to: CB1.T9}\n', 'w.yaml', task);
    expect(errors.map(formatContentError)).toEqual([
      expect.stringMatching(/^w\.yaml:2:22 there is no terminal CB1\.T9 — did you mean CB1\.T1/),
    ]);
  });
});
