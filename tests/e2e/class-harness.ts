import {mkdtemp, rm} from 'node:fs/promises';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import type {FastifyInstance} from 'fastify';
import puppeteer, {type Browser, type Page} from 'puppeteer-core';
import {createApp} from '../../src/server/app.ts';
import {openSchool, type School} from '../../src/server/class/school.ts';
import {openFileDatabase} from '../../src/server/data/school-database.ts';
import {findChromium} from '../chromium.ts';
import {show, startHarness, type Harness, type Screen} from './harness.ts';

/** The key that the terminal would show at the first start. */
export const firstStartKey = 'a-key-that-only-the-terminal-shows';

/** The built tutor with a class server on an empty data folder. */
export interface ClassHarness extends Harness {
  /** The server that answers now. */
  readonly app: FastifyInstance;
  readonly school: School;
  /** Stops the server and starts it again on the same records and the same port. */
  restart(): Promise<void>;
  /**
   * Opens a path by a name of the network, over plain http: to the browser no secure context, as for every phone in a
   * classroom. (`localhost` always is one.)
   */
  openOnNetwork(path: string, screen: Screen): Promise<Page>;
}

const networkName = 'class-server.test';

export async function startClassHarness(): Promise<ClassHarness> {
  const folder = await mkdtemp(join(tmpdir(), 'rungbench-class-'));
  let app: FastifyInstance;
  let school: School;
  let dist = '';
  const serve = async (): Promise<FastifyInstance> => {
    school = await openSchool(await openFileDatabase(folder), undefined, {firstStartKey});
    app = await createApp(dist, school);
    return app;
  };
  const phones: Browser[] = [];
  const harness = await startHarness((built) => {
    dist = built;
    return serve();
  });
  school!.addresses.push(harness.address);
  return {
    ...harness,
    get app() {
      return app;
    },
    get school() {
      return school;
    },
    async restart() {
      await app.close();
      await school.close();
      await serve();
      school.addresses.push(harness.address);
      await app.listen({port: Number(new URL(harness.address).port), host: '127.0.0.1'});
    },
    async openOnNetwork(path, screen) {
      const chromium = await findChromium();
      const browser = await puppeteer.launch({
        executablePath: chromium.executablePath,
        args: [...chromium.args, `--host-resolver-rules=MAP ${networkName} 127.0.0.1`],
        env: chromium.env,
        headless: 'shell',
      });
      phones.push(browser);
      const page = await browser.newPage();
      await show(page, screen);
      const {port} = new URL(harness.address);
      await page.goto(`http://${networkName}:${port}/${path}`, {waitUntil: 'load'});
      return page;
    },
    async close() {
      await Promise.all(phones.map((browser) => browser.close()));
      await app.close();
      await harness.close();
      await school.close();
      await rm(folder, {recursive: true, force: true});
    },
  };
}
