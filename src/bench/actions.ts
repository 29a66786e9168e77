import type {Keeping} from '../meter/extremes.ts';
import type {MeterCare} from '../meter/meter-condition.ts';
import type {MeterFunction} from '../meter/meter-function.ts';

/** What a student expects before a reading: a value with its unit as the meter would show it, or words. */
export interface Expectation {
  /** Number expected, in the base unit of the function (volts, ohms, amps, hertz, farads); absent when only words are given. */
  readonly value?: number;
  /** `open` = OL expected. */
  readonly open?: boolean;
}

/** How much a hint gives away: what question to answer next, where to look, or the very reading. */
export type HintLevel = 1 | 2 | 3;

/**
 * Everything a student does, one at a time. An attempt is its actions in order; replaying them gives the
 * attempt back exactly. Times are simulated; what an action costs in minutes is in `action-costs.ts`.
 */
export type Action =
  /** Set a control (`TS.mode`, `DS2.position`, `CB1.position`) or a plant value a person may set (`plant.outdoorDegF`). */
  | {readonly do: 'set'; readonly target: string; readonly value: string | number}
  /** Put a lock and tag on an isolating part that is open, or take it off. */
  | {readonly do: 'lock'; readonly part: string}
  | {readonly do: 'unlock'; readonly part: string}
  | {readonly do: 'open-cover'; readonly enclosure: string}
  | {readonly do: 'close-cover'; readonly enclosure: string}
  | {readonly do: 'meter'; readonly function: MeterFunction}
  /** What the glass keeps from now on: the last reading when the unit changes, or the least and the most. */
  | {readonly do: 'keep'; readonly what: Keeping}
  /** See to the meter itself: a fresh battery, other leads, a new fuse in the microamps input. */
  | {readonly do: 'renew'; readonly what: MeterCare}
  /** Lay a bleed resistor across two points until a capacitor between them is empty. */
  | {readonly do: 'discharge'; readonly from: string; readonly to: string}
  /** Put both leads down and read. `expected` is what the student wrote before reading; absent = skipped. */
  | {
      readonly do: 'read';
      readonly red: string;
      readonly black: string;
      readonly expected?: Expectation;
    }
  /** Close the clamp around a wire and read. */
  | {readonly do: 'clamp'; readonly wire: string; readonly expected?: Expectation}
  /** Wire end: `W12.from` or `W12.to`. */
  | {readonly do: 'lift'; readonly end: string}
  | {readonly do: 'land'; readonly end: string}
  | {readonly do: 'jumper'; readonly from: string; readonly to: string}
  | {readonly do: 'remove-jumper'; readonly from: string; readonly to: string}
  | {readonly do: 'wait'; readonly seconds: number}
  | {readonly do: 'note'; readonly text: string}
  /** Ask the coach. The answer is kept with it, so that a replay shows what was said and works nothing out again. */
  | {readonly do: 'hint'; readonly level: HintLevel; readonly text: string}
  /** Name the fault: its site and mode (a catalogue fault id), and the log entries (indices) that prove it. */
  | {readonly do: 'name'; readonly fault: string; readonly evidence: readonly number[]}
  /** After naming: the fault is cleared (repaired) and the unit can be run to prove it. */
  | {readonly do: 'clear'}
  /** Give up: the debrief without a name. */
  | {readonly do: 'give-up'};
