import type {MeterFlaw} from '../meter/meter-condition.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import type {SafetyFinding} from './bench-view.ts';

/** The debrief after a fault is named (or given up). Only now is the fault told. */
export interface Debrief {
  /** `right`; `equivalent` = no reading on this unit could have told it from the true one; `wrong`; `given-up`. */
  readonly verdict: 'right' | 'equivalent' | 'wrong' | 'given-up';
  readonly named?: {readonly id: string; readonly name: string};
  /** Hidden faults that no naming was right or equivalent for; with one hidden fault, empty unless it was missed. */
  readonly left: readonly {readonly id: string; readonly name: string}[];
  readonly faults: readonly {readonly id: string; readonly name: string}[];
  /** The sequence of operation that the complaint is about, with the step at which the faulted unit first departed. */
  readonly sequence: {
    readonly title: string;
    readonly steps: readonly {
      readonly title: string;
      readonly healthy: boolean;
      readonly faulted: boolean;
      readonly broke: boolean;
    }[];
  };
  /** Each reading beside what a healthy unit would have shown at that moment, same state and leads. */
  readonly readings: readonly {
    readonly logIndex: number;
    readonly read: MeterDisplay;
    readonly healthy: MeterDisplay;
    /** True where the two differ by more than the meter's accuracy: this reading told something. */
    readonly telling: boolean;
    readonly evidence: boolean;
    /** How close the expectation came; absent when skipped. */
    readonly expectedRight?: boolean;
  }[];
  /** What was wrong with the student's own meter, in a call in which it was to be proved. */
  readonly meter?: MeterFlaw;
  readonly safety: readonly SafetyFinding[];
  readonly minutes: number;
}
