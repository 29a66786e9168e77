import fc from 'fast-check';
import {expect, test} from 'vitest';
import {nameDistance, nearestName, nearestNames} from '../../src/content/nearest-name.ts';

test('distances as in the textbook examples', () => {
  // Wagner & Fischer's and Levenshtein's usual pairs, e.g. kitten → sitting in three edits
  expect(nameDistance('kitten', 'sitting')).toBe(3);
  expect(nameDistance('saturday', 'sunday')).toBe(3);
  expect(nameDistance('', 'abc')).toBe(3);
  expect(nameDistance('K1', 'K1')).toBe(0);
});

test('two neighbours swapped count as one slip', () => {
  expect(nameDistance('realy', 'relay')).toBe(1);
});

test('distance is the same both ways and never more than the longer name', () => {
  fc.assert(
    fc.property(fc.string({maxLength: 12}), fc.string({maxLength: 12}), (a, b) => {
      const distance = nameDistance(a, b);
      return distance === nameDistance(b, a) && distance <= Math.max(a.length, b.length);
    }),
  );
});

test('the nearest name ignores case and is none where nothing is near', () => {
  expect(nearestName('k3.a1', ['K3.A2', 'K3.A1', 'TB1.R'])).toBe('K3.A1');
  expect(nearestName('compressor', ['K1', 'TB1'])).toBeUndefined();
  expect(nearestName('K1', [])).toBeUndefined();
});

test('nearest first, each once, no more than asked for', () => {
  expect(nearestNames('K1', ['K3', 'K2', 'K11', 'K2', 'M1', 'DS2'], 3)).toEqual([
    'K3',
    'K2',
    'K11',
  ]);
});
