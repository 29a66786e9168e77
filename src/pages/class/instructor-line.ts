import type {BenchView} from '../../bench/bench-view.ts';
import type {
  InstructorAnswer,
  InstructorRequest,
  LiveRow,
} from '../../classroom/protocol/instructor-messages.ts';
import type {Poll} from '../../classroom/protocol/poll.ts';
import {ClassSocket, plainSocket, type PlainSocket} from './class-socket.ts';

/** One student's call, as it is followed. */
export interface FollowedLog {
  readonly assignment: string;
  readonly name: string;
  readonly view: BenchView;
}

/** The instructor's line: the rows of one class as they change, and one log that is followed. */
export class InstructorLine {
  /** Absent until the first rows have come. */
  rows: readonly LiveRow[] | undefined;
  log: FollowedLog | undefined;
  poll: Poll | undefined;
  /** Empty while the line stands. */
  lost = '';
  /** Signed out meanwhile: a sign-in is needed before the line can stand. */
  ended = false;
  private followed: string | undefined;
  private sent: ((answer: {readonly to: number} | {readonly sentence: string}) => void)[] = [];
  private readonly socket: ClassSocket<InstructorRequest, InstructorAnswer>;
  private readonly tell: () => void;

  constructor(
    classId: string,
    tell: () => void,
    make: (path: string) => PlainSocket = plainSocket,
  ) {
    this.tell = tell;
    this.socket = new ClassSocket<InstructorRequest, InstructorAnswer>(
      'api/socket/instructor',
      {
        opened: () => {
          this.socket.send({is: 'watch', class: classId});
          if (this.followed) this.socket.send({is: 'follow', assignment: this.followed});
        },
        heard: (answer) => this.hear(answer),
        lost: ({sentence, final}) => {
          this.lost = sentence || 'The class server does not answer. Trying again by itself.';
          this.ended = final;
          this.answerAll({sentence: this.lost});
          this.tell();
        },
      },
      make,
    );
  }

  /** Follows one student's call; nothing = stops following. */
  follow(assignment: string | undefined): void {
    this.followed = assignment;
    this.log = undefined;
    this.socket.send(assignment ? {is: 'follow', assignment} : {is: 'follow'});
  }

  /** How many devices it reached; rejects with a sentence. */
  async note(student: string, text: string): Promise<number> {
    return this.send({is: 'note', student, text});
  }

  /** A hint to everybody who works on the set. */
  async hint(set: string, text: string): Promise<number> {
    return this.send({is: 'hint', set, text});
  }

  showNames(classId: string, names: boolean): void {
    this.socket.send({is: 'wall-names', class: classId, names});
  }

  close(): void {
    this.socket.close();
    this.answerAll({sentence: 'The page was left.'});
  }

  private send(request: InstructorRequest): Promise<number> {
    return new Promise((resolve, reject) => {
      if (!this.socket.send(request)) {
        reject(new Error('There is no connection to the class just now. Try again in a moment.'));
        return;
      }
      this.sent.push((answer) =>
        'to' in answer ? resolve(answer.to) : reject(new Error(answer.sentence)),
      );
    });
  }

  private hear(answer: InstructorAnswer): void {
    this.lost = '';
    switch (answer.is) {
      case 'live':
        this.rows = answer.rows;
        break;
      case 'log':
        if (answer.assignment === this.followed) this.log = answer;
        break;
      case 'poll':
        this.poll = answer.poll;
        break;
      case 'sent':
        this.sent.shift()?.({to: answer.to});
        break;
      case 'refused':
        this.sent.shift()?.({sentence: answer.sentence});
        break;
    }
    this.tell();
  }

  private answerAll(answer: {readonly sentence: string}): void {
    const all = this.sent;
    this.sent = [];
    for (const each of all) each(answer);
  }
}
