import {describe, expect, test} from 'vitest';
import type {Element} from '../../src/parts/element.ts';
import {load, magnitude, near, resistor, solved, supply} from './circuit-by-hand.ts';

/** Two windings with next to no losses. */
function ideal(primaryVolts: number, secondaryVolts: number): Element {
  return {
    is: 'transformer',
    id: 'T.core',
    magnetisingVa: {re: 1e-6, im: 1e-6},
    windings: [
      {
        id: 'T.primary',
        a: 'H1',
        b: 'earth',
        turnsVolts: primaryVolts,
        ohms: 1e-5,
        reactanceOhms: 0,
      },
      {
        id: 'T.secondary',
        a: 'X1',
        b: 'earth',
        turnsVolts: secondaryVolts,
        ohms: 1e-6,
        reactanceOhms: 0,
      },
    ],
  };
}

test('OpenStax College Physics 2e, m42414: 200 turns on 120 V and 25 turns give 15.0 V; 16.0 A there is 2.00 A here', () => {
  // turns stand for volts in proportion
  const s = solved('ac', [
    supply('H1', 'earth', 120),
    ideal(200, 25),
    resistor('X1', 'earth', 15 / 16, 'load'),
  ]);
  expect(near(magnitude(s.volts('X1')), 15, 0.001)).toBe(true);
  expect(near(magnitude(s.amps('load')), 16, 0.001)).toBe(true);
  expect(near(magnitude(s.amps('T.primary')), 2, 0.001)).toBe(true);
});

test('a public electromagnetism tutorial: 3600 to 150 turns from 240 V at 1.5 A give 10 V and 36 A', () => {
  const s = solved('ac', [
    supply('H1', 'earth', 240),
    ideal(3600, 150),
    resistor('X1', 'earth', 10 / 36, 'load'),
  ]);
  expect(near(magnitude(s.volts('X1')), 10, 0.001)).toBe(true);
  expect(near(magnitude(s.amps('load')), 36, 0.001)).toBe(true);
  expect(near(magnitude(s.amps('T.primary')), 1.5, 0.001)).toBe(true);
});

test.each([
  [120, 0.333],
  [208, 0.192],
  [240, 0.1667],
])('40 VA from 24 V is 1.667 A, and %d V then gives %d A (volts times amps)', (volts, amps) => {
  const s = solved('ac', [
    supply('H1', 'earth', volts),
    ideal(volts, 24),
    resistor('X1', 'earth', 24 / (40 / 24), 'load'),
  ]);
  expect(near(magnitude(s.amps('load')), 1.667, 0.003)).toBe(true);
  expect(near(magnitude(s.amps('T.primary')), amps, 0.003)).toBe(true);
});

describe('40 VA, 24 V, 6.87 % regulation (definition read in Lessons in Electric Circuits, AC ch. 9)', () => {
  const secondary = (loadOhms: number) => {
    const ohms = (0.0687 * 24) / (40 / 24);
    const transformer = ideal(120, 24 * 1.0687);
    if (transformer.is !== 'transformer') throw new Error('not a transformer');
    const [primary, winding] = transformer.windings;
    return solved('ac', [
      supply('H1', 'earth', 120),
      {...transformer, windings: [primary, {...winding, ohms}]},
      resistor('X1', 'earth', loadOhms, 'load'),
    ]);
  };

  test('stands at 25.65 V with nothing connected', () => {
    expect(near(magnitude(secondary(1e9).volts('X1')), 25.65, 0.001)).toBe(true);
  });
  test('at 24.82 V at half of its amps', () => {
    const s = secondary(24.82 / (20 / 24));
    expect(near(magnitude(s.amps('load')), 20 / 24, 0.001)).toBe(true);
    expect(near(magnitude(s.volts('X1')), 24.82, 0.001)).toBe(true);
  });
  test('and at 24 V at all of them', () => {
    expect(near(magnitude(secondary(24 ** 2 / 40).volts('X1')), 24, 0.001)).toBe(true);
  });
});

describe('coils draw what their volt-amperes say', () => {
  test.each([
    // contactor data sheet (read); the 24 V conversion is ours
    ['a 24 V contactor, 30 VA inrush and 4.5 VA sealed', 24, 19.2, 128, 1.25, 0.1875],
    // public table of NEMA coil ratings (read)
    ['a NEMA size 2 contactor, 120 V', 120, 120 / 1.8, 120 / 0.25, 1.8, 0.25],
  ])('%s', (_name, volts, inrushOhms, sealedOhms, inrushAmps, sealedAmps) => {
    const at = (ohms: number, factor: number) => ({
      re: ohms * factor,
      im: ohms * Math.sqrt(1 - factor ** 2),
    });
    const circuit = [
      supply('R', 'earth', volts),
      {
        is: 'coil' as const,
        id: 'K1.coil',
        a: 'R',
        b: 'earth',
        inrushOhms: at(inrushOhms, 0.65),
        sealedOhms: at(sealedOhms, 0.4),
        dcOhms: 10,
      },
    ];
    expect(near(magnitude(solved('ac', circuit).amps('K1.coil')), inrushAmps, 0.002)).toBe(true);
    const sealed = solved('ac', circuit, {'K1.coil': {sealed: true}});
    expect(near(magnitude(sealed.amps('K1.coil')), sealedAmps, 0.002)).toBe(true);
  });
});

test('two equal 24 V coils in series share the volts, so neither gets half of what it needs (Kirchhoff)', () => {
  const s = solved('ac', [
    supply('R', 'earth', 24),
    load('R', 'm', {re: 12, im: 15}),
    load('m', 'earth', {re: 12, im: 15}),
  ]);
  expect(near(magnitude(s.volts('m')), 12, 0.001)).toBe(true);
});
