import {describe, expect, test} from 'vitest';
import {
  battery,
  capacitor,
  load,
  magnitude,
  near,
  resistor,
  solved,
  supply,
} from './circuit-by-hand.ts';
import type {Solution} from '../../src/circuits/solution.ts';

/** What a meter of the given input resistance has across it, from the Thevenin pair alone. */
function reading(solution: Solution, a: string, b: string, meterOhms: number): number {
  const {volts, ohms} = solution.thevenin(a, b);
  return (magnitude(volts) * meterOhms) / Math.hypot(ohms.re + meterOhms, ohms.im);
}

test('Lessons in Electric Circuits, vol. DC ch. 8: 12 V on a 250 MΩ divider reads 0.8889 V on a 10 MΩ meter', () => {
  const s = solved('dc', [
    battery('a', 'earth', 24),
    resistor('a', 'b', 250e6),
    resistor('b', 'earth', 250e6),
  ]);
  expect(near(s.volts('b').re, 12, 0.001)).toBe(true);
  expect(near(reading(s, 'b', 'earth', 10e6), 0.8889, 0.001)).toBe(true);
});

test('a floating wire, 100 pF from a 120 V conductor, reads 42.3 V on 10 MΩ and 13.6 mV on 3 kΩ', () => {
  // divider model and the 3 kΩ input of a low-impedance range read in public application notes; numbers our own
  const s = solved('ac', [
    supply('hot', 'earth', 120),
    capacitor('hot', 'w', 100e-6),
    resistor('w', 'earth', 1e15),
  ]);
  expect(near(reading(s, 'w', 'earth', 10e6), 42.3, 0.01)).toBe(true);
  expect(near(reading(s, 'w', 'earth', 3000), 0.0136, 0.01)).toBe(true);
});

describe('24 V, one open limit switch and a 128 Ω coil in series (Kirchhoff; numbers our own)', () => {
  const s = solved(
    'ac',
    [
      supply('R', 'earth', 24),
      {is: 'contact', id: 'limit', a: 'R', b: 'x', normally: 'closed', closedOhms: 0.01},
      {is: 'contact', id: 'second', a: 'x', b: 'y', normally: 'closed', closedOhms: 0.01},
      load('y', 'earth', {re: 128, im: 0}),
    ],
    {limit: {closed: false}},
  );

  test('the meter finds 23.9997 V across the open switch', () => {
    expect(Math.abs(reading(s, 'R', 'x', 10e6) - 23.9997)).toBeLessThan(0.001);
  });
  test('and next to nothing across the coil and across a closed switch', () => {
    expect(reading(s, 'y', 'earth', 10e6)).toBeLessThan(0.001);
    expect(reading(s, 'x', 'y', 10e6)).toBeLessThan(0.001);
  });
});

test('a person of 1000 Ω across 120 V carries 120 mA (public safety article)', () => {
  const s = solved('ac', [supply('hot', 'earth', 120), resistor('hot', 'earth', 1000, 'person')]);
  expect(near(magnitude(s.amps('person')), 0.12, 0.001)).toBe(true);
});
