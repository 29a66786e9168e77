import {describe, expect, test} from 'vitest';
import {battery, near, resistor, solved} from './circuit-by-hand.ts';

describe('OpenStax College Physics 2e, module m42356 (resistors in series and parallel)', () => {
  test('1, 6 and 13 Ω in series on 12 V: 0.600 A, drops 0.600, 3.60 and 7.80 V, 7.20 W', () => {
    const s = solved('dc', [
      battery('a', 'earth', 12, 'battery'),
      resistor('a', 'b', 1, 'r1'),
      resistor('b', 'c', 6),
      resistor('c', 'earth', 13),
    ]);
    expect(near(s.amps('r1').re, 0.6, 0.002)).toBe(true);
    expect(near(s.voltsBetween('a', 'b').re, 0.6, 0.002)).toBe(true);
    expect(near(s.voltsBetween('b', 'c').re, 3.6, 0.002)).toBe(true);
    expect(near(s.volts('c').re, 7.8, 0.002)).toBe(true);
    expect(near(-s.voltAmperes('battery').re, 7.2, 0.002)).toBe(true);
  });

  test('1 Ω of wire feeding 6 and 13 Ω in parallel from 12 V: 2.35 A, 1.61 A and 15.5 W in the 6 Ω', () => {
    const s = solved('dc', [
      battery('a', 'earth', 12),
      resistor('a', 'b', 1, 'wire'),
      resistor('b', 'earth', 6, 'six'),
      resistor('b', 'earth', 13),
    ]);
    expect(near(s.amps('wire').re, 2.35, 0.005)).toBe(true);
    expect(near(s.voltsBetween('a', 'b').re, 2.35, 0.005)).toBe(true);
    expect(near(s.amps('six').re, 1.61, 0.005)).toBe(true);
    expect(near(s.voltAmperes('six').re, 15.5, 0.005)).toBe(true);
    expect(near(12 / s.amps('wire').re, 5.11, 0.005)).toBe(true);
  });
});

test('OpenStax College Physics 2e, module m42362: a balanced bridge (100, 250, 340 Ω) has 850 Ω as its fourth arm', () => {
  // balance relation read there; the numbers are our own
  const detector = (fourth: number) =>
    solved('dc', [
      battery('top', 'earth', 10),
      resistor('top', 'left', 100),
      resistor('left', 'earth', 340),
      resistor('top', 'right', 250),
      resistor('right', 'earth', fourth),
      resistor('left', 'right', 50),
    ]).voltsBetween('left', 'right').re;
  expect(Math.abs(detector(850))).toBeLessThan(1e-9);
  expect(detector(840) * detector(860)).toBeLessThan(0);
});

describe('Lessons in Electric Circuits, vol. DC', () => {
  test('ch. 6: 45 V over 5, 10 and 7.5 kΩ gives 2 mA and 10, 20 and 15 V', () => {
    const s = solved('dc', [
      battery('a', 'earth', 45),
      resistor('a', 'b', 5000, 'r1'),
      resistor('b', 'c', 10000),
      resistor('c', 'earth', 7500),
    ]);
    expect(near(s.amps('r1').re, 0.002, 0.001)).toBe(true);
    expect(near(s.voltsBetween('a', 'b').re, 10, 0.001)).toBe(true);
    expect(near(s.voltsBetween('b', 'c').re, 20, 0.001)).toBe(true);
    expect(near(s.volts('c').re, 15, 0.001)).toBe(true);
  });

  test('ch. 10: 28 V behind 4 Ω beside 7 V behind 1 Ω is 11.2 V behind 0.8 Ω; 2 Ω then has 8 V and 4 A', () => {
    const sources = [
      battery('a', 'earth', 28),
      resistor('a', 'out', 4),
      battery('b', 'earth', 7),
      resistor('b', 'out', 1),
    ];
    const open = solved('dc', sources).thevenin('out', 'earth');
    expect(near(open.volts.re, 11.2, 0.001)).toBe(true);
    expect(near(open.ohms.re, 0.8, 0.001)).toBe(true);
    const loaded = solved('dc', [...sources, resistor('out', 'earth', 2, 'load')]);
    expect(near(loaded.volts('out').re, 8, 0.001)).toBe(true);
    expect(near(loaded.amps('load').re, 4, 0.001)).toBe(true);
  });

  test('ch. 12: 14 V through two hot wires of 15.909 Ω to 250 Ω gives 49.677 mA and 12.42 V', () => {
    const s = solved('dc', [
      battery('a', 'earth', 14),
      resistor('a', 'b', 15.909),
      resistor('b', 'c', 250, 'load'),
      resistor('c', 'earth', 15.909),
    ]);
    expect(near(s.amps('load').re, 0.049677, 0.001)).toBe(true);
    expect(near(s.voltsBetween('b', 'c').re, 12.42, 0.001)).toBe(true);
  });
});

test('three 3 Ω windings in delta read 2 Ω between lines; with one open, 6 Ω across it and 3 Ω on the other pairs', () => {
  // derived from the winding topology
  const read = (elements: ReturnType<typeof resistor>[], a: string, b: string) =>
    solved('dc', [...elements, resistor('t1', 'earth', 1e9)]).thevenin(a, b).ohms.re;
  const windings = [resistor('t1', 't2', 3), resistor('t2', 't3', 3), resistor('t3', 't1', 3)];
  for (const [a, b] of [
    ['t1', 't2'],
    ['t2', 't3'],
    ['t3', 't1'],
  ])
    expect(read(windings, a, b)).toBeCloseTo(2, 6);
  expect(read(windings.slice(1), 't1', 't2')).toBeCloseTo(6, 6);
  expect(read(windings.slice(1), 't2', 't3')).toBeCloseTo(3, 6);
  expect(read(windings.slice(1), 't3', 't1')).toBeCloseTo(3, 6);
});

test('equipment thermistor table: a 10 kΩ sensor under 10 kΩ on 5 V stands at 2.500, 3.828 and 1.738 V at 25, 0 and 40 °C', () => {
  // resistances and volts as printed in a manufacturer's table (read; manufacturer withheld)
  for (const [ohms, volts] of [
    [10000, 2.5],
    [32654, 3.828],
    [5327, 1.738],
  ]) {
    const s = solved('dc', [
      battery('five', 'earth', 5),
      resistor('five', 's', 10000),
      resistor('s', 'earth', ohms),
    ]);
    expect(Math.abs(s.volts('s').re - volts)).toBeLessThan(0.003);
  }
});
