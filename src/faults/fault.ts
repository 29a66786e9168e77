import type {ElementChange} from '../parts/part-kind.ts';

/** Where a fault sits: on a part, on one wire, or between two wires. */
export type FaultSite =
  | {readonly on: 'part'; readonly part: string}
  | {readonly on: 'wire'; readonly wire: string}
  | {readonly on: 'wires'; readonly wires: readonly [string, string]}
  | {readonly on: 'plant'};

/** A joint that makes and breaks, and what makes it do so. */
export interface Intermittent {
  /** Wires or elements that are open while it is broken. */
  readonly elements: readonly string[];
  readonly by:
    | {readonly is: 'time'; readonly soundSeconds: number; readonly brokenSeconds: number}
    /** Broken from one value of the plant on, made again below another. */
    | {
        readonly is: 'heat';
        readonly value: string;
        readonly breaksAt: number;
        readonly makesAt: number;
      }
    /** Broken until somebody taps the cover of that enclosure, then made for a while. */
    | {readonly is: 'vibration'; readonly enclosure: string; readonly holdsSeconds: number};
}

/** A named change to a unit. Enumerated from the unit, never typed by hand. */
export interface Fault {
  /** `W12:open`, `K1:coil-open`, `W12~W13:short`, `plant:charge-lost`. */
  readonly id: string;
  readonly site: FaultSite;
  /** Mode id: `open`, `high-resistance`, `short`, `earth`, or the part kind's mode. */
  readonly mode: string;
  /** Plain name: "Wire W12 (yellow, TB1 Y to FS1 1) open". */
  readonly name: string;
  /** Placed changes: `element` is a placed element, winding or wire id. */
  readonly changes: readonly ElementChange[];
  /** Extra paths: placed terminals, through ohms. */
  readonly paths: readonly {
    readonly id: string;
    readonly a: string;
    readonly b: string;
    readonly ohms: number;
  }[];
  /** Changed machine behaviour: part id to settings. */
  readonly behaviour: Readonly<Record<string, Readonly<Record<string, string | number | boolean>>>>;
  /** Wire ends that were landed on another terminal: a wrong tap, two wires swapped. */
  readonly moves?: readonly {readonly end: string; readonly terminal: string}[];
  /** Broken at times only; the fault changes nothing else. */
  readonly intermittent?: Intermittent;
  /** Plant values that the fault fixes (`chargeFraction: 0.1`). */
  readonly plant: Readonly<Record<string, number>>;
  /** Field frequency weight, a wire open = 1. Common practice, no source. */
  readonly weight: number;
}
