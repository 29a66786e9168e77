import type {Page} from 'puppeteer-core';
import {callLink, read} from './at-the-bench.ts';
import {Person} from './person.ts';
import type {ScreenToSee} from './screen-list.ts';

const complaint = 'The call switch is on, but the lamp does not light.';
const path = (): string => callLink('practice-panel', ['W17:open'], complaint);

/** Takes the call, and goes on from there. */
const atBench =
  (more: (student: Person) => Promise<void> = async () => undefined) =>
  async (page: Page): Promise<void> => {
    const student = new Person(page, (page.viewport()?.width ?? 1280) < 600);
    await student.press('Take the call');
    await student.find('rb-meter-face');
    await more(student);
  };

const hop = async (student: Person): Promise<void> => {
  await student.press('Understood');
  await student.press('Unit', '[role=tab]');
  await student.pressOn('button[data-value=on]');
  await student.press('Probe', '[role=tab]');
  await student.pressOn('button[data-lead=black]');
  await student.pickOnDrawing('TB2.C');
  for (const terminal of ['FS1.2', 'HPS.1']) {
    await student.pickOnDrawing(terminal);
    await read(student, '24');
  }
};

const tab = (name: string) =>
  atBench(async (student) => {
    await hop(student);
    await student.press(name, '[role=tab]');
  });

const naming = async (student: Person): Promise<void> => {
  await hop(student);
  await student.press(
    (student.page.viewport()?.width ?? 1280) < 600 ? 'Name it' : 'Name the fault',
  );
  await student.writeIn('Part or wire', 'W17');
  await student.press('W17', '[role=option]');
  await student.press('open', 'label');
};

/** The bench and the debrief, in the states a student meets. */
export const benchScreens: readonly ScreenToSee[] = [
  {name: 'bench-begun', path: path(), prepare: atBench()},
  {name: 'bench-hopping', path: path(), prepare: atBench(hop)},
  {name: 'bench-unit', path: path(), prepare: tab('Unit')},
  {name: 'bench-wires', path: path(), prepare: tab('Wires')},
  {name: 'bench-log', path: path(), prepare: tab('Log')},
  {name: 'bench-naming', path: path(), prepare: atBench(naming)},
  {
    name: 'debrief',
    path: path(),
    wholePage: true,
    prepare: atBench(async (student) => {
      await naming(student);
      await student.pressOn('.choice input');
      await student.press('Name this fault');
      await student.press('Name it', '.foot button, button');
      await student.sees('Right', 'h1');
    }),
  },
];
