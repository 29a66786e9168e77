import {z} from 'zod';
import {actionSchema} from '../../bench/attempt-file.ts';
import type {MeterDisplay} from '../../meter/meter.ts';
import {meterFunctions} from '../../meter/meter-function.ts';
import {contentName, shownText, unitId} from './fields.ts';

/** Where the wall's meter stands before and after the change. */
const watched = z.union([
  z.strictObject({function: z.enum(meterFunctions), red: contentName, black: contentName}),
  z.strictObject({function: z.literal('clamp-amps'), wire: contentName}),
]);

/**
 * A "what will happen if" question. The unit is brought to where it stands by `actions`; then the change is made: more
 * actions, or a fault. Students commit to an answer while the poll is open; the change comes after, for all to see.
 */
export const pollBody = z.strictObject({
  question: shownText,
  answers: z.array(shownText).min(2).max(6),
  /** Index into `answers` of the right one, told when the readings move; absent = the readings speak for themselves. */
  right: z.int().min(0).max(5).optional(),
  unit: unitId,
  actions: z.array(actionSchema).max(50),
  change: z.union([
    z.strictObject({actions: z.array(actionSchema).min(1).max(20)}),
    z.strictObject({fault: contentName}),
  ]),
  watch: z.array(watched).min(1).max(6),
});
export type PollBody = z.infer<typeof pollBody>;

export const pollChange = z.strictObject({state: z.enum(['open', 'shown', 'over'])});

export interface PollReading {
  /** "V AC, C1.T1 to C1.T2". */
  readonly text: string;
  readonly before: MeterDisplay;
  /** Only once the change is shown. */
  readonly after?: MeterDisplay;
}

/** `open`: students choose, once. `shown`: the change is made, answers are counted. `over`: off the wall. */
export interface Poll {
  readonly id: string;
  readonly question: string;
  readonly answers: readonly string[];
  readonly unit: string;
  readonly state: 'open' | 'shown' | 'over';
  /** What stands on the unit before, and what is seen and heard after. */
  readonly readings: readonly PollReading[];
  /** How many have committed; by answer only once the change is shown. */
  readonly committed: number;
  readonly counts?: readonly number[];
  readonly right?: number;
  /** What was done, in words; only once the change is shown. */
  readonly changed?: string;
}

/** The same, as a student has it. */
export interface StudentPoll extends Poll {
  /** Index of the answer this student has committed to. */
  readonly mine?: number;
}
