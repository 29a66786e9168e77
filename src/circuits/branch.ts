import type {AnyMotor} from '../parts/motor-windings.ts';
import type {Siemens} from './element-admittance.ts';
import type {Stamps} from './factor.ts';

/** What a branch's state can change. */
export const fixedBranch = 0;
export const contactBranch = 1;
export const coilBranch = 2;
export const variableBranch = 3;
export const dcSourceBranch = 4;
export const motorBranch = 5;
export const transformerBranch = 6;

/** One two-ended path: an element, a transformer winding or a motor winding. Indices are elimination positions, −1 is earth. */
export interface Branch {
  readonly id: string;
  /** The transformer or motor that a winding belongs to; otherwise the same as `id`. */
  readonly owner: string;
  readonly kind: number;
  readonly from: number;
  readonly to: number;
  /** Edge between both ends, −1 where one is earth or both are the same node. */
  readonly edge: number;
  /** A contact that is closed with no state. */
  readonly closedAtRest: boolean;
  readonly ac: Siemens;
  readonly dc: Siemens;
  /** Transformer windings only: the core's unknown, its edges to both ends, and turns per core volt. */
  readonly core: number;
  readonly coreFromEdge: number;
  readonly coreToEdge: number;
  readonly turns: number;
}

/** Magnetising branch of one core, from its unknown to earth, per core volt squared. */
export interface Core {
  readonly id: string;
  readonly position: number;
  /** Volts on the largest winding at rated flux: one core volt is one volt on that winding. */
  readonly turnsVolts: number;
  readonly siemens: {readonly re: number; readonly im: number};
}

/**
 * The windings of a motor, coupled through its rotor: amps of winding i get siemens[i][j] times the volts of
 * winding j. Of a turning two-winding motor the coupling is antisymmetric; of three phases it is of no symmetry.
 */
export interface MotorCoupling {
  readonly motor: AnyMotor;
  /** Branches of its windings. */
  readonly windings: readonly number[];
  /** For each ordered pair of windings, edges between their ends: a–a, a–b, b–a, b–b; −1 where there is none. */
  readonly edges: Int32Array;
  /** Where this motor's couplings begin in a solution's. */
  readonly offset: number;
  /** Admittances at `speed`, kept until the speed changes: by row and column, re and im. */
  readonly siemens: Float64Array;
  /** Speed, winding temperature (share of the reference ohms) and burnt windings that `siemens` is for. */
  speed: number;
  copper: number;
  burnt: number;
}

/** Stamps of everything that no state changes, for one network kind. */
export interface Base {
  readonly stamps: Stamps;
  /** Per branch: its admittance at rest and, for a line source, its volts. */
  readonly siemensRe: Float64Array;
  readonly siemensIm: Float64Array;
  readonly emfRe: Float64Array;
  readonly emfIm: Float64Array;
  /** Amps into each unknown. */
  readonly ampsRe: Float64Array;
  readonly ampsIm: Float64Array;
}
