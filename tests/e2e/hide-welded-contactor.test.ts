import {afterAll, beforeAll, expect, test} from 'vitest';
import {glass, read} from './at-the-bench.ts';
import {laptop, phone, problemsOf, startHarness, type Harness} from './harness.ts';
import {Person} from './person.ts';

let harness: Harness;
beforeAll(async () => {
  harness = await startHarness();
});
afterAll(() => harness.close());

test('an instructor hides a welded contactor and a second person finds it from the link', async () => {
  const instructor = new Person(
    await harness.open('#/hide/split-heat-pump', laptop, 'instructor'),
    false,
  );
  await instructor.write('#words', 'K3 contactor');
  await instructor.press('K3, Compressor contactor: Contacts welded closed', 'button');
  await instructor.sees('Compressor contactor K3: contacts welded closed', '.chosen');
  await instructor.sees('This follows from what stops working', '[role=status]');
  await instructor.press('Make a link');
  const field = await instructor.find('textarea#link');
  const link = await field.evaluate((it) => (it as HTMLTextAreaElement).value);
  const complaint = await (
    await instructor.find('textarea#complaint')
  ).evaluate((it) => (it as HTMLTextAreaElement).value);
  expect(problemsOf(instructor.page)).toEqual([]);
  await harness.leave('instructor');

  // nothing of the fault can be read in the link, nor is it longer or shorter for it
  const hash = decodeURIComponent(new URL(link).hash);
  const asText = Buffer.from(hash.split('/').at(-1)!, 'base64url').toString('latin1');
  for (const word of ['K3:poles', 'welded', 'poles', 'contactor']) {
    expect(hash).not.toContain(word);
    expect(asText).not.toContain(word);
  }

  // another person, another browser profile, a phone
  const student = new Person(await harness.open(new URL(link).hash, phone, 'student'), true);
  await student.sees(complaint, '*');
  await student.press('Take the call');
  await student.find('rb-meter-face');
  // the thermostat is off, and yet the compressor runs
  await student.sees('Compressor is running', 'li');
  expect((await student.wholeText()).toLowerCase()).not.toContain('weld');

  await student.press('Unit', '[role=tab]');
  await student.press('Take cover off: Outdoor unit');
  await student.press('Probe', '[role=tab]');
  await student.press('Understood');

  // no voltage on the coil: nothing asks the contactor in
  await student.pickOnDrawing('K3.A1');
  await student.pickOnDrawing('K3.A2');
  expect((await read(student, '0')).value).toBeLessThan(2);
  // line voltage goes in, and comes out
  await student.pickOnDrawing('K3.T1');
  await student.pressOn('button[data-lead=black]');
  await student.pickOnDrawing('K3.T2');
  expect((await read(student, '0')).value).toBeGreaterThan(220);
  await student.pressOn('button[data-lead=red]');
  await student.pickOnDrawing('K3.L1');
  await student.pressOn('button[data-lead=black]');
  await student.pickOnDrawing('K3.T1');
  await student.press('Skip and read', 'button[type=submit]');
  expect((await glass(student)).value).toBeLessThan(2);

  await student.press('Name it');
  await student.writeIn('Part or wire', 'contactor K3');
  await student.press('K3', '[role=option]');
  await student.press('contacts welded closed', 'label');
  await student.pressOn('.choice input');
  await student.press('Name this fault');
  await student.press('Name it', '.foot button, button');
  await student.sees('Right', 'h1');
  await student.sees('contacts welded closed', '.facts');
  expect(problemsOf(student.page)).toEqual([]);
});
