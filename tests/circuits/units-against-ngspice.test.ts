import {describe, expect, test} from 'vitest';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import {unitDisagreements} from './ngspice.ts';

// Source of the expected volts: ngspice 45 in WebAssembly, solving the netlist that this project exports.

describe.each(shippedUnitIds())('%s', (id) => {
  const unit = readShippedUnit(id);
  test.each(unit.sequences.map((sequence) => [sequence.title, sequence] as const))(
    '%s: every node agrees with ngspice to 0.01 % or 1 mV',
    async (_title, sequence) => {
      const operating = operateUnit(unit, []);
      for (const {target, value} of sequence.set) operating.set(target, value);
      // as it is called for, and when it has established itself
      expect(await unitDisagreements(operating)).toEqual([]);
      operating.advance(sequence.waitSeconds * 1000);
      expect(await unitDisagreements(operating)).toEqual([]);
    },
    120_000,
  );

  test('with a wire lifted and a jumper laid, every node agrees with ngspice', async () => {
    const operating = operateUnit(unit, []);
    const sequence = unit.sequences[unit.sequences.length - 1];
    for (const {target, value} of sequence.set) operating.set(target, value);
    operating.advance(sequence.waitSeconds * 1000);
    const {network} = operating;
    const [lifted, other] = [unit.wires[3], unit.wires[unit.wires.length - 2]];
    operating.lift(`${lifted.id}.to`);
    operating.lift(`${other.id}.from`);
    operating.jumper(other.from, other.to);
    expect(operating.network).not.toBe(network);
    expect(await unitDisagreements(operating)).toEqual([]);
  }, 120_000);
});
