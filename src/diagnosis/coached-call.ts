import type {Action, HintLevel} from '../bench/actions.ts';
import type {LogEntry} from '../bench/bench-view.ts';
import type {Unit} from '../content/unit.ts';
import type {Observation} from '../sequences/operating-unit.ts';
import {Coach, type Hint} from './coach.ts';
import {Suspects} from './suspects.ts';

/** One step of an attempt as the student had it before them: what was done, its line in the log, what could be seen. */
export interface SeenStep {
  readonly action: Action;
  readonly entry?: LogEntry;
  readonly sees: readonly Observation[];
}

/** What the coach says unasked: why the last reading told nothing. Absent where it could have told something. */
export interface CoachWord {
  /** Steps followed so far. */
  readonly followed: number;
  readonly useless?: string;
}

/**
 * The coach at one call. It is given the steps as the student saw them, never the fault, so whatever it says follows
 * from the student's own log. The same in a worker on the student's device and on a class's server.
 */
export class CoachedCall {
  private readonly suspects: Suspects;
  private readonly coach: Coach;
  private followed = 0;
  private useless: string | undefined;

  constructor(unit: Unit) {
    this.suspects = new Suspects(unit);
    this.coach = new Coach(this.suspects);
  }

  /** Follows one step more. After a reading this takes no more than a look at the suspects left. */
  follow({action, entry, sees}: SeenStep): void {
    const told = this.suspects.step(action, entry, sees);
    this.followed += 1;
    if (entry?.kind === 'reading') this.useless = Coach.uselessness(told);
    else if (action.do !== 'hint' && action.do !== 'note' && action.do !== 'meter')
      this.useless = undefined;
  }

  get word(): CoachWord {
    const {followed, useless} = this;
    return useless === undefined ? {followed} : {followed, useless};
  }

  /** A little of the work for the next hint, for when nobody waits; true while there is more. */
  prepare(): boolean {
    return this.coach.prepare();
  }

  hint(level: HintLevel): Hint {
    return this.coach.hint(level);
  }
}
