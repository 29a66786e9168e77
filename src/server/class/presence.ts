import type {LiveBus} from './live-bus.ts';

/** Who is here: which students have a socket open, on this process or another of the school. */
export class Presence {
  private readonly sockets = new Map<string, Set<string>>();

  constructor(bus: LiveBus) {
    bus.subscribe((message) => {
      if (message.is === 'joined') {
        // the newer device takes over, so there is never more than one for long
        if (message.socket === '') this.sockets.delete(message.student);
        else this.sockets.set(message.student, new Set([message.socket]));
      } else if (message.is === 'left') {
        const open = this.sockets.get(message.student);
        open?.delete(message.socket);
        if (open?.size === 0) this.sockets.delete(message.student);
      }
    });
  }

  isOnline(student: string): boolean {
    return this.sockets.has(student);
  }
}
