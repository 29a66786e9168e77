import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {loadUnit} from '../../src/content/load-unit.ts';
import {readShippedUnitText} from '../../src/content/node/read-shipped-unit.ts';
import {smallUnit} from './small-unit.ts';
import {isHonest, spoilings} from './spoilt-files.ts';

// ten thousand in all, the kinds that break little and take long to read around a little fewer
const runs = [1500, 1500, 1500, 2650, 2650];

describe('however a unit file is spoilt, loading gives a unit or located errors, and never throws', () => {
  test.each(Object.entries(spoilings).map(([name, spoil], i) => [name, runs[i], spoil] as const))(
    '%s, in the small unit, %i times',
    (_name, numRuns, spoil) => {
      fc.assert(fc.property(spoil(smallUnit), isHonest), {numRuns, seed: 20});
    },
    240_000,
  );

  test('one to three slips, in the practice panel', () => {
    const spoil = spoilings['one to three slips'](readShippedUnitText('practice-panel'));
    fc.assert(fc.property(spoil, isHonest), {numRuns: 200, seed: 21});
  });
});

test('every value of the small unit, exchanged for one of another type, is refused at its line', () => {
  // each leaf of the file is the value of a key that the schema gives one type to
  const leaves = [
    ...smallUnit.matchAll(/(?<=[{,] ?|^ *(?:- )?)([a-zA-Z]+): (?!\{|\[|$)([^,}\n]+)/gm),
  ];
  expect(leaves.length).toBeGreaterThan(80);
  for (const leaf of leaves) {
    const at = leaf.index + leaf[0].length - leaf[2]!.length;
    const {unit, errors} = loadUnit(
      `${smallUnit.slice(0, at)}[[7]]${smallUnit.slice(at + leaf[2]!.length)}`,
      'unit.yaml',
    );
    const line = smallUnit.slice(0, at).split('\n').length;
    expect(unit, leaf[0]).toBeUndefined();
    expect(errors[0]!.line, leaf[0]).toBe(line);
  }
});
