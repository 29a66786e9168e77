import {afterAll, beforeAll, expect, test} from 'vitest';
import {callLink, takeCall} from './at-the-bench.ts';
import {laptop, problemsOf, screenshot, startHarness, type Harness} from './harness.ts';
import {Person} from './person.ts';

const complaint = 'The call switch is on, but the lamp does not light.';

let harness: Harness;
let student: Person;
beforeAll(async () => {
  harness = await startHarness();
  // somebody who works on a dark screen, and has given one call up
  student = await takeCall(harness, callLink('practice-panel', ['W17:open'], complaint), {
    ...laptop,
    theme: 'dark',
  });
  await student.press('Give up');
  await student.press('Give up', '.danger');
  await student.sees('Given up', 'h1');
});
afterAll(() => harness.close());

/** What is shown on paper of the things that only a screen needs. */
const screenThings = `(() => {
  const found = [];
  const walk = (root) => {
    for (const element of root.querySelectorAll('*')) {
      if (element.matches('button, select, input, [role=tablist]') && element.getClientRects().length > 0)
        found.push((element.getAttribute('aria-label') ?? element.textContent).trim().slice(0, 40));
      if (element.shadowRoot) walk(element.shadowRoot);
    }
  };
  walk(document);
  return found;
})()`;

for (const [name, hash, where, words] of [
  ['the debrief', '', 'h1', 'Given up'],
  ['the debrief for the instructor', 'instructor', 'h1', 'For the instructor'],
  ['the history', '#/history', '.result', 'Given up'],
  ['the sheet of a unit', '#/unit/practice-panel', 'h2', 'Nameplate'],
] as const) {
  test(`${name} prints as ink on white paper, without what a screen needs`, async () => {
    const {page} = student;
    if (hash === 'instructor') await student.press('For the instructor', 'label');
    else if (hash) await page.goto(new URL(hash, harness.address).href);
    await student.sees(words, where);
    await page.emulateMediaType('print');
    expect(
      await page.evaluate(() =>
        getComputedStyle(document.documentElement).getPropertyValue('--paper'),
      ),
    ).toMatch(/#fff/);
    expect(await page.evaluate(screenThings)).toEqual([]);
    await screenshot(page, `print/${name.replaceAll(' ', '-')}`, true);
    const paper = Buffer.from(await page.pdf({format: 'letter', timeout: 60_000}));
    expect(paper.subarray(0, 5).toString()).toBe('%PDF-');
    await page.emulateMediaType();
    expect(problemsOf(page)).toEqual([]);
  });
}
