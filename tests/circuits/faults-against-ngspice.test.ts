import {expect, test} from 'vitest';
import {inSequence} from '../../src/bench/complaint.ts';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import {unitDisagreements} from './ngspice.ts';

// Source of the expected volts: ngspice 45 in WebAssembly. A cut through the catalogues, the operating states in
// turn; every fault in every state is in tests/long.

test.each(shippedUnitIds())(
  '%s with faults agrees with ngspice at every node to one part in ten thousand or 1 mV',
  async (id) => {
    const unit = readShippedUnit(id);
    const faults = catalogue(unit);
    const apart = Math.ceil(faults.length / 16);
    for (let i = 0; i < faults.length; i += apart) {
      const sequence = unit.sequences[(i / apart) % unit.sequences.length];
      const operating = inSequence(operateUnit(unit, [faults[i]]), sequence);
      expect(await unitDisagreements(operating), `${faults[i].id} in ${sequence.id}`).toEqual([]);
    }
  },
  120_000,
);
