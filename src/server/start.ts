import {resolve} from 'node:path';
import {createApp} from './app.ts';
import {build, isStale} from './build.ts';
import {listenOnFreePort, wantedPort} from './port.ts';

/** `npm start`: builds the tutor if anything changed, serves it, and prints where. */
async function start(): Promise<void> {
  const root = resolve(import.meta.dirname, '../..');
  const wanted = wantedPort(process.env['PORT']);
  if (await isStale(root)) {
    console.log('Building the tutor …');
    await build(root);
  }
  const app = await createApp(resolve(root, 'dist'));
  const port = await listenOnFreePort(
    wanted,
    (port) => app.listen({port, host: 'localhost'}),
    (taken, next) => console.log(`Port ${taken} is taken, trying ${next}.`),
  );
  console.log(`Rungbench: http://localhost:${port}/`);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => void app.close().then(() => process.exit(0)));
  }
}

start().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
