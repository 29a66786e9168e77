import {afterAll, beforeAll, expect, test} from 'vitest';
import {read} from './at-the-bench.ts';
import {axe, laptop, phone, problemsOf, startHarness, type Harness} from './harness.ts';
import {Person} from './person.ts';

let harness: Harness;
beforeAll(async () => {
  harness = await startHarness();
});
afterAll(() => harness.close());

for (const [size, screen] of Object.entries({laptop, phone})) {
  test(`a newcomer takes the first reading on a ${size}, closes the tab half-way and goes on`, async () => {
    const newcomer = `newcomer on a ${size}`;
    const touch = screen === phone;
    let person = new Person(await harness.open('', screen, newcomer), touch);
    await person.press('Start the first reading');
    await person.sees('Close the call switch S1', '.say h1');
    await person.press('Understood');
    await person.press('Unit', '[role=tab]');
    await person.press('On', 'label, button, [role=radio]');
    await person.sees('Red lead on TB2.Y', '.say h1');

    await person.page.close();
    person = new Person(await harness.open('#/guide', screen, newcomer), touch);
    await person.sees('Red lead on TB2.Y', '.say h1');
    await person.press('Understood');
    if (touch) await person.press('Got it');
    await person.pickOnDrawing('TB2.Y');
    await person.pickOnDrawing('TB2.C');
    const ready = await read(person, '24');
    expect(ready.value).toBeGreaterThan(22);
    expect(ready.value).toBeLessThan(30);

    await person.sees('Open the switch again', '.say h1');
    await person.press('Unit', '[role=tab]');
    await person.press('Off', 'label, button, [role=radio]');
    await person.press('Probe', '[role=tab]');
    if (touch) await person.press('Got it');
    await person.pressOn('button[data-lead=red]');
    await person.pickOnDrawing('S1.1');
    await person.pressOn('button[data-lead=black]');
    await person.pickOnDrawing('S1.2');
    expect((await read(person, '0')).value).toBeGreaterThan(22);

    await person.sees('Why does the meter show that', '.say h1');
    await person.press('The switch uses up the 24 V');
    await person.sees('Not quite', '.because');
    await person.press('One side is at the hot side');
    expect(await axe(person.page)).toEqual([]);
    await person.press('Take your first call');
    await person.sees('Choose a unit', 'h2');
    await person.find('rb-call-starter');
    expect(await person.wholeText()).not.toContain('First time here?');
    expect(problemsOf(person.page)).toEqual([]);
    await harness.leave(newcomer);
  });
}
