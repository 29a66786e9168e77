import {describe, expect, test} from 'vitest';
import {
  isReady,
  markedBy,
  pickPart,
  picksFrom,
  pickTerminal,
  pickWire,
  purposeOf,
  readingOf,
  type Picks,
} from '../../src/pages/bench/picks.ts';

const begun: Picks = picksFrom({function: 'ac-volts'});
const wires = new Set(['W1', 'W2']);

describe('what has been picked', () => {
  test('two terminals make a reading, red first', () => {
    const red = pickTerminal(begun, 'S1.1', 'lead');
    expect(readingOf(red, 'leads', undefined)).toBeUndefined();
    const both = pickTerminal(red, 'K1.3', 'lead');
    expect(isReady(both, 'leads')).toBe(true);
    expect(readingOf(both, 'leads', {value: 24})).toEqual({
      do: 'read',
      red: 'S1.1',
      black: 'K1.3',
      expected: {value: 24},
    });
  });

  test('the part at the last lead is marked, and on a lifted end the wire', () => {
    expect(markedBy(pickTerminal(begun, 'K1.3', 'lead'), wires)).toEqual({part: 'K1'});
    expect(markedBy(pickTerminal(begun, 'W2.from', 'lead'), wires)).toEqual({wire: 'W2'});
  });

  test('a call picked up again marks the part that red was left on', () => {
    const picks = picksFrom({function: 'ac-volts', red: 'HPS.2', black: 'TB2.C'});
    expect(markedBy(picks, wires)).toEqual({part: 'HPS'});
  });

  test('a part picked twice is marked no more', () => {
    const once = pickPart(begun, 'K1');
    expect(markedBy(once, wires)).toEqual({part: 'K1'});
    expect(markedBy(pickPart(once, 'K1'), wires)).toEqual({});
  });

  test('the jaw closes on a wire only where amps are to be clamped', () => {
    expect(readingOf(pickWire(begun, 'W1', 'clamp'), 'clamp', undefined)).toEqual({
      do: 'clamp',
      wire: 'W1',
    });
    expect(isReady(pickWire(begun, 'W1', 'mark'), 'clamp')).toBe(false);
  });

  test('a jumper takes two different ends, and a third pick begins the next one', () => {
    const first = pickTerminal(begun, 'S1.1', 'jumper');
    expect(pickTerminal(first, 'S1.1', 'jumper')).toEqual(first);
    const both = pickTerminal(first, 'S1.2', 'jumper');
    expect([both.jumperFrom, both.jumperTo]).toEqual(['S1.1', 'S1.2']);
    const next = pickTerminal(both, 'K1.1', 'jumper');
    expect([next.jumperFrom, next.jumperTo]).toEqual(['K1.1', undefined]);
  });

  test('a lead stays where it is while wires are worked on', () => {
    const read = pickTerminal(pickTerminal(begun, 'S1.1', 'lead'), 'K1.3', 'lead');
    expect(pickTerminal(read, 'S1.2', 'jumper').probing).toEqual(read.probing);
    expect(pickTerminal(read, 'S1.2', 'lift')).toBe(read);
  });

  test('wire work is picked for on its panel, with either meter function', () => {
    expect(purposeOf('wires', 'lift', 'clamp')).toBe('lift');
    expect(purposeOf('wires', 'jumper', 'leads')).toBe('jumper');
    expect(purposeOf('log', 'lift', 'leads')).toBe('lead');
    expect(purposeOf('log', 'lift', 'clamp')).toBe('mark');
  });
});
