import type {Action} from '../bench/actions.ts';
import {Bench, type BenchSetup} from '../bench/bench.ts';
import type {StudentAnswer} from './protocol/student-messages.ts';

type Done = Extract<StudentAnswer, {is: 'done'}>;
type Opened = Extract<StudentAnswer, {is: 'opened'}>;

/** What came of a numbered action. */
export type Acted =
  /** Done now: keep it first, then answer. */
  | {readonly is: 'new'; readonly answer: Done}
  /** Was done before: answered again. */
  | {readonly is: 'again'; readonly answer: Done}
  | {readonly is: 'refused'; readonly sentence: string}
  /** Device and bench have come apart (a gap, or another action under a number that is taken): open anew. */
  | {readonly is: 'apart'};

/**
 * One student's call on the side that holds the fault. Actions are numbered from 1 on by the device; one that comes
 * twice is done once. Nothing that this gives out depends on the hidden fault other than through what is seen, heard
 * and read.
 */
export class StudentCall {
  readonly assignment: string;
  readonly bench: Bench;

  /** @throws Error where one of the kept actions cannot be done again. */
  constructor(assignment: string, setup: BenchSetup, kept: readonly Action[]) {
    this.assignment = assignment;
    this.bench = Bench.replay(setup, kept);
  }

  get last(): number {
    return this.bench.history.length;
  }

  act(number: number, action: Action): Acted {
    if (number <= this.last) {
      const kept = this.bench.history[number - 1].action;
      // a device that has lost its place must not believe that something else was done
      if (JSON.stringify(kept) !== JSON.stringify(action)) return {is: 'apart'};
      return {is: 'again', answer: this.answer(number, number - 1)};
    }
    if (number > this.last + 1) return {is: 'apart'};
    const safetyFrom = this.bench.view().safety.length;
    const result = this.bench.act(action);
    if ('refused' in result) return {is: 'refused', sentence: result.refused};
    return {is: 'new', answer: this.answer(number, number - 1, safetyFrom)};
  }

  opened(rules: Pick<Opened, 'coach' | 'leftMs' | 'hintOwed'>): Opened {
    return {
      is: 'opened',
      assignment: this.assignment,
      last: this.last,
      actions: this.bench.actions,
      view: this.bench.view(),
      ...rules,
    };
  }

  /** The unit as it stands now, with the log from the action after `sinceNumber` on. */
  private answer(number: number, sinceNumber: number, safetyFrom = 0): Done {
    const {log, safety, ...now} = this.bench.view();
    const before = this.bench.history.slice(0, sinceNumber);
    const logFrom = before.filter(({entry}) => entry !== undefined).length;
    return {
      is: 'done',
      assignment: this.assignment,
      number,
      now,
      logFrom,
      log: log.slice(logFrom),
      safetyFrom,
      safety: safety.slice(safetyFrom),
    };
  }
}
