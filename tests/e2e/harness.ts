import {createRequire} from 'node:module';
import {mkdir, readFile} from 'node:fs/promises';
import {join, resolve} from 'node:path';
import type {AxeResults, RunOptions} from 'axe-core';
import type {FastifyInstance} from 'fastify';
import puppeteer, {type Browser, type Page} from 'puppeteer-core';
import {createApp} from '../../src/server/app.ts';
import {build, isStale} from '../../src/server/build.ts';
import {findChromium} from '../chromium.ts';

const root = resolve(import.meta.dirname, '../..');

/** Where screenshots go; not kept in git. */
export const outputFolder = join(root, 'test-output');

export type Theme = 'light' | 'dark';

export interface Screen {
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  readonly theme?: Theme;
}

/** The two sizes every screen must be good at: a small laptop and a phone. */
export const laptop: Screen = {width: 1280, height: 800};
export const phone: Screen = {width: 390, height: 844};

/** Narrower screens are driven by touch. */
const widestTouchScreen = 600;

/** The built tutor on a free port, with browsers beside it; one per test file, closed in `afterAll`. */
export interface Harness {
  /** `http://localhost:PORT/` */
  readonly address: string;
  /**
   * Opens a path (`''`, `'#/history'`) on a new page. `person` names whose browser it is: people share
   * no storage; the same name again is the same person on a second page.
   */
  open(path: string, screen?: Partial<Screen>, person?: string): Promise<Page>;
  /** Ends a person's browser, and their storage with it. */
  leave(person?: string): Promise<void>;
  close(): Promise<void>;
}

const somebody = 'somebody';

/** `serve` makes the server on the built tutor; a class puts its school behind it. */
export async function startHarness(
  serve: (dist: string) => Promise<FastifyInstance> = (dist) => createApp(dist),
): Promise<Harness> {
  if (await isStale(root)) await build(root);
  const app = await serve(join(root, 'dist'));
  const address = await listen(app);
  // A browser for each person, not a context: the single-process Chromium of a bare machine has one context.
  const browsers = new Map<string, Browser>();
  return {
    address,
    async open(path, screen = {}, person = somebody) {
      const browser = browsers.get(person) ?? (await launch());
      browsers.set(person, browser);
      const page = await browser.newPage();
      watch(page);
      await show(page, {...laptop, ...screen});
      await page.goto(new URL(path, address).href, {waitUntil: 'load'});
      return page;
    },
    async leave(person = somebody) {
      await browsers.get(person)?.close();
      browsers.delete(person);
    },
    async close() {
      await Promise.all([...browsers.values()].map((browser) => browser.close()));
      await app.close();
    },
  };
}

async function listen(app: FastifyInstance): Promise<string> {
  const bound = new URL(await app.listen({port: 0, host: '127.0.0.1'}));
  return `http://localhost:${bound.port}/`;
}

async function launch(): Promise<Browser> {
  const chromium = await findChromium();
  return puppeteer.launch({
    executablePath: chromium.executablePath,
    args: chromium.args,
    env: chromium.env,
    headless: 'shell',
  });
}

/** Sets the size and the theme of a page, as its next layout shall see them. */
export async function show(page: Page, screen: Screen): Promise<void> {
  const {width, height, theme = 'light'} = screen;
  await page.setViewport({width, height, hasTouch: width < widestTouchScreen});
  await page.emulateMediaFeatures([
    {name: 'prefers-color-scheme', value: theme},
    {name: 'prefers-reduced-motion', value: 'reduce'},
  ]);
}

const problemsOfPages = new WeakMap<Page, string[]>();

function watch(page: Page): void {
  const problems: string[] = [];
  problemsOfPages.set(page, problems);
  page.on('pageerror', (error) => {
    problems.push(`uncaught: ${error instanceof Error ? error.message : String(error)}`);
  });
  page.on('console', (message) => {
    // refused styles, scripts and requests arrive here as errors too
    if (message.type() === 'error') problems.push(`console: ${message.text()}`);
  });
  page.on('requestfailed', (request) => {
    // a page that goes away ends its own requests
    if (request.failure()?.errorText !== 'net::ERR_ABORTED')
      problems.push(`no answer: ${request.url()}`);
  });
}

/** What went wrong on a page so far: uncaught errors, error messages, refused or failed requests. Should be empty. */
export function problemsOf(page: Page): readonly string[] {
  return problemsOfPages.get(page) ?? [];
}

/** Writes `test-output/NAME.png` and returns its path. `wholePage` goes past the lower edge of the screen. */
export async function screenshot(page: Page, name: string, wholePage = false): Promise<string> {
  const path = join(outputFolder, `${name}.png`);
  await mkdir(resolve(path, '..'), {recursive: true});
  await page.screenshot({path: path as `${string}.png`, fullPage: wholePage});
  return path;
}

let axeSource: string | undefined;

/** One sentence for each accessibility violation that axe finds on the page, shadow roots included. Should be empty. */
export async function axe(page: Page, options: RunOptions = {}): Promise<string[]> {
  axeSource ??= await readFile(
    createRequire(import.meta.url).resolve('axe-core/axe.min.js'),
    'utf8',
  );
  // evaluated by the debugger: the page's own security policy would refuse an added script
  await page.evaluate(`if (!window.axe) { ${axeSource} }`);
  const results = (await page.evaluate(
    `axe.run(document, ${JSON.stringify(options)})`,
  )) as AxeResults;
  return results.violations.map((violation) => {
    const where = violation.nodes.map((node) => node.target.flat().join(' ')).slice(0, 5);
    return `${violation.id} (${violation.impact}): ${violation.help}, at ${where.join(' | ')}`;
  });
}
