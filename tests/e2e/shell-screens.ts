import {readFileSync} from 'node:fs';
import {writeFile, mkdir} from 'node:fs/promises';
import {join} from 'node:path';
import type {ElementHandle, Page} from 'puppeteer-core';
import {outputFolder} from './harness.ts';
import type {ScreenToSee} from './screen-list.ts';

/** The first match in the page, through shadow roots. */
const deepSource = `(selector) => {
  const roots = [document];
  for (const root of roots) {
    const found = root.querySelector(selector);
    if (found) return found;
    for (const each of root.querySelectorAll('*')) if (each.shadowRoot) roots.push(each.shadowRoot);
  }
}`;

/** Waits for an element, wherever it is. Polls: nothing tells of a change inside a shadow root. */
async function found(page: Page, selector: string): Promise<ElementHandle<HTMLElement>> {
  const call = `(${deepSource})(${JSON.stringify(selector)})`;
  const handle = await page.waitForFunction(call, {polling: 100, timeout: 60_000});
  return handle.asElement() as ElementHandle<HTMLElement>;
}

async function seen(page: Page, selector: string): Promise<void> {
  await found(page, selector);
}

async function press(page: Page, selector: string): Promise<void> {
  await (await found(page, selector)).evaluate((element) => element.click());
}

/** Waits for the words in the text of the page's heading. */
async function headed(page: Page, words: string): Promise<void> {
  const call = `(${deepSource})('main h1, h1[tabindex]')?.textContent.includes(${JSON.stringify(words)})`;
  await page.waitForFunction(call, {polling: 100, timeout: 60_000});
}

/** Chooses the fault that these words leave, on the hide page. */
async function chooseFault(page: Page, words: string): Promise<void> {
  const search = (await found(page, '#words')) as ElementHandle<HTMLInputElement>;
  await search.evaluate((input, value) => {
    input.value = value;
    input.dispatchEvent(new Event('input'));
  }, words);
  await press(page, '.modes button');
  await page.waitForFunction(() => {
    const hide = document.querySelector('rb-app')?.shadowRoot?.querySelector('rb-hide-page');
    return hide?.shadowRoot?.querySelector('textarea')?.value;
  });
}

/** Past calls of every kind of result. */
function pastCalls(): object[] {
  const call = (id: string, minutesAgo: number, more: object): object => {
    const at = new Date(Date.now() - minutesAgo * 60_000).toISOString();
    return {
      id,
      unit: 'split-heat-pump',
      unitTitle: 'Split heat pump, 3 ton, 240 V',
      complaint:
        'The air conditioning is on, but the house does not cool down. The outdoor unit is silent.',
      sealed: 'unreadable',
      seed: 1,
      purpose: 'call',
      begunAt: at,
      touchedAt: at,
      actionCount: 14,
      minutes: 23,
      stage: 'working',
      ...more,
    };
  };
  const onPanel = {
    unit: 'practice-panel',
    unitTitle: 'Practice panel',
    complaint: 'The call switch is on, but the lamp does not light.',
  };
  const healthy = 'Free run: nothing is wrong with this unit.';
  return [
    call('a', 5, {minutes: 6}),
    call('b', 90, {...onPanel, stage: 'cleared', verdict: 'right', minutes: 11}),
    call('c', 1500, {stage: 'named', verdict: 'wrong', minutes: 42}),
    call('d', 3000, {...onPanel, stage: 'named', verdict: 'equivalent', minutes: 17}),
    call('e', 4500, {stage: 'given-up', verdict: 'given-up', minutes: 55}),
    call('f', 6000, {...onPanel, complaint: healthy, purpose: 'free-run', minutes: 3}),
  ];
}

/** Writes past calls where the tutor keeps them, as if they had been taken, and opens the page anew. */
async function withPast(page: Page): Promise<void> {
  await page.evaluate(async (heads) => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('rungbench');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const writing = database.transaction(['heads', 'settings'], 'readwrite');
    for (const head of heads) writing.objectStore('heads').put(head);
    writing.objectStore('settings').put('yes', 'first-reading-done');
    await new Promise((resolve) => (writing.oncomplete = resolve));
    database.close();
  }, pastCalls());
  await page.reload({waitUntil: 'load'});
}

/** A unit file of somebody's own, with or without mistakes, chosen in the file field. */
async function openFile(page: Page, name: string, text: string): Promise<void> {
  const path = join(outputFolder, name);
  await mkdir(outputFolder, {recursive: true});
  await writeFile(path, text);
  await seen(page, 'rb-call-starter');
  const field = (await found(page, '#file')) as ElementHandle<HTMLInputElement>;
  await field.uploadFile(path);
}

const panel = readFileSync(
  new URL('../../content/units/practice-panel.yaml', import.meta.url),
  'utf8',
);
const own = panel
  .replace('id: practice-panel', 'id: my-panel')
  .replace(
    'title: Practice panel',
    'title: My own panel, second shelf of the cabinet by the window',
  );
const mistaken = own
  .replace('kind: lamp', 'kind: lmap')
  .replace('gauge: 18', 'gauge: 17')
  .replace('from: F1.2', 'from: F1.3');

/** The screens around the bench: choosing, hiding, opening, history, safety, and what goes wrong. */
export const shellScreens: readonly ScreenToSee[] = [
  {name: 'home', path: '', wholePage: true, prepare: (page) => seen(page, 'rb-unit-picture')},
  {
    name: 'home-returning',
    path: '',
    wholePage: true,
    prepare: async (page) => {
      await seen(page, 'rb-unit-picture');
      await withPast(page);
      await seen(page, '.continue');
      await seen(page, 'rb-unit-picture');
    },
  },
  {
    name: 'home-mistaken-file',
    path: '',
    wholePage: true,
    prepare: async (page) => {
      await openFile(page, 'mistaken.yaml', mistaken);
      await seen(page, '.mistakes');
    },
  },
  {
    name: 'unit',
    path: '#/unit/split-heat-pump',
    wholePage: true,
    prepare: (page) => seen(page, '.sequences'),
  },
  {
    name: 'unit-own',
    path: '',
    prepare: async (page) => {
      await openFile(page, 'my-panel.yaml', own);
      await seen(page, '.sequences');
    },
  },
  {
    name: 'unit-missing',
    path: '#/unit/elsewhere',
    prepare: (page) => headed(page, 'cannot be shown'),
  },
  {name: 'hide', path: '#/hide/split-heat-pump', prepare: (page) => seen(page, '.modes button')},
  {
    name: 'hide-chosen',
    path: '#/hide/split-heat-pump',
    wholePage: true,
    prepare: async (page) => {
      await chooseFault(page, 'contactor weld');
    },
  },
  {
    name: 'hide-link',
    path: '#/hide/split-heat-pump',
    wholePage: true,
    prepare: async (page) => {
      await chooseFault(page, 'high-pressure stuck open');
      await press(page, '.hand button:nth-of-type(2)');
      await seen(page, 'rb-share-link');
    },
  },
  {
    name: 'hide-diagram',
    path: '#/hide/split-heat-pump',
    wholePage: true,
    prepare: async (page) => {
      await press(page, '.ways label:nth-of-type(2) input');
      await seen(page, 'rb-unit-diagram');
    },
  },
  {
    name: 'handed',
    path: '#/hide/split-heat-pump',
    prepare: async (page) => {
      await chooseFault(page, 'contactor weld');
      await press(page, '.hand button');
      await seen(page, 'rb-call-card');
    },
  },
  {
    name: 'open-damaged',
    path: '#/open/cut-short',
    prepare: (page) => headed(page, 'does not open'),
  },
  {name: 'guide', path: '#/guide', prepare: (page) => seen(page, 'rb-bench-desk')},
  {name: 'history-empty', path: '#/history', prepare: (page) => seen(page, '.empty')},
  {
    name: 'history',
    path: '#/history',
    wholePage: true,
    prepare: async (page) => {
      await seen(page, '.empty');
      await withPast(page);
      await seen(page, '.calls');
    },
  },
  {
    name: 'history-delete',
    path: '#/history',
    prepare: async (page) => {
      await seen(page, '.empty');
      await withPast(page);
      await press(page, '.delete');
      await seen(page, 'dialog[open]');
    },
  },
  {name: 'about', path: '#/about', wholePage: true, prepare: (page) => headed(page, 'Safety')},
  {name: 'unknown', path: '#/nowhere', prepare: (page) => headed(page, 'no such sheet')},
  {
    name: 'storage-blocked',
    path: '',
    prepare: async (page) => {
      await page.evaluateOnNewDocument(() =>
        Object.defineProperty(window, 'indexedDB', {value: undefined}),
      );
      await page.reload({waitUntil: 'load'});
      await seen(page, '.notice .caution');
    },
  },
];
