import {parse} from 'csv-parse/sync';
import {afterAll, beforeAll, expect, test} from 'vitest';
import {read} from './at-the-bench.ts';
import {firstStartKey, startClassHarness, type ClassHarness} from './class-harness.ts';
import {axe, laptop, phone, problemsOf, type Screen} from './harness.ts';
import {Person} from './person.ts';

let harness: ClassHarness;
beforeAll(async () => {
  harness = await startClassHarness();
});
afterAll(() => harness.close());

const longName = 'Antonia Bartholomew-Featherstonehaugh de la Vega y Mendoza';
// a name that a spreadsheet would take for a formula
const formula = '=Cho';
const hidden = 'contact stuck open';

async function at(path: string, screen: Screen, who: string): Promise<Person> {
  return new Person(await harness.open(path, screen, who), screen.width < 600);
}

/** For what the server works out beside everything else: waits three times as long. */
async function patiently(look: () => Promise<unknown>): Promise<void> {
  for (let tries = 0; tries < 2; tries++) {
    try {
      await look();
      return;
    } catch {
      // a busy machine
    }
  }
  await look();
}

/** A call for cooling that outlasts the anti-short-cycle delay, the outdoor cover off, black on common. */
async function makeReady(student: Person): Promise<void> {
  await student.press('Unit', '[role=tab]');
  await student.press('Cool');
  await student.write('.stepper input', '68');
  await student.key('Enter');
  await student.press('10 min');
  await student.press('Take cover off: Outdoor unit');
  await student.press('Probe', '[role=tab]');
  await student.press('Understood');
  await student.pressOn('button[data-lead=black]');
  await student.pickOnDrawing('TB2.C');
}

test('an instructor and three students, from the first start to the gradebook as CSV', async () => {
  const instructor = await at(`#/class/start?key=${firstStartKey}`, laptop, 'instructor');
  await instructor.sees('First start', 'h1');
  await instructor.writeIn('Your name', 'Ada Field');
  await instructor.write('#passphrase', 'four cold copper coils');
  await instructor.write('#again', 'four cold copper coils');
  await instructor.press('Make the account');
  await instructor.sees('Your classes', 'h1');
  // the key has done its work and is out of the address
  expect(instructor.page.url()).not.toContain(firstStartKey);

  await instructor.writeIn('Name of a new class', 'Controls lab');
  await instructor.press('Make the class');
  await instructor.sees('Controls lab', 'h1');
  await instructor.write('#names', `name\n${longName}\nBen\n${formula}`);
  await instructor.press('Add to the roster');
  await instructor.sees('3 names added', 'p');
  const code = await instructor.text('.join .code');
  expect(code).toMatch(/^[A-Z0-9]+-[A-Z0-9]+$/);
  const classAddress = new URL(instructor.page.url()).hash;

  // from the unit's page a fault is hidden for the class in less than 15 s
  await instructor.page.goto(new URL('#/unit/split-heat-pump', harness.address).href);
  await instructor.sees('Hide a fault for someone', 'a');
  const begunAt = performance.now();
  await instructor.press('Hide a fault for someone', 'a');
  await instructor.write('#words', `HPS ${hidden}`);
  await instructor.sees('1 fault on 1 line', '.count');
  await instructor.pressOn('.modes button');
  await instructor.press('Give it to the class');
  // until here a person's time goes; what the machine then takes for the complaint depends on what else it does
  expect(performance.now() - begunAt).toBeLessThan(15_000);
  await patiently(() => instructor.sees('The class has it', '.note'));

  // one comes by the QR code's address, two type the code
  const antonia = await at(`#/join/${code}`, phone, 'antonia');
  await antonia.press(longName, 'button');
  const ben = new Person(await harness.openOnNetwork('#/join', phone), true);
  expect(await ben.page.evaluate('isSecureContext')).toBe(false);
  await ben.writeIn('Code of the class', code.toLowerCase().replace('-', ''));
  await ben.press('Go on', 'button');
  await ben.press('Ben', '.names button, button');
  const cho = await at('#/join', laptop, 'cho');
  await cho.writeIn('Code of the class', code);
  await cho.press('Go on', 'button');
  await cho.press(formula, 'button');
  for (const student of [antonia, ben, cho]) {
    await student.press('Take the call');
    await student.find('rb-meter-face');
  }

  await instructor.page.goto(new URL(`${classAddress}/live`, harness.address).href);
  await instructor.sees('3 of 3 here', '.sum');
  expect(await axe(instructor.page)).toEqual([]);

  // Ben measures; the server stops and comes back; what was acknowledged is there, and the bench goes on
  await makeReady(ben);
  await ben.pickOnDrawing('TB2.Y');
  expect((await read(ben, '24')).value).toBeGreaterThan(22);
  for (const person of [instructor, antonia, cho]) expect(problemsOf(person.page)).toEqual([]);
  await harness.restart();
  await ben.pickOnDrawing('HPS.2');
  expect((await read(ben, '24')).value).toBeLessThan(2);
  await ben.press('Log', '[role=tab]');
  await ben.sees('TB2.Y', 'rb-field-log table, table');
  await ben.sees('HPS.2', 'rb-field-log table, table');
  expect((await ben.wholeText()).toLowerCase()).not.toContain(hidden);

  // the instructor reads along, sends a note, gives a hint to all
  await instructor.sees('3 of 3 here', '.sum');
  // what could not be reached while nobody was there is as it should be
  const whileDown = new Map(
    [instructor, antonia].map((person) => [person, problemsOf(person.page).length]),
  );
  await instructor.press('Ben', 'button');
  await instructor.sees('HPS.2', 'rb-field-log table, table');
  await instructor.write('#note', 'Now read across it.');
  await instructor.press('Send', 'button');
  await instructor.sees('Sent', '[role=status]');
  await ben.sees('Now read across it.', '.told span');
  await instructor.press('Hint for all');
  await instructor.write('#hint', 'Where does the 24 volts end?');
  await instructor.press('Give the hint');
  await cho.sees('Where does the 24 volts end?', '.told span');
  expect(await axe(ben.page)).toEqual([]);

  // Antonia finds it; the hint gives its room back to the drawing once it is read
  await antonia.sees('Where does the 24 volts end?', '.told span');
  await antonia.press('Got it');
  await makeReady(antonia);
  await antonia.pickOnDrawing('HPS.1');
  expect((await read(antonia, '24')).value).toBeGreaterThan(22);
  await antonia.pickOnDrawing('HPS.2');
  expect((await read(antonia, '24')).value).toBeLessThan(2);
  await antonia.pressOn('button[data-lead=black]');
  await antonia.pickOnDrawing('HPS.1');
  expect((await read(antonia, '24')).value).toBeGreaterThan(22);
  await antonia.press('Name it');
  await antonia.writeIn('Part or wire', 'HPS');
  await antonia.press('HPS', '[role=option]');
  await antonia.press(hidden, 'label');
  await antonia.pressOn('.choice input');
  await antonia.press('Name this fault');
  await antonia.press('Name it', '.foot button, button');
  await patiently(() => antonia.sees('Right', 'h1'));
  await patiently(() => instructor.sees('Right', 'td'));

  // Cho goes on at another device: the older one says so, and can take the work back
  await makeReady(cho);
  await cho.pickOnDrawing('TB2.Y');
  expect((await read(cho, '24')).value).toBeGreaterThan(22);
  const choPhone = await at(`#/join/${code}`, phone, 'cho’s phone');
  await choPhone.press(formula, 'button');
  await choPhone.press('Yes, go on here');
  await choPhone.press('Go on', 'a');
  await choPhone.sees('TB2.C', 'button[data-lead=black]');
  await cho.sees('You went on elsewhere', 'h1');
  await choPhone.press('Got it');
  await choPhone.press('Understood');
  await choPhone.pressOn('button[data-lead=red]');
  await choPhone.pickOnDrawing('HPS.2');
  expect((await read(choPhone, '24')).value).toBeLessThan(2);
  await choPhone.press('Log', '[role=tab]');
  await choPhone.sees('TB2.Y', 'rb-field-log table, table');
  await choPhone.sees('HPS.2', 'rb-field-log table, table');
  // back at the first device, at once and where the phone left it; and back again
  await cho.press('Go on here');
  await cho.sees('HPS.2', 'rb-field-log table, table');
  await choPhone.sees('You went on elsewhere', 'h1');
  await choPhone.press('Go on here');
  await cho.sees('You went on elsewhere', 'h1');

  // the wall shows where the class has measured, without names until the instructor says so
  await instructor.page.goto(new URL(classAddress, harness.address).href);
  await instructor.press('Wall view');
  const wallTab = await instructor.page
    .browser()
    .waitForTarget((it) => it.url().includes('#/wall'));
  const wall = new Person((await wallTab.page())!, false);
  await wall.sees(code, '.code');
  await wall.find('.heat circle');
  expect(await wall.wholeText()).not.toContain(longName);
  expect((await wall.wholeText()).toLowerCase()).not.toContain(hidden);
  await wall.page.close();

  // closed; talked over; taken along
  await instructor.press('Close', '.sets button, button');
  await instructor.sees('Closed', '.state');
  await instructor.press('Debrief', 'a');
  await patiently(() => instructor.sees(hidden, 'h2'));
  await instructor.sees(longName, 'th');
  expect(await axe(instructor.page)).toEqual([]);
  await instructor.page.goto(new URL(`${classAddress}/records`, harness.address).href);
  await instructor.sees(longName, 'th');
  const link = await instructor.called('Gradebook as CSV', 'a');
  const href = await link.evaluate((it) => (it as HTMLAnchorElement).href);
  const csv = await instructor.page.evaluate(
    `fetch(${JSON.stringify(href)}).then((answer) => answer.text())`,
  );
  const rows: string[][] = parse(String(csv), {bom: true, relax_column_count: true});
  const row = (name: string): string[] | undefined =>
    rows.find((cells) => cells.some((cell) => cell.includes(name)));
  expect(row(longName)?.join(' ')).toContain('right');
  expect(row('Ben')).toBeDefined();
  // no cell begins as a formula does (OWASP, CSV Injection)
  expect(row('Cho')).toBeDefined();
  expect(
    rows.flat().filter((cell) => /^[=+\-@\t\r]/.test(cell) && Number.isNaN(Number(cell))),
  ).toEqual([]);

  for (const person of [instructor, antonia, choPhone]) {
    expect(problemsOf(person.page).slice(whileDown.get(person) ?? 0)).toEqual([]);
  }
}, 420_000);
