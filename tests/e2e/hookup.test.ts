import {afterAll, beforeAll, describe, expect, test} from 'vitest';
import {readShippedTask} from '../../src/hookup/node/read-shipped-task.ts';
import {axe, laptop, phone, problemsOf, startHarness, type Harness} from './harness.ts';
import {wireByList} from './hookup-screens.ts';
import {Person, settle} from './person.ts';

const lamp = readShippedTask('lamp-and-switch');
const path = '#/hookup/lamp-and-switch';

let harness: Harness;
beforeAll(async () => {
  harness = await startHarness();
});
afterAll(() => harness.close());

/** Middle of a terminal on the screen, once it has been scrolled into sight. */
async function middleOf(person: Person, terminal: string): Promise<{x: number; y: number}> {
  const ring = await person.find(`g[data-terminal="${terminal}"] .ring`);
  return ring.evaluate((element) => {
    element.scrollIntoView({block: 'nearest', inline: 'nearest'});
    const box = element.getBoundingClientRect();
    return {x: box.left + box.width / 2, y: box.top + box.height / 2};
  });
}

async function showBoard(person: Person): Promise<void> {
  const board = await person.find('rb-hookup-board');
  await board.evaluate((element) => element.scrollIntoView({block: 'start'}));
}

async function drag(person: Person, from: string, to: string): Promise<void> {
  const {mouse} = person.page;
  const start = await middleOf(person, from);
  const end = await middleOf(person, to);
  await mouse.move(start.x, start.y);
  await mouse.down();
  await mouse.move((start.x + end.x) / 2, (start.y + end.y) / 2);
  await mouse.move(end.x, end.y);
  await mouse.up();
}

async function tap(person: Person, terminal: string): Promise<void> {
  const at = await middleOf(person, terminal);
  await person.page.touchscreen.tap(at.x, at.y);
}

/** Arrow keys from the terminal in focus to another one, always along the longer way that is left. */
async function walk(person: Person, to: string): Promise<void> {
  for (let step = 0; step < 30; step++) {
    if ((await person.nameInFocus()).startsWith(`Terminal ${to},`)) return;
    const focused = /^Terminal (\S+),/.exec(await person.nameInFocus())?.[1];
    expect(focused, 'a terminal is in focus').toBeDefined();
    const at = await middleOf(person, focused!);
    const there = await middleOf(person, to);
    const [dx, dy] = [there.x - at.x, there.y - at.y];
    const sideways = dx > 0 ? 'ArrowRight' : 'ArrowLeft';
    const upright = dy > 0 ? 'ArrowDown' : 'ArrowUp';
    const wide = Math.abs(dx) > Math.abs(dy);
    // every fourth step the shorter way, so as not to go to and fro
    await person.key(
      wide !== (step % 4 === 3) || Math.min(Math.abs(dx), Math.abs(dy)) < 2
        ? wide
          ? sideways
          : upright
        : wide
          ? upright
          : sideways,
    );
    await settle();
  }
  throw new Error(`The arrow keys never reached ${to}.`);
}

async function finish(person: Person): Promise<void> {
  await person.press('Check my wiring');
  await person.sees('Right.', '.verdict');
  await person.sees('yes', '.grade');
  expect(await axe(person.page)).toEqual([]);
  expect(problemsOf(person.page)).toEqual([]);
}

describe('a student wires a lamp and its switch', () => {
  test('by mouse, dragging; undo, redo and a reload keep what was wired', async () => {
    const student = new Person(await harness.open(path, laptop, 'mouse'), false);
    await student.find('g.terminal');
    await showBoard(student);
    for (const {from, to} of lamp.answer) {
      await drag(student, from, to);
      await student.sees(`from ${from} to ${to}.`, '.hint');
    }
    await student.press('Undo');
    await student.sees('Wires as a list (4)', 'summary');
    await student.press('Redo');
    await student.sees('Wires as a list (5)', 'summary');
    await student.page.reload();
    await student.sees('Wires as a list (5)', 'summary');
    await finish(student);
  });

  test('by touch, two taps a wire', async () => {
    const student = new Person(await harness.open(path, phone, 'touch'), true);
    await student.find('g.terminal');
    await showBoard(student);
    for (const {from, to} of lamp.answer) {
      await tap(student, from);
      await student.sees(`From ${from}`, '.hint');
      await tap(student, to);
      await student.sees(`from ${from} to ${to}.`, '.hint');
    }
    await finish(student);
  });

  test('by keyboard alone', async () => {
    const student = new Person(await harness.open(path, laptop, 'keys'), false);
    await student.find('g.terminal');
    await student.tabTo('Terminal SUP.L');
    for (const {from, to} of lamp.answer) {
      await walk(student, from);
      await student.key('Enter');
      await student.sees(`From ${from}`, '.hint');
      await walk(student, to);
      await student.key('Enter');
      await student.sees(`from ${from} to ${to}.`, '.hint');
    }
    await student.tabTo('Check my wiring');
    await student.key('Enter');
    await student.sees('Right.', '.verdict');
  });
});

test('a bypass is found, its wire shown, taken off, and the hookup is right after one correction', async () => {
  const three = readShippedTask('three-safeties');
  const student = new Person(
    await harness.open('#/hookup/three-safeties', laptop, 'bypass'),
    false,
  );
  await student.find('g.terminal');
  await wireByList(student, [...three.answer, {from: 'HPS.1', to: 'HPS.2'}]);
  await student.press('Check my wiring');
  await student.sees('Not right yet.', '.verdict');
  await student.sees('K1 (control relay) stays on while HPS', '.findings');
  await student.press('Show its wires on the board');
  await student.find('g.wire.concerned[data-wire=H13]');
  await student.press('Take off H13');
  await student.press('Check my wiring');
  await student.sees('Right.', '.verdict');
  await student.sees('Corrections 1', '.grade');
});

test('the wired board goes on the bench without power, and the breaker brings it', async () => {
  const student = new Person(await harness.open(path, laptop, 'bench'), false);
  await student.find('g.terminal');
  await wireByList(student, lamp.answer);
  await student.press('Put it on the bench');
  await student.find('rb-meter-face');
  await student.sees('Lamp LT1 is dark', 'rb-observations, .observations, li');
  await student.press('Unit', '[role=tab]');
  // both the switch and the breaker can be put on: the breaker is the one that isolates
  await student.pressOn('[role=group][aria-label*=CB1] [data-value=on]');
  await student.sees('Times energised 1', '.grade');
});
