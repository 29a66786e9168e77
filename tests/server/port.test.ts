import {createServer, type Server} from 'node:net';
import {afterEach, expect, test} from 'vitest';
import {isFree, listenOnFreePort, usualPort, wantedPort} from '../../src/server/port.ts';

const servers: Server[] = [];
afterEach(async () => {
  await Promise.all(servers.splice(0).map((server) => new Promise((done) => server.close(done))));
});

/** Takes a port (0 takes a free one) on an address and gives its number. */
function take(port: number, host = '127.0.0.1'): Promise<number> {
  const server = createServer();
  servers.push(server);
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen({port, host}, () => {
      const address = server.address();
      if (address === null || typeof address === 'string') reject(new Error('no port'));
      else resolve(address.port);
    });
  });
}

/** The first of `count` neighbouring ports that are free now. */
async function freeRun(count: number): Promise<number> {
  for (let first = 42_000; first < 60_000; first += count) {
    const ports = Array.from({length: count}, (_, i) => first + i);
    if ((await Promise.all(ports.map(isFree))).every(Boolean)) return first;
  }
  throw new Error('no run of free ports on this machine');
}

test('without PORT the usual port is wanted', () => {
  expect(wantedPort(undefined)).toBe(usualPort);
  expect(wantedPort('')).toBe(usualPort);
});

test('PORT chooses the port', () => {
  expect(wantedPort('8080')).toBe(8080);
});

test.each(['eighty', '0', '-1', '80.5', '65536', '1e9'])(
  'PORT=%s is refused by name',
  (setting) => {
    expect(() => wantedPort(setting)).toThrow(`PORT is "${setting}"`);
  },
);

test('a free port is used as it is, and nobody hears of another', async () => {
  const first = await freeRun(1);
  const heard: number[] = [];
  const port = await listenOnFreePort(first, take, (taken) => heard.push(taken));
  expect(port).toBe(first);
  expect(heard).toEqual([]);
});

test('taken ports are named one by one, and the next free one is used', async () => {
  const first = await freeRun(3);
  await take(first);
  await take(first + 1);
  const heard: [number, number][] = [];
  const port = await listenOnFreePort(first, take, (...pair) => heard.push(pair));
  expect(port).toBe(first + 2);
  expect(heard).toEqual([
    [first, first + 1],
    [first + 1, first + 2],
  ]);
});

test('a port taken between the probe and the listening is passed over too', async () => {
  const first = await freeRun(2);
  const heard: number[] = [];
  const port = await listenOnFreePort(
    first,
    async (wanted) => {
      if (wanted === first) throw Object.assign(new Error('taken'), {code: 'EADDRINUSE'});
    },
    (taken) => heard.push(taken),
  );
  expect(port).toBe(first + 1);
  expect(heard).toEqual([first]);
});

test('any other failure to listen is not taken for a busy port', async () => {
  const first = await freeRun(1);
  const broken = async (): Promise<void> => {
    throw new Error('no network');
  };
  await expect(listenOnFreePort(first, broken, () => {})).rejects.toThrow('no network');
});

test('when every port tried is taken, one sentence says which and what to do', async () => {
  const first = await freeRun(2);
  await take(first);
  await take(first + 1);
  await expect(listenOnFreePort(first, take, () => {}, 2)).rejects.toThrow(
    `Ports ${first} to ${first + 1} are all taken: set PORT to a free one.`,
  );
});
