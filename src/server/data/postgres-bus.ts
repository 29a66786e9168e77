import pg from 'pg';
import {Ears, type BusMessage, type LiveBus, type StudentTopic} from '../class/live-bus.ts';
import {randomId} from '../class/secrets.ts';

const channel = 'rungbench_live';
const retryMs = 1_000;
/** Short messages that wait while the connection is away; older ones go first, whoever listens reads the records anew. */
const mostWaiting = 1_000;

/**
 * Carries live messages between the processes of one school by LISTEN and NOTIFY. Ears in this process hear at once;
 * the other processes when Postgres tells them. A broken connection is made anew.
 */
export class PostgresBus implements LiveBus {
  readonly isShared = true;
  private readonly url: string;
  private readonly own = randomId();
  private readonly ears = new Ears();
  private waiting: string[] = [];
  private client: pg.Client | undefined;
  private closed = false;

  private constructor(url: string) {
    this.url = url;
  }

  static async connect(url: string): Promise<PostgresBus> {
    const bus = new PostgresBus(url);
    await bus.listen();
    return bus;
  }

  publish(message: BusMessage): void {
    this.ears.tell(message);
    this.waiting.push(JSON.stringify({from: this.own, message}));
    if (this.waiting.length > mostWaiting) this.waiting.shift();
    this.flush();
  }

  subscribe(hear: (message: BusMessage) => void, only?: StudentTopic): () => void {
    return this.ears.add(hear, only);
  }

  async close(): Promise<void> {
    this.closed = true;
    this.ears.clear();
    await this.client?.end().catch(() => undefined);
  }

  private flush(): void {
    const {client} = this;
    if (!client) return;
    for (const text of this.waiting.splice(0)) {
      client.query('select pg_notify($1, $2)', [channel, text]).catch(() => undefined);
    }
  }

  private async listen(): Promise<void> {
    const client = new pg.Client({connectionString: this.url, keepAlive: true});
    client.on('notification', ({payload}) => this.hear(payload));
    client.on('error', () => undefined);
    client.on('end', () => {
      if (this.client === client) this.client = undefined;
      if (!this.closed) this.again();
    });
    await client.connect();
    await client.query(`listen ${channel}`);
    this.client = client;
    // while the connection was away others may have come and gone
    this.publish({is: 'who-is-here', class: '*'});
  }

  private again(): void {
    setTimeout(() => {
      if (!this.closed) void this.listen().catch(() => this.again());
    }, retryMs).unref();
  }

  private hear(payload: string | undefined): void {
    let told: {from?: string; message?: BusMessage};
    try {
      told = JSON.parse(payload ?? '{}') as typeof told;
    } catch {
      // somebody else uses the channel's name
      return;
    }
    if (told.from === this.own || !told.message) return;
    this.ears.tell(told.message);
  }
}
