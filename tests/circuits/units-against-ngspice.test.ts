import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';
import {agree, ngspiceVolts} from './ngspice.ts';

// Source of the expected volts: ngspice 45 in WebAssembly, solving the netlist that this project exports.

async function disagreements(operating: OperatingUnit): Promise<string[]> {
  const {network, states} = operating;
  const found: string[] = [];
  for (const [node, volts] of await ngspiceVolts(network, states, 'ac')) {
    const ours = operating.acVolts(node, 'earth');
    if (!agree(ours, volts))
      found.push(`${node} AC: ours ${ours.re} ${ours.im}, ngspice ${volts.re} ${volts.im}`);
  }
  for (const [node, volts] of await ngspiceVolts(network, states, 'dc')) {
    const ours = operating.dcVolts(node, 'earth');
    if (!agree({re: ours, im: 0}, volts))
      found.push(`${node} DC: ours ${ours}, ngspice ${volts.re}`);
  }
  return found;
}

describe.each([
  'practice-panel',
  'split-heat-pump',
  'gas-furnace',
  'electric-furnace',
  'furnace-split-cooling',
])('%s', (id) => {
  const unit = readShippedUnit(id);
  test.each(unit.sequences.map((sequence) => [sequence.title, sequence] as const))(
    '%s: every node agrees with ngspice to 0.01 % or 1 mV',
    async (_title, sequence) => {
      const operating = operateUnit(unit, []);
      for (const {target, value} of sequence.set) operating.set(target, value);
      // as it is called for, and when it has established itself
      expect(await disagreements(operating)).toEqual([]);
      operating.advance(sequence.waitSeconds * 1000);
      expect(await disagreements(operating)).toEqual([]);
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
    expect(await disagreements(operating)).toEqual([]);
  }, 120_000);
});
