import type {Action} from '../bench/actions.ts';
import type {AttemptRecord} from '../bench/attempt.ts';
import type {Debrief} from '../bench/debrief.ts';

/** Why an attempt was begun: a service call with something wrong, a healthy unit to explore, the first reading. */
export type AttemptPurpose = 'call' | 'free-run' | 'first-reading';

/** How far an attempt has come. `given-up` is a call that ended without a name. */
export type AttemptStage = 'working' | 'named' | 'cleared' | 'given-up';

/** What the bench page knows after each action and the history shows; worked out again at each replay. */
export interface AttemptProgress {
  readonly minutes: number;
  readonly stage: AttemptStage;
  readonly verdict?: Debrief['verdict'];
  /** How a finished call was reasoned, once that has been worked out: points of 100, and the skills it asked for. */
  readonly judged?: {
    readonly points: number;
    readonly occasions: readonly {readonly skill: string; readonly right: boolean}[];
  };
}

/** One attempt as the history lists it: everything of the record but the actions. */
export interface AttemptHead extends AttemptProgress {
  readonly id: string;
  readonly unit: string;
  readonly unitTitle: string;
  readonly complaint: string;
  readonly sealed: string;
  readonly seed: number;
  readonly purpose: AttemptPurpose;
  readonly difficulty?: string;
  /** ISO date-times. */
  readonly begunAt: string;
  readonly touchedAt: string;
  readonly actionCount: number;
}

export interface NewAttempt {
  readonly unit: string;
  readonly unitTitle: string;
  readonly complaint: string;
  readonly sealed: string;
  readonly seed: number;
  readonly purpose: AttemptPurpose;
  readonly difficulty?: string;
}

/** A unit file that a person opened from disk, kept as its text and validated anew at each use. */
export interface KeptUnit {
  readonly id: string;
  readonly title: string;
  readonly fileName: string;
  readonly text: string;
  readonly keptAt: string;
}

/** A wiring task that a person opened from disk, kept as its text and validated anew at each use. */
export type KeptTask = KeptUnit;

/** Work at a wiring task. What it is made of is the page's affair: texts here, and what a list needs beside them. */
export interface KeptHookup {
  readonly id: string;
  readonly task: string;
  readonly taskTitle: string;
  /** ISO date-times. */
  readonly begunAt: string;
  readonly touchedAt: string;
  readonly deedCount: number;
  /** Put away in favour of a new beginning: no longer what the task's page goes on with. */
  readonly closed?: boolean;
  /** The whole work, as exported. */
  readonly attempt: string;
  /** What came of it so far, as JSON. */
  readonly result: string;
}

/** Why the store refused. `taken-over`: a newer tab works on this attempt; reload to see its work. */
export type StoreErrorCode =
  'taken-over' | 'out-of-step' | 'not-found' | 'already-here' | 'full' | 'failed';

export class StoreError extends Error {
  readonly code: StoreErrorCode;

  constructor(code: StoreErrorCode, message: string) {
    super(message);
    this.name = 'StoreError';
    this.code = code;
  }
}

/**
 * Attempts, kept units and settings on this device. An action is safe once `append` resolves: the bench page shows an
 * action as done only then. One tab at a time works on an attempt: `claim` takes it over from an older tab, whose
 * later appends are refused, so two tabs can never interleave their actions.
 */
export interface AttemptStore {
  /** False where the browser keeps nothing for us: all is lost when the tab closes. */
  readonly kept: boolean;
  begin(start: NewAttempt): Promise<AttemptHead>;
  /** Adds a whole record (import). Refused with `already-here` when an attempt of that id is kept. */
  add(
    record: AttemptRecord,
    head: {unitTitle: string; purpose: AttemptPurpose; progress: AttemptProgress},
  ): Promise<AttemptHead>;
  /** Newest first by when it was last worked on. */
  list(): Promise<AttemptHead[]>;
  head(id: string): Promise<AttemptHead | undefined>;
  get(id: string): Promise<AttemptRecord | undefined>;
  /** Makes this tab the one that works on the attempt. Call when the bench page opens it. */
  claim(id: string): Promise<void>;
  /**
   * Writes action number `index` (0 first). Rejects with StoreError `taken-over` or `out-of-step` when another tab has
   * gone on with it; nothing is written then.
   */
  append(id: string, index: number, action: Action, progress?: AttemptProgress): Promise<void>;
  /** Minutes, stage and verdict for the history, where they were not known at the append. */
  mark(id: string, progress: AttemptProgress): Promise<void>;
  remove(id: string): Promise<void>;
  /** Called in the older tab when another tab claims this attempt. Returns what stops listening. */
  onTakenOver(id: string, tell: () => void): () => void;
  /** Called after anything in the store changed, in this tab or another. Returns what stops listening. */
  onChange(tell: (change: StoreChange) => void): () => void;
  putUnit(unit: KeptUnit): Promise<void>;
  units(): Promise<KeptUnit[]>;
  removeUnit(id: string): Promise<void>;
  /**
   * Writes the whole of a work. `before` is the number of deeds that were kept when it was last read: rejects with
   * `out-of-step` when another tab has gone on with it, and nothing is written then.
   */
  putHookup(work: KeptHookup, before: number): Promise<void>;
  /** Newest first by when it was last worked on. */
  hookups(): Promise<KeptHookup[]>;
  hookup(id: string): Promise<KeptHookup | undefined>;
  removeHookup(id: string): Promise<void>;
  putTask(task: KeptTask): Promise<void>;
  tasks(): Promise<KeptTask[]>;
  removeTask(id: string): Promise<void>;
  setting(name: string): Promise<string | undefined>;
  putSetting(name: string, value: string): Promise<void>;
}

export interface StoreChange {
  readonly what: 'attempt' | 'unit' | 'setting' | 'hookup' | 'task';
  readonly id: string;
  /** The action just appended, for whoever follows an attempt (the first reading's guide). */
  readonly action?: Action;
}
