import {afterAll, beforeAll, describe, expect, test} from 'vitest';
import {callLink, glass, read, takeCall} from './at-the-bench.ts';
import {axe, laptop, phone, problemsOf, startHarness, type Harness} from './harness.ts';
import type {Person} from './person.ts';

const complaint = 'The call switch is on, but the lamp does not light.';
const link = (...faults: string[]): string => callLink('practice-panel', faults, complaint);

let harness: Harness;
beforeAll(async () => {
  harness = await startHarness();
});
afterAll(() => harness.close());

/** A caution that is unfolded is read first: on a phone it lies over the meter. */
async function heed(student: Person): Promise<void> {
  if ((await student.wholeText()).includes('Understood')) await student.press('Understood');
}

/** Closes the call switch and goes back to the drawing. */
async function call(student: Person): Promise<void> {
  await student.press('Unit', '[role=tab]');
  await student.pressOn('button[data-value=on]');
  await student.press('Probe', '[role=tab]');
  await heed(student);
}

/** Nothing went wrong on the page, nor stands in anybody's way. */
async function leave(student: Person): Promise<void> {
  expect(await axe(student.page)).toEqual([]);
  expect(problemsOf(student.page)).toEqual([]);
  await student.page.close();
}

for (const [size, screen] of Object.entries({laptop, phone})) {
  describe(`with hands on a ${size}`, () => {
    test('the clamp closes on the lamp’s wire and reads its amps', async () => {
      const student = await takeCall(harness, link(), screen);
      await call(student);
      await student.press('Clamp');
      await student.pickWireOnDrawing('W10');
      await student.sees('W10', '.where');
      // 25 W at 120 V
      expect((await read(student, '0.2')).value).toBeCloseTo(0.208, 1);
      await leave(student);
    });

    test('a jumper across an open wire lights the lamp, and is written down', async () => {
      const student = await takeCall(harness, link('W17:open'), screen);
      await call(student);
      await student.press('Wires', '[role=tab]');
      await student.press('Jumper');
      await student.pickOnDrawing('FS1.2');
      await student.pickOnDrawing('HPS.1');
      await student.press('Clip the jumper on');
      await student.sees('lit', 'li');
      await student.sees('FS1.2 – HPS.1', 'ul.list');
      await student.press('Take it off');
      await student.press('Log', '[role=tab]');
      await student.sees('FS1.2', 'table');
      await leave(student);
    });

    test('a wire is lifted off its terminal, read alone, and landed again', async () => {
      const student = await takeCall(harness, link(), screen);
      await call(student);
      await student.sees('lit', 'li');
      await student.press('Wires', '[role=tab]');
      await student.pickWireOnDrawing('W19');
      await student.pressOn('[data-end="W19.to"]');
      await student.called('Land it');
      await student.press('Probe', '[role=tab]');
      // the relay dropped out: its coil lost its feed, which hangs in the hand
      await student.pressOn('button[data-lead=black]');
      await student.pickOnDrawing('TB2.C');
      await student.pickOnDrawing('K1.1');
      expect((await read(student, '0')).value).toBeLessThan(2);
      await student.press('Wires', '[role=tab]');
      await student.press('Land it');
      await student.press('Probe', '[role=tab]');
      await student.sees('lit', 'li');
      await leave(student);
    });

    test('the disconnect is locked out: live, dead, live', async () => {
      const student = await takeCall(harness, link(), screen);
      const hop = async (red: string): Promise<number> => {
        await student.press('Probe', '[role=tab]');
        await heed(student);
        await student.pickOnDrawing(red);
        await student.write('#expected', '');
        await student.pressOn('button[type=submit]');
        return (await glass(student)).value;
      };
      await heed(student);
      await student.pressOn('button[data-lead=black]');
      await student.pickOnDrawing('TB1.N');
      expect(await hop('DS1.L1')).toBeGreaterThan(110);
      await student.press('Unit', '[role=tab]');
      await student.pressOn('[role=group][aria-label^=DS1] button[data-value=open]');
      await student.press('Hang lock and tag');
      await student.called('Take off lock and tag');
      expect(await hop('DS1.T1')).toBeLessThan(1);
      expect(await hop('DS1.L1')).toBeGreaterThan(110);
      await student.press('Unit', '[role=tab]');
      await student.sees('Prove it dead (done)', '.step');
      await leave(student);
    });
  });
}

test('who gives up is asked once, and then told the fault', async () => {
  const student = await takeCall(harness, link('W17:open'), laptop);
  await student.press('Give up');
  await student.press('Keep looking');
  await student.press('Give up');
  await student.press('Give up', 'dialog .danger, .danger');
  await student.sees('Given up', 'h1');
  await student.sees('W17', '.facts');
  await student.page.goto(new URL('#/history', harness.address).href);
  await student.sees('Given up', '.result');
  await leave(student);
});

test('a fault is named by pointing at its part on the drawing', async () => {
  const student = await takeCall(harness, link('HPS:stuck-open'), laptop);
  await student.press('Name the fault');
  await student.press('Point it out on the diagram');
  await student.sees('Point it out:', '.banner');
  await student.pickPartOnDrawing('HPS');
  await student.press('contact stuck open', 'label');
  await student.press('Name this fault');
  await student.press('Name it', '.foot button');
  await student.sees('Right', 'h1');
  await leave(student);
});

test('two hidden faults: the first right name sends the student on, the second brings the debrief', async () => {
  const student = await takeCall(harness, link('W17:open', 'HPS:stuck-open'), laptop);
  const name = async (site: string, mode: string): Promise<void> => {
    await student.press('Name the fault');
    await student.writeIn('Part or wire', site);
    await student.press(site, '[role=option]');
    await student.press(mode, 'label');
    await student.press('Name this fault');
    await student.press('Name it', '.foot button');
  };
  await name('W17', 'open');
  await student.sees('that is one of the faults', '.banner');
  // nothing of the other is told, and the search outlives a reload
  expect(await student.wholeText()).not.toContain('contact stuck open');
  await student.page.reload();
  await student.sees('Another is still in the unit', '.banner');
  await name('HPS', 'contact stuck open');
  await student.sees('Right: both found', 'h1');
  await leave(student);
});
