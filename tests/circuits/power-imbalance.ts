import {compileNetwork} from '../../src/circuits/plan.ts';
import {solveAc, solveDc} from '../../src/circuits/solve.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';

/**
 * What Tellegen's theorem leaves of the complex power of all branches, relative to the sum of their magnitudes;
 * the worse of the AC and the DC network. Not a number where a branch has none.
 */
export function powerImbalance(operating: OperatingUnit): number {
  const plan = compileNetwork(operating.network);
  const left = [solveAc, solveDc].map((solve) => {
    const solution = solve(plan, operating.states);
    let [re, im, all] = [0, 0, 0];
    for (const branch of plan.branchOf.keys()) {
      const power = solution.voltAmperes(branch);
      re += power.re;
      im += power.im;
      all += Math.hypot(power.re, power.im);
    }
    return all === 0 ? 0 : Math.hypot(re, im) / all;
  });
  return Math.max(...left);
}
