import type {Complex, ElementStates} from '../parts/element.ts';
import {inverse, openOhms} from './element-admittance.ts';
import {factorSymmetric, factorUnsymmetric, substitute, type Stamps} from './factor.ts';
import {eliminate, windingOhms} from './motor-windings.ts';
import {
  coilBranch,
  contactBranch,
  dcSourceBranch,
  fixedBranch,
  transformerBranch,
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
  for (const motor of plan.motors) stampMotorDc(plan, motor, states, solution);
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
  if (branch.kind === transformerBranch) {
    stampTransformerWinding(branch, index, kind, states, stamps, solution);
    return;
  }
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
    if (state?.copper !== undefined) ({re, im} = warmed(branch, {re, im}, state.copper));
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

/** Stamps one winding of a transformer at its present temperature, or burnt open. */
function stampTransformerWinding(
  branch: Branch,
  index: number,
  kind: 'ac' | 'dc',
  states: ElementStates,
  stamps: Stamps,
  solution: Solution,
): void {
  const copper = states[branch.owner]?.copper;
  let {re, im} = branch[kind].rest;
  if (isBurnt(branch, states)) {
    re = openSiemens;
    im = 0;
  } else if (copper !== undefined) ({re, im} = warmed(branch, {re, im}, copper));
  solution.siemensRe[index] = re;
  solution.siemensIm[index] = im;
  if (kind === 'ac') stampWinding(stamps, branch, re, im);
  else stampBranch(stamps, branch, re, im);
}

/** An admittance with the copper in it, which alone direct current meets, warmer or colder than in the part's data. */
function warmed(branch: Branch, siemens: Complex, copper: number): Complex {
  if (copper === 1) return siemens;
  const {re, im} = inverse(siemens);
  return inverse({re: re + (copper - 1) / branch.dc.rest.re, im});
}

/** Windings of a motor as direct current meets them: their copper alone. */
function stampMotorDc(
  plan: Plan,
  {motor, windings}: MotorCoupling,
  states: ElementStates,
  solution: Solution,
): void {
  const copper = states[motor.id]?.copper ?? 1;
  for (const index of windings) {
    const branch = plan.branches[index];
    const re = isBurnt(branch, states) ? openSiemens : branch.dc.rest.re / copper;
    solution.siemensRe[index] = re;
    solution.siemensIm[index] = 0;
    stampBranch(plan.scratch, branch, re, 0);
  }
}

/** Whether something is burnt that stands in the fixed stamps: windings never do. */
function anyFixedBurnt(plan: Plan, states: ElementStates): boolean {
  for (const id in states) {
    if (states[id]?.open !== true) continue;
    const index = plan.branchOf.get(id);
    if (index !== undefined && plan.branches[index].kind === fixedBranch) return true;
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
    if (branch.kind !== fixedBranch) continue;
    const re = burnt ? openSiemens : base.siemensRe[index];
    const im = burnt ? 0 : base.siemensIm[index];
    solution.siemensRe[index] = re;
    solution.siemensIm[index] = im;
    stampBranch(stamps, branch, re, im);
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
  const {motor, windings, siemens} = coupling;
  const speed = states[motor.id]?.speed ?? 0;
  const copper = states[motor.id]?.copper ?? 1;
  let burnt = 0;
  for (let i = 0; i < windings.length; i += 1)
    if (isBurnt(plan.branches[windings[i]], states)) burnt += 2 ** i;
  if (speed === coupling.speed && copper === coupling.copper && burnt === coupling.burnt) return;
  coupling.speed = speed;
  coupling.copper = copper;
  coupling.burnt = burnt;
  const ohms = windingOhms(motor, speed, copper);
  const unit = ohms.map((row, i) => row.map((_, j) => ({re: i === j ? 1 : 0, im: 0})));
  for (let i = 0; i < windings.length; i += 1)
    if (Math.floor(burnt / 2 ** i) % 2 === 1)
      ohms[i][i] = {re: ohms[i][i].re + openOhms, im: ohms[i][i].im};
  eliminate(ohms, unit).forEach((row, i) =>
    row.forEach(({re, im}, j) => {
      siemens[2 * (i * windings.length + j)] = re;
      siemens[2 * (i * windings.length + j) + 1] = im;
    }),
  );
}

/** Stamps every winding; returns whether they are coupled (two windings: only when they turn). */
function stampMotor(plan: Plan, coupling: MotorCoupling, solution: Solution): boolean {
  const {windings, siemens} = coupling;
  const count = windings.length;
  let coupled = false;
  for (let i = 0; i < count; i += 1) {
    const own = 2 * (i * count + i);
    solution.siemensRe[windings[i]] = siemens[own];
    solution.siemensIm[windings[i]] = siemens[own + 1];
    stampBranch(plan.scratch, plan.branches[windings[i]], siemens[own], siemens[own + 1]);
    for (let j = 0; j < count; j += 1) {
      const at = 2 * (i * count + j);
      if (i !== j && (siemens[at] !== 0 || siemens[at + 1] !== 0)) coupled = true;
    }
  }
  return coupled;
}

/**
 * Stamps what the windings of a motor feel of one another: amps of winding i gain g·(volts of winding j). With no
 * end at earth every row sum stays as it is.
 */
function stampCoupling(plan: Plan, coupling: MotorCoupling, solution: Solution): void {
  const {siemens, edges, windings, offset} = coupling;
  const count = windings.length;
  for (let i = 0; i < count; i += 1)
    for (let j = 0; j < count; j += 1) {
      if (i === j) continue;
      const at = i * count + j;
      const gRe = siemens[2 * at];
      const gIm = siemens[2 * at + 1];
      solution.couplingRe[offset + at] = gRe;
      solution.couplingIm[offset + at] = gIm;
      const own = plan.branches[windings[i]];
      const other = plan.branches[windings[j]];
      // a winding shorted on itself has no volts to couple and no node to send its amps into
      if (own.from === own.to || other.from === other.to) continue;
      for (let end = 0; end < 4; end += 1) {
        const edge = edges[4 * at + end];
        if (edge < 0) continue;
        const p = end < 2 ? own.from : own.to;
        const q = end % 2 === 0 ? other.from : other.to;
        const sign = end === 0 || end === 3 ? 1 : -1;
        addJoin(plan.scratch, edge, p < q, -sign * gRe, -sign * gIm);
      }
      const ends = (other.from >= 0 ? 1 : 0) - (other.to >= 0 ? 1 : 0);
      addRow(plan.scratch, own, ends * gRe, ends * gIm);
    }
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
