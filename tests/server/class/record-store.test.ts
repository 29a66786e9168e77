import {createServer, type IncomingHttpHeaders, type Server} from 'node:http';
import type {AddressInfo} from 'node:net';
import {afterEach, beforeEach, describe, expect, test} from 'vitest';
import {xapiStatement, type XapiStatement} from '../../../src/classroom/xapi-schema.ts';
import {xapiStatements} from '../../../src/classroom/xapi-statements.ts';
import {uuidOf} from '../../../src/server/class/exports.ts';
import {sendStatements} from '../../../src/server/class/record-store.ts';

/**
 * A record store on this machine that does what the specification asks of one (xAPI 1.0.3, part three: "Statement
 * Resource", "Headers", "Error Codes"): the version header or 400; 409 where a statement with the same id reads
 * otherwise, and then nothing of the batch is kept.
 */
class SmallStore {
  readonly kept = new Map<string, string>();
  readonly asked: {path: string; headers: IncomingHttpHeaders; ids: string[]}[] = [];
  /** Answers given before the store is well again. */
  readonly trouble: {status: number; headers?: Record<string, string>}[] = [];
  private readonly server: Server;

  constructor(password?: string) {
    this.server = createServer((request, response) => {
      const parts: Buffer[] = [];
      request.on('data', (part: Buffer) => parts.push(part));
      request.on('end', () => {
        const {url, method, headers} = request;
        const batch = JSON.parse(Buffer.concat(parts).toString()) as XapiStatement[];
        this.asked.push({path: url!, headers, ids: batch.map(({id}) => id)});
        const trouble = this.trouble.shift();
        const end = (status: number, body: unknown = []): void => {
          response.writeHead(status, {'content-type': 'application/json', ...trouble?.headers});
          response.end(JSON.stringify(body));
        };
        if (trouble) return end(trouble.status);
        if (method !== 'POST' || url !== '/xapi/statements') return end(404);
        if (headers['x-experience-api-version'] !== '1.0.3') return end(400);
        const wanted = `Basic ${Buffer.from(`school:${password}`).toString('base64')}`;
        if (password !== undefined && headers.authorization !== wanted) return end(401);
        if (batch.some((each) => !xapiStatement.safeParse(each).success)) return end(400);
        const clashes = batch.some(
          (each) => this.kept.has(each.id) && this.kept.get(each.id) !== JSON.stringify(each),
        );
        if (clashes) return end(409);
        for (const each of batch) this.kept.set(each.id, JSON.stringify(each));
        end(
          200,
          batch.map(({id}) => id),
        );
      });
    });
  }

  async open(): Promise<string> {
    await new Promise<void>((resolve) => this.server.listen(0, '127.0.0.1', resolve));
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}/xapi`;
  }

  async close(): Promise<void> {
    this.server.closeAllConnections();
    await new Promise((resolve) => this.server.close(resolve));
  }
}

const statements = (name = 'Ana', actions = 118): XapiStatement[] =>
  xapiStatements(
    {
      assignment: 'a1',
      student: {id: 's1', name},
      className: 'Period 3',
      set: {id: 'm1', title: 'Monday'},
      kind: 'call',
      unit: 'practice-panel',
      openedAt: 1_700_000_000_000,
      finishedAt: 1_700_000_900_000,
      verdict: 'right',
      points: 84,
      minutes: 12.5,
      hints: 0,
      findings: 1,
      actions: Array.from({length: actions}, (_, i) => ({
        number: i + 1,
        action: {do: 'wait' as const, seconds: 1},
        at: 1_700_000_000_000 + i,
      })),
    },
    {
      home: 'http://school.example/',
      uuidOf,
      isoTime: (ms) => new Date(ms).toISOString(),
    },
  );

const quick = [1, 1];
let store: SmallStore;
let url: string;
beforeEach(async () => {
  store = new SmallStore('lamp relay');
  url = await store.open();
});
afterEach(() => store.close());
const key = {user: 'school', password: 'lamp relay'};

describe('sending to a record store', () => {
  test('batches of fifty, in order, with version and sign-in; a slash at the end of the address does no harm', async () => {
    const all = statements();
    expect(await sendStatements(all, {url: `${url}/`, ...key}, quick)).toEqual({
      sent: 120,
      known: 0,
    });
    expect(store.asked.map(({ids}) => ids.length)).toEqual([50, 50, 20]);
    expect(store.asked.flatMap(({ids}) => ids)).toEqual(all.map(({id}) => id));
    expect(store.asked[0]).toMatchObject({
      path: '/xapi/statements',
      headers: {'x-experience-api-version': '1.0.3', 'content-type': 'application/json'},
    });
    expect([...store.kept.values()].map((text) => JSON.parse(text) as unknown)).toEqual(all);
  });

  test('sending again enters nothing twice', async () => {
    const all = statements();
    await sendStatements(all, {url, ...key}, quick);
    await sendStatements(all, {url, ...key}, quick);
    expect(store.kept.size).toBe(120);
  });

  test('one statement that clashes keeps none of the others out of the store', async () => {
    const [first] = statements('Ana');
    store.kept.set(first.id, JSON.stringify(first));
    // renamed meanwhile: the first one reads otherwise now, and the store has it already
    const all = statements('Anna');
    expect(await sendStatements(all, {url, ...key}, quick)).toEqual({sent: 119, known: 1});
    expect(store.kept.size).toBe(120);
    expect(store.kept.get(first.id)).toContain('"Ana"');
  });

  test('a store that is busy or breaks down is asked again, and then left with a sentence that says how far it came', async () => {
    store.trouble.push({status: 503}, {status: 500});
    expect(await sendStatements(statements(), {url, ...key}, quick)).toMatchObject({sent: 120});
    store.trouble.push({status: 429, headers: {'retry-after': '0'}});
    expect(await sendStatements(statements(), {url, ...key}, quick)).toMatchObject({sent: 120});
    const before = store.asked.length;
    store.trouble.push(...[503, 503, 503].map((status) => ({status})));
    await expect(sendStatements(statements(), {url, ...key}, quick)).rejects.toThrow(
      /answered 503.*try again later; 0 statements/,
    );
    expect(store.asked.length - before).toBe(3);
    // an hour is not waited for
    store.trouble.push({status: 503, headers: {'retry-after': '3600'}});
    await expect(sendStatements(statements(), {url, ...key}, quick)).rejects.toThrow(/503/);
  });

  test('a wrong password, a wrong address and a store that is away are told in words, and not tried again', async () => {
    await expect(
      sendStatements(statements(), {url, user: 'school', password: 'guess'}, quick),
    ).rejects.toThrow(/401. Compare user and password/);
    await expect(
      sendStatements(statements(), {url: url.replace('xapi', 'lrs'), ...key}, quick),
    ).rejects.toThrow(/404. Compare its address/);
    expect(store.asked).toHaveLength(2);
    await store.close();
    const away = sendStatements(statements(), {url, ...key}, quick);
    await expect(away).rejects.toThrow(/cannot be reached/);
    await away.catch(({message}: Error) => expect(message).not.toContain('lamp relay'));
    store = new SmallStore();
    await store.open();
  });

  test('a store that sends us on to another address is not followed: the password was for this one', async () => {
    const other = new SmallStore();
    const elsewhere = await other.open();
    store.trouble.push(
      ...[1, 2, 3].map(() => ({status: 307, headers: {location: `${elsewhere}/statements`}})),
    );
    await expect(sendStatements(statements(), {url, ...key}, quick)).rejects.toThrow(
      /cannot be reached/,
    );
    expect(other.asked).toEqual([]);
    await other.close();
  });
});
