/**
 * Time for records and time limits: the wall clock when the server started, and from there the steady clock, so that
 * setting the computer's clock in mid-lesson ends nobody's call. Milliseconds since 1970.
 */
export class ServerClock {
  private readonly startedAt: number;
  private readonly steadyAtStart: number;
  private readonly steadyMs: () => number;

  constructor(wallMs = Date.now(), steadyMs: () => number = () => performance.now()) {
    this.startedAt = wallMs;
    this.steadyMs = steadyMs;
    this.steadyAtStart = steadyMs();
  }

  now(): number {
    return Math.round(this.startedAt + this.steadyMs() - this.steadyAtStart);
  }

  /**
   * A clock that never runs behind what is already in the records.
   *
   * @returns the clock, and where the computer's clock was behind, by how many milliseconds
   */
  static notBefore(latest: number, wallMs = Date.now()): {clock: ServerClock; behindMs: number} {
    const behindMs = Math.max(0, latest - wallMs);
    return {clock: new ServerClock(Math.max(latest, wallMs)), behindMs};
  }
}
