import type {
  Desk,
  StudentAnswer,
  StudentRequest,
  Told,
} from '../../classroom/protocol/student-messages.ts';
import {ClassSocket, plainSocket, type PlainSocket} from './class-socket.ts';
import {keptSeat} from './kept-seat.ts';

/** How a student's line to the class stands. */
export type LineState =
  | {readonly is: 'joining'}
  | {readonly is: 'joined'}
  /** Tried again by itself. `sentence` is the server's, where it gave one. */
  | {readonly is: 'lost'; readonly sentence: string}
  | {readonly is: 'taken-over'}
  /** The server does not know this device, or does not want it: join again. */
  | {readonly is: 'not-known'; readonly sentence: string};

type Question = Extract<StudentRequest, {readonly ask: number}>;
/** A question without its number, which the line gives. */
export type Asked = Question extends infer Q
  ? Q extends Question
    ? Omit<Q, 'ask'>
    : never
  : never;

interface Waiting {
  readonly question: Question;
  resolve(told: Told): void;
  reject(reason: Error): void;
}

/** Milliseconds left at a moment of `performance.now()`. */
export interface TimeLeft {
  readonly leftMs: number;
  readonly since: number;
}

/** Questions that change nothing over there may be asked again after a lost line. */
const harmless: readonly string[] = ['catalogue', 'debrief', 'reasoning', 'choices'];

const takenOverCode = 4001;

/**
 * A student's line to the class: joins with the token of this device, joins again after a lost network, and hands on
 * what it hears. One for all pages of the tab, so that going from the desk to the bench does not look like a new device.
 */
export class StudentLine {
  state: LineState = {is: 'joining'};
  /** The desk as last told. */
  desk: Desk | undefined;
  /** What is left of each time limit, and when that was told, as `performance.now()` has it. */
  private readonly limits = new Map<string, TimeLeft>();
  private readonly socket: ClassSocket<StudentRequest, StudentAnswer>;
  private readonly listeners = new Set<(heard: StudentAnswer | {readonly is: 'state'}) => void>();
  private readonly waiting = new Map<number, Waiting>();
  private asked = 0;

  /** @param takeBack a person wants to go on here although another device has taken over */
  constructor(token: string, make: (path: string) => PlainSocket = plainSocket, takeBack = false) {
    this.socket = new ClassSocket<StudentRequest, StudentAnswer>(
      'api/socket/student',
      {
        opened: () =>
          this.socket.send({
            is: 'join',
            token,
            // once it has been taken back, a lost network takes nothing away from a newer device
            ...(takeBack && !this.desk ? {takeBack: true as const} : {}),
          }),
        heard: (answer) => this.hear(answer),
        lost: ({code, sentence, final}) => {
          if (code === takenOverCode) this.stand({is: 'taken-over'});
          else if (final) this.stand({is: 'not-known', sentence});
          else this.stand({is: 'lost', sentence});
          if (final) this.rejectAll();
        },
      },
      make,
    );
  }

  /** Tells everything that comes and every change of state. Returns what stops listening. */
  listen(tell: (heard: StudentAnswer | {readonly is: 'state'}) => void): () => void {
    this.listeners.add(tell);
    return () => this.listeners.delete(tell);
  }

  /** False where nobody is joined now: say it again when the state is `joined`. */
  send(request: StudentRequest): boolean {
    return this.state.is === 'joined' && this.socket.send(request);
  }

  /** Rejects with one sentence for people. */
  ask(asked: Asked): Promise<Told> {
    const question = {...asked, ask: this.asked++} as Question;
    return new Promise((resolve, reject) => {
      if (this.state.is === 'taken-over' || this.state.is === 'not-known') {
        reject(new Error('This device is no longer at work in the class.'));
        return;
      }
      this.waiting.set(question.ask, {question, resolve, reject});
      this.send(question);
    });
  }

  /** What is left of the time of an assignment; undefined without a limit, or while it is not begun. */
  timeLeft(assignment: string): TimeLeft | undefined {
    return this.limits.get(assignment);
  }

  /** An answer is overdue: opens a new line. */
  renew(): void {
    this.socket.renew();
  }

  close(): void {
    this.socket.close();
    this.listeners.clear();
    this.rejectAll();
  }

  private hear(answer: StudentAnswer): void {
    switch (answer.is) {
      case 'desk':
        this.desk = answer.desk;
        this.limits.clear();
        for (const {assignment, leftMs} of answer.desk.items) this.limit(assignment, leftMs);
        if (this.state.is !== 'joined') this.joined();
        break;
      case 'opened':
        this.begun(answer);
        break;
      case 'poll':
        if (this.desk) this.desk = {...this.desk, poll: answer.poll};
        break;
      case 'note':
        if (this.desk && !this.desk.notes.some(({id}) => id === answer.note.id))
          this.desk = {...this.desk, notes: [...this.desk.notes, answer.note]};
        break;
      case 'told':
        this.settle(answer.ask, (waiting) => waiting.resolve(answer.told));
        break;
      case 'not-told':
        this.settle(answer.ask, (waiting) => waiting.reject(new Error(answer.sentence)));
        break;
    }
    this.tell(answer);
  }

  /** Opening a call begins it, and its time limit: the desk is not told anew for that. */
  private begun({assignment, leftMs}: Extract<StudentAnswer, {is: 'opened'}>): void {
    this.limit(assignment, leftMs);
    if (!this.desk) return;
    const items = this.desk.items.map((item) =>
      item.assignment === assignment && item.stage === 'new'
        ? {...item, stage: 'working' as const}
        : item,
    );
    this.desk = {...this.desk, items};
  }

  private limit(assignment: string, leftMs: number | undefined): void {
    if (leftMs !== undefined) this.limits.set(assignment, {leftMs, since: performance.now()});
  }

  private joined(): void {
    this.stand({is: 'joined'});
    for (const [ask, {question, reject}] of this.waiting) {
      if (harmless.includes(question.is)) this.send(question);
      else {
        this.waiting.delete(ask);
        reject(
          new Error('The connection was lost meanwhile. Look whether it was done, then try again.'),
        );
      }
    }
  }

  private settle(ask: number, how: (waiting: Waiting) => void): void {
    const waiting = this.waiting.get(ask);
    this.waiting.delete(ask);
    if (waiting) how(waiting);
  }

  private rejectAll(): void {
    const all = [...this.waiting.values()];
    this.waiting.clear();
    for (const {reject} of all) reject(new Error('This device is no longer at work in the class.'));
  }

  private stand(state: LineState): void {
    this.state = state;
    this.tell({is: 'state'});
  }

  private tell(heard: StudentAnswer | {readonly is: 'state'}): void {
    for (const listener of [...this.listeners]) listener(heard);
  }
}

let line: StudentLine | undefined;
let lineToken = '';

/** The line of this tab; undefined where nobody has joined on this device. */
export function studentLine(takeBack = false): StudentLine | undefined {
  const seat = keptSeat();
  if (!seat) return undefined;
  if (!line || lineToken !== seat.token) {
    line?.close();
    line = new StudentLine(seat.token, plainSocket, takeBack);
    lineToken = seat.token;
  }
  return line;
}

/** Ends the line; the next {@link studentLine} opens another (to take the work back from another device). */
export function hangUp(): void {
  line?.close();
  line = undefined;
}

/** For tests: makes `other` the line of this tab. */
export function useLine(other: StudentLine, token: string): void {
  line?.close();
  line = other;
  lineToken = token;
}
