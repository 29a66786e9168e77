import type {Action} from '../bench/actions.ts';
import type {BenchView} from '../bench/bench-view.ts';
import {Bench, type BenchSetup} from '../bench/bench.ts';
import {callSummary, type CallSummary} from './call-summary.ts';
import type {StudentAnswer} from './protocol/student-messages.ts';

type Done = Extract<StudentAnswer, {is: 'done'}>;
type Opened = Extract<StudentAnswer, {is: 'opened'}>;

/** Done now: keep it first, then answer. */
interface New {
  readonly is: 'new';
  readonly answer: Done;
  readonly summary: CallSummary;
}

/** What came of a numbered action. */
export type Acted =
  | New
  /** Was done before: answered again. */
  | {readonly is: 'again'; readonly answer: Done}
  | {readonly is: 'refused'; readonly sentence: string}
  /** Device and bench have come apart (a gap, or another action under a number that is taken): open anew. */
  | {readonly is: 'apart'};

const anotherLeft =
  'Another fault is still in the unit. Name it too, or give up; then the unit is repaired.';

/**
 * One student's call on the side that holds the fault. Actions are numbered from 1 on by the device; one that comes
 * twice is done once. Nothing that this gives out depends on the hidden fault other than through what is seen, heard
 * and read.
 */
export class StudentCall {
  readonly assignment: string;
  readonly bench: Bench;
  /** Safety findings up to now; each answer sends the new ones. */
  private findings: number;
  /** What was named is right and another fault is still hidden. Told by whoever has time to work it out. */
  private more = false;

  /** @throws Error where one of the kept actions cannot be done again. */
  constructor(assignment: string, setup: BenchSetup, kept: readonly Action[]) {
    this.assignment = assignment;
    this.bench = Bench.replay(setup, kept);
    this.findings = this.bench.view().safety.length;
  }

  get last(): number {
    return this.bench.history.length;
  }

  /** Does an action at once. */
  act(number: number, action: Action): Acted {
    const acting = this.acting(number, action, Infinity);
    for (;;) {
      const {done, value} = acting.next();
      if (done) return value;
    }
  }

  /**
   * {@link act} in steps.
   *
   * @param mostAtOnceMs a wait lets at most so much of the unit's time pass in one step; until the last step nothing else may
   *   be asked of this call
   */
  *acting(number: number, action: Action, mostAtOnceMs: number): Generator<void, Acted> {
    if (number <= this.last) {
      const kept = this.bench.history[number - 1].action;
      // a device that has lost its place must not believe that something else was done
      if (JSON.stringify(kept) !== JSON.stringify(action)) return {is: 'apart'};
      return {is: 'again', answer: this.answer(number, this.view())};
    }
    if (number > this.last + 1) return {is: 'apart'};
    if (this.more && action.do === 'clear') return {is: 'refused', sentence: anotherLeft};
    const result = yield* this.bench.acting(action, mostAtOnceMs);
    if ('refused' in result) return {is: 'refused', sentence: result.refused};
    if (action.do === 'name' || action.do === 'give-up') this.more = false;
    // the view is the dear part of an action, so it is made once
    const view = this.view();
    const answer = this.answer(number, view, this.findings);
    this.findings = view.safety.length;
    return {is: 'new', answer, summary: callSummary(this.bench, view)};
  }

  /** Whether the last naming may have left another fault hidden: whoever has time works it out before anybody is answered. */
  get mayGoOn(): boolean {
    const {bench} = this;
    const ends = bench.actions.findLast(
      ({do: what}) => what === 'name' || what === 'give-up' || what === 'clear',
    );
    return bench.setup.faults.length > 1 && ends?.do === 'name' && !bench.hasGivenUp;
  }

  /** Another fault is still hidden. */
  goOn(): void {
    this.more = true;
  }

  /** The same, told with the answer to the naming. */
  goOnAfter(acted: New): New {
    this.goOn();
    const {answer, summary} = acted;
    return {
      ...acted,
      answer: {...answer, now: {...answer.now, more: true}},
      summary: {...summary, stage: 'working'},
    };
  }

  opened(rules: Pick<Opened, 'coach' | 'leftMs' | 'hintOwed'>): Opened {
    return {
      is: 'opened',
      assignment: this.assignment,
      last: this.last,
      actions: this.bench.actions,
      view: this.view(),
      ...rules,
    };
  }

  private view(): BenchView {
    const view = this.bench.view();
    return this.more ? {...view, more: true} : view;
  }

  /** The unit as it stands now, with the log from the line of this action on. */
  private answer(number: number, view: BenchView, safetyFrom = 0): Done {
    const {log, safety, ...now} = view;
    const later = this.bench.history.slice(number - 1);
    const logFrom = log.length - later.filter(({entry}) => entry !== undefined).length;
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
