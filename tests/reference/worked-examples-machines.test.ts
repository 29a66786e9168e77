import {describe, expect, test} from 'vitest';
import {motorOhms, synchronousRadiansPerSecond} from '../../src/circuits/motor-impedance.ts';
import type {Element, MotorModel} from '../../src/parts/element.ts';
import {load, magnitude, near, solved, supply} from './circuit-by-hand.ts';

// Worked examples of textbooks, read in public worked scripts of them; the figures are what those scripts come to.

describe('Electric Machines (Kothari, Nagrath), ch. 10, example 10.1: a single winding at a slip of 3 %', () => {
  // 220 V, 50 Hz, 6 poles: main 3 + j5 Ω, rotor 1.5 + j2 Ω, magnetising current left out
  const model: MotorModel = {
    ratedVolts: 220,
    poles: 6,
    mainOhms: 3,
    mainReactanceOhms: 5,
    startOhms: 1,
    startReactanceOhms: 1,
    turnsRatio: 1,
    rotorOhms: 1.5,
    rotorReactanceOhms: 2,
    magnetisingOhms: 1e9,
    loadNewtonMetres: 0,
    loadExponent: 0,
    breakawayNewtonMetres: 0,
  };
  const {forward, backward} = motorOhms(model, 0.97);
  const synchronous = synchronousRadiansPerSecond(model, 50);
  const main = 220 / Math.hypot(3 + forward.re + backward.re, 5 + forward.im + backward.im);

  test('the forward field’s EMF is 23.4 times the backward one’s', () => {
    expect(near(magnitude(forward) / magnitude(backward), 23.38, 0.001)).toBe(true);
  });
  test('with half of the winding’s own impedance to each field, the volts stand 6.73 to 1', () => {
    const half = (field: {re: number; im: number}) => Math.hypot(field.re + 1.5, field.im + 2.5);
    expect(near(half(forward) / half(backward), 6.727, 0.001)).toBe(true);
  });
  test('forward torque is 65.67 times the backward one; 13.32 N·m are left of them', () => {
    expect(near(forward.re / backward.re, 65.67, 0.001)).toBe(true);
    expect(near((main ** 2 * (forward.re - backward.re)) / synchronous, 13.317, 0.001)).toBe(true);
  });
  test('forward torque is 1.0155 of what is left', () => {
    expect(near(forward.re / (forward.re - backward.re), 1.01546, 0.0005)).toBe(true);
  });
});

describe('Electric Machines (Hubert), ch. 2, example 2.14: 75 kVA, 4600/230 V', () => {
  // open-circuit test on 230 V: 13.04 A, 521 W; short-circuit test on 4600 V: 160.8 V, 16.3 A, 1200 W
  const transformer: Element = {
    is: 'transformer',
    id: 'T',
    magnetisingVa: {re: 521, im: 230 * Math.sqrt(13.04 ** 2 - (521 / 230) ** 2)},
    windings: [
      {id: 'T.p', a: 'H', b: 'earth', turnsVolts: 4600, ohms: 4.5165, reactanceOhms: 8.7704},
      {id: 'T.s', a: 'X', b: 'earth', turnsVolts: 230, ohms: 1e-9, reactanceOhms: 1e-9},
    ],
  };

  test('open, on its low side, it takes 13.04 A and 521 W', () => {
    const s = solved('ac', [supply('X', 'earth', 230), transformer]);
    expect(near(magnitude(s.amps('T.s')), 13.04, 0.001)).toBe(true);
    expect(near(s.voltAmperes('T').re, 521, 0.001)).toBe(true);
  });
  test('shorted, it takes 16.3 A and 1200 W from 160.8 V', () => {
    const s = solved('ac', [
      supply('H', 'earth', 160.8),
      transformer,
      load('X', 'earth', {re: 1e-7, im: 0}),
    ]);
    expect(near(magnitude(s.amps('T.p')), 16.3, 0.002)).toBe(true);
    expect(near(160.8 * s.amps('T.p').re, 1200, 0.003)).toBe(true);
  });
  test('its regulation at rated load and a power factor of 0.75 is 3.26 %', () => {
    const angle = Math.acos(0.75);
    const ohms = 230 ** 2 / 75_000;
    const primary = [supply('H', 'earth', 4600), transformer];
    const rated = load('X', 'earth', {re: ohms * Math.cos(angle), im: ohms * Math.sin(angle)});
    const open = magnitude(solved('ac', primary).volts('X'));
    const loaded = magnitude(solved('ac', [...primary, rated]).volts('X'));
    expect(near(open / loaded - 1, 0.03265, 0.005)).toBe(true);
  });
});

describe('Electric Machines (Hubert), ch. 5: three-phase motor by its equivalent circuit', () => {
  // 460 V, 60 Hz, 6 poles, wye: 0.200 + j1.20 Ω stator, 0.250/s + j1.29 Ω rotor, 317 Ω ∥ j42 Ω core
  const perPhase = (slip: number) =>
    solved('ac', [
      supply('L', 'earth', 460 / Math.sqrt(3)),
      load('L', 'G', {re: 0.2, im: 1.2}, 'stator'),
      load('G', 'earth', {re: 317, im: 0}, 'core'),
      load('G', 'earth', {re: 0, im: 42}, 'magnetising'),
      load('G', 'earth', {re: 0.25 / slip, im: 1.29}, 'rotor'),
    ]);
  const s = perPhase(15 / 1200);
  test('example 5.2: at 1185 r/min each line carries 15.11 A at −30.2°, 10.40 kW in all', () => {
    const amps = s.amps('stator');
    expect(near(magnitude(amps), 15.113, 0.001)).toBe(true);
    expect(near(3 * (460 / Math.sqrt(3)) * amps.re, 10_404, 0.001)).toBe(true);
  });
  test('example 5.2: the rotor takes 12.69 A and 9655 W across the gap: 76.8 N·m', () => {
    const gap = 3 * magnitude(s.amps('rotor')) ** 2 * (0.25 / (15 / 1200));
    expect(near(magnitude(s.amps('rotor')), 12.685, 0.001)).toBe(true);
    expect(near(gap, 9655, 0.001)).toBe(true);
    expect(near(gap / ((2 * Math.PI * 1200) / 60), 76.83, 0.001)).toBe(true);
  });
  test('example 5.17: driven at 1215 r/min it gives 9277 W back', () => {
    const driven = perPhase(-15 / 1200).amps('stator');
    expect(near(3 * (460 / Math.sqrt(3)) * driven.re, -9277, 0.001)).toBe(true);
  });
});
