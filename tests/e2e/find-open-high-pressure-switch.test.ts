import {afterAll, beforeAll, describe, expect, test} from 'vitest';
import {callLink, glass, read, takeCall} from './at-the-bench.ts';
import {axe, laptop, phone, problemsOf, startHarness, type Harness} from './harness.ts';
import {Person} from './person.ts';

const complaint = 'It blows, but the air is warm, and the outdoor unit is silent.';
const link = (): string => callLink('split-heat-pump', ['HPS:stuck-open'], complaint);

let harness: Harness;
beforeAll(async () => {
  harness = await startHarness();
});
afterAll(() => harness.close());

for (const [size, screen] of Object.entries({laptop, phone})) {
  describe(`a student finds an open high-pressure switch by hopping from the hot side, on a ${size}`, () => {
    test(`by ${size === 'phone' ? 'touch' : 'mouse'}`, async () => {
      const student = await takeCall(harness, link(), screen);
      await student.sees(complaint, 'rb-call-strip q, q');

      // a call for cooling that outlasts the anti-short-cycle delay, covers off
      await student.press('Unit', '[role=tab]');
      await student.press('Cool');
      await student.write('.stepper input', '68');
      await student.key('Enter');
      await student.press('10 min');
      await student.press('Take cover off: Outdoor unit');
      await student.press('Probe', '[role=tab]');
      await student.press('Understood');

      // black on common, red hops along the call from the hot side
      await student.pressOn('button[data-lead=black]');
      await student.pickOnDrawing('TB2.C');
      await student.pickOnDrawing('TB2.Y');
      expect((await read(student, '24')).value).toBeGreaterThan(22);
      await student.pickOnDrawing('HPS.1');
      expect((await read(student, '24')).value).toBeGreaterThan(22);
      await student.pickOnDrawing('HPS.2');
      expect((await read(student, '24')).value).toBeLessThan(2);

      // and the whole of it across the open contact
      await student.pressOn('button[data-lead=black]');
      await student.pickOnDrawing('HPS.1');
      expect((await read(student, '24')).value).toBeGreaterThan(22);

      // reload half-way: the log and the leads are as they were
      await student.press('Log', '[role=tab]');
      const log = await student.text('rb-field-log table, table');
      await student.page.reload();
      await student.sees('Picking up where you left off', 'rb-bench-page .banner, .banner');
      expect(await student.text('button[data-lead=red] .where')).toBe('HPS.2');
      expect(await student.text('button[data-lead=black] .where')).toBe('HPS.1');
      await student.press('Log', '[role=tab]');
      expect(await student.text('rb-field-log table, table')).toBe(log);

      await student.press(size === 'phone' ? 'Name it' : 'Name the fault');
      await student.writeIn('Part or wire', 'HPS');
      await student.press('HPS', '[role=option]');
      await student.press('contact stuck open', 'label');
      await student.pressOn('.choice input');
      await student.press('Name this fault');
      await student.press('Name it', '.foot button, button');
      await student.sees('Right', 'h1');
      await student.sees('High-pressure switch HPS: contact stuck open', '.facts');
      await student.sees('It broke here', '.broke');
      expect(await axe(student.page)).toEqual([]);

      // the repair proves itself
      await student.press('Clear the fault');
      await student.sees('The fault is cleared', '.banner');
      await student.press('Unit', '[role=tab]');
      await student.press('10 min');
      if (size === 'phone') await student.press('Probe', '[role=tab]');
      await student.sees('Compressor is running', 'rb-observations li, li');
      expect(problemsOf(student.page)).toEqual([]);
      await student.page.close();
    });

    test('by keyboard alone', async () => {
      const student = new Person(await harness.open(link(), screen), false);
      await student.sees('Take the call', 'button');
      await student.tabTo('Take the call');
      await student.key('Enter');
      await student.find('rb-meter-face');

      await student.key('u');
      await student.tabTo('Cool');
      await student.key('Enter');
      await student.tabTo('Set point in °F');
      await student.page.keyboard.down('Control');
      await student.key('a');
      await student.page.keyboard.up('Control');
      await student.page.keyboard.type('68');
      await student.key('Enter');
      await student.tabTo('10 min');
      await student.key('Enter');
      await student.tabTo('Take cover off: Outdoor unit');
      await student.key('Enter');
      await student.sees('Cover is off', '.cover');

      // leads by name; after both are down the expectation is in focus
      await student.key('b', 't');
      await student.page.keyboard.type('tb2 c');
      await student.key('Enter');
      const hop = async (terminal: string): Promise<number> => {
        await student.page.keyboard.type(terminal);
        await student.key('Enter');
        await student.sees(terminal.toUpperCase().replace(' ', '.'), 'button[data-lead=red]');
        await student.page.keyboard.type('24');
        await student.key('Enter');
        return (await glass(student)).value;
      };
      expect(await hop('tb2 y')).toBeGreaterThan(22);
      expect(await hop('hps 1')).toBeGreaterThan(22);
      expect(await hop('hps 2')).toBeLessThan(2);

      // the last one on the drawing, with the arrow keys: black from common to the near side of the switch
      await student.key('Escape', 'Tab');
      await student.key('r', 'd');
      await student.key('b');
      for (let i = 0; i < 8 && !(await student.nameInFocus()).startsWith('HPS terminal 1'); i++) {
        await student.key('ArrowLeft');
      }
      expect(await student.nameInFocus()).toMatch(/^HPS terminal 1/);
      await student.key('Enter');
      await student.sees('HPS.1', 'button[data-lead=black]');
      await student.page.keyboard.type('24');
      await student.key('Enter');
      expect((await glass(student)).value).toBeGreaterThan(22);

      await student.key('f');
      await student.tabTo('Part or wire');
      await student.page.keyboard.type('HPS');
      await student.key('Enter');
      await student.tabTo('HPS');
      for (let i = 0; i < 8 && !(await student.nameInFocus()).includes('contact stuck open'); i++) {
        await student.key('ArrowDown');
      }
      await student.key('Space');
      await student.tabTo('is evidence');
      await student.key('Space');
      await student.tabTo('Name this fault');
      await student.key('Enter');
      await student.key('Enter');
      await student.sees('Right', 'h1');
      expect(problemsOf(student.page)).toEqual([]);
      await student.page.close();
    });
  });
}
