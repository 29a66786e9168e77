/** How many failures are free, and what the first wait after them is; each further one doubles it. */
const freeFailures = 4;
const firstWaitMs = 2_000;
const longestWaitMs = 15 * 60_000;
/** A name or an address that has failed no more for so long starts afresh. */
const forgetAfterMs = 60 * 60_000;
/** Never more than this is remembered, whoever tries; the oldest goes first. */
const mostKeys = 10_000;

/**
 * Makes those who fail wait, longer each time. It counts by the steady clock, so that setting the computer's clock
 * opens nothing.
 */
export class BackOff {
  private readonly failed = new Map<string, {times: number; lastAt: number}>();
  private readonly steadyMs: () => number;

  constructor(steadyMs: () => number = () => performance.now()) {
    this.steadyMs = steadyMs;
  }

  /** Milliseconds that this key has to wait yet; 0 = may try. */
  waitMs(key: string): number {
    const failed = this.failed.get(key);
    if (!failed || failed.times < freeFailures) return 0;
    const wait = Math.min(longestWaitMs, firstWaitMs * 2 ** (failed.times - freeFailures));
    return Math.max(0, failed.lastAt + wait - this.steadyMs());
  }

  fail(key: string): void {
    const now = this.steadyMs();
    const before = this.failed.get(key);
    const times = before && now - before.lastAt < forgetAfterMs ? before.times + 1 : 1;
    this.failed.delete(key);
    this.failed.set(key, {times, lastAt: now});
    if (this.failed.size > mostKeys) this.failed.delete(this.failed.keys().next().value!);
  }

  /** The wait begins now, where working out the failure took its time. */
  waitFromNow(key: string): void {
    const failed = this.failed.get(key);
    if (failed) failed.lastAt = this.steadyMs();
  }

  succeed(key: string): void {
    this.failed.delete(key);
  }
}

/** So many in a row at once, so many a second after that. */
export class Allowance {
  private readonly perSecond: number;
  private readonly most: number;
  private left: number;
  private at: number;
  private readonly steadyMs: () => number;

  constructor(perSecond: number, most: number, steadyMs: () => number = () => performance.now()) {
    this.perSecond = perSecond;
    this.most = most;
    this.left = most;
    this.steadyMs = steadyMs;
    this.at = steadyMs();
  }

  /** Takes one; false where none is left. */
  take(): boolean {
    const now = this.steadyMs();
    this.left = Math.min(this.most, this.left + ((now - this.at) / 1000) * this.perSecond);
    this.at = now;
    if (this.left < 1) return false;
    this.left -= 1;
    return true;
  }
}
