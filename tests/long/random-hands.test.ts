import {expect, test} from 'vitest';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {workAtRandom} from '../bench-model/random-hands.ts';

const tried = Math.ceil(1_000_000 / shippedUnitIds().length / 100) * 100;

test.each(shippedUnitIds())(
  'a million random actions in all, here at %s, never break the bench and replay to the same view',
  (id) => {
    const unit = readShippedUnit(id);
    let count = 0;
    // in batches, so that a million actions need not be kept at once
    for (let batch = 0; count < tried; batch += 1) {
      const {refused, done} = workAtRandom(unit, {tried: 10_000, each: 100, seed: 7000 + batch});
      count += refused + done;
    }
    expect(count).toBeGreaterThanOrEqual(tried);
  },
  3_600_000,
);
