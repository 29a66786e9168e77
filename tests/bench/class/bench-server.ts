import {createApp} from '../../../src/server/app.ts';
import {openSchool} from '../../../src/server/class/school.ts';
import {openFileDatabase} from '../../../src/server/data/school-database.ts';

/** The server that is measured: `tsx bench-server.ts DATA DIST`. A line on its input is answered by how it stands. */
const [data, dist] = process.argv.slice(2);
const school = await openSchool(await openFileDatabase(data));
const app = await createApp(dist, school);
const address = await app.listen({port: 0, host: '127.0.0.1'});
console.log(JSON.stringify({port: Number(new URL(address).port)}));

let before = process.cpuUsage();
let beforeAt = performance.now();
process.stdin.on('data', () => {
  globalThis.gc?.();
  const {rss, heapUsed} = process.memoryUsage();
  const {user, system} = process.cpuUsage(before);
  const now = performance.now();
  const cpu = (user + system) / 1000 / (now - beforeAt);
  before = process.cpuUsage();
  beforeAt = now;
  console.log(
    JSON.stringify({
      rss,
      heapUsed,
      cpu,
      benches: school.benches.inMemory,
      ...school.journal.counts,
    }),
  );
});
