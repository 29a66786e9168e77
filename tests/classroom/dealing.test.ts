import fc from 'fast-check';
import {expect, test} from 'vitest';
import {dealDifferent, pairUp} from '../../src/classroom/dealing.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {levelsOf} from '../../src/diagnosis/difficulty-level.ts';
import {difficultiesOfAny} from '../../src/diagnosis/node/read-difficulties.ts';

test('everybody hides once and has one hidden for them, never for themselves', () => {
  fc.assert(
    fc.property(fc.integer({min: 2, max: 60}), (count) => {
      const students = Array.from({length: count}, (_, i) => i);
      const pairs = pairUp(students);
      return (
        pairs.length === count &&
        new Set(pairs.map((pair) => pair.by)).size === count &&
        new Set(pairs.map((pair) => pair.for)).size === count &&
        pairs.every((pair) => pair.by !== pair.for)
      );
    }),
  );
  expect(pairUp(['alone'])).toEqual([]);
});

test('faults that are dealt are different, of the difficulty asked for, and a customer notices each', () => {
  const unit = readShippedUnit('practice-panel');
  const levelOf = levelsOf(difficultiesOfAny(unit));
  const deals = dealDifferent(unit, levelOf, 'easy', 8, 3);
  expect(new Set(deals.map(({faults}) => faults[0])).size).toBe(8);
  for (const {faults, complaint} of deals) {
    expect(levelOf(faults[0])).toBe('easy');
    expect(complaint).not.toMatch(/noticed nothing/);
  }
  expect(dealDifferent(unit, levelOf, 'easy', 8, 3)).toEqual(deals);
});

test('a difficulty that a unit does not have is refused in a sentence', () => {
  const unit = readShippedUnit('practice-panel');
  expect(() => dealDifferent(unit, () => undefined, 'hard', 3, 1)).toThrow(/no hard fault/);
});
