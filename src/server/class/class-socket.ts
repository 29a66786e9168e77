import type {WebSocket} from 'ws';
import type {z} from 'zod';
import {closeCodes} from '../../classroom/protocol/student-messages.ts';
import {Allowance} from './back-off.ts';
import {Refusal} from './refusal.ts';

/** A phone that has not said who it is by then is no phone of this class. */
const joinWithinMs = 10_000;
/** What has not answered a ping by the next one is gone, even if nobody hung up. */
const pingEveryMs = 25_000;
/** Somebody who does not read what is sent may not fill the server's memory. */
const mostUnreadBytes = 1_000_000;

export interface SocketRules<Request> {
  readonly schema: z.ZodType<Request>;
  readonly longest: number;
  /** Messages a second, and as many at once. */
  readonly perSecond: number;
  readonly atOnce: number;
}

const generic =
  'Something went wrong on the server. Everything that was confirmed is kept; reload the page.';

/**
 * One socket of the class, whoever is on it: every message is bounded, checked against its schema and done after the one
 * before it. What cannot be understood ends the socket with a sentence; nobody else notices.
 */
export class ClassSocket<Request, Answer extends {readonly is: string}> {
  readonly socket: WebSocket;
  private readonly rules: SocketRules<Request>;
  private readonly allowance: Allowance;
  private readonly handle: (request: Request) => Promise<void> | void;
  private readonly timers: NodeJS.Timeout[] = [];
  private queue: Promise<void> = Promise.resolve();
  private alive = true;
  private known = false;
  private ended = false;

  constructor(
    socket: WebSocket,
    rules: SocketRules<Request>,
    handle: (request: Request) => Promise<void> | void,
    onEnd: () => void,
  ) {
    this.socket = socket;
    this.rules = rules;
    this.handle = handle;
    this.allowance = new Allowance(rules.perSecond, rules.atOnce);
    socket.on('message', (data: Buffer, isBinary: boolean) => this.hear(data, isBinary));
    socket.on('pong', () => (this.alive = true));
    // a malformed frame or one that is too long: the library closes the socket by itself
    socket.on('error', () => undefined);
    socket.on('close', () => {
      this.ended = true;
      for (const timer of this.timers) clearInterval(timer);
      onEnd();
    });
    this.timers.push(
      setTimeout(() => {
        if (!this.known) this.end(closeCodes.notKnown, 'Nobody has said who this is.');
      }, joinWithinMs),
      setInterval(() => {
        if (!this.alive) return socket.terminate();
        this.alive = false;
        socket.ping();
      }, pingEveryMs),
    );
    for (const timer of this.timers) timer.unref();
  }

  /** Who is on the socket is known now. */
  welcome(): void {
    this.known = true;
  }

  send(answer: Answer): void {
    this.sendText(JSON.stringify(answer));
  }

  /** For what goes to many: made into text once. */
  sendText(text: string): void {
    if (this.ended || this.socket.readyState !== this.socket.OPEN) return;
    if (this.socket.bufferedAmount > mostUnreadBytes) return this.socket.terminate();
    this.socket.send(text);
  }

  /** Says why and closes. */
  end(code: number, sentence: string): void {
    if (this.ended) return;
    this.ended = true;
    this.socket.send(JSON.stringify({is: 'closing', sentence}));
    this.socket.close(code);
  }

  /** Closes with a last word of its own. */
  endWith(code: number, answer: Answer): void {
    if (this.ended) return;
    this.send(answer);
    this.ended = true;
    this.socket.close(code);
  }

  private hear(data: Buffer, isBinary: boolean): void {
    if (this.ended) return;
    this.alive = true;
    if (data.length > this.rules.longest) {
      return this.end(closeCodes.tooLong, 'That message is longer than any of ours.');
    }
    if (!this.allowance.take()) {
      return this.end(closeCodes.tooFast, 'Too many messages at once. Wait a few seconds.');
    }
    const request = isBinary ? undefined : this.read(data);
    if (request === undefined) {
      return this.end(closeCodes.badMessage, 'That message is none of ours. Reload the page.');
    }
    this.queue = this.queue.then(async () => {
      if (this.ended) return;
      try {
        await this.handle(request);
      } catch (error) {
        // the text of an unforeseen error could tell what is hidden, so it stays here
        this.end(closeCodes.tryLater, error instanceof Refusal ? error.message : generic);
      }
    });
  }

  private read(data: Buffer): Request | undefined {
    try {
      const parsed = this.rules.schema.safeParse(JSON.parse(data.toString('utf8')));
      return parsed.success ? parsed.data : undefined;
    } catch {
      return undefined;
    }
  }
}
