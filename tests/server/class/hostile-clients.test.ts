import {connect} from 'node:net';
import {afterAll, beforeAll, expect, test} from 'vitest';
import WebSocket from 'ws';
import type {ClassDetail} from '../../../src/classroom/protocol/rest.ts';
import type {WorkSet} from '../../../src/classroom/protocol/work-set.ts';
import {ClassAtWork, type Device} from './class-at-work.ts';

let at: ClassAtWork;
let period: ClassDetail;
let ana: Device;
let call: string;
let number = 0;
beforeAll(async () => {
  at = await ClassAtWork.open();
  await at.firstStart();
  period = await at.classOf('Ana', 'Ben');
  await at.get<WorkSet>('POST', `/classes/${period.id}/sets`, {
    kind: 'same',
    unit: 'practice-panel',
    faults: [],
    complaint: 'Routine.',
    open: true,
  });
  ana = await at.join(period, 'Ana');
  call = (await ana.desk()).items[0].assignment;
  await ana.open(call);
}, 60_000);
afterAll(() => at.close(), 60_000);

/** The others work on as if nothing were. */
async function anaIsNotDisturbed(): Promise<void> {
  expect(await ana.act(call, ++number, {do: 'note', text: 'Still here.'})).toMatchObject({
    is: 'done',
  });
}

/** Opens a socket, lets `harm` do its worst, and gives the code it is closed with. */
function closedAfter(
  harm: (socket: WebSocket) => void,
  options: {origin?: string; path?: string} = {},
): Promise<number> {
  return new Promise((resolve) => {
    const socket = new WebSocket(
      `${at.url.replace('http', 'ws')}/api/socket/${options.path ?? 'student'}`,
      {headers: {origin: options.origin ?? at.url}},
    );
    socket.on('open', () => harm(socket));
    socket.on('unexpected-response', (_request, response) => resolve(response.statusCode ?? 0));
    socket.on('error', () => undefined);
    socket.on('close', (code) => resolve(code));
  });
}

test.each([
  ['no JSON', 'hello'],
  ['an unknown message', '{"is":"give-me-everything"}'],
  ['a wrong shape', '{"is":"join","token":7}'],
  ['more than the schema knows', JSON.stringify({is: 'ping', extra: true})],
  ['a prototype', '{"is":"ping","__proto__":{"admin":true},"constructor":1}'],
])('%s ends that socket alone', async (_what, text) => {
  expect(await closedAfter((socket) => socket.send(text))).toBe(4400);
  await anaIsNotDisturbed();
});

test('a message of 10 MB is cut off at the frame, and one above our longest with a reason', async () => {
  expect(await closedAfter((socket) => socket.send('x'.repeat(10_000_000)))).toBe(1009);
  expect(await closedAfter((socket) => socket.send(`"${'x'.repeat(40_000)}"`))).toBe(4413);
  await anaIsNotDisturbed();
});

test('binary data and malformed frames end the socket', async () => {
  expect(await closedAfter((socket) => socket.send(Buffer.from([1, 2, 3])))).toBe(4400);
  // an unmasked frame with reserved bits set: no client may send that (RFC 6455, 5.1 and 5.2)
  const code = await closedAfter((socket) => {
    (socket as unknown as {_socket: {write(data: Buffer): void}})._socket.write(
      Buffer.from([0xf1, 0x05, 0x68, 0x65, 0x6c, 0x6c, 0x6f]),
    );
  });
  expect([1002, 1006]).toContain(code);
  await anaIsNotDisturbed();
});

test('a flood is stopped', async () => {
  const code = await closedAfter((socket) => {
    for (let i = 0; i < 5000; i++) socket.send('{"is":"ping"}');
  });
  expect(code).toBe(4429);
  await anaIsNotDisturbed();
});

test('acting before joining, or on another student’s call, is refused', async () => {
  const act = {is: 'act', assignment: call, number: 1, action: {do: 'wait', seconds: 1}};
  expect(await closedAfter((socket) => socket.send(JSON.stringify(act)))).toBe(4401);
  const ben = await at.join(period, 'Ben');
  await ben.desk();
  ben.send({is: 'open', assignment: call});
  await expect.poll(() => ben.closedWith).toBe(4503);
  expect(ben.texts.join()).not.toContain('"view"');
  await anaIsNotDisturbed();
});

test('a socket from a page of another site is not opened', async () => {
  expect(await closedAfter(() => undefined, {origin: 'http://elsewhere.example'})).toBe(403);
  expect(await closedAfter(() => undefined, {path: 'instructor'})).toBe(401);
});

test('a wrong token opens nothing', async () => {
  const join = JSON.stringify({is: 'join', token: 'x'.repeat(32)});
  expect(await closedAfter((socket) => socket.send(join))).toBe(4401);
});

test('half-open and half-spoken connections do not stop the others', async () => {
  const {port, hostname} = new URL(at.url);
  const halves = Array.from({length: 100}, () => connect(Number(port), hostname));
  for (const half of halves) {
    half.on('error', () => undefined);
    half.write('GET /api/socket/student HTTP/1.1\r\nHost: x\r\n');
  }
  await anaIsNotDisturbed();
  for (const half of halves) half.destroy();
  await anaIsNotDisturbed();
});

test('what changes something needs the token of the page, and a page of this server', async () => {
  const {csrf} = at;
  at.csrf = 'x'.repeat(32);
  expect((await at.ask('POST', '/classes', {name: 'Forged'})).status).toBe(403);
  at.csrf = csrf;
  const foreign = await fetch(`${at.url}/api/sign-in`, {
    method: 'POST',
    headers: {'content-type': 'application/json', origin: 'http://elsewhere.example'},
    body: JSON.stringify({name: 'Instructor', passphrase: 'lamp relay ladder seven'}),
  });
  expect(foreign.status).toBe(403);
});

test('a body that is too long, or of another shape, is told so in a sentence', async () => {
  expect((await at.ask('POST', '/classes', {name: 'x'.repeat(300_000)})).status).toBe(413);
  const wrong = await at.ask('POST', '/classes', {name: 7});
  expect(wrong.status).toBe(400);
  expect(await wrong.json()).toHaveProperty('error');
});

test('the cookie is for the server only: HttpOnly, same site, below /api', async () => {
  const response = await at.ask('POST', '/sign-in', {
    name: 'Instructor',
    passphrase: 'lamp relay ladder seven',
  });
  expect(response.headers.get('set-cookie')).toMatch(/HttpOnly/);
  expect(response.headers.get('set-cookie')).toMatch(/SameSite=Strict/);
  expect(response.headers.get('set-cookie')).toMatch(/Path=\/api/);
  expect(response.headers.get('content-security-policy')).not.toContain('unsafe-inline');
  expect(response.headers.get('cache-control')).toBe('no-store');
});

test('wrong passphrases make one wait, longer each time', async () => {
  const answers: number[] = [];
  for (let i = 0; i < 5; i++) {
    answers.push((await at.ask('POST', '/sign-in', {name: 'Nobody', passphrase: 'wrong'})).status);
  }
  expect(answers.slice(0, 4)).toEqual([401, 401, 401, 401]);
  expect(answers.at(-1)).toBe(429);
});

test('a second first start is refused', async () => {
  const response = await at.ask('POST', '/first-start', {
    key: at.school.firstStartKey,
    name: 'Second',
    passphrase: 'lamp relay ladder seven',
  });
  expect(response.status).toBe(409);
});
