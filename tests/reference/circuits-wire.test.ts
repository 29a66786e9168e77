import {describe, expect, test} from 'vitest';
import {
  circularMils,
  copperFactor,
  copperOhmCircularMilsPerFoot,
  wireOhms,
} from '../../src/circuits/wire-resistance.ts';
import {magnitude, near, resistor, solved, supply} from './circuit-by-hand.ts';

describe('Lessons in Electric Circuits, vol. DC ch. 12, wire table', () => {
  test.each([
    [14, 0.06408],
    [18, 0.0403],
    [24, 0.0201],
    [-3, 0.46],
  ])('gauge %d is %d inches thick', (gauge, inches) => {
    expect(near(Math.sqrt(circularMils(gauge)) / 1000, inches, 0.002)).toBe(true);
  });

  test('gauge 18 has 1624 circular mils, and three gauges fewer make 2.005 times the area', () => {
    expect(near(circularMils(18), 1624, 0.002)).toBe(true);
    expect(near(circularMils(15) / circularMils(18), 2.005, 0.001)).toBe(true);
  });

  test('2300 feet of 14 gauge with 10.09 Ω·cmil/ft is 5.651 Ω, and 230 V can push 20.35 A there and back', () => {
    const ohms = (wireOhms(14, 2300) * 10.09) / copperOhmCircularMilsPerFoot;
    expect(near(ohms, 5.651, 0.001)).toBe(true);
    const s = solved('ac', [
      supply('a', 'earth', 230),
      resistor('a', 'b', ohms, 'out'),
      resistor('b', 'earth', ohms),
    ]);
    expect(near(magnitude(s.amps('out')), 20.352, 0.001)).toBe(true);
  });
});

describe('NFPA 70, chapter 9, table 8 (uncoated copper, 75 °C; values read in a public copy)', () => {
  test.each([
    [18, 7.77],
    [14, 3.07],
  ])('%d gauge solid has %d Ω in 1000 feet', (gauge, ohms) => {
    expect(near(wireOhms(gauge, 1000) * copperFactor(75), ohms, 0.004)).toBe(true);
  });

  test('14 gauge comes to 2.525 Ω at 20 °C by the temperature note of the table', () => {
    expect(near(wireOhms(14, 1000), 2.525, 0.001)).toBe(true);
  });

  test('200 feet of 18 gauge loop at 20 °C is 1.278 Ω and drops 0.639 V at half an ampere', () => {
    // numbers our own, from the table's 7.77 Ω
    const ohms = wireOhms(18, 200);
    expect(near(ohms, 1.278, 0.003)).toBe(true);
    const s = solved('ac', [
      supply('R', 'earth', 24),
      resistor('R', 'load', ohms, 'loop'),
      resistor('load', 'earth', 23.361 / 0.5),
    ]);
    expect(near(magnitude(s.voltsBetween('R', 'load')), 0.639, 0.003)).toBe(true);
  });
});

test('NBS Handbook 100: 0.017241 Ω·mm²/m of annealed copper is 10.371 Ω·cmil/ft', () => {
  // 1.66243e-9 Ω·m to the ohm circular mil per foot, read in Lessons in Electric Circuits
  expect(near(copperOhmCircularMilsPerFoot, 0.017241e-6 / 1.66243e-9, 0.0005)).toBe(true);
});
