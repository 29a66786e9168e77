import {expect, test} from 'vitest';
import {compileNetwork} from '../../src/circuits/plan.ts';
import {solveAc, solveDc} from '../../src/circuits/solve.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';

// Tellegen's theorem over every branch of a real unit; one fault in eight, the operating states in turn
test.each([
  'practice-panel',
  'split-heat-pump',
  'gas-furnace',
  'electric-furnace',
  'furnace-split-cooling',
])(
  '%s with faults: what sources give, the rest takes in',
  (id) => {
    const unit = readShippedUnit(id);
    catalogue(unit).forEach((fault, index) => {
      if (index % 8 !== 0) return;
      const sequence = unit.sequences[(index / 8) % unit.sequences.length];
      const operating = operateUnit(unit, [fault]);
      for (const {target, value} of sequence.set) operating.set(target, value);
      operating.advance(sequence.waitSeconds * 1000);
      const plan = compileNetwork(operating.network);
      for (const solve of [solveAc, solveDc]) {
        const solution = solve(plan, operating.states);
        let re = 0;
        let im = 0;
        let all = 0;
        for (const branch of plan.branchOf.keys()) {
          const power = solution.voltAmperes(branch);
          re += power.re;
          im += power.im;
          all += Math.hypot(power.re, power.im);
        }
        expect(all, fault.id).not.toBeNaN();
        expect(Math.hypot(re, im), fault.id).toBeLessThanOrEqual(1e-9 * all);
      }
    });
  },
  120_000,
);
