import type {Branch} from './branch.ts';
import {substitute, type Factor} from './factor.ts';
import type {Plan} from './plan.ts';

/** What a solve leaves behind: volts per unknown, numbers per branch, and the factor (see Solution). */
export interface Solved {
  readonly plan: Plan;
  readonly kind: 'ac' | 'dc';
  readonly factor: Factor;
  readonly voltsRe: Float64Array;
  readonly voltsIm: Float64Array;
  readonly siemensRe: Float64Array;
  readonly siemensIm: Float64Array;
  readonly emfRe: Float64Array;
  readonly emfIm: Float64Array;
  readonly couplingRe: Float64Array;
  readonly couplingIm: Float64Array;
}

/** Amps of every branch from its `a` to its `b`, length branchCount; and room for a correction, length size. */
export interface BranchAmps {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly correctionRe: Float64Array;
  readonly correctionIm: Float64Array;
}

/**
 * Finds the amps of every branch so that they add up to nothing at every node.
 *
 * Volts have sixteen digits, and the drop of a milliohm wire, or of a source near open circuit, is the difference of
 * two of them: the amps so found leave some 1e-11 A over at a node. Those are solved once more for the volts that the
 * last digit could not hold (one step of iterative refinement: Golub and Van Loan, §3.5.3), and their amps added.
 */
export function findBranchAmps(solution: Solved, into: BranchAmps): void {
  const {plan, voltsRe, voltsIm} = solution;
  const {re, im, correctionRe, correctionIm} = into;
  re.fill(0);
  im.fill(0);
  addAmps(solution, voltsRe, voltsIm, true, re, im);

  correctionRe.fill(0);
  correctionIm.fill(0);
  plan.branches.forEach((branch, index) => {
    take(correctionRe, branch, re[index], solution.kind);
    take(correctionIm, branch, im[index], solution.kind);
  });
  for (const {position, siemens} of solution.kind === 'ac' ? plan.cores : []) {
    const vRe = voltsRe[position];
    const vIm = voltsIm[position];
    correctionRe[position] -= vRe * siemens.re - vIm * siemens.im;
    correctionIm[position] -= vRe * siemens.im + vIm * siemens.re;
  }
  substitute(plan.elimination, solution.factor, correctionRe, correctionIm);
  addAmps(solution, correctionRe, correctionIm, false, re, im);
}

/** Takes a branch's amps from the node they leave, gives them to the one they enter, and feeds the core. */
function take(left: Float64Array, branch: Branch, amps: number, kind: 'ac' | 'dc'): void {
  const {from, to, core, turns} = branch;
  if (from >= 0) left[from] -= amps;
  if (to >= 0) left[to] += amps;
  if (core >= 0 && kind === 'ac') left[core] += turns * amps;
}

/** Adds the amps that volts make: y·(va − vb − turns·φ − emf), and a motor's coupling. */
function addAmps(
  solution: Solved,
  voltsRe: Float64Array,
  voltsIm: Float64Array,
  withSources: boolean,
  re: Float64Array,
  im: Float64Array,
): void {
  const {plan, kind, siemensRe, siemensIm, emfRe, emfIm, couplingRe, couplingIm} = solution;
  const across = (volts: Float64Array, {from, to}: Branch): number =>
    (from < 0 ? 0 : volts[from]) - (to < 0 ? 0 : volts[to]);

  for (let index = 0; index < plan.branches.length; index += 1) {
    const branch = plan.branches[index];
    let vRe = across(voltsRe, branch);
    let vIm = across(voltsIm, branch);
    if (branch.core >= 0 && kind === 'ac') {
      vRe -= branch.turns * voltsRe[branch.core];
      vIm -= branch.turns * voltsIm[branch.core];
    }
    if (withSources) {
      vRe -= emfRe[index];
      vIm -= emfIm[index];
    }
    re[index] += vRe * siemensRe[index] - vIm * siemensIm[index];
    im[index] += vRe * siemensIm[index] + vIm * siemensRe[index];
  }
  for (const {windings, offset} of kind === 'ac' ? plan.motors : [])
    windings.forEach((index, i) =>
      windings.forEach((other, j) => {
        if (i === j) return;
        const at = offset + i * windings.length + j;
        const vRe = across(voltsRe, plan.branches[other]);
        const vIm = across(voltsIm, plan.branches[other]);
        re[index] += couplingRe[at] * vRe - couplingIm[at] * vIm;
        im[index] += couplingRe[at] * vIm + couplingIm[at] * vRe;
      }),
    );
}
