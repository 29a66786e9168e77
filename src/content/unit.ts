import type {Control, FaultMode} from '../parts/part-kind.ts';
import type {Element} from '../parts/element.ts';

/** A box with a cover: the service panel, the indoor unit, the outdoor unit, the thermostat's wall plate. */
export interface Enclosure {
  readonly id: string;
  readonly title: string;
  /** Without a cover, everything in it can be reached at once (thermostat base, practice panel). */
  readonly cover: boolean;
  /** Terminal that is bonded to the metal of the box (`GND2.E`); absent for a plastic box. */
  readonly cabinet?: string;
}

/** Wires that lie side by side: a loom, a thermostat cable, a whip. Order in the unit file is order in the run. */
export interface CableRun {
  readonly id: string;
  readonly title: string;
  readonly picofaradsPerFoot: number;
}

export interface Part {
  readonly id: string;
  readonly kind: string;
  /** What a technician calls it: "Blower relay". */
  readonly title: string;
  readonly enclosure: string;
  /** Data as validated by the kind's schema. */
  readonly data: unknown;
  /** Local terminal names in drawing order. */
  readonly terminals: readonly string[];
  /** Local terminals that are meant to have no wire (an unused tap, a capped lead). */
  readonly spare?: readonly string[];
  /** Elements with placed ids and terminals (`K1.coil` between `K1.A1` and `K1.A2`). */
  readonly elements: readonly Element[];
  readonly modes: readonly FaultMode[];
  readonly controls: readonly Control[];
}

export type WireColour =
  | 'black'
  | 'white'
  | 'red'
  | 'blue'
  | 'green'
  | 'yellow'
  | 'orange'
  | 'brown'
  | 'purple'
  | 'grey'
  | 'pink'
  | 'tan';

export interface Wire {
  readonly id: string;
  /** Placed terminals: `K1.A1`. */
  readonly from: string;
  readonly to: string;
  /** American wire gauge. */
  readonly gauge: number;
  readonly feet: number;
  readonly colour: WireColour;
  /** Id of the cable run that it lies in. */
  readonly run: string;
}

/** A pair of rails that the ladder is drawn between. */
export interface LadderCircuit {
  readonly id: string;
  readonly title: string;
  /** Placed terminals at which the rails begin. */
  readonly rails: readonly [string, string];
  readonly railTitles: readonly [string, string];
  readonly volts: number;
}

/** What must hold for a step of the sequence of operation. All the given fields must hold. */
export interface StepCheck {
  /** Volts AC between two terminals, at least / at most. */
  readonly volts?: {
    readonly between: readonly [string, string];
    readonly atLeast?: number;
    readonly atMost?: number;
  };
  /** Amps AC that a clamp around a wire reads, at least / at most. */
  readonly amps?: {readonly through: string; readonly atLeast?: number; readonly atMost?: number};
  /** A plant value, as a gauge or a thermometer in the air stream shows it, at least / at most. */
  readonly plant?: {readonly value: string; readonly atLeast?: number; readonly atMost?: number};
  /** Placed contact element id that must be closed / open. */
  readonly closed?: string;
  readonly open?: string;
  /** Part id and a word of what can be seen or heard of it (`running`, `pulled-in`, `lit`, `shifted`). */
  readonly state?: {readonly part: string; readonly is: string};
}

export interface SequenceStep {
  readonly title: string;
  readonly check: StepCheck;
}

/** The sequence of operation for one mode: how to get there from rest, how long to wait, what happens in order. */
export interface OperatingSequence {
  readonly id: string;
  readonly title: string;
  /** Controls to set: `TS.mode=cool`; plant values `plant.outdoorDegF=95`. Applied in order. */
  readonly set: readonly {readonly target: string; readonly value: string | number}[];
  /** Simulated time until the mode has established itself. */
  readonly waitSeconds: number;
  readonly steps: readonly SequenceStep[];
  /** What the customer says when this mode's last steps fail ("It blows, but the air is warm"). */
  readonly complaint: string;
}

export interface Unit {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly frequencyHz: number;
  /** Label data as shown on the unit's nameplate, in order. */
  readonly nameplate: readonly {readonly label: string; readonly value: string}[];
  readonly enclosures: readonly Enclosure[];
  readonly runs: readonly CableRun[];
  readonly parts: readonly Part[];
  readonly wires: readonly Wire[];
  readonly circuits: readonly LadderCircuit[];
  /** Which plant stands behind the unit, and its starting values. */
  readonly plant: {readonly kind: string; readonly start: Readonly<Record<string, number>>};
  readonly sequences: readonly OperatingSequence[];
}
