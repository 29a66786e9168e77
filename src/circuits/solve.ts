import type {ElementStates} from '../parts/element.ts';
import {openOhms} from './element-admittance.ts';
import {factorSymmetric, factorUnsymmetric, substitute, type Stamps} from './factor.ts';
import {motorOhms} from './motor-impedance.ts';
import {
  coilBranch,
  contactBranch,
  dcSourceBranch,
  fixedBranch,
  motorBranch,
  variableBranch,
  type Base,
  type Branch,
  type MotorCoupling,
} from './branch.ts';
import type {Plan} from './plan.ts';
import {injectNorton, stampBranch, stampWinding} from './stamps.ts';
import {Solution} from './solution.ts';

const openSiemens = 1 / openOhms;

/**
 * Solves the line-frequency network: RMS phasors of every node against earth.
 * An element without a state is as drawn: contacts at their normal position, coils open, motors at standstill,
 * direct-current sources off.
 *
 * @param reuse a solution of the same plan to overwrite; with it nothing is allocated but the
 * list of state names, and once per changed motor speed
 */
export function solveAc(plan: Plan, states: ElementStates, reuse?: Solution): Solution {
  const solution = reuse ?? new Solution(plan);
  solution.begin('ac');
  stampAll(plan, plan.ac, 'ac', states, solution);
  let turning = false;
  for (const motor of plan.motors) {
    updateMotor(plan, motor, states);
    if (stampMotor(plan, motor, solution)) turning = true;
  }
  // Only a turning motor's windings make the matrix unsymmetric. Factoring it so costs about 1.4 times the symmetric
  // factoring; a low-rank correction would take two substitutions for every motor, which is more from one motor on.
  if (turning) {
    plan.scratch.backRe.set(plan.scratch.edgeRe);
    plan.scratch.backIm.set(plan.scratch.edgeIm);
    for (const motor of plan.motors) stampCoupling(plan, motor, solution);
    solution.useSeparateUpper();
    factorUnsymmetric(plan.elimination, plan.scratch, solution.factor);
  } else {
    solution.useSharedUpper();
    factorSymmetric(plan.elimination, plan.scratch, solution.factor);
  }
  substitute(plan.elimination, solution.factor, solution.voltsRe, solution.voltsIm);
  return solution;
}

/**
 * Solves the direct-current network (ohmmeter, control outputs): same nodes; windings, coils and loads by their
 * ohmmeter resistance, capacitors by leakage, transformer windings uncoupled, line sources without volts.
 */
export function solveDc(plan: Plan, states: ElementStates, reuse?: Solution): Solution {
  const solution = reuse ?? new Solution(plan);
  solution.begin('dc');
  stampAll(plan, plan.dc, 'dc', states, solution);
  solution.useSharedUpper();
  factorSymmetric(plan.elimination, plan.scratch, solution.factor);
  substitute(plan.elimination, solution.factor, solution.voltsRe, solution.voltsIm);
  return solution;
}

/** Fills the plan's scratch stamps and the solution's branch numbers and injected amps, all but turning motors. */
function stampAll(
  plan: Plan,
  base: Base,
  kind: 'ac' | 'dc',
  states: ElementStates,
  solution: Solution,
): void {
  solution.siemensRe.set(base.siemensRe);
  solution.siemensIm.set(base.siemensIm);
  solution.emfRe.set(base.emfRe);
  solution.emfIm.set(base.emfIm);
  solution.couplingRe.fill(0);
  solution.couplingIm.fill(0);
  const stamps = plan.scratch;
  if (anyFixedBurnt(plan, states)) {
    restamp(plan, base, kind, states, solution);
  } else {
    copyStamps(base.stamps, stamps);
    solution.voltsRe.set(base.ampsRe);
    solution.voltsIm.set(base.ampsIm);
  }
  for (let i = 0; i < plan.live.length; i += 1) {
    const index = plan.live[i];
    stampLive(plan.branches[index], index, kind, states, stamps, solution);
  }
}

/** Stamps one branch that a state can change. */
function stampLive(
  branch: Branch,
  index: number,
  kind: 'ac' | 'dc',
  states: ElementStates,
  stamps: Stamps,
  solution: Solution,
): void {
  const state = states[branch.id];
  const {rest, acted, volts} = branch[kind];
  let {re, im} = rest;
  if (state?.open === true) {
    re = openSiemens;
    im = 0;
  } else if (branch.kind === contactBranch) {
    if (state?.closed ?? branch.closedAtRest) re = acted.re;
  } else if (branch.kind === coilBranch) {
    if (state?.sealed === true) ({re, im} = acted);
  } else if (branch.kind === variableBranch) {
    if (state?.ohms !== undefined) re = 1 / state.ohms;
  } else if (branch.kind === dcSourceBranch && state?.on === true) {
    solution.emfRe[index] = volts.re;
    injectNorton(solution.voltsRe, solution.voltsIm, branch, rest, volts.re, volts.im);
  }
  solution.siemensRe[index] = re;
  solution.siemensIm[index] = im;
  stampBranch(stamps, branch, re, im);
}

function anyFixedBurnt(plan: Plan, states: ElementStates): boolean {
  for (const id in states) {
    if (states[id]?.open !== true) continue;
    const index = plan.branchOf.get(id);
    if (index !== undefined) {
      if (plan.branches[index].kind === fixedBranch || plan.branches[index].kind === motorBranch)
        return true;
    } else if (plan.branchesOf.has(id)) return true;
  }
  return false;
}

function isBurnt(branch: Branch, states: ElementStates): boolean {
  return states[branch.id]?.open === true || states[branch.owner]?.open === true;
}

/** Stamps every fixed branch anew with the burnt ones open: taking a stamp away again would lose digits. */
function restamp(
  plan: Plan,
  base: Base,
  kind: 'ac' | 'dc',
  states: ElementStates,
  solution: Solution,
): void {
  const stamps = plan.scratch;
  for (const array of Object.values(stamps) as Float64Array[]) array.fill(0);
  solution.voltsRe.fill(0);
  solution.voltsIm.fill(0);
  for (let index = 0; index < plan.branches.length; index += 1) {
    const branch = plan.branches[index];
    const burnt = isBurnt(branch, states);
    if (branch.kind !== fixedBranch && (branch.kind !== motorBranch || kind === 'ac')) continue;
    const re = burnt ? openSiemens : base.siemensRe[index];
    const im = burnt ? 0 : base.siemensIm[index];
    solution.siemensRe[index] = re;
    solution.siemensIm[index] = im;
    if (branch.core >= 0 && kind === 'ac') stampWinding(stamps, branch, re, im);
    else stampBranch(stamps, branch, re, im);
    if (burnt) {
      solution.emfRe[index] = 0;
      solution.emfIm[index] = 0;
    } else {
      injectNorton(
        solution.voltsRe,
        solution.voltsIm,
        branch,
        branch[kind].rest,
        base.emfRe[index],
        base.emfIm[index],
      );
    }
  }
  for (const core of plan.cores) {
    stamps.earthRe[core.position] += kind === 'ac' ? core.siemens.re : 1;
    stamps.earthIm[core.position] += kind === 'ac' ? core.siemens.im : 0;
  }
}

function copyStamps(from: Stamps, to: Stamps): void {
  to.edgeRe.set(from.edgeRe);
  to.edgeIm.set(from.edgeIm);
  to.earthRe.set(from.earthRe);
  to.earthIm.set(from.earthIm);
}

/** Brings a motor's admittances to its present speed. A burnt winding has the open gap in series. */
function updateMotor(plan: Plan, coupling: MotorCoupling, states: ElementStates): void {
  const {motor, main, start, siemens} = coupling;
  const speed = states[motor.id]?.speed ?? 0;
  const burnt =
    (isBurnt(plan.branches[main], states) ? 1 : 0) +
    (isBurnt(plan.branches[start], states) ? 2 : 0);
  if (speed === coupling.speed && burnt === coupling.burnt) return;
  coupling.speed = speed;
  coupling.burnt = burnt;
  const z = motorOhms(motor.model, speed);
  const mRe = z.main.re + (burnt & 1 ? openOhms : 0);
  const mIm = z.main.im;
  const sRe = z.start.re + (burnt & 2 ? openOhms : 0);
  const sIm = z.start.im;
  const cRe = z.coupling.re;
  const cIm = z.coupling.im;
  // determinant Zm·Zs − c²; then main Zs/Δ, start Zm/Δ, g = jc/Δ
  const dRe = mRe * sRe - mIm * sIm - (cRe * cRe - cIm * cIm);
  const dIm = mRe * sIm + mIm * sRe - 2 * cRe * cIm;
  const square = dRe * dRe + dIm * dIm;
  siemens[0] = (sRe * dRe + sIm * dIm) / square;
  siemens[1] = (sIm * dRe - sRe * dIm) / square;
  siemens[2] = (mRe * dRe + mIm * dIm) / square;
  siemens[3] = (mIm * dRe - mRe * dIm) / square;
  siemens[4] = (-cIm * dRe + cRe * dIm) / square;
  siemens[5] = (cRe * dRe + cIm * dIm) / square;
}

/** Stamps both windings; returns whether they are coupled (the motor turns). */
function stampMotor(plan: Plan, coupling: MotorCoupling, solution: Solution): boolean {
  const {main, start, siemens} = coupling;
  const mainBranch = plan.branches[main];
  const startBranch = plan.branches[start];
  solution.siemensRe[main] = siemens[0];
  solution.siemensIm[main] = siemens[1];
  solution.siemensRe[start] = siemens[2];
  solution.siemensIm[start] = siemens[3];
  stampBranch(plan.scratch, mainBranch, siemens[0], siemens[1]);
  stampBranch(plan.scratch, startBranch, siemens[2], siemens[3]);
  return siemens[4] !== 0 || siemens[5] !== 0;
}

/**
 * Stamps the antisymmetric part: main amps gain g·(start volts), start amps lose g·(main volts). On a node that
 * both windings share the two cancel, and with no end at earth every row sum stays as it is.
 */
function stampCoupling(plan: Plan, coupling: MotorCoupling, solution: Solution): void {
  const {siemens, edges} = coupling;
  const gRe = siemens[4];
  const gIm = siemens[5];
  const main = plan.branches[coupling.main];
  const start = plan.branches[coupling.start];
  solution.couplingRe[coupling.main] = gRe;
  solution.couplingIm[coupling.main] = gIm;
  solution.couplingRe[coupling.start] = -gRe;
  solution.couplingIm[coupling.start] = -gIm;
  // a winding shorted on itself has no volts to couple and no node to send its amps into
  if (main.from === main.to || start.from === start.to) return;
  for (let i = 0; i < 4; i += 1) {
    if (edges[i] < 0) continue;
    const m = i < 2 ? main.from : main.to;
    const s = i % 2 === 0 ? start.from : start.to;
    const sign = i === 0 || i === 3 ? 1 : -1;
    addJoin(plan.scratch, edges[i], m < s, -sign * gRe, -sign * gIm);
    addJoin(plan.scratch, edges[i], s < m, sign * gRe, sign * gIm);
  }
  const startEnds = (start.from >= 0 ? 1 : 0) - (start.to >= 0 ? 1 : 0);
  const mainEnds = (main.from >= 0 ? 1 : 0) - (main.to >= 0 ? 1 : 0);
  addRow(plan.scratch, main, startEnds * gRe, startEnds * gIm);
  addRow(plan.scratch, start, -mainEnds * gRe, -mainEnds * gIm);
}

function addJoin(stamps: Stamps, edge: number, upper: boolean, re: number, im: number): void {
  if (upper) {
    stamps.edgeRe[edge] += re;
    stamps.edgeIm[edge] += im;
  } else {
    stamps.backRe[edge] += re;
    stamps.backIm[edge] += im;
  }
}

function addRow(stamps: Stamps, branch: Branch, re: number, im: number): void {
  if (re === 0 && im === 0) return;
  if (branch.from >= 0) {
    stamps.earthRe[branch.from] += re;
    stamps.earthIm[branch.from] += im;
  }
  if (branch.to >= 0) {
    stamps.earthRe[branch.to] -= re;
    stamps.earthIm[branch.to] -= im;
  }
}
