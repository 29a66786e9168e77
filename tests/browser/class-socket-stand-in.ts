import type {PlainSocket} from '../../src/pages/class/class-socket.ts';
import type {
  StudentAnswer,
  StudentRequest,
  Desk,
} from '../../src/classroom/protocol/student-messages.ts';
import type {BenchView} from '../../src/bench/bench-view.ts';

/** The server's end of a socket, in the test's hand. */
export class SocketInHand implements PlainSocket {
  onopen: (() => void) | null = null;
  onmessage: ((event: {readonly data: unknown}) => void) | null = null;
  onclose: ((event: {readonly code: number}) => void) | null = null;
  readonly said: StudentRequest[] = [];
  closed = false;

  send(text: string): void {
    this.said.push(JSON.parse(text) as StudentRequest);
  }

  close(): void {
    this.closed = true;
  }

  /** The line stands, and the student is known. */
  welcome(): void {
    this.onopen?.();
    this.answer({is: 'desk', desk});
  }

  answer(answer: StudentAnswer): void {
    this.onmessage?.({data: JSON.stringify(answer)});
  }

  /** The network goes, or the server says why it closes. */
  lose(code = 1006): void {
    this.onclose?.({code});
  }

  /** The last thing said of that kind. */
  last<Is extends StudentRequest['is']>(is: Is): Extract<StudentRequest, {is: Is}> | undefined {
    return this.said
      .filter((each): each is Extract<StudentRequest, {is: Is}> => each.is === is)
      .at(-1);
  }
}

/** Makes sockets and keeps them, newest last. */
export function sockets(): {
  made: SocketInHand[];
  make: () => PlainSocket;
  newest: () => SocketInHand;
} {
  const made: SocketInHand[] = [];
  return {
    made,
    make: () => {
      const socket = new SocketInHand();
      made.push(socket);
      return socket;
    },
    newest: () => made[made.length - 1],
  };
}

export const assignment = 'a1b2c3d4e5';

export const desk: Desk = {
  student: 's1s1s1s1s1',
  name: 'Cho',
  className: 'Controls lab',
  items: [
    {
      assignment,
      kind: 'call',
      title: 'Practice panel',
      unit: 'practice-panel',
      complaint: 'The lamp does not light.',
      stage: 'working',
      closed: false,
      coach: false,
      debriefReady: false,
    },
  ],
  notes: [],
};

export const emptyView: BenchView = {
  unitId: 'practice-panel',
  complaint: 'The lamp does not light.',
  timeMs: 0,
  minutes: 0,
  observations: [],
  controls: [],
  enclosures: [],
  lifted: [],
  jumpers: [],
  meter: {function: 'ac-volts'},
  log: [],
  safety: [],
  cautions: [],
  stage: 'working',
} as unknown as BenchView;

/** The server's word that action `number` is on disk, with the minutes as a sign. */
export function done(number: number): Extract<StudentAnswer, {is: 'done'}> {
  const {log: _log, safety: _safety, ...now} = emptyView;
  return {
    is: 'done',
    assignment,
    number,
    now: {...now, minutes: number},
    logFrom: 0,
    log: [],
    safetyFrom: 0,
    safety: [],
  };
}

export function opened(last: number): Extract<StudentAnswer, {is: 'opened'}> {
  return {
    is: 'opened',
    assignment,
    last,
    actions: [],
    view: {...emptyView, minutes: last},
    coach: false,
  };
}
