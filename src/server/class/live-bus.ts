/** What one part of the server, or another process of the same school, tells the others. Short: who needs more reads it from the records. */
export type BusMessage =
  /** Something about this assignment moved. */
  | {
      readonly is: 'moved';
      readonly class: string;
      readonly student: string;
      readonly assignment: string;
    }
  /** The desk of a student, or of the whole class, is to be sent again. */
  | {readonly is: 'desk'; readonly class: string; readonly student?: string}
  | {readonly is: 'note'; readonly class: string; readonly student?: string; readonly id: string}
  | {readonly is: 'poll'; readonly class: string; readonly id: string}
  /**
   * A device has joined on this process as this student: any other socket of the student gives way. The socket is empty
   * while the device has its token and has not connected yet.
   */
  | {
      readonly is: 'joined';
      readonly class: string;
      readonly student: string;
      readonly socket: string;
    }
  | {readonly is: 'left'; readonly class: string; readonly student: string; readonly socket: string}
  /** The instructor sends the student's devices away. */
  | {readonly is: 'send-away'; readonly class: string; readonly student: string}
  | {readonly is: 'wall'; readonly class: string};

/** Carries {@link BusMessage}s to everybody in this process and, with Postgres, in the other processes of the school. */
export interface LiveBus {
  publish(message: BusMessage): void;
  /** Returns what ends it. */
  subscribe(hear: (message: BusMessage) => void): () => void;
  close(): Promise<void>;
}

/** The bus of a school that is one process. */
export class LocalBus implements LiveBus {
  private readonly ears = new Set<(message: BusMessage) => void>();

  publish(message: BusMessage): void {
    for (const hear of this.ears) hear(message);
  }

  subscribe(hear: (message: BusMessage) => void): () => void {
    this.ears.add(hear);
    return () => this.ears.delete(hear);
  }

  async close(): Promise<void> {
    this.ears.clear();
  }
}
