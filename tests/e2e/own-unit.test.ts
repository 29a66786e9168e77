import {mkdir, readFile, writeFile} from 'node:fs/promises';
import {join} from 'node:path';
import type {ElementHandle} from 'puppeteer-core';
import {afterAll, beforeAll, expect, test} from 'vitest';
import {outputFolder, problemsOf, startHarness, type Harness} from './harness.ts';
import {Person} from './person.ts';

let harness: Harness;
beforeAll(async () => {
  harness = await startHarness();
});
afterAll(() => harness.close());

test('a person opens a unit file of their own, explores it, and has both drawings of it', async () => {
  const text = await readFile(
    new URL('../../content/units/practice-panel.yaml', import.meta.url),
    'utf8',
  );
  await mkdir(outputFolder, {recursive: true});
  const path = join(outputFolder, 'own-panel.yaml');
  await writeFile(
    path,
    text
      .replace('id: practice-panel', 'id: own-panel')
      .replace('title: Practice panel', 'title: Own panel'),
  );
  const page = await harness.open('');
  const person = new Person(page, false);
  await person.find('rb-call-starter');
  const field = (await person.find(
    '#file',
  )) as ElementHandle<Element> as ElementHandle<HTMLInputElement>;
  await field.uploadFile(path);
  await person.sees('Own panel', 'h1');
  await person.press('Explore it healthy');
  await person.find('rb-meter-face');
  // nobody laid this one out beforehand: a worker does it, with the engine that only it loads
  await person.press('Connection');
  // the ground lug in the supply box is drawn on no ladder
  await page.waitForFunction(
    `(() => {
      const roots = [document];
      for (const root of roots) {
        if (root.querySelector('[data-terminal="GND1.E"]')) return true;
        for (const each of root.querySelectorAll('*')) if (each.shadowRoot) roots.push(each.shadowRoot);
      }
      return false;
    })()`,
    {polling: 250, timeout: 90_000},
  );
  expect(problemsOf(page)).toEqual([]);
  await page.reload();
  await person.find('rb-meter-face');
  await page.evaluate(() => (location.hash = '#/'));
  await person.sees('Own panel', 'h3');
});
