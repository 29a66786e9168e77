import {mkdtemp, rm} from 'node:fs/promises';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import type {FastifyInstance} from 'fastify';
import {createApp} from '../../src/server/app.ts';
import {openSchool, type School} from '../../src/server/class/school.ts';
import {openFileDatabase} from '../../src/server/data/school-database.ts';
import {startHarness, type Harness} from './harness.ts';

/** The key that the terminal would show at the first start. */
export const firstStartKey = 'a-key-that-only-the-terminal-shows';

/** The built tutor with a class server on an empty data folder. */
export interface ClassHarness extends Harness {
  /** Stops the server and starts it again on the same records and the same port. */
  restart(): Promise<void>;
}

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
  const harness = await startHarness((built) => {
    dist = built;
    return serve();
  });
  school!.addresses.push(harness.address);
  return {
    ...harness,
    async restart() {
      await app.close();
      await school.close();
      await serve();
      school.addresses.push(harness.address);
      await app.listen({port: Number(new URL(harness.address).port), host: '127.0.0.1'});
    },
    async close() {
      await app.close();
      await harness.close();
      await school.close();
      await rm(folder, {recursive: true, force: true});
    },
  };
}
