import {describe, expect, test} from 'vitest';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import {checkStep} from '../../src/sequences/step-check.ts';

describe.each(shippedUnitIds())('a healthy %s', (id) => {
  const unit = readShippedUnit(id);

  test.each(unit.sequences.map((sequence) => [sequence.id, sequence] as const))(
    'goes through its sequence of operation: %s',
    (_id, sequence) => {
      const operating = operateUnit(unit, []);
      for (const {target, value} of sequence.set) operating.set(target, value);
      operating.advance(sequence.waitSeconds * 1000);
      const failed = sequence.steps
        .map(({title, check}) => ({title, ...checkStep(operating, check)}))
        .filter(({holds}) => !holds);
      expect(failed).toEqual([]);
      expect(operating.settling.chattering).toEqual([]);
    },
  );
});
