import type {Control} from '../parts/part-kind.ts';
import type {Observation} from '../sequences/operating-unit.ts';
import type {Extremes, Keeping} from '../meter/extremes.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import type {MeterFunction} from '../meter/meter-function.ts';
import type {Expectation, HintLevel} from './actions.ts';

/**
 * All that a student's screen may know. It is made afresh after each action, by the side that holds the
 * fault (a worker now, a server in a class), and depends only on what can be seen, heard and has been read.
 */
export interface BenchView {
  readonly unitId: string;
  readonly complaint: string;
  readonly timeMs: number;
  /** Minutes of work spent, by the cost of each action. */
  readonly minutes: number;
  readonly observations: readonly Observation[];
  readonly controls: readonly ControlView[];
  readonly enclosures: readonly {readonly id: string; readonly open: boolean}[];
  readonly lifted: readonly string[];
  readonly jumpers: readonly (readonly [string, string])[];
  readonly meter: MeterView;
  readonly log: readonly LogEntry[];
  readonly safety: readonly SafetyFinding[];
  /** Cautions that belong to the present moment (cover off and live, before lock-out is proved …). */
  readonly cautions: readonly Caution[];
  readonly stage: 'working' | 'named' | 'cleared';
  /** What was named is right, and another fault is still in the unit: the search goes on. */
  readonly more?: true;
}

export interface ControlView {
  /** `TS.mode` or `plant.outdoorDegF`. */
  readonly target: string;
  /** Part id, or `plant`. */
  readonly part: string;
  readonly control: Control;
  readonly value: string | number;
  /** Isolating controls: whether a lock hangs on it. */
  readonly locked?: boolean;
}

export interface MeterView {
  readonly function: MeterFunction;
  readonly red?: string;
  readonly black?: string;
  readonly clamp?: string;
  readonly display?: MeterDisplay;
  /** What the glass keeps; absent = nothing. */
  readonly keeps?: Keeping;
  /** The display is an earlier one, kept while the unit changed. */
  readonly held?: boolean;
  /** The least and the most since recording began. */
  readonly extremes?: Extremes;
  /** The meter of this call may itself be at fault: it is to be proved, whether it is or not. */
  readonly toProve?: boolean;
}

/** One line of the field log. Nothing is ever deleted from it. */
export interface LogEntry {
  readonly index: number;
  readonly kind: 'reading' | 'note' | 'done';
  readonly timeMs: number;
  readonly minutes: number;
  /** What the unit was doing, in a few words ("Cool call, cover off, power on"). */
  readonly state: string;
  readonly function?: MeterFunction;
  readonly red?: string;
  readonly black?: string;
  readonly wire?: string;
  readonly expected?: Expectation;
  readonly display?: MeterDisplay;
  /** The least and the most that a recording meter has shown up to here. */
  readonly extremes?: Extremes;
  /** The meter of this call is to be proved: what it shows may be its own doing. */
  readonly toProve?: boolean;
  /** The fuse of the meter's microamps input blew at this. */
  readonly fuseBlew?: boolean;
  /** A note's text or what was done. */
  readonly text?: string;
  /** Where the coach was asked: how much the hint gave away. Its words are in {@link text}. */
  readonly hint?: HintLevel;
  /** Index into {@link BenchView.safety} where this action broke safe practice. */
  readonly findings: readonly number[];
}

export interface SafetyFinding {
  readonly id: string;
  /** Log entry at which it happened. */
  readonly logIndex: number;
  readonly severity: 'danger' | 'caution';
  readonly text: string;
}

export interface Caution {
  readonly id: string;
  readonly text: string;
}
