import type {WireColour} from '../content/unit.ts';
import type {SymbolName} from './symbols.ts';

/**
 * A drawing of a unit as plain geometry, in user units (1 unit = 1 CSS pixel at scale 1), y down.
 * Both views give the same type, so one element draws them and one audit checks them.
 *
 * A drawing depends on the {@link Unit} only. No state, no reading and no fault can enter it.
 */
export interface Drawing {
  readonly view: 'ladder' | 'connection';
  readonly width: number;
  readonly height: number;
  readonly enclosures: readonly EnclosureBox[];
  readonly parts: readonly PartOutline[];
  readonly symbols: readonly PlacedSymbol[];
  readonly wires: readonly WireDrawing[];
  readonly lines: readonly PlainLine[];
  readonly terminals: readonly TerminalMark[];
  /** Joints with no terminal of their own: points inside a part. */
  readonly junctions: readonly Junction[];
  readonly labels: readonly Label[];
  readonly flags: readonly NetFlag[];
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box extends Point {
  readonly width: number;
  readonly height: number;
}

export interface EnclosureBox extends Box {
  readonly id: string;
  readonly title: string;
}

/** Outline of a part: a solid box in the connection view, a dashed one around a machine in the ladder. */
export interface PartOutline extends Box {
  readonly part: string;
  readonly style: 'box' | 'dashed';
}

export interface PlacedSymbol extends Point {
  readonly symbol: SymbolName;
  readonly part: string;
  /** Placed element or winding id. */
  readonly element?: string;
  /** Text inside the symbol: a coil's tag, a module's name. */
  readonly tag?: string;
  /** Quarter turns clockwise about (x, y), the symbol's middle. */
  readonly turns: 0 | 1 | 2 | 3;
  /** Mirrored left to right before turning. */
  readonly mirrored?: boolean;
  /** Module boxes are as wide as their tag. */
  readonly width?: number;
}

/** One wire of the unit. In the ladder it may be drawn on several rungs: each is one path. */
export interface WireDrawing {
  readonly id: string;
  readonly colour: WireColour;
  readonly paths: readonly (readonly Point[])[];
}

/** A line that is not a wire: a rail, a joint drawn out along a rung, a conductor inside a part, a gang link. */
export interface PlainLine {
  readonly kind: 'rail' | 'joint' | 'inside' | 'gang' | 'lug';
  readonly points: readonly Point[];
  readonly part?: string;
  /** Terminal that the line is an extension of. */
  readonly terminal?: string;
}

/** A terminal as a test point. The ladder may draw one terminal on several rungs. */
export interface TerminalMark extends Point {
  readonly terminal: string;
  readonly part: string;
  readonly shape: 'ring' | 'pill' | 'tag';
  readonly width: number;
  readonly height: number;
  /** Shown inside a `tag`. */
  readonly text?: string;
  readonly enclosure: string;
}

export interface Junction extends Point {
  readonly part?: string;
}

export type LabelRole =
  | 'circuit'
  | 'rail'
  | 'rung'
  | 'tag'
  | 'caption'
  | 'value'
  | 'terminal'
  | 'strip'
  | 'reference'
  | 'note'
  | 'enclosure'
  | 'title';

export interface Label extends Point {
  readonly text: string;
  readonly role: LabelRole;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly part?: string;
  readonly terminal?: string;
}

/** Where a branch that could not be drawn in place is tied: the pentagon names a terminal drawn elsewhere. */
export interface NetFlag extends Point {
  readonly terminal: string;
  readonly text: string;
  /** Side on which the line leaves the flag. */
  readonly points: 'left' | 'right';
  readonly width: number;
}

/** Type sizes in user units, by role; weight 700 where `bold`. */
export const labelType: Readonly<
  Record<LabelRole, {readonly size: number; readonly bold: boolean}>
> = {
  circuit: {size: 14, bold: true},
  rail: {size: 11, bold: true},
  rung: {size: 11, bold: false},
  tag: {size: 12, bold: true},
  caption: {size: 10.5, bold: false},
  value: {size: 10.5, bold: false},
  terminal: {size: 11, bold: false},
  strip: {size: 10.5, bold: false},
  reference: {size: 10.5, bold: false},
  note: {size: 10.5, bold: false},
  enclosure: {size: 13, bold: true},
  title: {size: 11.5, bold: true},
};
