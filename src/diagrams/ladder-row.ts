import type {Wire} from '../content/unit.ts';
import type {Edge} from './wiring.ts';

/**
 * Rows of one circuit: what stands on each line of the ladder from left to right, and what joins it.
 * Columns are numbers that stand for an x yet to be found; items that share a column share a vertical.
 */
export type Item =
  | {readonly is: 'rail'; readonly column: number; readonly side: 'left' | 'right'}
  | {
      readonly is: 'terminal';
      readonly column: number;
      readonly terminal: string;
      readonly through: boolean;
    }
  /** A node inside a part: a dot where it branches, nothing where it only passes. */
  | {readonly is: 'node'; readonly column: number; readonly terminal: string}
  /** Where a row meets the vertical of a terminal that stands on another row. */
  | {readonly is: 'tap'; readonly column: number; readonly terminal: string}
  | {
      readonly is: 'symbol';
      readonly column: number;
      readonly edge: Edge;
      readonly reversed: boolean;
    }
  /** Where a vertical passes a row that it is not joined to. */
  | {readonly is: 'crossing'; readonly column: number}
  | {
      readonly is: 'flag';
      readonly column: number;
      readonly terminal: string;
      readonly side: 'left' | 'right';
    };

/** What joins an item to the next one on its row. */
export type Link =
  | {readonly by: 'wire'; readonly wire: Wire}
  | {readonly by: 'inside'; readonly part: string}
  /** The drawn-out extension of one terminal. */
  | {readonly by: 'terminal'; readonly terminal: string};

export interface Row {
  readonly items: readonly Item[];
  /** `links[i]` joins `items[i]` to `items[i + 1]`; where there is none the two are not joined. */
  readonly links: readonly (Link | undefined)[];
}

/** A vertical: the extension of a terminal over several rows. */
export interface Vertical {
  readonly column: number;
  readonly terminal: string;
  readonly rows: readonly number[];
}

export interface CircuitRows {
  /** Row 0 is the header, if there is one. */
  readonly rows: readonly Row[];
  readonly hasHeader: boolean;
  readonly verticals: readonly Vertical[];
  readonly columns: number;
  readonly leftRail: number;
  readonly rightRail: number;
}
