import {readdirSync, readFileSync} from 'node:fs';
import {join, resolve} from 'node:path';
import {afterAll, beforeAll, expect, test} from 'vitest';
import type {StudentAnswer} from '../../src/classroom/protocol/student-messages.ts';
import type {WorkSet} from '../../src/classroom/protocol/work-set.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {shippedContent} from '../../src/server/class/shipped-content.ts';
import {ClassAtWork} from '../server/class/class-at-work.ts';
import {startClassHarness, type ClassHarness} from './class-harness.ts';
import {joinAs} from './class-for-pictures.ts';
import {phone} from './harness.ts';
import {Person} from './person.ts';

/*
 * What a student's device is served as files, beside the traffic of its socket (which the tests of the class server
 * compare byte by byte). The catalogue of every shipped unit is public: practice alone needs it. So a file holds no
 * fault or all of a unit: a list of everything that can fail tells nothing of what did; a single fault might.
 */

const dist = resolve(import.meta.dirname, '../../dist');
const units = readdirSync(resolve(import.meta.dirname, '../../content/units')).map((file) =>
  file.replace(/\.yaml$/, ''),
);
const catalogues = units.map((id) => catalogue(shippedContent.unit(id)).map((fault) => fault.id));
const known = new Set(catalogues.flat());

/** The fault ids that stand in a text as words of their own. */
function faultsIn(text: string): string[] {
  const found = text.match(/(?<![\w~.-])[\w~.-]+:[\w~.-]+/g) ?? [];
  return [...new Set(found.filter((id) => known.has(id)))].sort();
}

/** Whether these are none, or exactly all that a unit can have. */
function tellsNothing(found: readonly string[]): boolean {
  const all = catalogues.map((ids) => JSON.stringify([...ids].sort()));
  return found.length === 0 || all.includes(JSON.stringify(found));
}

let harness: ClassHarness;
let at: ClassAtWork;
beforeAll(async () => {
  harness = await startClassHarness();
  at = ClassAtWork.on(harness.app, harness.school, harness.address);
  await at.firstStart();
});
afterAll(() => harness.close());

test('the scan knows a list of everything from a single fault', () => {
  const ids = catalogues[0];
  expect(tellsNothing(faultsIn(ids.map((id) => `"${id}":[1]`).join()))).toBe(true);
  expect(tellsNothing(faultsIn(`hidden=\`${ids[3]}\``))).toBe(false);
  expect(tellsNothing(faultsIn(ids.slice(1).join(' ')))).toBe(false);
  expect(tellsNothing(faultsIn('nothing:hidden W0:nothing'))).toBe(true);
});

test('the built files hold no source map, and of faults none or the whole list of a unit', async () => {
  const files = readdirSync(dist, {recursive: true, withFileTypes: true})
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
  expect(files.filter((file) => file.endsWith('.map'))).toEqual([]);
  const lists: string[] = [];
  for (const file of files.filter((each) => /\.(js|html|css|json|svg|txt)$/.test(each))) {
    const address = new URL(file.slice(dist.length + 1), harness.address);
    const text = await (await fetch(address)).text();
    // as it is built, so it is served
    expect([file, text === readFileSync(file, 'utf8')]).toEqual([file, true]);
    expect(text).not.toContain('sourceMappingURL');
    const found = faultsIn(text);
    expect([file, tellsNothing(found), found.slice(0, 3)]).toEqual([file, true, expect.anything()]);
    if (found.length > 0) lists.push(file);
  }
  // one list for each unit, and the scan would see them
  expect(lists.length).toBeGreaterThanOrEqual(units.length);
}, 60_000);

/** A student on a phone joins, takes the call, reads: all that came as files, all that the socket heard, what is kept. */
async function device(fault: string) {
  const period = await at.classCalled('Period 3', ['Ana']);
  await at.get<WorkSet>('POST', `/classes/${period.id}/sets`, {
    kind: 'same',
    unit: 'practice-panel',
    faults: [fault],
    complaint: 'It does not work.',
    open: true,
  });
  const page = await harness.open('#/about', phone, fault);
  const files: Promise<readonly [string, string]>[] = [];
  const heard: string[] = [];
  page.on('response', (response) => {
    const path = new URL(response.url()).pathname;
    if (path.startsWith('/assets') || path === '/')
      files.push(
        response.text().then(
          (text) => [path, text] as const,
          () => [path, ''] as const,
        ),
      );
  });
  const session = await page.createCDPSession();
  await session.send('Network.enable');
  session.on('Network.webSocketFrameReceived', ({response}) => heard.push(response.payloadData));
  const {token, name, className} = await joinAs(at, period, 'Ana');
  const seat = JSON.stringify({token, name, className});
  await page.evaluate(`localStorage.setItem('rungbench-seat', ${JSON.stringify(seat)})`);
  await page.goto(new URL('#/seat', harness.address).href);
  await page.reload({waitUntil: 'load'});
  const ana = new Person(page, true);
  await ana.press('Take the call');
  await ana.find('rb-meter-face');
  await ana.press('Understood');
  await ana.pressOn('button[data-lead=black]');
  await ana.pickOnDrawing('TB2.C');
  await ana.press('Log', '[role=tab]');
  const kept = (await page.evaluate(
    `Promise.all([JSON.stringify(localStorage), location.href, indexedDB.databases().then(JSON.stringify)])`,
  )) as string[];
  const got = {files: await Promise.all(files), heard, kept, text: await ana.wholeText()};
  await harness.leave(fault);
  return got;
}

test('two devices with two hidden faults are served the same files, and keep nothing of the fault', async () => {
  const [open, other] = [await device('W17:open'), await device('W8:open')];
  const paths = (got: typeof open) => [...new Set(got.files.map(([path]) => path))].sort();
  expect(paths(open)).toEqual(paths(other));
  expect(paths(open).length).toBeGreaterThan(5);
  for (const {files, heard, kept, text} of [open, other]) {
    for (const [path, body] of files)
      expect([path, tellsNothing(faultsIn(body))]).toEqual([path, true]);
    expect(heard.length).toBeGreaterThan(1);
    for (const frame of heard) {
      const answer = JSON.parse(frame) as StudentAnswer;
      const isList = answer.is === 'told' && answer.told.what === 'catalogue';
      expect(isList ? [] : faultsIn(frame)).toEqual([]);
    }
    expect(faultsIn([...kept, text].join('\n'))).toEqual([]);
  }
}, 120_000);
