import type {MeterFlaw} from '../../meter/meter-condition.ts';
import type {Unit} from '../../content/unit.ts';
import type {FaultDifficulty} from '../../diagnosis/difficulty-level.ts';
import type {SkillId} from '../../diagnosis/skills.ts';
import type {Difficulty} from '../../faults/difficulty.ts';
import type {FaultSite} from '../../faults/fault.ts';
import type {AttemptRecord} from '../../bench/attempt.ts';
import type {AttemptProgress, AttemptPurpose} from '../../store/attempts.ts';

/** Where a unit's text comes from: one of ours by its id, or a file that a person opened. */
export type UnitSource =
  {readonly shipped: string} | {readonly text: string; readonly fileName: string};

export {difficulties, type Difficulty} from '../../faults/difficulty.ts';

/** One mistake in a unit file, as the page shows it. */
export interface FileMistake {
  readonly line: number;
  readonly column: number;
  readonly message: string;
  readonly mend: string;
}

export interface LoadedUnit {
  readonly unit?: Unit;
  readonly mistakes: readonly FileMistake[];
}

/** A fault as the person who hides it sees it. */
export interface CatalogueEntry {
  readonly id: string;
  readonly name: string;
  readonly site: FaultSite;
  readonly mode: string;
}

/** A fault that is hidden: nothing here can be read. */
export interface HiddenFault {
  readonly sealed: string;
  readonly complaint: string;
}

/** What kind of fault a call is to have; all that is given must hold. */
export interface WantedFault {
  readonly difficulty?: Difficulty;
  readonly skill?: SkillId;
}

/** What the page asks of the desk's worker, and what it gets. */
export interface DeskAnswers {
  shippedIds: {ask: object; answer: readonly string[]};
  unit: {ask: {source: UnitSource}; answer: LoadedUnit};
  catalogue: {ask: {source: UnitSource}; answer: readonly CatalogueEntry[]};
  complaint: {ask: {source: UnitSource; faults: readonly string[]}; answer: string};
  seal: {
    ask: {source: UnitSource; faults: readonly string[]; complaint: string; meter?: MeterFlaw};
    answer: HiddenFault;
  };
  /** How hard each fault is to find; of a unit of a person's own worked out now, which takes a while. */
  difficulties: {ask: {source: UnitSource}; answer: readonly FaultDifficulty[]};
  /** Hides a fault of that kind, frequent ones more often. `known`: difficulties of a unit of a person's own. */
  pick: {
    ask: {
      source: UnitSource;
      wanted: WantedFault;
      known?: readonly FaultDifficulty[];
      seed: number;
    };
    answer: HiddenFault;
  };
  /** What a sealed text tells without its faults. */
  opened: {ask: {sealed: string}; answer: {readonly unit: string; readonly complaint: string}};
  /** Writes an attempt file, or reads one (validated; rejects with the reason). */
  exported: {ask: {record: AttemptRecord}; answer: string};
  imported: {ask: {text: string}; answer: AttemptRecord};
  /** Replays a record to learn how it stands. */
  appraised: {
    ask: {source: UnitSource; record: AttemptRecord};
    answer: {progress: AttemptProgress; purpose: AttemptPurpose};
  };
}

export type DeskQuestion = keyof DeskAnswers;

export interface DeskRequest<Q extends DeskQuestion = DeskQuestion> {
  readonly number: number;
  readonly question: Q;
  readonly ask: DeskAnswers[Q]['ask'];
}

/** `refused` is one sentence for people: what is wrong and how to mend it. `share` tells how far a long answer is, 0 … 1. */
export type DeskReply =
  | {readonly number: number; readonly share: number}
  | {readonly number: number; readonly answer: unknown}
  | {readonly number: number; readonly refused: string};
