import fc from 'fast-check';
import {expect, test} from 'vitest';
import {networkDisagreements} from './ngspice.ts';
import {networks} from './random-network.ts';

// Source of the expected volts: ngspice 45 in WebAssembly, solving the netlist that this project exports.

test.each([
  ['350 random line-frequency networks', 'ac', 350],
  ['150 random direct-current networks', 'dc', 150],
] as const)(
  '%s agree with ngspice to 0.01 % or 1 mV',
  async (_name, kind, numRuns) => {
    await fc.assert(
      fc.asyncProperty(networks(), async (drawn) => {
        expect(await networkDisagreements(drawn, kind)).toEqual([]);
      }),
      {numRuns, seed: 20240501},
    );
  },
  120_000,
);
