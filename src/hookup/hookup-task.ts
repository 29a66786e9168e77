import type {CableRun, Enclosure, LadderCircuit, Part, Wire, WireColour} from '../content/unit.ts';
import type {Rule} from './rule.ts';

/** A wire that a student has put in: ends, size, colour. Its length follows from where its ends are. */
export interface HookupWire {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly gauge: number;
  readonly colour: WireColour;
}

/** A switch that the checker opens and closes: a call, a safety, or any other contact. */
export interface HookupInput {
  readonly id: string;
  readonly title: string;
  readonly is: 'call' | 'safety' | 'switch';
  /** Placed contact element (`TS.Y`, `HPS.contact`). */
  readonly contact: string;
}

/** A fuse or breaker and the loads that it must take off when it opens. */
export interface Protection {
  /** Placed contacts that open together (`F1.link`, or both poles of a breaker). */
  readonly device: readonly string[];
  readonly loads: readonly string[];
  /** Thinnest wire allowed to these loads, as an American wire gauge. */
  readonly thinnest?: number;
}

/** A run through several states with what has gone before kept in mind: lock-outs, seal-ins. */
export interface Trial {
  readonly title: string;
  readonly steps: readonly {
    readonly closed: readonly string[];
    readonly on: readonly string[];
    readonly off: readonly string[];
  }[];
}

export type Forbidden =
  | {readonly is: 'common-side'; readonly switches: readonly string[]}
  | {readonly is: 'joined'; readonly between: readonly [string, string]};

/** One wiring task: what is there, what must come of it, and one right answer among many. */
export interface HookupTask {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly level: 1 | 2 | 3;
  readonly frequencyHz: 50 | 60;
  readonly enclosures: readonly Enclosure[];
  readonly runs: readonly CableRun[];
  readonly parts: readonly Part[];
  /** Wires that are there and stay. */
  readonly given: readonly Wire[];
  readonly circuits: readonly LadderCircuit[];
  readonly plantStart: Readonly<Record<string, number>>;
  readonly inputs: readonly HookupInput[];
  readonly rules: readonly Rule[];
  readonly trials: readonly Trial[];
  readonly protection: readonly Protection[];
  /** Ground lugs that must have a path of their own to the service's ground. */
  readonly bonded: readonly string[];
  readonly forbidden: readonly Forbidden[];
  /** Somebody else's wrong wires to begin with; none for an empty board. */
  readonly begin: readonly HookupWire[];
  readonly answer: readonly HookupWire[];
}
