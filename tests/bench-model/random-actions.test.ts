import {expect, test} from 'vitest';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {workAtRandom} from './random-hands.ts';

const tried = Math.ceil(100_000 / shippedUnitIds().length / 100) * 100;

test.each(shippedUnitIds())(
  'a hundred thousand random actions in all, here at %s, never break the bench, and replaying what was done gives the same view',
  (id) => {
    const {refused, done} = workAtRandom(readShippedUnit(id), {
      tried,
      each: 100,
      seed: 20261125,
    });
    // hands that try anything are also refused
    expect(refused).toBeGreaterThan(1000);
    expect(done).toBeGreaterThan(1000);
    expect(refused + done).toBe(tried);
  },
  240_000,
);
