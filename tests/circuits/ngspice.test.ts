import fc from 'fast-check';
import {expect, test} from 'vitest';
import {compileNetwork} from '../../src/circuits/plan.ts';
import {solveAc, solveDc} from '../../src/circuits/solve.ts';
import {agree, ngspiceVolts} from './ngspice.ts';
import {networks, type Drawn} from './random-network.ts';

// Source of the expected volts: ngspice 45 in WebAssembly, solving the netlist that this project exports.

const seed = 20240501;

async function disagreements({network, states}: Drawn, kind: 'ac' | 'dc'): Promise<string[]> {
  const theirs = await ngspiceVolts(network, states, kind);
  const solution = (kind === 'ac' ? solveAc : solveDc)(compileNetwork(network), states);
  return [...theirs].flatMap(([node, volts]) => {
    const ours = solution.volts(node);
    return agree(ours, volts)
      ? []
      : [`${node}: ours ${ours.re} ${ours.im}, ngspice ${volts.re} ${volts.im}`];
  });
}

test('200 random line-frequency networks agree with ngspice to 0.01 % or 1 mV', async () => {
  await fc.assert(
    fc.asyncProperty(networks(), async (drawn) => {
      expect(await disagreements(drawn, 'ac')).toEqual([]);
    }),
    {numRuns: 200, seed},
  );
}, 120_000);

test('100 random direct-current networks agree with ngspice to 0.01 % or 1 mV', async () => {
  await fc.assert(
    fc.asyncProperty(networks(), async (drawn) => {
      expect(await disagreements(drawn, 'dc')).toEqual([]);
    }),
    {numRuns: 100, seed},
  );
}, 120_000);
