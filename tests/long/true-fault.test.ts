import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {anySearch, staysSuspect} from '../diagnosis/true-fault.ts';

describe('the true fault is never ruled out', () => {
  test.each(shippedUnitIds())(
    'on %s, every fault of it, whatever is done and read',
    (id) => {
      const unit = readShippedUnit(id);
      const ruledOut: string[] = [];
      for (const [at, fault] of catalogue(unit).entries()) {
        // a row of its own for each fault, the same in every run
        const [[, seed, actions]] = fc.sample(anySearch(unit, [fault]), {numRuns: 1, seed: at + 1});
        if (!staysSuspect(unit, fault, seed, actions)) ruledOut.push(fault.id);
      }
      expect(ruledOut).toEqual([]);
    },
    3_000_000,
  );
});
