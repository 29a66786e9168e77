import type {Action} from '../bench/actions.ts';
import {Bench, type BenchSetup} from '../bench/bench.ts';
import {complaintOf} from '../bench/complaint.ts';
import type {Debrief} from '../bench/debrief.ts';
import type {Unit} from '../content/unit.ts';
import type {HintLevel} from '../bench/actions.ts';
import {catalogueLines} from '../bench/catalogue-lines.ts';
import {Coach} from '../diagnosis/coach.ts';
import {levelsOf, type FaultDifficulty} from '../diagnosis/difficulty-level.ts';
import {debriefOf, goesOn} from '../diagnosis/debrief.ts';
import {reasoningOf, type Reasoning} from '../diagnosis/reasoning.ts';
import {Suspects} from '../diagnosis/suspects.ts';
import {catalogue, faultsById} from '../faults/catalogue.ts';
import type {Difficulty} from '../faults/difficulty.ts';
import {checkHookup, type HookupReport} from '../hookup/check-hookup.ts';
import type {HookupTask, HookupWire} from '../hookup/hookup-task.ts';
import type {MeterFlaw} from '../meter/meter-condition.ts';
import {dealDifferent, type Dealt} from './dealing.ts';
import {pollReadings, type PollOutcome} from './poll-bench.ts';
import type {PollBody} from './protocol/poll.ts';
import type {CatalogueEntry} from './protocol/rest.ts';

/** A call as it can be handed to another thread. */
export interface CallRecord {
  readonly unit: string;
  readonly faults: readonly string[];
  readonly complaint: string;
  readonly seed: number;
  readonly meterFlaw?: MeterFlaw;
  readonly actions: readonly Action[];
}

/** What takes too long to be done while a class waits for its readings: each question with its answer. */
export interface LongJobs {
  complaint: {
    ask: {readonly unit: string; readonly faults: readonly string[]};
    answer: {readonly text: string; readonly silent: boolean};
  };
  deal: {
    ask: {
      readonly unit: string;
      readonly difficulty: Difficulty;
      readonly students: number;
      readonly seed: number;
    };
    answer: readonly Dealt[];
  };
  /** Suspects that the log leaves, and how many there were. */
  suspects: {
    ask: {readonly assignment: string; readonly call: CallRecord};
    answer: {readonly left: number; readonly atStart: number};
  };
  coach: {
    ask: {readonly assignment: string; readonly call: CallRecord; readonly level: HintLevel};
    answer: {readonly text: string; readonly minutes: number};
  };
  /** The catalogue of a unit with how hard each fault is. */
  catalogue: {ask: {readonly unit: string}; answer: readonly CatalogueEntry[]};
  /** Whether what was named last is right and another fault is still hidden. */
  'goes-on': {ask: {readonly call: CallRecord}; answer: boolean};
  judge: {ask: {readonly call: CallRecord}; answer: {debrief: Debrief; reasoning: Reasoning}};
  poll: {ask: {readonly poll: PollBody}; answer: PollOutcome};
  hookup: {
    ask: {readonly task: string; readonly wires: readonly HookupWire[]};
    answer: HookupReport;
  };
}

export type LongJob = keyof LongJobs;

/** Where units and tasks come from: a file in Node, a text in a test. */
export interface Content {
  unit(id: string): Unit;
  task(id: string): HookupTask;
  /** How hard each fault of a unit is; takes a while where nobody has worked it out before. */
  difficulties(unit: Unit): readonly FaultDifficulty[];
}

/** Followed calls kept at once: each holds a unit for every suspect. */
const mostFollowed = 12;

interface Followed {
  readonly bench: Bench;
  readonly suspects: Suspects;
  readonly atStart: number;
}

/** Does the long jobs one after another, in whatever thread it stands. */
export class LongWork {
  private readonly content: Content;
  private readonly followed = new Map<string, Followed>();

  constructor(content: Content) {
    this.content = content;
  }

  do<J extends LongJob>(job: J, ask: LongJobs[J]['ask']): LongJobs[J]['answer'] {
    const work = this.jobs[job] as (ask: LongJobs[J]['ask']) => LongJobs[J]['answer'];
    return work(ask);
  }

  private readonly jobs: {
    readonly [J in LongJob]: (ask: LongJobs[J]['ask']) => LongJobs[J]['answer'];
  } = {
    complaint: ({unit: id, faults}) => {
      const unit = this.content.unit(id);
      const {text, silent} = complaintOf(unit, faultsById(catalogue(unit), faults));
      return {text, silent};
    },
    deal: ({unit, difficulty, students, seed}) =>
      dealDifferent(
        this.content.unit(unit),
        levelsOf(this.content.difficulties(this.content.unit(unit))),
        difficulty,
        students,
        seed,
      ),
    catalogue: ({unit: id}) => {
      const unit = this.content.unit(id);
      const levelOf = levelsOf(this.content.difficulties(unit));
      return catalogueLines(unit).map((line) => {
        const difficulty = levelOf(line.id);
        return difficulty ? {...line, difficulty} : line;
      });
    },
    suspects: ({assignment, call}) => {
      const {suspects, atStart} = this.follow(assignment, call);
      return {left: suspects.count, atStart};
    },
    coach: ({assignment, call, level}) => {
      const {suspects} = this.follow(assignment, call);
      const {text, minutes} = new Coach(suspects).hint(level);
      return {text, minutes};
    },
    'goes-on': ({call}) => goesOn(this.bench(call)),
    judge: ({call}) => ({
      debrief: debriefOf(this.bench(call)),
      reasoning: reasoningOf(this.setup(call), call.actions),
    }),
    poll: ({poll}) => pollReadings(this.content.unit(poll.unit), poll),
    hookup: ({task, wires}) => checkHookup(this.content.task(task), wires),
  };

  private setup({unit: id, faults, complaint, seed, meterFlaw}: CallRecord): BenchSetup {
    const unit = this.content.unit(id);
    return {
      unit,
      faults: faultsById(catalogue(unit), faults),
      complaint,
      seed,
      ...(meterFlaw ? {meterFlaw} : {}),
    };
  }

  private bench(call: CallRecord): Bench {
    return Bench.replay(this.setup(call), call.actions);
  }

  /** The suspects of a call up to its last action; those of the calls asked for last are kept and go on from there. */
  private follow(assignment: string, call: CallRecord): Followed {
    let followed = this.followed.get(assignment);
    if (!followed || followed.bench.actions.length > call.actions.length) {
      const suspects = new Suspects(this.content.unit(call.unit));
      followed = {bench: new Bench(this.setup(call)), suspects, atStart: suspects.count};
    }
    this.followed.delete(assignment);
    this.followed.set(assignment, followed);
    if (this.followed.size > mostFollowed) {
      this.followed.delete(this.followed.keys().next().value!);
    }
    const {bench, suspects} = followed;
    for (const action of call.actions.slice(bench.actions.length)) {
      const result = bench.act(action);
      if ('refused' in result) throw new Error(`Cannot be done again: ${result.refused}`);
      // what is repaired afterwards tells nothing of the fault
      if (action.do === 'clear') continue;
      suspects.step(action, result.entry, bench.operating.observations());
    }
    return followed;
  }
}
