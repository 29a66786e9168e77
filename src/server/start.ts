import {resolve} from 'node:path';
import {renderUnicodeCompact} from 'uqr';
import {createApp} from './app.ts';
import {build, isStale} from './build.ts';
import {publicAddress} from './class/join-url.ts';
import {openSchool} from './class/school.ts';
import {PostgresBus} from './data/postgres-bus.ts';
import {openFileDatabase, openPostgres} from './data/school-database.ts';
import {lanAddresses} from './lan-addresses.ts';
import {listenOnFreePort, wantedPort} from './port.ts';
import {readSettings} from './settings.ts';

/** `npm start`: builds the tutor if anything changed, serves it with the class server, and prints where. */
async function start(): Promise<void> {
  const root = resolve(import.meta.dirname, '../..');
  const wanted = wantedPort(process.env['PORT']);
  const settings = readSettings(process.argv.slice(2), process.env, root);
  // a folder that cannot be written is told before anybody waits for a build
  const database = settings.postgres
    ? await openPostgres(settings.postgres)
    : await openFileDatabase(settings.dataFolder);
  if (await isStale(root)) {
    console.log('Building the tutor …');
    await build(root);
  }
  const bus = settings.postgres ? await PostgresBus.connect(settings.postgres) : undefined;
  const school = await openSchool(database, bus);
  const app = await createApp(resolve(root, 'dist'), school, {trustProxy: settings.trustProxy});
  const port = await listenOnFreePort(
    wanted,
    (port) => app.listen({port, host: settings.network ? '::' : 'localhost'}),
    (taken, next) => console.log(`Port ${taken} is taken, trying ${next}.`),
  );
  const hosts = ['localhost', ...(settings.network ? lanAddresses() : [])];
  school.addresses.push(
    ...(settings.publicUrl ? [settings.publicUrl] : []),
    ...hosts.map((host) => `http://${host}:${port}/`),
  );
  console.log(`Rungbench: http://localhost:${port}/`);
  for (const address of school.addresses) {
    if (!address.includes('localhost')) console.log(`On this network: ${address}`);
  }
  console.log(`Records: ${database.where}`);
  if (school.clockBehindMs > 60_000) {
    console.log(
      `The clock of this computer is ${Math.round(school.clockBehindMs / 60_000)} minutes behind the records. Set it; until then times go on from the last one kept.`,
    );
  }
  if (await school.accounts.isEmpty()) {
    console.log(
      `For a class, make the instructor's account first: http://localhost:${port}/#/class/start?key=${school.firstStartKey}`,
    );
  }
  if (settings.network) {
    const address = publicAddress(school);
    console.log(`\n${renderUnicodeCompact(address)}\n${address}`);
  }
  // the thread for long work reads the units while nobody waits for it yet
  void school.longWork.ask('catalogue', {unit: 'practice-panel'}, 'idle').catch(() => undefined);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      void app
        .close()
        .then(() => school.close())
        .then(() => process.exit(0));
    });
  }
}

start().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
