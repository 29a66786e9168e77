import type {Unit} from '../content/unit.ts';
import type {Complex, ElementStates} from '../parts/element.ts';
import type {Across, ChargingPath} from '../circuits/capacitor-charge.ts';
import type {Network} from '../circuits/network.ts';
import type {Solution} from '../circuits/solution.ts';
import type {Fault} from '../faults/fault.ts';

/** What a person standing at the unit sees or hears of one part. Never a hint of what is wrong inside. */
export interface Observation {
  readonly part: string;
  /** `running`, `humming`, `pulled-in`, `chattering`, `lit`, `blank`, `display`, `shifted`, `tripped`, `off` … */
  readonly is: string;
  readonly sense: 'seen' | 'heard';
  /** A sentence for people: "Contactor K3 is pulled in." */
  readonly text: string;
  /** For a display: what it shows. */
  readonly display?: string;
  /** True where it can only be seen with the enclosure's cover off. */
  readonly behindCover: boolean;
}

/** Volts and ohms of everything behind two points, as a meter's leads meet it. */
export interface Thevenin {
  readonly volts: Complex;
  readonly ohms: Complex;
}

/** How the last settling ended. */
export interface Settling {
  readonly rounds: number;
  /** Parts that pull in and drop out without end on the present supply; they are left chattering. */
  readonly chattering: readonly string[];
}

/**
 * A unit in operation: its faults, its controls, its machines, its plant, on one simulated clock.
 * Deterministic: the same unit, faults and calls give the same numbers.
 */
export interface OperatingUnit {
  readonly unit: Unit;
  readonly faults: readonly Fault[];
  readonly timeMs: number;
  readonly settling: Settling;
  /** Set a control (`TS.mode`, `DS2.position`) or a plant value a person can change (`plant.outdoorDegF`). Throws WrongTargetError naming the nearest right ones. */
  set(target: string, value: string | number): void;
  /** Present value of a control or plant value. */
  valueOf(target: string): string | number;
  /** Lift a wire end (`W12.from`) off its terminal, or land it again. */
  lift(end: string): void;
  land(end: string): void;
  jumper(a: string, b: string): void;
  removeJumper(a: string, b: string): void;
  /**
   * Lay a meter's leads on two points and leave them there: few ohms become a part of the circuit, many only let the
   * charge of capacitors run off. The leads fall off when a point goes.
   */
  connectMeter(a: string, b: string, ohms: number): void;
  disconnectMeter(): void;
  /** The leads that lie on now, with the ohms between them. */
  readonly meterLeads: Across | undefined;
  /** Lay a resistance across two points for so many seconds of hand work, so that charge runs off; no time passes for anything else. */
  bleed(a: string, b: string, ohms: number, seconds: number): void;
  /** Called whenever the motors are about to find their speed, so that a starting current can be caught; one watcher, or none. */
  watch(watcher: (() => void) | undefined): void;
  /** Let simulated time pass, in integer milliseconds; fires everything that falls due, in order. */
  advance(milliseconds: number): void;
  /** Take the faults away (repair) and settle again; what has burnt since is renewed too. */
  repair(): void;
  /** RMS phasor volts of a against b, without a meter's load. */
  acVolts(a: string, b: string): Complex;
  dcVolts(a: string, b: string): number;
  thevenin(a: string, b: string, network: 'ac' | 'dc'): Thevenin;
  /** Direct volts that charged capacitors put on two points, a second after an input of so many ohms is laid on. */
  chargeVolts(a: string, b: string, inputOhms: number): number;
  /** What a constant direct current into `a` and out of `b` meets: resistance at once, capacitors as they fill. */
  chargingPath(a: string, b: string): ChargingPath;
  /** The solved network of the present state, for work on many points at once. Good until the unit changes. */
  solution(network: 'ac' | 'dc'): Solution;
  /** RMS phasor amps through a placed element or wire, from its `a` to its `b`. */
  amps(element: string): Complex;
  /** Whether a placed contact element is closed now, faults included. */
  isClosed(contact: string): boolean;
  readonly states: ElementStates;
  readonly network: Network;
  /** Every placed node name that a lead can be put on now: terminals and lifted ends. */
  probePoints(): readonly string[];
  observations(): readonly Observation[];
  /** Present plant values, by name. */
  plantValues(): Readonly<Record<string, number>>;
  /** An independent copy in the same state. */
  fork(): OperatingUnit;
}
