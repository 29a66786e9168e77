import {readFileSync} from 'node:fs';
import {join, resolve} from 'node:path';
import {gzipSync} from 'node:zlib';
import puppeteer, {type Browser, type Page} from 'puppeteer-core';
import {createApp} from '../../../src/server/app.ts';
import {build, isStale} from '../../../src/server/build.ts';
import {callLink} from '../../e2e/at-the-bench.ts';
import {Person} from '../../e2e/person.ts';
import {findChromium} from '../../chromium.ts';
import {largestUnit} from './largest-unit.ts';
import {share, type Row} from './table.ts';

const root = resolve(import.meta.dirname, '../../..');
const dist = join(root, 'dist');
const readings = 220;

/** The built tutor in Chromium: from the lead placed to the value shown, and what comes down before the first reading. */
export async function pageRows(): Promise<Row[]> {
  if (await isStale(root)) await build(root);
  const app = await createApp(dist);
  const address = `http://localhost:${new URL(await app.listen({port: 0, host: '127.0.0.1'})).port}/`;
  try {
    return [
      ...(await withBrowser((browser) => leadRows(browser, address))),
      ...(await withBrowser((browser) => firstReadingRows(browser, address))),
    ];
  } finally {
    await app.close();
  }
}

async function withBrowser<T>(work: (browser: Browser) => Promise<T>): Promise<T> {
  const {executablePath, args, env} = await findChromium();
  const browser = await puppeteer.launch({executablePath, args, env, headless: 'shell'});
  try {
    return await work(browser);
  } finally {
    await browser.close();
  }
}

async function atTheBench(page: Page, address: string): Promise<Person> {
  await page.setViewport({width: 1280, height: 800});
  await page.goto(new URL(callLink(largestUnit().id, [], 'No cooling.'), address).href);
  const person = new Person(page, false);
  await person.press('Take the call');
  await person.find('rb-meter-face');
  return person;
}

/** In the page: picks a terminal as the drawing does. */
const pickSource = `globalThis.pick = (terminal) => deep('rb-drawing-board').dispatchEvent(
  new CustomEvent('terminal-picked', {detail: {terminal}, bubbles: true, composed: true}));`;
const deepSource = `globalThis.deep = (selector) => {
  const walk = (root) => {
    for (const element of root.querySelectorAll('*')) {
      if (element.matches(selector)) return element;
      const inside = element.shadowRoot && walk(element.shadowRoot);
      if (inside) return inside;
    }
  };
  return walk(document);
};`;
/** In the page: puts the black lead down and reads; milliseconds until the glass shows the new value. */
const readSource = `globalThis.readAt = async (terminal) => {
  const frame = () => new Promise(requestAnimationFrame);
  const before = deep('rb-bench-desk').view.log.length;
  const from = performance.now();
  pick(terminal);
  const form = deep('rb-expectation-form');
  await deep('rb-bench-desk').updateComplete;
  await form.updateComplete;
  if (!form.ready) { await frame(); }
  form.submit();
  while (deep('rb-bench-desk').view.log.length === before) await new Promise((done) => setTimeout(done));
  await deep('rb-meter-face').updateComplete;
  return performance.now() - from;
};`;

/** In the page: takes a cover off; a reading behind a closed one would be refused. */
const openSource = `globalThis.openCover = async (enclosure) => {
  const desk = deep('rb-bench-desk');
  const before = desk.view.log.length;
  desk.dispatchEvent(new CustomEvent('action-asked', {detail: {action: {do: 'open-cover', enclosure}}, bubbles: true, composed: true}));
  while (desk.view.log.length === before) await new Promise((done) => setTimeout(done));
};`;

async function leadRows(browser: Browser, address: string): Promise<Row[]> {
  const unit = largestUnit();
  const page = await browser.newPage();
  await atTheBench(page, address);
  await page.evaluate(`${deepSource}${pickSource}${readSource}${openSource}`);
  for (const {id} of unit.enclosures.filter(({cover}) => cover))
    await page.evaluate(`openCover(${JSON.stringify(id)})`);
  const terminals = unit.parts
    .filter(({spare}) => !spare?.length)
    .flatMap((part) => part.terminals.map((terminal) => `${part.id}.${terminal}`));
  await page.evaluate(`pick(${JSON.stringify(terminals[0])})`);
  const shown: number[] = [];
  const script: number[] = [];
  for (let i = 1; i <= readings; i += 1) {
    const terminal = terminals[(i * 7) % terminals.length];
    const before = (await page.metrics()).ScriptDuration!;
    const took = (await page.evaluate(`readAt(${JSON.stringify(terminal)})`)) as number;
    const after = (await page.metrics()).ScriptDuration!;
    // the first ones warm the engine up, as the first readings of a call do
    if (i <= 20) continue;
    shown.push(took);
    script.push((after - before) * 1000);
  }
  const of = (values: readonly number[]): string =>
    `p50 ${share(values, 0.5).toFixed(1)} ms, p99 ${share(values, 0.99).toFixed(1)} ms`;
  return [
    {
      what: `Lead placed to value shown, ${unit.id} in Chromium, ${shown.length} readings`,
      measured: of(shown),
      against: 'worker, message, store and drawing included',
    },
    {
      what: 'Script time of that on the page’s thread',
      measured: of(script),
      against: 'goal p99 8 ms',
    },
  ];
}

async function firstReadingRows(browser: Browser, address: string): Promise<Row[]> {
  const page = await browser.newPage();
  const devtools = await page.createCDPSession();
  await devtools.send('Network.enable');
  await devtools.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: 100,
    downloadThroughput: 1.6e6 / 8,
    uploadThroughput: 0.75e6 / 8,
  });
  await page.emulateCPUThrottling(4);
  const from = performance.now();
  await atTheBench(page, address);
  await page.evaluate(`${deepSource}${pickSource}${readSource}`);
  // the thermostat has no cover: two of its terminals can be read at once
  const thermostat = largestUnit().parts.find(({kind}) => kind === 'thermostat')!;
  await page.evaluate(`pick('${thermostat.id}.R')`);
  await page.evaluate(`readAt('${thermostat.id}.C')`);
  const seconds = (performance.now() - from) / 1000;
  const loaded = new Set<string>();
  const urlsSource = `performance.getEntriesByType('resource').map((entry) => entry.name)`;
  for (const url of (await page.evaluate(urlsSource)) as string[]) loaded.add(url);
  for (const worker of page.workers()) {
    loaded.add(worker.url());
    for (const url of (await worker.evaluate(urlsSource)) as string[]) loaded.add(url);
  }
  const scripts = [...loaded].filter((url) => url.startsWith(address) && /\.js($|\?)/.test(url));
  const bytes = (urls: readonly string[]): number =>
    urls.reduce(
      (sum, url) => sum + gzipSync(readFileSync(join(dist, new URL(url).pathname))).length,
      0,
    );
  const work = scripts.filter((url) => /worker/i.test(url));
  const page_ = scripts.filter((url) => !work.includes(url));
  return [
    {
      what: 'JavaScript (gzip) before the first reading',
      measured: `${kilobytes(bytes(scripts))} in all: page ${kilobytes(bytes(page_))}, workers ${kilobytes(bytes(work))}`,
      against: `goal 200 kB; elk ${scripts.some((url) => /elk/i.test(url)) ? 'LOADED' : 'not loaded'}`,
    },
    {
      what: 'From the link to the first reading at 4× CPU slow-down and 1.6 Mbit/s',
      measured: `${seconds.toFixed(1)} s`,
      against: 'a person’s own time left out',
    },
  ];
}

const kilobytes = (bytes: number): string => `${(bytes / 1000).toFixed(0)} kB`;
