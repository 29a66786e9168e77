import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';

/** How a wait is cut up: any number of pieces, down to a millisecond. */
const pieces = fc.array(fc.integer({min: 1, max: 900_000}), {minLength: 2, maxLength: 5});

describe.each(shippedUnitIds())('%s', (id) => {
  const unit = readShippedUnit(id);
  const rest = operateUnit(unit, []);

  test('waiting in pieces comes to the very same as waiting at once', () => {
    fc.assert(
      fc.property(fc.constantFrom(...unit.sequences), pieces, (sequence, waits) => {
        const once = rest.fork();
        for (const {target, value} of sequence.set) once.set(target, value);
        const cut = once.fork();
        once.advance(waits.reduce((sum, wait) => sum + wait, 0));
        for (const wait of waits) cut.advance(wait);
        expect(cut.states).toEqual(once.states);
        expect(cut.plantValues()).toEqual(once.plantValues());
        expect(cut.observations()).toEqual(once.observations());
      }),
      {numRuns: 12},
    );
  });
});
