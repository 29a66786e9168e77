import {describe, expect, test} from 'vitest';
import {terminalOptions, usualVolts, wireOptions} from '../../src/bench/bench-options.ts';
import {matchingOptions} from '../../src/bench/pick-option.ts';
import {smallUnit, viewOf} from '../browser/bench-fixtures.ts';

const ids = (typed: string, options = wireOptions(smallUnit)): string[] =>
  matchingOptions(options, typed).map(({id}) => id);

describe('finding a terminal or wire by typing', () => {
  const terminals = terminalOptions(smallUnit, viewOf());

  test('nothing typed shows everything in unit order', () => {
    expect(ids('', terminals)).toEqual(['DS1.L1', 'DS1.T1', 'S1.1', 'S1.2', 'K1.1', 'K1.3']);
  });

  test('part and terminal, with a dot or a space, find the one', () => {
    expect(ids('s1.2', terminals)[0]).toBe('S1.2');
    expect(ids('s1 2', terminals)[0]).toBe('S1.2');
  });

  test('a wire is found by colour and by its ends', () => {
    expect(ids('yellow')).toEqual(['W2']);
    expect(ids('ds1')).toEqual(['W1']);
    expect(ids('s1 2')).toEqual(['W2']);
  });

  test('terminals behind a closed cover are barred, and say why', () => {
    expect(terminals.find(({id}) => id === 'K1.1')?.barred).toBe('cover is on');
    expect(terminals.find(({id}) => id === 'S1.1')?.barred).toBeUndefined();
  });

  test('a lifted end is a point to probe', () => {
    const [first] = terminalOptions(smallUnit, viewOf({lifted: ['W2.to']}));
    expect(first).toEqual({id: 'W2.to', text: 'lifted end of yellow wire W2, off K1.1'});
  });

  test('the volts of the circuits are what is usually expected', () => {
    expect(usualVolts(smallUnit)).toEqual([24, 120]);
  });
});
