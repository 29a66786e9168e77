import {readFileSync} from 'node:fs';
import type {ElementHandle} from 'puppeteer-core';
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

async function pickWire(person: Person, wire: string): Promise<void> {
  const middle = await (
    await person.find(`g.wire[data-wire=${wire}] .copper`)
  ).evaluate((element) => {
    const path = element as unknown as SVGPathElement;
    const length = path.getTotalLength();
    // some way along, where no terminal lies over it
    const {x, y} = path.getPointAtLength(length / 2);
    path.scrollIntoView({block: 'nearest', inline: 'nearest'});
    const at = new DOMPoint(x, y).matrixTransform(path.getScreenCTM()!);
    return {x: at.x, y: at.y};
  });
  if (person.touch) await person.page.touchscreen.tap(middle.x, middle.y);
  else await person.page.mouse.click(middle.x, middle.y);
  await person.sees(`${wire} is picked`, '.hint');
}

async function focusWire(person: Person, wire: string): Promise<void> {
  const found = await person.find(`g.wire[data-wire=${wire}]`);
  await found.evaluate((element) => element.focus());
}

async function dragEnd(person: Person, end: 'from' | 'to', terminal: string): Promise<void> {
  const {mouse} = person.page;
  const to = await middleOf(person, terminal);
  const start = await middleOfShown(await person.find(`g.handle[data-end=${end}] .grip`));
  await mouse.move(start.x, start.y);
  await mouse.down();
  await mouse.move((start.x + to.x) / 2, (start.y + to.y) / 2);
  await mouse.move(to.x, to.y);
  await mouse.up();
}

const middleOfShown = (element: ElementHandle<HTMLElement>): Promise<{x: number; y: number}> =>
  element.evaluate((it) => {
    const box = it.getBoundingClientRect();
    return {x: box.left + box.width / 2, y: box.top + box.height / 2};
  });

const tapAt = (person: Person, {x, y}: {x: number; y: number}): Promise<void> =>
  person.page.touchscreen.tap(x, y);

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
    await student.find('rb-hookup-task-page[kept]');
    await student.page.reload();
    await student.sees('Wires as a list (5)', 'summary');
    await showBoard(student);
    await pickWire(student, 'H3');
    await dragEnd(student, 'to', 'LT1.2');
    await student.sees('Wire H3 now from S1.2 to LT1.2.', '.hint');
    await student.press('Undo');
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
    await pickWire(student, 'H3');
    const handle = await student.find('g.handle[data-end=to] .grip');
    await tapAt(student, await middleOfShown(handle));
    await student.sees('H3 is in hand', '.hint');
    await tap(student, 'LT1.2');
    await student.sees('Wire H3 now from S1.2 to LT1.2.', '.hint');
    await student.press('Undo');
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
    // one end to another terminal, and back where it was
    await focusWire(student, 'H3');
    await student.key('Enter');
    await student.sees('H3 is picked', '.hint');
    for (const [at, to] of [
      ['LT1.1', 'LT1.2'],
      ['LT1.2', 'LT1.1'],
    ]) {
      await student.tabTo(`End of H3 at ${at}`);
      await student.key('Enter');
      await student.sees('H3 is in hand', '.hint');
      await walk(student, to);
      await student.key('Enter');
      await student.sees(`Wire H3 now from S1.2 to ${to}.`, '.hint');
      await focusWire(student, 'H3');
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

test('the wired board goes on the bench without power, is read dead, energised, and found again after a reload', async () => {
  const student = new Person(await harness.open(path, laptop, 'bench'), false);
  await student.find('g.terminal');
  await wireByList(student, lamp.answer);
  await student.press('Put it on the bench');
  await student.find('rb-meter-face');
  await student.sees('Lamp LT1 is dark', 'rb-observations, .observations, li');
  await student.press('Ohms', 'button');
  await readAcross(student, 'LT1.1', 'LT1.2', '200');
  await student.sees('10 of 10', '.grade');
  await student.press('Unit', '[role=tab]');
  // both the switch and the breaker can be put on: the breaker is the one that isolates
  await student.pressOn('[role=group][aria-label*=CB1] [data-value=on]');
  await student.sees('Times energised 1; of these on unsafe wires never', '.grade');
  await student.pressOn('[role=group][aria-label*="S1"] [data-value=on]');
  await student.sees('Lamp LT1 is lit', 'rb-observations, .observations, li');
  const glass = await student.text('rb-meter-face');
  await student.find('rb-hookup-task-page[kept]');
  await student.page.reload();
  await student.find('rb-meter-face');
  await student.sees('Lamp LT1 is lit', 'rb-observations, .observations, li');
  expect(await student.text('rb-meter-face')).toBe(glass);
  await student.sees('Times energised 1; of these on unsafe wires never', '.grade');
  expect(problemsOf(student.page)).toEqual([]);
});

test('a short that gets power opens what guards it, and an ohms reading before would have told', async () => {
  const student = new Person(await harness.open(path, phone, 'short'), true);
  await student.find('g.terminal');
  await wireByList(student, [...lamp.answer, {from: 'CB1.T1', to: 'SUP.N'}]);
  await student.press('Put it on the bench');
  await student.find('rb-meter-face');
  await student.press('Unit', '[role=tab]');
  await student.pressOn('[role=group][aria-label*=CB1] [data-value=on]');
  await student.sees('Times energised 1; of these on unsafe wires once', '.grade');
  await student.sees('energised without one once', '.grade');
  await student.press('Check my wiring');
  await student.sees('Dead short', '.findings');
  await student.sees('Ohms, power off', '.findings');
  expect(await axe(student.page)).toEqual([]);
});

test('work is in the history with its debrief, goes out as a file and comes in again', async () => {
  const student = new Person(await harness.open(path, laptop, 'history'), false);
  await student.find('g.terminal');
  await wireByList(student, lamp.answer.slice(0, 4));
  await student.press('Check my wiring');
  await student.sees('Corrections 1', '.grade');
  await student.page.evaluate("location.hash = '#/history'");
  await student.press('Debrief: A lamp', 'a');
  await student.sees('not right yet: Corrections 1', '.grade');
  await student.sees('Wire H1 from', '.lines');
  expect(await axe(student.page)).toEqual([]);
  // what the export button saves, caught on its way to the disk
  await student.page.evaluate("location.hash = '#/history'");
  await student.find('rb-hookup-history');
  await student.page.evaluate(`(() => {
    URL.createObjectURL = (blob) => { globalThis.saved = blob; return 'blob:none'; };
    HTMLAnchorElement.prototype.click = () => undefined;
  })()`);
  await student.press('Export: A lamp', 'button');
  const text = (await student.page.evaluate('globalThis.saved.text()')) as string;
  const other = new Person(await harness.open('#/history', laptop, 'other'), false);
  await giveFile(await other.find('input.file'), 'work.json', text);
  await other.sees('Imported: ', '[role=status]');
  await other.press('Debrief: A lamp', 'a');
  await other.sees('not right yet: Corrections 1', '.grade');
  expect(problemsOf(other.page)).toEqual([]);
});

test('a task file of an instructor is checked with lines and columns, kept, and wired', async () => {
  const text = readFileSync('content/hookups/lamp-and-switch.yaml', 'utf8');
  const author = new Person(await harness.open('#/hookup', laptop, 'author'), false);
  const field = await author.find('.drop input');
  const wrong = text.replace('LT1.2, to: SUP.N', 'LT1.9, to: SUP.N');
  const line = wrong.split('\n').findIndex((each) => each.includes('LT1.9')) + 1;
  await giveFile(field, 'lamp.yaml', wrong);
  await author.sees(`lamp.yaml:${line}:12`, '.mistakes');
  await author.sees('There is no terminal LT1.9', '.mistakes');
  await giveFile(field, 'lamp.yaml', text);
  await author.sees('comes with Rungbench', '[role=status]');
  const own = text
    .replace('id: lamp-and-switch', 'id: our-lamp')
    .replace(/title: A lamp[^\n]*/, 'title: Our own lamp');
  // dropped on the page this time
  await (
    await author.find('.drop')
  ).evaluate((area, content) => {
    const dropped = new DataTransfer();
    dropped.items.add(new File([content], 'ours.yaml'));
    area.dispatchEvent(new DragEvent('drop', {dataTransfer: dropped, bubbles: true}));
  }, own);
  await author.find('g.terminal');
  await wireByList(author, lamp.answer);
  await author.press('Check my wiring');
  await author.sees('Right.', '.verdict');
  await author.page.evaluate("location.hash = '#/hookup'");
  await author.sees('Right the first time', 'section[aria-labelledby=own]');
  expect(await axe(author.page)).toEqual([]);
});

/** Puts both leads down by the list of terminals, says what is expected, and reads. */
async function readAcross(
  person: Person,
  red: string,
  black: string,
  expected: string,
): Promise<void> {
  for (const terminal of [red, black]) {
    await person.write('input[role=combobox]', terminal);
    await person.key('Enter');
    await settle();
  }
  await person.write('#expected', expected);
  await person.press('Read', 'button[type=submit]');
}

async function giveFile(
  field: ElementHandle<HTMLElement>,
  name: string,
  text: string,
): Promise<void> {
  await field.evaluate(
    (input, fileName, content) => {
      const chosen = new DataTransfer();
      chosen.items.add(new File([content], fileName));
      (input as HTMLInputElement).files = chosen.files;
      input.dispatchEvent(new Event('change'));
    },
    name,
    text,
  );
}
