import {describe, expect, test} from 'vitest';
import {degrees} from '../../src/circuits/complex.ts';
import type {Complex} from '../../src/parts/element.ts';
import {capacitor, load, magnitude, near, resistor, solved, supply} from './circuit-by-hand.ts';

// Worked examples of textbooks, read in public worked scripts of them (one script an example); the figures are what
// those scripts come to, to the digits that they print. Reactances are given, so the frequency does not matter.

/** A capacitive reactance of this many ohms at 60 Hz. */
const microfaradsOf = (ohms: number): number => 1e6 / (2 * Math.PI * 60 * ohms);

function expectPhasor(found: Complex, re: number, im: number): void {
  expect(Math.hypot(found.re - re, found.im - im)).toBeLessThan(6e-4 * Math.hypot(re, im));
}

describe('Electrical Circuit Theory and Technology (Bird), ch. 32: superposition', () => {
  // example 32.1: 100 V at 0° behind 25 Ω and 50 V at 90° behind 10 Ω feed 20 Ω
  const s = solved('ac', [
    supply('A', 'earth', 100, 0, 'first', {re: 25, im: 0}),
    supply('A', 'earth', 50, 90, 'second', {re: 10, im: 0}),
    resistor('A', 'earth', 20, 'load'),
  ]);
  test('example 32.1: the 20 Ω load takes 1.053 + j1.316 A', () => {
    expectPhasor(s.amps('load'), 1.0526, 1.3158);
  });
  test('example 32.1: the first source gives 3.158 − j1.053 A, the second −2.105 + j2.368 A', () => {
    const volts = s.voltsBetween('A', 'earth');
    expectPhasor({re: (100 - volts.re) / 25, im: -volts.im / 25}, 3.1579, -1.0526);
    expectPhasor({re: -volts.re / 10, im: (50 - volts.im) / 10}, -2.1053, 2.3684);
  });
});

describe('Electrical Circuit Theory and Technology (Bird), ch. 33: Thévenin and Norton', () => {
  test('example 33.1: 200 V behind 5 kΩ with 20 kΩ beside it drives 0.82 mA through 150 kΩ − j120 kΩ, 123 V on the 150 kΩ', () => {
    const s = solved('ac', [
      supply('S', 'earth', 200),
      resistor('S', 'A', 5000),
      resistor('A', 'earth', 20_000),
      resistor('A', 'B', 150_000, 'load'),
      capacitor('B', 'earth', microfaradsOf(120_000)),
    ]);
    expect(near(magnitude(s.amps('load')), 0.00082, 0.002)).toBe(true);
    expect(near(magnitude(s.voltsBetween('A', 'B')), 122.93, 0.001)).toBe(true);
  });

  describe('example 33.5: 24 V through −j3 Ω onto 4 + j3 Ω', () => {
    const source = [
      supply('S', 'earth', 24),
      capacitor('S', 'A', microfaradsOf(3)),
      load('A', 'earth', {re: 4, im: 3}),
    ];
    test('stands at 24 + j18 V (30 V) behind 2.25 − j3 Ω', () => {
      const {volts, ohms} = solved('ac', source).thevenin('A', 'earth');
      expectPhasor(volts, 24, 18);
      expectPhasor(ohms, 2.25, -3);
    });
    test('drives 3 A through 3.75 + j11 Ω, with 34.9 V on it', () => {
      const s = solved('ac', [...source, load('A', 'earth', {re: 3.75, im: 11}, 'load')]);
      expect(near(magnitude(s.amps('load')), 3, 0.001)).toBe(true);
      expect(near(magnitude(s.volts('A')), 34.865, 0.001)).toBe(true);
    });
  });

  test('example 33.9: 5 V behind 2 Ω with 3 Ω beside it drives 0.48 + j0.36 A through 2.8 − j3 Ω', () => {
    const s = solved('ac', [
      supply('S', 'earth', 5),
      resistor('S', 'A', 2),
      resistor('A', 'earth', 3),
      resistor('A', 'B', 2.8, 'branch'),
      capacitor('B', 'earth', microfaradsOf(3)),
    ]);
    expectPhasor(s.amps('branch'), 0.48, 0.36);
  });

  test('example 33.12: 5 Ω behind −j3 Ω, beside 4 + j3 Ω, behind 2 Ω on 20 V takes 22.54 W', () => {
    const s = solved('ac', [
      supply('S', 'earth', 20),
      resistor('S', 'N', 2),
      load('N', 'earth', {re: 4, im: 3}),
      capacitor('N', 'A', microfaradsOf(3)),
      resistor('A', 'earth', 5, 'load'),
    ]);
    expect(near(5 * magnitude(s.amps('load')) ** 2, 22.54, 0.001)).toBe(true);
  });

  test('example 33.15: 12 V behind 3 Ω beside 24 V behind 2 Ω is 19.2 V behind 1.2 Ω, and drives 3.84 A through 1.8 + j4 Ω', () => {
    const sources = [
      supply('A', 'earth', 12, 0, '', {re: 3, im: 0}),
      supply('A', 'earth', 24, 0, '', {re: 2, im: 0}),
    ];
    const {volts, ohms} = solved('ac', sources).thevenin('A', 'earth');
    expectPhasor(volts, 19.2, 0);
    expectPhasor(ohms, 1.2, 0);
    const s = solved('ac', [...sources, load('A', 'earth', {re: 1.8, im: 4}, 'load')]);
    expect(near(magnitude(s.amps('load')), 3.84, 0.001)).toBe(true);
  });
});

const threePhase = (phaseVolts: number) => [
  supply('A', 'earth', phaseVolts, 0, 'a'),
  supply('B', 'earth', phaseVolts, -120, 'b'),
  supply('C', 'earth', phaseVolts, 120, 'c'),
];

describe('three phases', () => {
  test('Electrical Circuit Theory and Technology (Bird), example 19.4: 24, 18 and 12 kW in wye on 240 V put 43.3 A on the neutral', () => {
    const onPhase = (volts: number, watts: number): number => volts ** 2 / watts;
    const s = solved('ac', [
      ...threePhase(240),
      resistor('A', 'N', onPhase(240, 24_000), 'red'),
      resistor('B', 'N', onPhase(240, 18_000), 'yellow'),
      resistor('C', 'N', onPhase(240, 12_000), 'blue'),
      resistor('N', 'earth', 1e-6, 'neutral'),
    ]);
    expect(near(magnitude(s.amps('red')), 100, 0.001)).toBe(true);
    expect(near(magnitude(s.amps('yellow')), 75, 0.001)).toBe(true);
    expect(near(magnitude(s.amps('blue')), 50, 0.001)).toBe(true);
    expect(near(magnitude(s.amps('neutral')), 43.3, 0.001)).toBe(true);
  });

  test('Electrical Circuit Theory and Technology (Bird), example 19.5: coils of 30 Ω and 127.3 mH in delta on 440 V, 50 Hz carry 8.8 A, the lines 15.24 A', () => {
    const coil = {re: 30, im: 2 * Math.PI * 50 * 0.1273};
    const s = solved(
      'ac',
      [
        ...threePhase(440 / Math.sqrt(3)),
        load('A', 'B', coil, 'ab'),
        load('B', 'C', coil, 'bc'),
        load('C', 'A', coil, 'ca'),
      ],
      {},
      50,
    );
    expect(near(magnitude(s.amps('ab')), 8.8, 0.001)).toBe(true);
    expect(near(magnitude(s.amps('a')), 15.24, 0.001)).toBe(true);
  });

  test('Fundamentals of Electrical Machines (Salam), example 1.7: 10 + j15 Ω in delta on 420 V takes 23.30 A a phase, 40.35 A a line', () => {
    const phase = {re: 10, im: 15};
    const s = solved('ac', [
      ...threePhase(420 / Math.sqrt(3)),
      load('A', 'B', phase, 'ab'),
      load('B', 'C', phase, 'bc'),
      load('C', 'A', phase, 'ca'),
    ]);
    expect(near(magnitude(s.amps('bc')), 23.3, 0.001)).toBe(true);
    expect(near(magnitude(s.amps('b')), 40.35, 0.001)).toBe(true);
  });

  test('a basic electrical engineering text, ch. 3 example 4: 177 − j246 Ω in delta behind lines of 1 + j2 Ω on 866 V: 5.000 A a line, 2.887 A a phase, 874.8 V on the load', () => {
    const line = {re: 1, im: 2};
    const leg = (a: string, b: string, name: string) => [
      resistor(a, `${name}.m`, 177, name),
      capacitor(`${name}.m`, b, microfaradsOf(246)),
    ];
    const s = solved('ac', [
      ...threePhase(866 / Math.sqrt(3)),
      load('A', 'X', line, 'line'),
      load('B', 'Y', line),
      load('C', 'Z', line),
      ...leg('X', 'Y', 'xy'),
      ...leg('Y', 'Z', 'yz'),
      ...leg('Z', 'X', 'zx'),
    ]);
    expect(near(magnitude(s.amps('line')), 5, 0.001)).toBe(true);
    expect(near(magnitude(s.amps('xy')), 2.887, 0.001)).toBe(true);
    expect(near(magnitude(s.voltsBetween('X', 'Y')), 874.83, 0.001)).toBe(true);
  });

  test('A Textbook on Power System Engineering, symmetrical components, example 3.4: 5, 10 and 20 Ω in delta on 100 V carry 20, 10 and 5 A; the lines 13.2, 22.9 and 26.5 A', () => {
    const s = solved('ac', [
      ...threePhase(100 / Math.sqrt(3)),
      resistor('B', 'C', 5, 'bc'),
      resistor('C', 'A', 10, 'ca'),
      resistor('A', 'B', 20, 'ab'),
    ]);
    expect(['bc', 'ca', 'ab'].map((leg) => Math.round(magnitude(s.amps(leg)) * 100) / 100)).toEqual(
      [20, 10, 5],
    );
    const lines = ['a', 'b', 'c'].map((line) => magnitude(s.amps(line)));
    [13.229, 22.913, 26.458].forEach((amps, i) => expect(near(lines[i], amps, 0.001)).toBe(true));
  });
});

describe('single-phase motors at standstill: Electric Machines (Hubert), ch. 6', () => {
  // example 6.1: 2.00 + j3.50 Ω main and 9.15 + j8.40 Ω auxiliary winding on 120 V
  const windings = (seriesOhms: number, microfarads?: number) =>
    solved('ac', [
      supply('L', 'earth', 120),
      load('L', 'earth', {re: 2, im: 3.5}, 'main'),
      microfarads === undefined
        ? resistor('L', 'S', seriesOhms || 1e-9)
        : capacitor('L', 'S', microfarads),
      load('S', 'earth', {re: 9.15, im: 8.4}, 'auxiliary'),
    ]);
  const apart = (s: ReturnType<typeof windings>): number =>
    degrees(s.amps('auxiliary')) - degrees(s.amps('main'));
  const pull = (s: ReturnType<typeof windings>): number =>
    magnitude(s.amps('main')) *
    magnitude(s.amps('auxiliary')) *
    Math.sin((apart(s) * Math.PI) / 180);

  test('example 6.1: 29.8 A at −60.3° and 9.66 A at −42.6°', () => {
    const s = windings(0);
    expect(near(magnitude(s.amps('main')), 29.77, 0.001)).toBe(true);
    expect(near(degrees(s.amps('main')), -60.26, 0.001)).toBe(true);
    expect(near(magnitude(s.amps('auxiliary')), 9.661, 0.001)).toBe(true);
    expect(near(degrees(s.amps('auxiliary')), -42.55, 0.001)).toBe(true);
  });
  test('example 6.1: its pull of 87.45 A² becomes 107.1 A² with 5.25 Ω that set the amps 30° apart', () => {
    expect(near(pull(windings(0)), 87.45, 0.001)).toBe(true);
    expect(near(apart(windings(5.2508)), 30, 0.001)).toBe(true);
    expect(near(pull(windings(5.2508)), 107.1, 0.001)).toBe(true);
  });
  test('example 6.2: a reactance of 13.63 Ω (194.6 µF at 60 Hz) sets them 90° apart and makes the pull 3.17 times that', () => {
    const s = windings(0, 194.634);
    expect(near(apart(s), 90, 0.001)).toBe(true);
    expect(near(pull(s) / 107.13, 3.164, 0.002)).toBe(true);
  });
});
