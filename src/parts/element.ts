/**
 * The circuit elements that parts are made of, as data.
 *
 * An element joins terminals. Terminal names are local to the part ("A1"); a name that begins
 * with `~` is a point inside the part that no lead can reach. `earth` names the earth reference.
 * Once placed in a unit, ids and terminals carry the part: `K1.coil`, `K1.A1`.
 *
 * What an element is does not change; what it is doing now (closed, sealed, turning) is its
 * {@link ElementState}, given by the sequences.
 */

/** A complex number: an impedance in ohms or a phasor (RMS). */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

interface Between {
  readonly id: string;
  readonly a: string;
  readonly b: string;
}

/** A fixed resistance, the same for alternating and direct current: a wire, a strap, a joint. */
export interface Conductor extends Between {
  readonly is: 'conductor';
  readonly ohms: number;
}

/** A switch contact, fuse link or overload contact. State: `closed`. */
export interface Contact extends Between {
  readonly is: 'contact';
  /** Position before anything has acted on it (as drawn on a ladder). */
  readonly normally: 'open' | 'closed';
  readonly closedOhms: number;
}

/** A passive load whose impedance at line frequency differs from its ohmmeter resistance. */
export interface Impedance extends Between {
  readonly is: 'impedance';
  readonly acOhms: Complex;
  readonly dcOhms: number;
}

/** A magnet coil: low impedance while the armature is open, high once it has sealed. State: `sealed`. */
export interface Coil extends Between {
  readonly is: 'coil';
  readonly sealedOhms: Complex;
  readonly inrushOhms: Complex;
  readonly dcOhms: number;
}

/** A resistance that follows something physical (thermistor). State: `ohms`. */
export interface Variable extends Between {
  readonly is: 'variable';
  readonly restOhms: number;
}

/** A capacitor; direct current sees only its leakage. */
export interface Capacitor extends Between {
  readonly is: 'capacitor';
  readonly microfarads: number;
  readonly leakageOhms: number;
}

/** A line-frequency source from a (positive) to b, behind a real source impedance. */
export interface AcSource extends Between {
  readonly is: 'acSource';
  readonly volts: number;
  readonly degrees: number;
  readonly ohms: Complex;
}

/** A direct-current source of a board, from a (positive) to b. State: `on`. */
export interface DcSource extends Between {
  readonly is: 'dcSource';
  readonly volts: number;
  readonly ohms: number;
}

/** One winding on a transformer's core. */
export interface Winding extends Between {
  /** Turns in volts: open-circuit volts of this winding when the core is at rated flux. */
  readonly turnsVolts: number;
  /** Winding resistance and leakage reactance, on this winding's own side. */
  readonly ohms: number;
  readonly reactanceOhms: number;
}

/**
 * Any number of windings on one core (a tapped primary is two windings in series). Each winding
 * carries i = (v_a − v_b − turnsVolts·φ) / z and the core balances Σ turnsVolts·i = φ·Y_m, so the
 * stamp stays symmetric. Winding ids are addressed as `T1.<winding id>` (open, shorted).
 */
export interface Transformer {
  readonly is: 'transformer';
  readonly id: string;
  readonly windings: readonly Winding[];
  /** Magnetising branch, volt-amperes at rated flux: re = core loss (watts), im = magnetising (vars). */
  readonly magnetisingVa: Complex;
}

/**
 * A two-winding motor (permanent split capacitor or split phase) in double-revolving-field form,
 * everything referred to the main winding. Ids `M1.main` and `M1.start` address the windings.
 * State: `speed` (per unit of synchronous, 0 at standstill).
 */
export interface Motor {
  readonly is: 'motor';
  readonly id: string;
  readonly main: {readonly a: string; readonly b: string};
  readonly start: {readonly a: string; readonly b: string};
  readonly model: MotorModel;
}

export interface MotorModel {
  readonly ratedVolts: number;
  readonly poles: number;
  readonly mainOhms: number;
  readonly mainReactanceOhms: number;
  readonly startOhms: number;
  readonly startReactanceOhms: number;
  /** Effective start turns over main turns. */
  readonly turnsRatio: number;
  readonly rotorOhms: number;
  readonly rotorReactanceOhms: number;
  readonly magnetisingOhms: number;
  /** Load torque at synchronous speed, and how it falls with speed: torque·speed^exponent (0 = constant). */
  readonly loadNewtonMetres: number;
  readonly loadExponent: number;
  /** Torque that must be exceeded to leave standstill. */
  readonly breakawayNewtonMetres: number;
}

/** One winding of a motor: its ends, and what an ohmmeter reads of it. */
export interface MotorWinding {
  readonly id: string;
  readonly a: string;
  readonly b: string;
}

/**
 * A three-phase induction motor: three equal windings a third of a turn apart, each with both ends free (joined in
 * wye or delta by the part). In the order in which they stand, phases that follow one another turn it forward.
 * State: `speed` (per unit of synchronous, negative when it turns backwards).
 */
export interface ThreePhaseMotor {
  readonly is: 'threePhaseMotor';
  readonly id: string;
  readonly windings: readonly [MotorWinding, MotorWinding, MotorWinding];
  readonly model: ThreePhaseMotorModel;
}

/** What a motor drives, as its rotor feels it. */
export type ShaftLoad = Pick<
  MotorModel,
  'loadNewtonMetres' | 'loadExponent' | 'breakawayNewtonMetres'
>;

/** The equivalent circuit of one phase, rotor referred to the stator, and the load on the shaft. */
export interface ThreePhaseMotorModel extends ShaftLoad {
  /** Volts between two lines. */
  readonly ratedVolts: number;
  readonly poles: number;
  readonly windingOhms: number;
  readonly windingReactanceOhms: number;
  readonly rotorOhms: number;
  readonly rotorReactanceOhms: number;
  readonly magnetisingOhms: number;
  /** Share of the load that is left when it is driven backwards: a scroll that turns backwards pumps nothing. */
  readonly backwardLoadFraction: number;
}

export type Element =
  | Conductor
  | Contact
  | Impedance
  | Coil
  | Variable
  | Capacitor
  | AcSource
  | DcSource
  | Transformer
  | Motor
  | ThreePhaseMotor;

/**
 * What an element is doing now. Only the field that its kind uses is read; `open` burns any element open. `copper` is
 * what the winding resistance of a coil, transformer or motor is now, as a share of the ohms in its data (those at
 * `referenceDegF`, see copper.ts).
 */
export interface ElementState {
  readonly closed?: boolean;
  readonly sealed?: boolean;
  readonly ohms?: number;
  readonly speed?: number;
  readonly on?: boolean;
  readonly open?: boolean;
  readonly copper?: number;
}

/** Element (or winding) id, placed (`K1.coil`), to its present state. */
export type ElementStates = Readonly<Record<string, ElementState | undefined>>;
