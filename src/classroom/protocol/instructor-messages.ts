import {z} from 'zod';
import type {BenchView} from '../../bench/bench-view.ts';
import {rowId, shownText} from './fields.ts';
import type {Poll} from './poll.ts';

/** Instructor's page to server, on `/api/socket/instructor` (the cookie of the sign-in and the origin are checked). */
export const instructorRequest = z.discriminatedUnion('is', [
  /** Live rows of a class; a second one changes the class. */
  z.strictObject({is: z.literal('watch'), class: rowId}),
  /** Follow one student's call; absent = stop following. */
  z.strictObject({is: z.literal('follow'), assignment: rowId.optional()}),
  z.strictObject({is: z.literal('note'), student: rowId, text: shownText}),
  /** A hint to everybody who works on a set. */
  z.strictObject({is: z.literal('hint'), set: rowId, text: shownText}),
  z.strictObject({is: z.literal('wall-names'), class: rowId, names: z.boolean()}),
  z.strictObject({is: z.literal('ping')}),
]);
export type InstructorRequest = z.infer<typeof instructorRequest>;

/** One student in the live view. Rows come sorted: who needs help first. */
export interface LiveRow {
  readonly student: string;
  readonly name: string;
  readonly online: boolean;
  /** The call or task in hand; absent while there is none. */
  readonly assignment?: string;
  readonly title?: string;
  readonly kind?: 'call' | 'hide' | 'hookup';
  readonly stage?: 'waiting' | 'new' | 'working' | 'named' | 'cleared' | 'given-up' | 'done';
  /** Where the leads are: "C1.T1 to C1.T2, V AC 0.3", or what was done last. */
  readonly doing?: string;
  readonly readings: number;
  /** Minutes of work, by the cost of each action. */
  readonly minutes: number;
  /** Suspects that the log leaves, and at the start; absent until worked out. */
  readonly suspects?: number;
  readonly suspectsAtStart?: number;
  /** Milliseconds since suspects last became fewer (or since the call was opened). */
  readonly stuckMs: number;
  readonly hints: number;
  readonly safety: {readonly danger: number; readonly caution: number};
  readonly verdict?: 'right' | 'equivalent' | 'wrong' | 'given-up';
  /** Why this student is high in the list, in words; empty where all is well. */
  readonly needs: string;
}

export type InstructorAnswer =
  | {readonly is: 'live'; readonly class: string; readonly rows: readonly LiveRow[]}
  | {
      readonly is: 'log';
      readonly assignment: string;
      readonly name: string;
      readonly view: BenchView;
    }
  | {readonly is: 'poll'; readonly poll: Poll}
  /** A note or hint has gone out. */
  | {readonly is: 'sent'; readonly to: number}
  | {readonly is: 'refused'; readonly sentence: string}
  | {readonly is: 'pong'}
  | {readonly is: 'closing'; readonly sentence: string};
