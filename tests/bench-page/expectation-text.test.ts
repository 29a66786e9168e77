import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {expectationText, parseExpectation} from '../../src/bench/expectation-text.ts';

describe('what a student expects, as typed', () => {
  test.each([
    ['24', {value: 24}],
    ['24 V', {value: 24}],
    [' 24,5v ', {value: 24.5}],
    ['-12', {value: -12}],
    ['120mV', {value: 0.12}],
    ['OL', {open: true}],
    ['open', {open: true}],
  ])('%s on volts AC', (typed, expected) => {
    expect(parseExpectation(typed, 'ac-volts')).toEqual(expected);
  });

  test('thousands of ohms take a k, millions an M', () => {
    expect(parseExpectation('4.7k', 'ohms')).toEqual({value: 4700});
    expect(parseExpectation('1 MΩ', 'ohms')).toEqual({value: 1_000_000});
  });

  test('an empty field skips it', () => {
    expect(parseExpectation('  ', 'ac-volts')).toBeUndefined();
  });

  test('a unit that the meter does not stand on is told', () => {
    expect(parseExpectation('24 V', 'ohms')).toMatch(/expect Ω, not V/);
  });

  test('words that are no number are told, with an example', () => {
    expect(parseExpectation('about twenty', 'ac-volts')).toMatch(/such as 24/);
  });

  test('what the log writes is read back as the same number', () => {
    const value = fc
      .double({min: 0.001, max: 9e6, noNaN: true})
      .map((x) => Number(x.toPrecision(4)));
    fc.assert(
      fc.property(value, fc.constantFrom('ac-volts' as const, 'ohms' as const), (expected, fn) => {
        const again = parseExpectation(expectationText({value: expected}, fn), fn);
        return typeof again === 'object' && Math.abs(again.value! - expected) <= 1e-9 * expected;
      }),
    );
  });
});
