import {afterAll, beforeAll, describe, expect, test} from 'vitest';
import {callLink, read, takeCall} from './at-the-bench.ts';
import {axe, laptop, phone, problemsOf, startHarness, type Harness} from './harness.ts';
import type {Person} from './person.ts';

let harness: Harness;
beforeAll(async () => {
  harness = await startHarness();
});
afterAll(() => harness.close());

const link = (): string =>
  callLink('practice-panel', ['W17:open'], 'The call switch is on, but the lamp does not light.');

/** Nothing is cut off at the side, and nothing that can be pressed is smaller than 24 by 24 pixels. */
async function fits(person: Person): Promise<void> {
  const found = (await person.page.evaluate(`(() => {
    const small = [];
    const walk = (root) => {
      for (const element of root.querySelectorAll('*')) {
        if (element.matches('button, input:not([type=checkbox]):not([type=radio]), a.button, [role=option], [role=tab]')
          && element.getClientRects().length) {
          const {width, height} = element.getBoundingClientRect();
          if (width < 24 || height < 24) small.push(element.outerHTML.slice(0, 80) + ' ' + width + '×' + height);
        }
        if (element.shadowRoot) walk(element.shadowRoot);
      }
    };
    walk(document);
    return {small, wide: document.documentElement.scrollWidth - innerWidth};
  })()`)) as {small: string[]; wide: number};
  expect(found.small).toEqual([]);
  expect(found.wide).toBeLessThanOrEqual(0);
}

for (const [name, screen] of [
  ['a laptop in the light', {...laptop, theme: 'light'}],
  ['a laptop in the dark', {...laptop, theme: 'dark'}],
  ['a phone in the light', {...phone, theme: 'light'}],
  ['a phone in the dark', {...phone, theme: 'dark'}],
] as const) {
  describe(`on ${name}`, () => {
    test('axe finds nothing on any part of the bench', async () => {
      const student = await takeCall(harness, link(), screen);
      const look = async (): Promise<void> => {
        await fits(student);
        expect(await axe(student.page)).toEqual([]);
      };
      await look();
      await student.press('Understood');
      await student.press('Unit', '[role=tab]');
      await student.press('Open');
      await student.press('Hang lock and tag');
      await student.sees('Prove it dead', '.now');
      await look();
      await student.press('Take off lock and tag');
      await student.press('Closed');
      await student.press('Probe', '[role=tab]');
      await student.pickOnDrawing('TB2.R');
      await student.pickOnDrawing('TB2.C');
      await read(student, '24');
      await look();
      for (const tab of ['Wires', 'Log', 'Notes']) {
        await student.press(tab, '[role=tab]');
        await look();
      }
      await student.press('Probe', '[role=tab]');
      await student.press('Connection');
      await look();
      await student.press('Nameplate');
      await look();
      await student.press('Close', 'dialog[open] button, button');
      await student.press('How to');
      await look();
      expect(problemsOf(student.page)).toEqual([]);
      await student.page.close();
    });
  });
}
