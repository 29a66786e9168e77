import type {Capacitor, Element} from '../parts/element.ts';
import type {Solution} from './solution.ts';
import {symmetricEigen} from './symmetric-eigen.ts';

/** A resistance laid across two points from outside: a meter's input, a bleed resistor. */
export interface Across {
  readonly a: string;
  readonly b: string;
  readonly ohms: number;
}

/** One exponential of a step response, between two points: `ohms` × (1 − e^(−t/seconds)). */
export interface ChargingTerm {
  readonly ohms: number;
  readonly seconds: number;
}

/**
 * What a constant direct current meets between two points, capacitors at first empty: at once `resistiveOhms`, then
 * every term as its capacitors fill. Volts after t seconds at one ampere are
 * resistiveOhms + Σ term.ohms·(1 − e^(−t/term.seconds)).
 */
export interface ChargingPath {
  readonly resistiveOhms: number;
  readonly terms: readonly ChargingTerm[];
}

/** A way of discharging shorter than this has long come to its end before anybody can read (seconds). */
const instantSeconds = 1e-7;

/**
 * The capacitors of a network whose sources are dead, and everything between them as resistances: v = R·i at the
 * capacitors' terminals and i = −C·dv/dt, so R·C·dv/dt = −v. With C^½·R·C^½ = Q·Λ·Qᵀ (symmetric) each column of Q
 * discharges by itself, as e^(−t/λ): the discharge of one capacitor through one resistor, e^(−t/RC), for any number
 * of them (R–C discharge: Lessons in Electric Circuits, vol. I, ch. 16; diagonalising is the textbook normal form).
 */
export class CapacitorCharge {
  readonly capacitors: readonly Capacitor[];
  private readonly dc: Solution;
  /** √farads of each capacitor. */
  private readonly root: readonly number[];
  /** Transfer ohms among the capacitors: volts at j for an ampere into i. */
  private readonly ohms: readonly (readonly number[])[];

  /**
   * @param dc the solved direct-current network
   * @param capacitors those that can hold a charge, as {@link capacitorsOf} finds them
   */
  constructor(dc: Solution, capacitors: readonly Capacitor[]) {
    this.dc = dc;
    this.capacitors = capacitors;
    this.root = capacitors.map(({microfarads}) => Math.sqrt(microfarads * 1e-6));
    this.ohms = capacitors.map(({a, b}) => {
      const transfer = dc.injection(a, b);
      return capacitors.map((other) => transfer(other.a, other.b).re);
    });
  }

  /** Volts on each capacitor after so many seconds; `across` is laid on for that time. */
  after(volts: readonly number[], seconds: number, across?: Across): number[] {
    const {values, vectors} = this.modes(across);
    const weighted = volts.map((each, i) => each * this.root[i]);
    const result = volts.map(() => 0);
    values.forEach((tau, k) => {
      const share = tau < instantSeconds ? 0 : dot(vectors[k], weighted) * Math.exp(-seconds / tau);
      vectors[k].forEach((part, i) => (result[i] += (part * share) / this.root[i]));
    });
    return result;
  }

  /** Volts of `a` against `b` that so many volts on the capacitors make, nothing laid on. */
  voltsBetween(volts: readonly number[], a: string, b: string): number {
    const {values, vectors} = this.modes();
    const couplings = this.couplings(a, b);
    const weighted = volts.map((each, i) => each * this.root[i]);
    let total = 0;
    values.forEach((tau, k) => {
      if (tau >= instantSeconds)
        total += (dot(vectors[k], couplings) * dot(vectors[k], weighted)) / tau;
    });
    return total;
  }

  /** What a constant current into `a` and out of `b` meets. */
  chargingPath(a: string, b: string): ChargingPath {
    const {values, vectors} = this.modes();
    const couplings = this.couplings(a, b);
    const terms = values.flatMap((tau, k): ChargingTerm[] =>
      tau < instantSeconds ? [] : [{ohms: dot(vectors[k], couplings) ** 2 / tau, seconds: tau}],
    );
    const whole = a === b ? 0 : this.dc.thevenin(a, b).ohms.re;
    return {
      resistiveOhms: Math.max(0, whole - terms.reduce((sum, {ohms}) => sum + ohms, 0)),
      terms,
    };
  }

  /** √farads times the transfer ohms from a pair of points to each capacitor. */
  private couplings(a: string, b: string): number[] {
    if (a === b) return this.root.map(() => 0);
    const transfer = this.dc.injection(a, b);
    return this.capacitors.map((each, i) => transfer(each.a, each.b).re * this.root[i]);
  }

  private modes(across?: Across) {
    let ohms = this.ohms;
    if (across && across.a !== across.b) {
      // one more resistor: R − r·rᵀ/(R_ab + ohms), the rank-one update of a port matrix
      const transfer = this.dc.injection(across.a, across.b);
      const r = this.capacitors.map(({a, b}) => transfer(a, b).re);
      const whole = transfer(across.a, across.b).re + across.ohms;
      ohms = ohms.map((row, i) => row.map((each, j) => each - (r[i] * r[j]) / whole));
    }
    return symmetricEigen(
      ohms.map((row, i) =>
        // the two triangles differ by rounding alone
        row.map((each, j) => ((each + ohms[j][i]) / 2) * this.root[i] * this.root[j]),
      ),
    );
  }
}

/** The capacitors of a network that can hold a charge. */
export function capacitorsOf(elements: readonly Element[]): Capacitor[] {
  return elements.filter(
    (element): element is Capacitor =>
      element.is === 'capacitor' && !element.id.startsWith('stray:') && element.microfarads > 1e-4,
  );
}

function dot(p: readonly number[], q: readonly number[]): number {
  return p.reduce((sum, each, i) => sum + each * q[i], 0);
}
