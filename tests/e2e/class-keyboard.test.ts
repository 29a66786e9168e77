import {afterAll, beforeAll, expect, test} from 'vitest';
import type {StudentAnswer} from '../../src/classroom/protocol/student-messages.ts';
import type {ClassDetail} from '../../src/classroom/protocol/rest.ts';
import {ClassAtWork} from '../server/class/class-at-work.ts';
import {startClassHarness, type ClassHarness} from './class-harness.ts';
import {laptop, problemsOf} from './harness.ts';
import {Person} from './person.ts';

/*
 * WCAG 2.2: 2.1.1 Keyboard, 2.1.2 No Keyboard Trap, 2.4.3 Focus Order, 2.4.7 Focus Visible. Tab, Enter, Escape and
 * letters only; what is in focus must be seen to be, at every stop.
 */

let harness: ClassHarness;
let at: ClassAtWork;
let ada: Person;
beforeAll(async () => {
  harness = await startClassHarness();
  at = ClassAtWork.on(harness.app, harness.school, harness.address);
  await at.firstStart('Ada Field');
  ada = new Person(await harness.open('#/class', laptop), false);
});
afterAll(async () => {
  at.dropAll();
  await harness.close();
});

/** The name of what is in focus where nothing shows that it is; empty where something does. */
const unseenSource = `(() => {
  let it = document.activeElement;
  while (it?.shadowRoot?.activeElement) it = it.shadowRoot.activeElement;
  // a heading that a new page begins at is no control
  if (!it || it === document.body || it.matches('[tabindex="-1"]')) return '';
  for (let each = it; each; each = each.parentElement ?? each.getRootNode().host) {
    const {outlineStyle, outlineWidth} = getComputedStyle(each);
    if (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2) return '';
  }
  return it.outerHTML.slice(0, 120);
})()`;

const unseen: string[] = [];

/** Tab, as often as it takes, looking at every stop. */
async function reach(name: string, wholeName = false): Promise<void> {
  const over: string[] = [];
  for (let stops = 0; stops < 120; stops++) {
    await ada.key('Tab');
    const hidden = (await ada.page.evaluate(unseenSource)) as string;
    if (hidden) unseen.push(hidden);
    const inFocus = await ada.nameInFocus();
    if (wholeName ? inFocus === name : inFocus.includes(name)) return;
    over.push(inFocus.slice(0, 40));
  }
  throw new Error(`The Tab key never reached "${name}"; it went over: ${over.join(' | ')}`);
}

async function press(name: string): Promise<void> {
  await reach(name);
  await ada.key('Enter');
}

async function fill(name: string, text: string): Promise<void> {
  await reach(name, true);
  await ada.page.keyboard.type(text);
}

/** Chooses in a list by its first letters; waits until the letters choose something. */
async function choose(name: string, letters: string, wanted: string): Promise<void> {
  await reach(name, true);
  for (let tries = 0; tries < 40; tries++) {
    await ada.page.keyboard.type(letters);
    const chosen = (await ada.page.evaluate(
      `(() => { let it = document.activeElement; while (it?.shadowRoot?.activeElement) it = it.shadowRoot.activeElement;
        return it.selectedOptions?.[0]?.textContent ?? ''; })()`,
    )) as string;
    if (chosen.includes(wanted)) return;
    // letters typed within a second belong together
    await new Promise((resolve) => setTimeout(resolve, 1100));
  }
  throw new Error(`"${letters}" never chose "${wanted}" in "${name}".`);
}

test('an instructor goes from sign-in to the records by the keyboard alone, and sees where the focus is', async () => {
  await fill('Your name', 'Ada Field');
  await fill('Passphrase', 'lamp relay ladder seven');
  await ada.key('Enter');
  await ada.sees('Your classes', 'h1');
  expect(await ada.nameInFocus()).toBe('Your classes');

  await fill('Name of a new class', 'Lab');
  await ada.key('Enter');
  await ada.sees('Lab', 'h1');
  await fill('Names of the students', 'Ana\nBen\n');
  await press('Add to the roster');
  await ada.sees('2 names added', 'p');

  await press('Give the class something to do');
  await ada.find('#unit:enabled');
  await choose('Unit', 'Prac', 'Practice panel');
  await press('Open it now');
  await ada.sees('Open', '.state');
  // the form is gone: the focus is at what it made
  expect(await ada.nameInFocus()).toContain('Close Practice panel');

  const [summary] = await at.get<readonly ClassDetail[]>('GET', '/classes');
  const lab = await at.get<ClassDetail>('GET', `/classes/${summary.id}`);
  const ana = await at.join(lab, 'Ana');
  const [item] = (await ana.desk()).items;
  await ana.open(item.assignment);

  await press('Live view');
  await ada.sees('1 of 2 here', '.sum');
  await press('Ana');
  await ada.sees('A note to Ana', 'label');
  expect(await ada.nameInFocus()).toBe('Ana');
  const told = (text: string) =>
    ana.next<Extract<StudentAnswer, {is: 'note'}>>(
      (answer) => answer.is === 'note' && answer.note.text === text,
    );
  const note = told('Look at the fuse.');
  await fill('A note to Ana', 'Look at the fuse.');
  await press('Send');
  await ada.sees('Sent', '[role=status]');
  await note;
  await press('Close the log of Ana');
  // back where it was opened
  expect(await ada.nameInFocus()).toBe('Ana');

  await press('Hint for all');
  await ada.find('dialog[open]');
  for (let stops = 0; stops < 8; stops++) {
    await ada.key('Tab');
    // the dialog, or the browser’s own bar: nothing behind it
    const where = await ada.page.evaluate(
      `(() => { let it = document.activeElement; while (it?.shadowRoot?.activeElement) it = it.shadowRoot.activeElement;
        return it === document.body || it === null || Boolean(it.closest('dialog')); })()`,
    );
    expect(where).toBe(true);
  }
  await ada.key('Escape');
  expect(await ada.nameInFocus()).toContain('Hint for all');
  await ada.key('Enter');
  const hint = told('Where does the 24 volts end?');
  await fill('The hint', 'Where does the 24 volts end?');
  await press('Give the hint');
  await hint;
  expect(await ada.nameInFocus()).toContain('Hint for all');

  await press('What will happen if');
  await ada.find('#question');
  await fill('Finish the question', 'the wire to the lamp relay comes off?');
  await fill('Answer 1', 'The lamp goes out.');
  await fill('Answer 2', 'The lamp stays on.');
  await choose('Unit', 'Prac', 'Practice panel');
  await choose('What fails', 'Wire W17', 'open');
  await choose('Red lead, reading 1', 'K1.1', 'K1.1');
  await choose('Black lead, reading 1', 'TB2.C', 'TB2.C');
  await press('Ask the class');
  await ada.sees('0 answered', '.box p');
  expect(await ada.nameInFocus()).toContain('What will happen if');
  await press('Make the change');
  await ada.sees('Take it off the wall', 'button');
  await press('Take it off the wall');
  await ada.find('#question');

  await press('Lab');
  await ada.sees('What there is to do', 'h2');
  await press('Close Practice panel');
  await ada.sees('Closed', '.state');
  expect(await ada.nameInFocus()).toContain('Open again Practice panel');
  await press('Debrief Practice panel');
  await ada.sees('Safety', 'h2#safety');
  await press('To the class');
  await press('Records');
  await ada.sees('Gradebook', 'h2');
  await reach('Gradebook as CSV');
  const href = await (
    await ada.called('Gradebook as CSV', 'a')
  ).evaluate((it) => (it as HTMLAnchorElement).href);
  expect(
    await ada.page.evaluate(`fetch(${JSON.stringify(href)}).then((it) => it.text())`),
  ).toContain('Ana');
  expect(unseen).toEqual([]);
  expect(problemsOf(ada.page)).toEqual([]);
}, 240_000);
