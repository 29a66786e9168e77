import {monitorEventLoopDelay} from 'node:perf_hooks';
import {createApp} from '../../../src/server/app.ts';
import {openSchool} from '../../../src/server/class/school.ts';
import {openFileDatabase} from '../../../src/server/data/school-database.ts';

/** How the measured server stands, since it was asked last. */
export interface ServerState {
  /** Bytes. */
  readonly rss: number;
  readonly heapUsed: number;
  /** Processor time of all its threads, microseconds. */
  readonly cpuMicroseconds: number;
  readonly elapsedMs: number;
  /** Longest time in which it heard nobody, milliseconds. */
  readonly longestBlockMs: number;
  readonly benches: number;
  readonly commits: number;
  readonly actions: number;
}

// The server that is measured: `tsx bench-server.ts DATA DIST`. A line on its input is answered by how it stands.
const [data, dist] = process.argv.slice(2);
const school = await openSchool(await openFileDatabase(data));
const app = await createApp(dist, school);
const address = await app.listen({port: 0, host: '127.0.0.1'});
console.log(JSON.stringify({port: Number(new URL(address).port)}));

const delay = monitorEventLoopDelay({resolution: 5});
delay.enable();
let before = process.cpuUsage();
let beforeAt = performance.now();
process.stdin.on('data', () => {
  // read before garbage is collected: that is ours, not the server's
  const {user, system} = process.cpuUsage(before);
  const elapsedMs = performance.now() - beforeAt;
  const longestBlockMs = delay.max / 1e6;
  globalThis.gc?.();
  const {rss, heapUsed} = process.memoryUsage();
  const state: ServerState = {
    rss,
    heapUsed,
    cpuMicroseconds: user + system,
    elapsedMs,
    longestBlockMs,
    benches: school.benches.inMemory,
    ...school.journal.counts,
  };
  before = process.cpuUsage();
  beforeAt = performance.now();
  delay.reset();
  console.log(JSON.stringify(state));
});
process.stdin.on('end', () => process.exit());
