import {z} from 'zod';
import {meterFlaws, type MeterFlaw} from '../../meter/meter-condition.ts';
import {contentName, difficulty, rowId, shownName, unitId} from './fields.ts';

/**
 * What a class is given to do.
 *
 * - `same`: everybody gets the same hidden faults.
 * - `different`: everybody gets a fault of their own, of equal difficulty, on the same unit.
 * - `in-pairs`: students hide a fault for each other (three go round where the roster is odd).
 * - `hookup`: everybody wires the same task.
 */
export const workSetBody = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('same'),
    title: shownName.optional(),
    unit: unitId,
    /** Catalogue ids; none = a healthy unit. With two or more, naming one lets the search go on for the next. */
    faults: z.array(contentName).max(3),
    /** Words of the customer; absent = what follows from the faults. */
    complaint: z.string().trim().max(500).optional(),
    ...callRules(),
  }),
  z.strictObject({
    kind: z.literal('different'),
    title: shownName.optional(),
    unit: unitId,
    difficulty,
    ...callRules(),
  }),
  z.strictObject({
    kind: z.literal('in-pairs'),
    title: shownName.optional(),
    unit: unitId,
    /** What may be hidden. */
    allowed: z.array(difficulty).min(1),
    ...callRules(),
  }),
  z.strictObject({
    kind: z.literal('hookup'),
    title: shownName.optional(),
    task: unitId,
    ...rules(),
  }),
]);
export type WorkSetBody = z.infer<typeof workSetBody>;
export type WorkSetKind = WorkSetBody['kind'];

function rules() {
  return {
    /** Minutes by the clock on the wall, from when a student opens it; absent = none. */
    limitMinutes: z.int().min(1).max(600).optional(),
    /** Whether the bench's coach may be asked. */
    coach: z.boolean().default(false),
    /** The debrief tells the fault: at once when named, or for all when the set is closed. */
    debriefWhen: z.enum(['named', 'closed']).default('named'),
    /** True opens it at once: hiding a fault for a class is one request. */
    open: z.boolean().default(false),
  };
}

function callRules() {
  return {
    ...rules(),
    /** What may be wrong with each student's own meter; the call says that it is to be proved, and not what it is. Absent = it is sound. */
    meterFlaw: z.enum(meterFlaws).optional(),
  };
}

export const workSetChange = z.strictObject({
  state: z.enum(['draft', 'open', 'closed']).optional(),
  title: shownName.optional(),
  limitMinutes: z.int().min(1).max(600).nullable().optional(),
  coach: z.boolean().optional(),
});
export type WorkSetChange = z.infer<typeof workSetChange>;

/** A set as its instructor sees it. The faults are told to nobody else. */
export interface WorkSet {
  readonly id: string;
  readonly class: string;
  readonly title: string;
  readonly kind: WorkSetKind;
  /** Unit id; the id of the task for `hookup`. */
  readonly unit: string;
  readonly state: 'draft' | 'open' | 'closed';
  readonly limitMinutes?: number;
  readonly coach: boolean;
  readonly debriefWhen: 'named' | 'closed';
  readonly complaint?: string;
  /** What is wrong with the students' own meters. */
  readonly meterFlaw?: MeterFlaw;
  /** `same` only: the names of what is hidden. */
  readonly faults?: readonly {readonly id: string; readonly name: string}[];
  readonly difficulty?: 'easy' | 'medium' | 'hard';
  readonly allowed?: readonly ('easy' | 'medium' | 'hard')[];
  readonly createdAt: number;
  readonly counts: {
    readonly students: number;
    readonly begun: number;
    readonly finished: number;
  };
}

/** `POST /api/student/hide` by socket: what a student hides for the other. */
export const hidingChoice = z.strictObject({assignment: rowId, fault: contentName});
