import {describe, expect, test} from 'vitest';
import {degrees} from '../../src/circuits/complex.ts';
import {
  motorOhms,
  motorTorque,
  synchronousRadiansPerSecond,
} from '../../src/circuits/motor-impedance.ts';
import type {Motor, MotorModel} from '../../src/parts/element.ts';
import {capacitor, load, magnitude, near, resistor, solved, supply} from './circuit-by-hand.ts';

describe('an introduction to electrical engineering, ch. 13, single-phase motor with its starting winding open (page read)', () => {
  // 230 V, 60 Hz, 4 poles: Z1 = 10 + j12.5 Ω, R2 = 11.5 Ω, X2 = 12.5 Ω, Xm = 250 Ω, slip 0.05
  const model: MotorModel = {
    ratedVolts: 230,
    poles: 4,
    mainOhms: 10,
    mainReactanceOhms: 12.5,
    startOhms: 20,
    startReactanceOhms: 20,
    turnsRatio: 1.2,
    rotorOhms: 11.5,
    rotorReactanceOhms: 12.5,
    magnetisingOhms: 250,
    loadNewtonMetres: 0,
    loadExponent: 0,
    breakawayNewtonMetres: 0,
  };
  const motor: Motor = {
    is: 'motor',
    id: 'M.motor',
    main: {a: 'R', b: 'earth'},
    start: {a: 'S', b: 'earth'},
    model,
  };
  const speed = 0.95;
  const s = solved('ac', [supply('R', 'earth', 230), motor, resistor('S', 'earth', 1e12)], {
    'M.motor': {speed},
  });
  const {main, start} = s.windingAmps('M.motor');

  test('forward and backward fields are 59 + j57.65 and 2.67 + j6.01 Ω', () => {
    const {forward, backward} = motorOhms(model, speed);
    expect(near(forward.re, 59, 0.005)).toBe(true);
    expect(near(forward.im, 57.65, 0.005)).toBe(true);
    expect(near(backward.re, 2.67, 0.005)).toBe(true);
    expect(near(backward.im, 6.01, 0.005)).toBe(true);
  });

  test('it draws 2.2 A at a power factor of 0.685', () => {
    expect(near(magnitude(main), 2.2, 0.005)).toBe(true);
    expect(near(degrees(main), -46.74, 0.005)).toBe(true);
    expect(near(s.voltAmperes('M.motor').re / (230 * magnitude(main)), 0.685, 0.005)).toBe(true);
  });

  test('it develops 259 W', () => {
    const watts =
      motorTorque(motor, main, start, speed) * speed * synchronousRadiansPerSecond(model, 60);
    expect(near(watts, 259, 0.005)).toBe(true);
  });
});

describe('a start capacitor that sets the winding amps a quarter turn apart', () => {
  test.each([
    // worked review problem for the electrical-engineering board examination (page read)
    ['3.5 + j2.5 Ω main and 8.6 + j2.5 Ω start need 182.43 µF', 3.5, 2.5, 8.6, 2.5, 182.43, 0.1],
    // Electric Machinery, ch. 9, example 9.1, in a public worked notebook (read; it prints 176, rounded)
    ['4.5 + j3.7 Ω main and 9.5 + j3.5 Ω start need 176 µF', 4.5, 3.7, 9.5, 3.5, 176, 0.3],
  ])('%s', (_name, mainRe, mainIm, startRe, startIm, microfarads, withinDegrees) => {
    const s = solved('ac', [
      supply('L', 'earth', 220),
      load('L', 'earth', {re: mainRe, im: mainIm}, 'main'),
      capacitor('L', 'S', microfarads),
      load('S', 'earth', {re: startRe, im: startIm}, 'start'),
    ]);
    const apart = degrees(s.amps('start')) - degrees(s.amps('main'));
    expect(Math.abs(apart - 90)).toBeLessThan(withinDegrees);
  });
});

test('Electric Machinery and Transformers, ch. 10, example 10-1 (public worked notebook, read): 4 A at −15° and 6 A at −40° start with 9.77 A at −30°', () => {
  const at = (amps: number, angle: number) => ({
    re: (110 / amps) * Math.cos((angle * Math.PI) / 180),
    im: (110 / amps) * Math.sin((angle * Math.PI) / 180),
  });
  const s = solved('ac', [
    supply('L', 'earth', 110, 0, 'source'),
    load('L', 'earth', at(4, 15), 'start'),
    load('L', 'earth', at(6, 40), 'main'),
  ]);
  const {re, im} = s.amps('source');
  expect(near(Math.hypot(re, im), 9.77, 0.001)).toBe(true);
  expect(Math.abs(degrees({re: -re, im: -im}) + 30)).toBeLessThan(0.5);
  expect(near(-re / Math.hypot(re, im), 0.866, 0.002)).toBe(true);
});

describe('compressor windings on an ohmmeter (trade tech tip, read)', () => {
  const model = {mainOhms: 4, startOhms: 11} as MotorModel;
  const windings = [
    {
      is: 'motor' as const,
      id: 'CMP.motor',
      main: {a: 'R', b: 'inner'},
      start: {a: 'S', b: 'inner'},
      model: {
        ...model,
        ratedVolts: 230,
        poles: 2,
        mainReactanceOhms: 4,
        startReactanceOhms: 6,
        turnsRatio: 1.3,
        rotorOhms: 4,
        rotorReactanceOhms: 4,
        magnetisingOhms: 80,
        loadNewtonMetres: 1,
        loadExponent: 1,
        breakawayNewtonMetres: 0.2,
      },
    },
    {
      is: 'contact' as const,
      id: 'CMP.overload',
      a: 'C',
      b: 'inner',
      normally: 'closed' as const,
      closedOhms: 0.001,
    },
    resistor('C', 'earth', 1e8),
    resistor('R', 'earth', 1e8),
  ];

  test('C–S 11 Ω and C–R 4 Ω make R–S 15 Ω', () => {
    const s = solved('dc', windings);
    expect(Math.abs(s.thevenin('C', 'S').ohms.re - 11)).toBeLessThan(0.01);
    expect(Math.abs(s.thevenin('C', 'R').ohms.re - 4)).toBeLessThan(0.01);
    expect(Math.abs(s.thevenin('R', 'S').ohms.re - 15)).toBeLessThan(0.01);
  });

  test('with the internal overload open, C–R and C–S read open and R–S still reads', () => {
    const s = solved('dc', windings, {'CMP.overload': {closed: false}});
    expect(s.thevenin('C', 'S').ohms.re).toBeGreaterThan(1e7);
    expect(s.thevenin('C', 'R').ohms.re).toBeGreaterThan(1e7);
    expect(Math.abs(s.thevenin('R', 'S').ohms.re - 15)).toBeLessThan(0.01);
  });
});
