import type {Page} from 'puppeteer-core';
import {readShippedTask} from '../../src/hookup/node/read-shipped-task.ts';
import type {HookupWire} from '../../src/hookup/hookup-task.ts';
import {Person} from './person.ts';
import type {ScreenToSee} from './screen-list.ts';

type Ends = Pick<HookupWire, 'from' | 'to'>;

const three = readShippedTask('three-safeties');

/** Puts wires in by the list under the board, as a person without a pointer may. */
export async function wireByList(person: Person, wires: readonly Ends[]): Promise<void> {
  await person.pressOn('rb-hookup-task-page summary, details > summary');
  for (const {from, to} of wires) {
    await choose(person, 'From', from);
    await choose(person, 'To', to);
    await person.press('Add the wire');
    await person.sees(`from ${from} to ${to}`, '.hint');
  }
}

async function choose(person: Person, field: string, value: string): Promise<void> {
  const select = await person.called(field, '.bar select');
  await select.evaluate((element, chosen) => {
    (element as HTMLSelectElement).value = chosen;
    element.dispatchEvent(new Event('change'));
  }, value);
}

async function bypassed(page: Page): Promise<void> {
  const person = new Person(page, false);
  await person.find('g.terminal');
  await wireByList(person, [...three.answer, {from: 'HPS.1', to: 'HPS.2'}]);
}

/** The screens of the wiring tasks. */
export const hookupScreens: readonly ScreenToSee[] = [
  {
    name: 'hookup',
    path: '#/hookup',
    wholePage: true,
    prepare: async (page) => void (await new Person(page, false).find('.tasks')),
  },
  {
    name: 'hookup-empty',
    path: '#/hookup/three-safeties',
    prepare: async (page) => void (await new Person(page, false).find('g.terminal')),
  },
  {
    name: 'hookup-checked',
    path: '#/hookup/three-safeties',
    wholePage: true,
    prepare: async (page) => {
      await bypassed(page);
      const person = new Person(page, false);
      await person.press('Check my wiring');
      await person.press('Show its wires on the board');
    },
  },
  {
    name: 'hookup-bench',
    path: '#/hookup/three-safeties',
    wholePage: true,
    prepare: async (page) => {
      await bypassed(page);
      const person = new Person(page, false);
      await person.press('Put it on the bench');
      await person.find('rb-meter-face');
    },
  },
];
