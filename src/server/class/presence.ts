import type {BusMessage, LiveBus} from './live-bus.ts';

/** A process says this often who is on it, and is believed to have gone where it has not for three times as long. */
const sayEveryMs = 20_000;
const forgottenAfterMs = 3 * sayEveryMs;
/** A message between processes holds 8,000 bytes at most; two ids take some 70. */
const studentsAtOnce = 80;

/**
 * Who is here: which students have a socket open, on this process or another of the school. A process that starts later
 * asks; one that is killed cannot say good-bye, so what the others know of it runs out.
 */
export class Presence {
  private readonly bus: LiveBus;
  private readonly steadyMs: () => number;
  /** Sockets on this process, with their students. */
  private readonly own = new Map<string, string>();
  /** How many sockets of this process each student has. */
  private readonly ownOf = new Map<string, number>();
  /** Sockets on others: when they were heard of last. */
  private readonly others = new Map<string, Map<string, number>>();
  private readonly saying: NodeJS.Timeout | undefined;

  constructor(bus: LiveBus, steadyMs: () => number = () => performance.now()) {
    this.bus = bus;
    this.steadyMs = steadyMs;
    bus.subscribe((message) => this.hear(message));
    if (!bus.isShared) return;
    bus.publish({is: 'who-is-here', class: '*'});
    this.saying = setInterval(() => this.say(), sayEveryMs);
    this.saying.unref();
  }

  /** A socket of this process belongs to a student now. */
  here(student: string, socket: string): void {
    // a socket that joins again, perhaps as another
    this.gone(socket);
    this.own.set(socket, student);
    this.ownOf.set(student, (this.ownOf.get(student) ?? 0) + 1);
    this.others.get(student)?.delete(socket);
  }

  /** A socket of this process is closed. */
  gone(socket: string): void {
    const student = this.own.get(socket);
    if (student === undefined) return;
    this.own.delete(socket);
    const left = this.ownOf.get(student)! - 1;
    if (left > 0) this.ownOf.set(student, left);
    else this.ownOf.delete(student);
  }

  isOnline(student: string): boolean {
    if (this.ownOf.has(student)) return true;
    const since = this.steadyMs() - forgottenAfterMs;
    return [...(this.others.get(student)?.values() ?? [])].some((at) => at >= since);
  }

  close(): void {
    clearInterval(this.saying);
  }

  /** Tells the other processes who is on this one. */
  say(): void {
    const sockets = [...this.own];
    for (let i = 0; i < sockets.length; i += studentsAtOnce) {
      this.bus.publish({is: 'here', class: '*', sockets: sockets.slice(i, i + studentsAtOnce)});
    }
  }

  private hear(message: BusMessage): void {
    switch (message.is) {
      case 'joined':
        // the newer device takes over, so there is never more than one for long
        this.others.delete(message.student);
        if (message.socket !== '') this.seen(message.student, message.socket);
        return;
      case 'left': {
        const known = this.others.get(message.student);
        known?.delete(message.socket);
        if (known?.size === 0) this.others.delete(message.student);
        return;
      }
      case 'who-is-here':
        return this.say();
      case 'here':
        for (const [socket, student] of message.sockets) this.seen(student, socket);
    }
  }

  private seen(student: string, socket: string): void {
    if (this.own.has(socket)) return;
    let known = this.others.get(student);
    if (!known) this.others.set(student, (known = new Map<string, number>()));
    known.set(socket, this.steadyMs());
  }
}
