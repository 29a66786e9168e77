import {expect, test} from 'vitest';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import {powerImbalance} from './power-imbalance.ts';

// Tellegen's theorem over every branch of a real unit; one fault in eight, the operating states in turn
test.each(shippedUnitIds())(
  '%s with faults: what sources give, the rest takes in',
  (id) => {
    const unit = readShippedUnit(id);
    catalogue(unit).forEach((fault, index) => {
      if (index % 8 !== 0) return;
      const sequence = unit.sequences[(index / 8) % unit.sequences.length];
      const operating = operateUnit(unit, [fault]);
      for (const {target, value} of sequence.set) operating.set(target, value);
      operating.advance(sequence.waitSeconds * 1000);
      expect(powerImbalance(operating), fault.id).toBeLessThanOrEqual(1e-9);
    });
  },
  120_000,
);
