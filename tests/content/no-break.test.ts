import {expect, test} from 'vitest';
import {keepQuantities} from '../../src/content/no-break.ts';

const shown = (text: string): string => keepQuantities(text).replaceAll('\u00a0', '_');

test('a quantity stays on one line, its digits and its unit together', () => {
  expect(shown('Gas furnace, 80 000 Btu/h, 120 V')).toBe('Gas furnace, 80_000_Btu/h, 120_V');
  expect(shown('Split heat pump, 3 ton, 240 V')).toBe('Split heat pump, 3_ton, 240_V');
  expect(shown('35 °F, 25 psig, 15 kW')).toBe('35_°F, 25_psig, 15_kW');
});

test('words after a number that are no unit may go to the next line', () => {
  expect(shown('2 disconnects, one open')).toBe('2 disconnects, one open');
});

test('nothing but spaces is changed', () => {
  const text = 'Electric furnace, 15 kW, 240 V';
  expect(keepQuantities(text).replaceAll('\u00a0', ' ')).toBe(text);
});
