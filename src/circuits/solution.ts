import type {Complex} from '../parts/element.ts';
import {motorBranch, type MotorCoupling} from './branch.ts';
import {findBranchAmps, type BranchAmps, type Solved} from './branch-amps.ts';
import {substitute, type Factor} from './factor.ts';
import type {Plan} from './plan.ts';
import {UnknownNameError} from './unknown-name.ts';

/** Volts and ohms of everything behind two nodes. */
export interface TheveninPair {
  readonly volts: Complex;
  readonly ohms: Complex;
}

/**
 * The solved volts of one network in one state, with its factor kept for Thevenin pairs. Phasors are RMS; in a
 * direct-current solution the imaginary parts are zero. Names are placed names; a wrong one throws UnknownNameError.
 */
export class Solution implements Solved {
  readonly plan: Plan;
  kind: 'ac' | 'dc' = 'ac';

  /** Volts of each unknown by elimination position; cores in volts of their largest winding. */
  readonly voltsRe: Float64Array;
  readonly voltsIm: Float64Array;
  /** Per branch: admittance and source volts. Siemens, volts. */
  readonly siemensRe: Float64Array;
  readonly siemensIm: Float64Array;
  readonly emfRe: Float64Array;
  readonly emfIm: Float64Array;
  /** Couplings of each motor's windings, by row and column from the motor's `offset`. Siemens. */
  readonly couplingRe: Float64Array;
  readonly couplingIm: Float64Array;

  private readonly shared: Factor;
  private separate: Factor | undefined;
  private current: Factor;
  private branchAmps: BranchAmps | undefined;
  private ampsAreCurrent = false;
  private readonly injectedRe: Float64Array;
  private readonly injectedIm: Float64Array;

  constructor(plan: Plan) {
    const {size, row} = plan.elimination;
    const branches = plan.branches.length;
    this.plan = plan;
    const couplings = plan.motors.reduce((sum, {windings}) => sum + windings.length ** 2, 0);
    // hundreds of suspects have a solution each: one block of memory is a tenth of the work of fourteen
    const take = blocks(6 * size + 4 * branches + 2 * couplings + 2 * row.length);
    this.voltsRe = take(size);
    this.voltsIm = take(size);
    this.siemensRe = take(branches);
    this.siemensIm = take(branches);
    this.emfRe = take(branches);
    this.emfIm = take(branches);
    this.couplingRe = take(couplings);
    this.couplingIm = take(couplings);
    const lowerRe = take(row.length);
    const lowerIm = take(row.length);
    this.shared = {
      lowerRe,
      lowerIm,
      upperRe: lowerRe,
      upperIm: lowerIm,
      inverseRe: take(size),
      inverseIm: take(size),
    };
    this.current = this.shared;
    this.injectedRe = take(size);
    this.injectedIm = take(size);
  }

  /** A solve is about to overwrite everything. */
  begin(kind: 'ac' | 'dc'): void {
    this.kind = kind;
    this.ampsAreCurrent = false;
  }

  /** The factor of this state's matrix. */
  get factor(): Factor {
    return this.current;
  }

  /** A symmetric matrix: one set of multipliers serves both passes. */
  useSharedUpper(): void {
    this.current = this.shared;
  }

  /** An unsymmetric matrix: the backward pass gets multipliers of its own. */
  useSeparateUpper(): void {
    if (!this.separate) {
      const edges = this.shared.lowerRe.length;
      const take = blocks(2 * edges);
      this.separate = {...this.shared, upperRe: take(edges), upperIm: take(edges)};
    }
    this.current = this.separate;
  }

  /** Volts of a node against earth. */
  volts(node: string): Complex {
    return this.at(this.positionOf(node));
  }

  /** Volts of `a` against `b`. */
  voltsBetween(a: string, b: string): Complex {
    const p = this.volts(a);
    const q = this.volts(b);
    return {re: p.re - q.re, im: p.im - q.im};
  }

  /**
   * Amps through an element, wire or winding from its `a`, through it, to its `b`. A source that delivers has them
   * out of its `a`, so they count negative.
   */
  amps(id: string): Complex {
    const index = this.plan.branchOf.get(id);
    if (index === undefined)
      throw new UnknownNameError('element, wire or winding', id, this.plan.branchOf.keys());
    return this.ampsOf(index);
  }

  /**
   * Amps of one branch without the step of refinement: good to some 1e-10 A, which is all that armatures, fuses and
   * overloads feel, and a hundredth of the work where only a few are asked for.
   */
  roughAmps(id: string): Complex {
    const index = this.plan.branchOf.get(id);
    if (index === undefined)
      throw new UnknownNameError('element, wire or winding', id, this.plan.branchOf.keys());
    return this.roughAmpsOf(index);
  }

  /** Watts that an element with two ends takes in, from its {@link roughAmps}. */
  roughWatts(id: string): number {
    const amps = this.roughAmps(id);
    const volts = this.acrossBranch(this.plan.branchOf.get(id)!);
    return volts.re * amps.re + volts.im * amps.im;
  }

  /** Amps of a motor's windings as {@link roughAmps}, in the order of `motorWindings`. */
  roughMotorAmps(motor: string): Complex[] {
    return this.couplingOf(motor).windings.map((index) => this.roughAmpsOf(index));
  }

  /** Amps of a motor's windings, from each winding's `a` to its `b`, in the order of `motorWindings`. */
  motorAmps(motor: string): Complex[] {
    return this.couplingOf(motor).windings.map((index) => this.ampsOf(index));
  }

  /** Amps of both windings of a two-winding motor. */
  windingAmps(motor: string): {main: Complex; start: Complex} {
    const [main, start] = this.motorAmps(motor);
    return {main, start};
  }

  /**
   * Complex power that an element takes in: re watts, im vars. A source that delivers counts negative. Of a
   * transformer it is the sum over its windings: copper and core loss.
   */
  voltAmperes(id: string): Complex {
    const single = this.plan.branchOf.get(id);
    const indices = this.plan.branchesOf.get(id) ?? (single === undefined ? undefined : [single]);
    if (!indices) throw new UnknownNameError('element', id, this.plan.branchesOf.keys());
    let re = 0;
    let im = 0;
    for (const index of indices) {
      const {from, to} = this.plan.branches[index];
      const p = this.at(from);
      const q = this.at(to);
      const amps = this.ampsOf(index);
      re += (p.re - q.re) * amps.re + (p.im - q.im) * amps.im;
      im += (p.im - q.im) * amps.re - (p.re - q.re) * amps.im;
    }
    return {re, im};
  }

  /**
   * Volts of `a` against `b` with nothing connected, and the impedance between them with every source dead: what a
   * meter's leads meet. One substitution with the factor at hand, exact also where turning motors make the network
   * non-reciprocal.
   */
  thevenin(a: string, b: string): TheveninPair {
    const p = this.positionOf(a);
    const q = this.positionOf(b);
    if (p === q) return {volts: {re: 0, im: 0}, ohms: {re: 0, im: 0}};
    return {volts: this.voltsBetween(a, b), ohms: this.injection(a, b)(a, b)};
  }

  /**
   * One ampere sent into `a` and taken out of `b` with every source dead. The function returned gives the volts
   * that it makes between two nodes (transfer ohms), and is good until the next injection or solve.
   */
  injection(a: string, b: string): (c: string, d: string) => Complex {
    const p = this.positionOf(a);
    const q = this.positionOf(b);
    const {injectedRe: re, injectedIm: im} = this;
    re.fill(0);
    im.fill(0);
    if (p !== q && p >= 0) re[p] = 1;
    if (p !== q && q >= 0) re[q] = -1;
    substitute(this.plan.elimination, this.current, re, im);
    return (c, d) => {
      const r = this.positionOf(c);
      const s = this.positionOf(d);
      return {
        re: (r < 0 ? 0 : re[r]) - (s < 0 ? 0 : re[s]),
        im: (r < 0 ? 0 : im[r]) - (s < 0 ? 0 : im[s]),
      };
    };
  }

  private couplingOf(motor: string): MotorCoupling {
    const coupling = this.plan.motors.find((each) => each.motor.id === motor);
    if (!coupling)
      throw new UnknownNameError(
        'motor',
        motor,
        this.plan.motors.map((each) => each.motor.id),
      );
    return coupling;
  }

  private acrossBranch(index: number): Complex {
    const {from, to} = this.plan.branches[index];
    const p = this.at(from);
    const q = this.at(to);
    return {re: p.re - q.re, im: p.im - q.im};
  }

  /** y·(va − vb − turns·φ − emf), and what a motor's other windings couple in. */
  private roughAmpsOf(index: number): Complex {
    const {plan, siemensRe, siemensIm, emfRe, emfIm} = this;
    const branch = plan.branches[index];
    let {re: vRe, im: vIm} = this.acrossBranch(index);
    vRe -= emfRe[index];
    vIm -= emfIm[index];
    if (branch.core >= 0 && this.kind === 'ac') {
      vRe -= branch.turns * this.voltsRe[branch.core];
      vIm -= branch.turns * this.voltsIm[branch.core];
    }
    let re = vRe * siemensRe[index] - vIm * siemensIm[index];
    let im = vRe * siemensIm[index] + vIm * siemensRe[index];
    if (branch.kind !== motorBranch || this.kind !== 'ac') return {re, im};
    for (const {windings, offset} of plan.motors) {
      const row = windings.indexOf(index);
      if (row < 0) continue;
      windings.forEach((other, column) => {
        if (column === row) return;
        const at = offset + row * windings.length + column;
        const volts = this.acrossBranch(other);
        re += this.couplingRe[at] * volts.re - this.couplingIm[at] * volts.im;
        im += this.couplingRe[at] * volts.im + this.couplingIm[at] * volts.re;
      });
    }
    return {re, im};
  }

  private positionOf(node: string): number {
    const found = this.plan.positionOf.get(node);
    if (found === undefined)
      throw new UnknownNameError('terminal or node', node, this.plan.positionOf.keys());
    return found;
  }

  private at(position: number): Complex {
    return position < 0 ? {re: 0, im: 0} : {re: this.voltsRe[position], im: this.voltsIm[position]};
  }

  /** All branches at once, the first time that any is asked for. */
  private ampsOf(index: number): Complex {
    const {size} = this.plan.elimination;
    const branches = this.plan.branches.length;
    this.branchAmps ??= {
      re: new Float64Array(branches),
      im: new Float64Array(branches),
      correctionRe: new Float64Array(size),
      correctionIm: new Float64Array(size),
    };
    if (!this.ampsAreCurrent) {
      findBranchAmps(this, this.branchAmps);
      this.ampsAreCurrent = true;
    }
    return {re: this.branchAmps.re[index], im: this.branchAmps.im[index]};
  }
}

/** Cuts one array of zeros into pieces, one after the other. */
function blocks(length: number): (size: number) => Float64Array {
  const whole = new Float64Array(length);
  let at = 0;
  return (size) => whole.subarray(at, (at += size));
}
