/** What a page wants to know of its line to the class's server. */
export interface SocketListener<Heard> {
  /** The line stands: say who you are. */
  opened(): void;
  heard(message: Heard): void;
  /** The line is lost; it is tried again unless `final`. */
  lost(why: {readonly code: number; readonly sentence: string; readonly final: boolean}): void;
}

/** The part of a browser's socket that is used here; a test puts its own in. */
export interface PlainSocket {
  onopen: (() => void) | null;
  onmessage: ((event: {readonly data: unknown}) => void) | null;
  onclose: ((event: {readonly code: number}) => void) | null;
  send(text: string): void;
  close(): void;
}

/** Close codes after which trying again would change nothing: taken over, not understood, not known. */
export const finalCodes: readonly number[] = [4001, 4400, 4401];
const tooFast = 4429;

const pingEveryMs = 20_000;
/** A line that stays silent for so long after it was asked is dead, whatever the device believes. */
const patienceMs = 10_000;
const longestPauseMs = 8_000;

/** Opens a socket of this server by its path. Works over plain http and behind TLS. */
export function plainSocket(path: string): PlainSocket {
  const url = new URL(path, location.href);
  url.hash = '';
  url.protocol = url.protocol === 'https:' ? 'wss:' : 'ws:';
  return new WebSocket(url) as unknown as PlainSocket;
}

/**
 * A line to the class's server that comes back by itself: after a lost network, a sleeping phone or a restarted server.
 * It keeps nothing of what was said; whoever uses it says again what was not answered.
 */
export class ClassSocket<Said extends {readonly is: string}, Heard extends {readonly is: string}> {
  private readonly path: string;
  private readonly listener: SocketListener<Heard>;
  private readonly make: (path: string) => PlainSocket;
  private socket: PlainSocket | undefined;
  private standing = false;
  private failures = 0;
  private sentence = '';
  private retry: ReturnType<typeof setTimeout> | undefined;
  private pinging: ReturnType<typeof setInterval> | undefined;
  private doubt: ReturnType<typeof setTimeout> | undefined;
  private closed = false;

  constructor(path: string, listener: SocketListener<Heard>, make = plainSocket) {
    this.path = path;
    this.listener = listener;
    this.make = make;
    addEventListener('online', this.tryNow);
    document.addEventListener('visibilitychange', this.tryNow);
    this.connect();
  }

  /** False where the line does not stand: nothing was sent. */
  send(message: Said): boolean {
    if (!this.standing || !this.socket) return false;
    this.socket.send(JSON.stringify(message));
    return true;
  }

  /** Something is overdue: gives the line up and opens a new one. */
  renew(): void {
    if (this.standing) this.drop(this.socket, 0);
  }

  close(): void {
    this.closed = true;
    removeEventListener('online', this.tryNow);
    document.removeEventListener('visibilitychange', this.tryNow);
    this.forget();
    this.socket?.close();
    this.socket = undefined;
  }

  private connect(): void {
    this.forget();
    this.sentence = '';
    const socket = this.make(this.path);
    this.socket = socket;
    socket.onopen = () => {
      this.standing = true;
      this.pinging = setInterval(() => this.ping(), pingEveryMs);
      this.listener.opened();
    };
    socket.onmessage = ({data}) => {
      clearTimeout(this.doubt);
      this.doubt = undefined;
      this.hear(String(data));
    };
    socket.onclose = ({code}) => this.drop(socket, code);
    // a connection attempt into the void may hang for minutes
    this.doubt = setTimeout(() => this.drop(socket, 0), patienceMs);
  }

  private hear(text: string): void {
    const message = JSON.parse(text) as Heard & {readonly sentence?: string};
    if (message.is === 'closing') this.sentence = message.sentence ?? '';
    if (message.is === 'pong') return;
    // only now is it sure that the other side lives
    this.failures = 0;
    this.listener.heard(message);
  }

  private ping(): void {
    this.send({is: 'ping'} as unknown as Said);
    this.doubt ??= setTimeout(() => this.renew(), patienceMs);
  }

  private drop(socket: PlainSocket | undefined, code: number): void {
    if (this.closed || !socket || socket !== this.socket) return;
    this.socket = undefined;
    socket.onopen = socket.onmessage = socket.onclose = null;
    socket.close();
    this.forget();
    const final = finalCodes.includes(code);
    if (!final) {
      const pause = Math.min(longestPauseMs, 400 * 2 ** this.failures);
      // a whole class that lost the same network must not come back in one instant
      const spread = pause * (0.5 + Math.random());
      this.failures++;
      this.retry = setTimeout(() => this.connect(), code === tooFast ? 5_000 + spread : spread);
    }
    this.listener.lost({code, sentence: this.sentence, final});
  }

  private readonly tryNow = (): void => {
    if (this.retry === undefined || document.visibilityState === 'hidden') return;
    this.failures = 0;
    this.connect();
  };

  private forget(): void {
    this.standing = false;
    clearTimeout(this.retry);
    clearTimeout(this.doubt);
    clearInterval(this.pinging);
    this.retry = this.doubt = this.pinging = undefined;
  }
}
