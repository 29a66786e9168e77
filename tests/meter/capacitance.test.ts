import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {capacitanceShown, climbs} from '../../src/meter/fill-capacitor.ts';
import {charging, type Drawn} from './charging.ts';

const reads = (drawn: readonly Drawn[], a = 'p', b = 'q') => {
  const {text, unit, value} = capacitanceShown(charging(drawn).chargingPath(a, b), 1);
  return {shown: `${text} ${unit}`, microfarads: (value ?? Infinity) * 1e6};
};
const cap = (microfarads: number, a = 'p', b = 'q'): Drawn => ({a, b, microfarads});
const ohm = (ohms: number, a = 'p', b = 'q'): Drawn => ({a, b, ohms});

describe('a capacitor by itself', () => {
  test.each([
    [45, '45.00 µF'],
    [5, '5.000 µF'],
    [7.5, '7.50 µF'],
    [0.022, '22.00 nF'],
    [0.47, '470.0 nF'],
    [250, '250.0 µF'],
    [2200, '2200 µF'],
  ])('of %d µF reads %s', (microfarads, shown) => {
    expect(reads([cap(microfarads)]).shown).toBe(shown);
  });

  test('an open one reads next to nothing, a shorted one never gets there', () => {
    expect(reads([ohm(1e12)]).microfarads).toBeLessThan(0.001);
    expect(reads([cap(45), ohm(0.2)]).shown).toBe('OL µF');
  });

  // public parts-supply page on capacitors in series (3 µF example read)
  test('5 and 7.5 µF read 3 µF in series and 12.5 µF in parallel', () => {
    expect(reads([cap(5, 'p', 'm'), cap(7.5, 'm', 'q')]).microfarads).toBeCloseTo(3, 2);
    expect(reads([cap(5), cap(7.5)]).microfarads).toBeCloseTo(12.5, 2);
  });

  test('ohms in series with it hardly change it: a joint of 10 Ω on 45 µF', () => {
    expect(reads([cap(45, 'p', 'm'), ohm(10, 'm', 'q')]).microfarads).toBeCloseTo(45, 0);
  });
});

describe('a capacitor in circuit', () => {
  test.each([0.5, 8, 60])('beside a winding of %d Ω no range settles', (ohms) => {
    expect(reads([cap(45), ohm(ohms)]).shown).toBe('OL µF');
  });

  test('beside a few hundred ohms it reads far too high', () => {
    expect(reads([cap(45), ohm(150)]).microfarads).toBeGreaterThan(1.2 * 45);
  });

  // −ln(1 − x)/x with x = V/IR: the charging curve of one R beside one C (Lessons in Electric Circuits, vol. I, ch. 16)
  test('a 15 kΩ bleed resistor lifts 45 µF by what the charging curve says', () => {
    // 45 µF is past its 60 µF range by then, so the next one is taken: 600 µA, threshold 0.5 V
    const x = 0.5 / (600e-6 * 15e3);
    expect(reads([cap(45), ohm(15e3)]).microfarads).toBeCloseTo((45 * -Math.log(1 - x)) / x, 0);
  });

  test('whatever lies beside it, it never reads less than it has', () => {
    fc.assert(
      fc.property(
        fc.double({min: 1, max: 100, noNaN: true}),
        fc.double({min: 0.1, max: 1e8, noNaN: true}),
        (microfarads, ohms) =>
          // two counts of the range below
          reads([cap(microfarads), ohm(ohms)]).microfarads >= microfarads * 0.998 - 0.02,
      ),
    );
  });
});

describe('ohms on a capacitor', () => {
  test('climb: it fills while it is read', () => {
    expect(climbs(charging([cap(45)]).chargingPath('p', 'q'))).toBe(true);
  });
  test('do not climb on a resistor, a winding beside it, or an open capacitor', () => {
    expect(climbs(charging([ohm(1000)]).chargingPath('p', 'q'))).toBe(false);
    expect(climbs(charging([cap(45), ohm(8)]).chargingPath('p', 'q'))).toBe(false);
    expect(climbs(charging([ohm(1e12)]).chargingPath('p', 'q'))).toBe(false);
  });
});
