import type {Action} from '../../bench/actions.ts';
import type {CallRecord, Content} from '../../classroom/long-jobs.ts';
import {StudentCall, type Acted} from '../../classroom/student-call.ts';
import {restingUnit} from '../../diagnosis/replayed-unit.ts';
import {catalogue, faultsById} from '../../faults/catalogue.ts';
import type {Fault} from '../../faults/fault.ts';
import type {Unit} from '../../content/unit.ts';
import type {MeterFlaw} from '../../meter/meter-condition.ts';
import {NumberTakenError, type ActionJournal} from '../data/action-journal.ts';
import {hiddenIn, type AssignmentRow, type WorkRecords} from '../data/work-records.ts';
import type {StudentAnswer} from '../../classroom/protocol/student-messages.ts';

type Done = Extract<StudentAnswer, {is: 'done'}>;

/** What comes of an action, once it is on disk. */
export type Kept =
  | {readonly is: 'done'; readonly answer: Done; readonly isNew: boolean; readonly stage: string}
  | {readonly is: 'refused'; readonly sentence: string}
  | {readonly is: 'apart'};

/** The action could not be kept, so it was not done: the disk is full, say. */
export class NotKeptError extends Error {}

/**
 * A student may let a whole day pass at a unit, which takes seconds of work. So much is done at once, milliseconds of the
 * unit's time: then whatever has come in from the others goes first.
 */
const mostAtOnceMs = 120_000;

/** Benches that are kept in memory; the others are made again from their actions when they are needed. */
export const mostBenches = 1500;

/**
 * The benches of all students, the hidden fault in each. A bench is nothing but its actions, so one that has not been
 * used for long is let go, and one whose action could not be kept is thrown away and made again from the records.
 */
export class Benches {
  private readonly work: WorkRecords;
  private readonly journal: ActionJournal;
  private readonly content: Content;
  private readonly goesOn: (call: CallRecord) => Promise<boolean>;
  private readonly most: number;
  private readonly calls = new Map<string, Promise<StudentCall>>();
  /** Calls in the midst of an action. */
  private readonly busy = new Map<string, Promise<unknown>>();
  private readonly catalogues = new WeakMap<Unit, readonly Fault[]>();

  /** @param goesOn whether the last naming leaves another fault hidden; it may run the unit, so it is asked elsewhere */
  constructor(
    work: WorkRecords,
    journal: ActionJournal,
    content: Content,
    goesOn: (call: CallRecord) => Promise<boolean>,
    most: number = mostBenches,
  ) {
    this.work = work;
    this.journal = journal;
    this.content = content;
    this.goesOn = goesOn;
    this.most = most;
  }

  get inMemory(): number {
    return this.calls.size;
  }

  /** The bench of an assignment, made from its actions where it is not in memory. */
  async open(row: AssignmentRow): Promise<StudentCall> {
    const call = await this.known(row);
    // what stands half-way through a wait is not to be seen
    while (this.busy.has(row.id)) await this.busy.get(row.id);
    return call;
  }

  private known(row: AssignmentRow): Promise<StudentCall> {
    const known = this.calls.get(row.id);
    // the one used last goes to the end; the first is the one to let go
    this.calls.delete(row.id);
    const call = known ?? this.make(row);
    this.calls.set(row.id, call);
    if (this.calls.size > this.most) this.calls.delete(this.calls.keys().next().value!);
    // a bench that could not be made is no bench: the next one to ask tries anew
    if (!known) call.catch(() => this.forget(row.id));
    return call;
  }

  /** Another process, or another release, may know more than the bench in memory does. */
  forget(assignment: string): void {
    this.calls.delete(assignment);
  }

  /**
   * Does an action and resolves once it is on disk.
   *
   * @throws NotKeptError where it could not be kept; the bench is as it was before.
   */
  async act(row: AssignmentRow, number: number, action: Action, at: number): Promise<Kept> {
    const call = await this.known(row);
    while (this.busy.has(row.id)) await this.busy.get(row.id);
    let acted =
      action.do === 'wait'
        ? await this.inSteps(row.id, call.acting(number, action, mostAtOnceMs))
        : call.act(number, action);
    if (acted.is === 'apart' || acted.is === 'refused') return acted;
    if (acted.is === 'new' && action.do === 'name' && call.mayGoOn) {
      try {
        if (await this.isMore(row, call)) acted = call.goOnAfter(acted);
      } catch (error) {
        this.forget(row.id);
        throw new NotKeptError('This naming could not be compared.', {cause: error});
      }
    }
    const stage = acted.answer.now.more ? 'working' : acted.answer.now.stage;
    if (acted.is === 'again') {
      // it may be on its way to the disk still: what waits there is ahead of us
      await this.journal.idle();
      return {is: 'done', answer: acted.answer, isNew: false, stage};
    }
    try {
      await this.journal.append({
        assignment: row.id,
        number,
        action: JSON.stringify(action),
        at,
        summary: acted.summary,
      });
    } catch (error) {
      this.forget(row.id);
      if (error instanceof NumberTakenError) return {is: 'apart'};
      throw new NotKeptError('This action could not be kept.', {cause: error});
    }
    return {is: 'done', answer: acted.answer, isNew: true, stage};
  }

  private isMore(row: AssignmentRow, {bench}: StudentCall): Promise<boolean> {
    return this.goesOn({...hiddenIn(row), actions: bench.actions});
  }

  /** Does an action step by step, and what came in meanwhile between the steps. */
  private async inSteps(id: string, acting: Generator<void, Acted>): Promise<Acted> {
    let free = (): void => undefined;
    this.busy.set(id, new Promise<void>((resolve) => (free = resolve)));
    try {
      for (;;) {
        const {done, value} = acting.next();
        if (done) return value;
        await new Promise((resolve) => setImmediate(resolve));
      }
    } catch (error) {
      this.forget(id);
      throw error;
    } finally {
      this.busy.delete(id);
      free();
    }
  }

  private async make(row: AssignmentRow): Promise<StudentCall> {
    const unit = this.content.unit(row.unit);
    let all = this.catalogues.get(unit);
    if (!all) this.catalogues.set(unit, (all = catalogue(unit)));
    const faults = faultsById(all, JSON.parse(row.faults ?? '[]') as string[]);
    const call = new StudentCall(
      row.id,
      // a copy of a unit that has been brought to rest once costs next to nothing
      {
        unit,
        faults,
        complaint: row.complaint ?? '',
        seed: row.seed,
        operate: restingUnit,
        ...(row.meter === null ? {} : {meterFlaw: row.meter as MeterFlaw}),
      },
      await this.work.actions(row.id),
    );
    if (call.mayGoOn && (await this.isMore(row, call))) call.goOn();
    return call;
  }
}
