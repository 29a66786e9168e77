import {describe, expect, test} from 'vitest';
import {inSequence} from '../../src/bench/complaint.ts';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {readMeter} from '../../src/meter/read-meter.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';

describe.each(shippedUnitIds())('%s', (id) => {
  const unit = readShippedUnit(id);

  test(
    'with a fault of every four, in every sequence of operation, settles to finite volts and amps, and the meter reads them',
    {timeout: 240_000},
    () => {
      const wrong: string[] = [];
      // all of them are in tests/long
      for (const fault of catalogue(unit).filter((_, i) => i % 4 === 0)) {
        const rest = operateUnit(unit, [fault]);
        for (const sequence of unit.sequences) {
          const operating = inSequence(rest, sequence);
          const nodes = operating.network.nodes.map((node) => operating.acVolts(node, 'earth'));
          const wires = unit.wires.map((wire) => operating.amps(wire.id));
          if (
            ![...nodes, ...wires].every(({re, im}) => Number.isFinite(re) && Number.isFinite(im))
          ) {
            wrong.push(`${fault.id} in ${sequence.id}`);
          }
          const [red, black] = unit.circuits[unit.circuits.length - 1].rails;
          const {text} = readMeter('ac-volts', operating, {red, black});
          if (!/^(OL|\d+(\.\d+)?)$/.test(text)) wrong.push(`${fault.id}: the meter shows ${text}`);
        }
      }
      expect(wrong).toEqual([]);
    },
  );
});
