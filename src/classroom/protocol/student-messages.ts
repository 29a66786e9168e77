import {z} from 'zod';
import {actionSchema} from '../../bench/attempt-file.ts';
import type {Action} from '../../bench/actions.ts';
import type {CatalogueLine} from '../../bench/bench-messages.ts';
import type {BenchView, LogEntry, SafetyFinding} from '../../bench/bench-view.ts';
import type {Debrief} from '../../bench/debrief.ts';
import type {HookupReport} from '../../hookup/check-hookup.ts';
import type {Reasoning} from '../../diagnosis/reasoning.ts';
import {contentName, rowId} from './fields.ts';
import type {StudentPoll} from './poll.ts';
import type {CatalogueEntry} from './rest.ts';

/** Actions of one assignment are numbered 1, 2, 3 … by the device, without gaps. */
const number = z.int().min(1).max(20_000);
/** Questions carry a number of the device's own; it comes back with the answer. */
const ask = z.int().min(0).max(2_000_000_000);

const wire = z.strictObject({
  id: contentName,
  from: contentName,
  to: contentName,
  gauge: z.int().min(1).max(40),
  colour: contentName,
});

/** Device to server, each one JSON text frame of at most {@link longestStudentMessage} characters. */
export const studentRequest = z.discriminatedUnion('is', [
  /** First message on a socket. A second device with the same student takes over; the first hears `taken-over`. */
  z.strictObject({
    is: z.literal('join'),
    token: z.string().min(20).max(100),
    /** A person wants to go on here although another device has taken over. */
    takeBack: z.literal(true).optional(),
  }),
  /** Begin or resume a call: answered by `opened` with everything as it stands. */
  z.strictObject({is: z.literal('open'), assignment: rowId}),
  /**
   * Do an action. Answered by `done` once it is on disk, or `refused`, which leaves no trace: its number is free
   * again. A number that was done before is answered again and not done twice; resend whatever was not answered.
   */
  z.strictObject({is: z.literal('act'), assignment: rowId, number, action: actionSchema}),
  z.strictObject({is: z.literal('catalogue'), ask, assignment: rowId}),
  z.strictObject({is: z.literal('debrief'), ask, assignment: rowId}),
  z.strictObject({is: z.literal('reasoning'), ask, assignment: rowId}),
  /**
   * Ask the coach, where the set allows it. What it says must be done next as an action
   * (`{do: 'hint', level, text}`), which costs minutes; until then every other action is refused.
   */
  z.strictObject({
    is: z.literal('coach'),
    ask,
    assignment: rowId,
    level: z.union([z.literal(1), z.literal(2), z.literal(3)]),
  }),
  /** What may be hidden, within the instructor's limits (`in-pairs`). */
  z.strictObject({is: z.literal('choices'), ask, assignment: rowId}),
  z.strictObject({is: z.literal('hide'), ask, assignment: rowId, fault: contentName}),
  /** A hookup task is before the student: its time runs from now on. */
  z.strictObject({is: z.literal('begin'), ask, assignment: rowId}),
  /** Hands in the wires of a hookup task for a check. */
  z.strictObject({
    is: z.literal('check-hookup'),
    ask,
    assignment: rowId,
    wires: z.array(wire).max(200),
  }),
  /** Commits to an answer of a poll; once. */
  z.strictObject({is: z.literal('vote'), poll: rowId, answer: z.int().min(0).max(5)}),
  /** The device's sign of life, at most every 20 s. */
  z.strictObject({is: z.literal('ping')}),
]);
export type StudentRequest = z.infer<typeof studentRequest>;
export const longestStudentMessage = 32_768;

/** The view without what only grows; see `applyAnswer`. */
export type BenchNow = Omit<BenchView, 'log' | 'safety'>;

/** What is on a student's desk. It tells nothing of what is hidden. */
export interface DeskItem {
  readonly assignment: string;
  /** `call`: find it. `hide`: hide one for somebody. `hookup`: wire it. */
  readonly kind: 'call' | 'hide' | 'hookup';
  readonly title: string;
  /** Unit id; task id for `hookup`. */
  readonly unit: string;
  readonly complaint?: string;
  /** `waiting`: the other has not hidden anything yet. */
  readonly stage: 'waiting' | 'new' | 'working' | 'named' | 'cleared' | 'given-up' | 'done';
  readonly closed: boolean;
  readonly coach: boolean;
  readonly limitMinutes?: number;
  /** Milliseconds left when this was sent, by the server's clock; absent while not begun or without a limit. */
  readonly leftMs?: number;
  /** `hide`: whom for, by the name on the roster. */
  readonly forName?: string;
  readonly debriefReady: boolean;
}

export interface Desk {
  readonly student: string;
  readonly name: string;
  readonly className: string;
  readonly items: readonly DeskItem[];
  readonly poll?: StudentPoll;
  /** Notes of the instructor to this student and hints released to all, oldest first. */
  readonly notes: readonly Note[];
}

export interface Note {
  readonly id: string;
  readonly kind: 'note' | 'hint';
  readonly text: string;
  /** ISO date-time by the server's clock. */
  readonly at: string;
}

/** Server to device. Of a call, nothing in it depends on anything but what was seen, heard and read. */
export type StudentAnswer =
  /** Answer to `join`, and again whenever something on the desk changes. */
  | {readonly is: 'desk'; readonly desk: Desk}
  | {
      readonly is: 'opened';
      readonly assignment: string;
      /** Number of the last action that is kept: the next one is `last + 1`. */
      readonly last: number;
      readonly actions: readonly Action[];
      readonly view: BenchView;
      readonly coach: boolean;
      readonly leftMs?: number;
      /** The coach was asked before the connection broke: do this hint as the next action. */
      readonly hintOwed?: {readonly level: 1 | 2 | 3; readonly text: string};
    }
  | {
      readonly is: 'done';
      readonly assignment: string;
      readonly number: number;
      readonly now: BenchNow;
      /** Lines of the log from index `logFrom` on; likewise the safety findings. */
      readonly logFrom: number;
      readonly log: readonly LogEntry[];
      readonly safetyFrom: number;
      readonly safety: readonly SafetyFinding[];
    }
  | {
      readonly is: 'refused';
      readonly assignment: string;
      readonly number: number;
      readonly sentence: string;
    }
  | {readonly is: 'told'; readonly ask: number; readonly told: Told}
  /** A question that cannot be answered; the sentence is for people. */
  | {readonly is: 'not-told'; readonly ask: number; readonly sentence: string}
  | {readonly is: 'note'; readonly note: Note}
  | {readonly is: 'poll'; readonly poll: StudentPoll}
  /** Another device has taken over; this socket is closed after it (code 4001). */
  | {readonly is: 'taken-over'}
  | {readonly is: 'pong'}
  /** The socket is closed after it (code 4400 bad message, 4401 not known, 4429 too fast, 4413 too long, 4503 try later). */
  | {readonly is: 'closing'; readonly sentence: string};

export type Told =
  | {readonly what: 'catalogue'; readonly lines: readonly CatalogueLine[]}
  | {readonly what: 'debrief'; readonly debrief: Debrief}
  | {readonly what: 'reasoning'; readonly reasoning: Reasoning}
  | {readonly what: 'coach'; readonly level: 1 | 2 | 3; readonly text: string}
  | {readonly what: 'choices'; readonly lines: readonly CatalogueEntry[]}
  | {readonly what: 'hidden'}
  | {readonly what: 'begun'}
  | {readonly what: 'hookup'; readonly report: HookupReport};

/** Close codes of every socket of the class. */
export const closeCodes = {
  takenOver: 4001,
  badMessage: 4400,
  notKnown: 4401,
  tooLong: 4413,
  tooFast: 4429,
  tryLater: 4503,
} as const;
