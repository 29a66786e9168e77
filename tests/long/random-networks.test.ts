import fc from 'fast-check';
import {expect, test} from 'vitest';
import {networkDisagreements} from '../circuits/ngspice.ts';
import {networks} from '../circuits/random-network.ts';

// Source of the expected volts: ngspice 45 in WebAssembly, solving the netlist that this project exports. Transformers,
// motors that turn, three phases, floating pieces and twelve decades of resistance are among them.

test.each([
  ['ac', 7500],
  ['dc', 2500],
] as const)(
  'random %s networks, %i of them, agree with ngspice to one part in ten thousand or 1 mV',
  async (kind, numRuns) => {
    let compared = 0;
    await fc.assert(
      fc.asyncProperty(networks(), async (drawn) => {
        expect(await networkDisagreements(drawn, kind)).toEqual([]);
        compared += 1;
      }),
      {numRuns, seed: 45},
    );
    expect(compared).toBe(numRuns);
  },
);
