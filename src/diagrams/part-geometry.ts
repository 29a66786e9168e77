import type {LabelRole, Point} from './drawing.ts';
import type {SymbolName} from './symbols.ts';
import type {Edge} from './wiring.ts';

export type Side = 'left' | 'right';

/** What a layout decides about one part; its geometry follows from it. */
export interface PartDecision {
  /** Order of the groups from top to bottom, as indices into {@link groupsOf}. */
  readonly order: readonly number[];
  /** Side of each terminal, in the part's own terminal order. Ignored for strips, which have both. */
  readonly sides: readonly Side[];
  /** Wire ends on each terminal's lugs, top to bottom: terminal → ids of wires. Left and right apart for strips. */
  readonly lugs: Readonly<Record<string, readonly string[]>>;
}

/** A wire end at the edge of a part. */
export interface Lug extends Point {
  readonly wire: string;
  readonly terminal: string;
  readonly side: Side;
}

export interface PartGeometry {
  readonly width: number;
  readonly height: number;
  readonly lugs: readonly Lug[];
  readonly terminals: readonly PartTerminal[];
  readonly symbols: readonly PartSymbol[];
  readonly labels: readonly PartLabel[];
  readonly lines: readonly (readonly Point[])[];
  /** From a strip's tag to its lugs. */
  readonly lugLines: readonly {readonly terminal: string; readonly points: readonly Point[]}[];
}

export interface PartTerminal extends Point {
  readonly terminal: string;
  readonly shape: 'ring' | 'pill' | 'tag';
  readonly width: number;
  readonly height: number;
  readonly text?: string;
}

export interface PartSymbol extends Point {
  readonly symbol: SymbolName;
  readonly edge?: Edge;
  readonly tag?: string;
  readonly turns: 0 | 1;
  readonly mirrored: boolean;
  readonly width: number;
}

export interface PartLabel extends Point {
  readonly text: string;
  readonly role: LabelRole;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly terminal?: string;
}

/** Least distance between two terminals of one side; at 1280 pixels' width it must still be 24. */
export const ROW_PITCH = 29;
/** Distance between two wires on one terminal. */
export const LUG_PITCH = 9;

/** Radius of a terminal's ring. */
export const RING = 4.5;
