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
  | {readonly is: 'wall'; readonly class: string}
  /** A process has started, or may have missed something: the others say who is on them. No class has this id. */
  | {readonly is: 'who-is-here'; readonly class: '*'}
  /** Who is on a process: pairs of socket and student. */
  | {
      readonly is: 'here';
      readonly class: '*';
      readonly sockets: readonly (readonly [socket: string, student: string])[];
    };

/** Whose messages an ear wants: a student's own and those to their whole class. */
export interface StudentTopic {
  readonly class: string;
  readonly student: string;
}

/** Carries {@link BusMessage}s to everybody in this process and, with Postgres, in the other processes of the school. */
export interface LiveBus {
  /** Whether other processes may be on it. */
  readonly isShared: boolean;
  publish(message: BusMessage): void;
  /**
   * Returns what ends it.
   *
   * @param only without it an ear hears everything; a thousand devices that hear one another's every move would be most of
   *   the server's work
   */
  subscribe(hear: (message: BusMessage) => void, only?: StudentTopic): () => void;
  close(): Promise<void>;
}

type Ear = (message: BusMessage) => void;

/** The ears of one process. */
export class Ears {
  private readonly all = new Set<Ear>();
  private readonly classes = new Map<string, Map<string, Set<Ear>>>();

  add(hear: Ear, only?: StudentTopic): () => void {
    if (!only) {
      this.all.add(hear);
      return () => this.all.delete(hear);
    }
    let students = this.classes.get(only.class);
    if (!students) this.classes.set(only.class, (students = new Map<string, Set<Ear>>()));
    let ears = students.get(only.student);
    if (!ears) students.set(only.student, (ears = new Set()));
    ears.add(hear);
    return () => {
      ears.delete(hear);
      if (ears.size === 0 && students.get(only.student) === ears) students.delete(only.student);
      if (students.size === 0 && this.classes.get(only.class) === students)
        this.classes.delete(only.class);
    };
  }

  tell(message: BusMessage): void {
    for (const hear of this.all) hear(message);
    const students = this.classes.get(message.class);
    if (!students) return;
    const named = 'student' in message ? message.student : undefined;
    const told = named === undefined ? [...students.values()] : [students.get(named) ?? []];
    for (const ears of told) for (const hear of [...ears]) hear(message);
  }

  clear(): void {
    this.all.clear();
    this.classes.clear();
  }
}

/** The bus of a school that is one process. */
export class LocalBus implements LiveBus {
  readonly isShared: boolean = false;
  private readonly ears = new Ears();

  publish(message: BusMessage): void {
    this.ears.tell(message);
  }

  subscribe(hear: Ear, only?: StudentTopic): () => void {
    return this.ears.add(hear, only);
  }

  async close(): Promise<void> {
    this.ears.clear();
  }
}
