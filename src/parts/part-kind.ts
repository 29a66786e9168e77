import type {z} from 'zod';
import type {Element} from './element.ts';

/** Something a person can set by hand on a part: a lever, a knob, a button, a display key. */
export interface Control {
  readonly id: string;
  readonly title: string;
  /** A choice among positions, a number in a range, or a button that is pressed and springs back. */
  readonly type: 'choice' | 'number' | 'press';
  readonly choices?: readonly {readonly value: string; readonly title: string}[];
  readonly min?: number;
  readonly max?: number;
  readonly step?: number;
  readonly unit?: string;
  readonly initial: string | number;
  /** True where moving it is isolating energy (disconnect, breaker): offers lock-out. */
  readonly isolates?: boolean;
}

/** How a fault changes one element. Several fields may act at once. */
export interface ElementChange {
  /** Element or winding id, local to the part. */
  readonly element: string;
  /** Broken: no path but leakage. */
  readonly open?: boolean;
  /** A path of this many ohms beside the element (shorted turns, shorted plates). */
  readonly besideOhms?: number;
  /** This many ohms in series (burnt contact, loose lug). */
  readonly seriesOhms?: number;
  /** Value × this (weak capacitor). */
  readonly scale?: number;
  /** Contact held whatever its mechanism does (welded, stuck). */
  readonly held?: 'open' | 'closed';
}

/** A way this kind of part fails. Names are for people: "coil open". */
export interface FaultMode {
  readonly id: string;
  readonly name: string;
  readonly changes?: readonly ElementChange[];
  /** Terminals (local) that this fault joins to the cabinet, and through how many ohms. */
  readonly toCabinet?: {readonly terminal: string; readonly ohms: number};
  /** Terminals (local) joined to each other. */
  readonly joins?: {readonly a: string; readonly b: string; readonly ohms: number};
  /** Behaviour of the part's machine that is changed (`rotor: 'seized'`, `sensor`, `timer`). */
  readonly behaviour?: Readonly<Record<string, string | number | boolean>>;
  /** Field frequency weight relative to a wire open = 1. Common practice, no source. */
  readonly weight?: number;
}

/** What one kind of part is. One file per kind; `partKinds` lists them all. */
export interface PartKind<D = unknown> {
  readonly kind: string;
  readonly title: string;
  /** Schema of the part's `data` in a unit file. Unknown keys are refused. */
  readonly data: z.ZodType<D>;
  /** Terminal names, in the order in which they are drawn. */
  terminals(data: D): string[];
  elements(data: D): Element[];
  modes(data: D): FaultMode[];
  controls?(data: D): Control[];
}

/** The data that parts of a kind have. */
export type DataOf<K> = K extends PartKind<infer D> ? D : never;

/**
 * Data of a part of the kind given as the type. A unit's parts are checked and their defaults filled in when its file is
 * loaded, so nothing is checked again: the side that runs a unit needs no schema.
 */
export function dataOf<K>(part: {readonly data: unknown}): DataOf<K> {
  return part.data as DataOf<K>;
}

/** Keeps the data type inside a kind's file while the registry holds kinds of any data. */
export function definePart<D>(kind: PartKind<D>): PartKind<D> {
  return kind;
}
