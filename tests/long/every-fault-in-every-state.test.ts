import {describe, expect, test} from 'vitest';
import {inSequence} from '../../src/bench/complaint.ts';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {readMeter} from '../../src/meter/read-meter.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import {unitDisagreements} from '../circuits/ngspice.ts';
import {powerImbalance} from '../circuits/power-imbalance.ts';

// Source of the expected volts: ngspice 45 in WebAssembly, solving the netlist that this project exports.

describe.each(shippedUnitIds())('%s', (id) => {
  const unit = readShippedUnit(id);

  test.each(unit.sequences.map((sequence) => [sequence.title, sequence] as const))(
    '%s: with every fault it settles, balances its power and agrees with ngspice at every node',
    async (_title, sequence) => {
      const faults = catalogue(unit);
      const wrong: string[] = [];
      for (const fault of faults) {
        const operating = inSequence(operateUnit(unit, [fault]), sequence);
        const imbalance = powerImbalance(operating);
        // a sum that is not a number is no balance either
        if (!(imbalance <= 1e-9)) wrong.push(`${fault.id}: power out of balance by ${imbalance}`);
        const [red, black] = unit.circuits[unit.circuits.length - 1].rails;
        const {text} = readMeter('ac-volts', operating, {red, black});
        if (!/^(OL|\d+(\.\d+)?)$/.test(text)) wrong.push(`${fault.id}: the meter shows ${text}`);
        const apart = await unitDisagreements(operating);
        if (apart.length > 0) wrong.push(`${fault.id}: ${apart[0]} and ${apart.length - 1} more`);
      }
      expect(faults.length).toBeGreaterThan(50);
      expect(wrong).toEqual([]);
    },
    3_600_000,
  );
});
