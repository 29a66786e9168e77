import fc from 'fast-check';
import {expect, test} from 'vitest';
import {readShippedUnitText, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {smallUnit} from '../content/small-unit.ts';
import {isHonest, spoilings} from '../content/spoilt-files.ts';

const kinds = Object.entries(spoilings);

test.each(kinds)(
  '%s, eighteen thousand times in the small unit',
  (_name, spoil) => {
    let tried = 0;
    fc.assert(
      fc.property(spoil(smallUnit), (text) => {
        tried += 1;
        return isHonest(text);
      }),
      {numRuns: 18_000, seed: 100},
    );
    expect(tried).toBeGreaterThanOrEqual(18_000);
  },
  3_600_000,
);

test.each(
  shippedUnitIds().flatMap((id) => kinds.map(([name, spoil]) => [name, id, spoil] as const)),
)(
  '%s, in %s, 400 times',
  (_name, id, spoil) => {
    fc.assert(fc.property(spoil(readShippedUnitText(id)), isHonest), {numRuns: 400, seed: 101});
  },
  3_600_000,
);
