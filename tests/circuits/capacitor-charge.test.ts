import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {symmetricEigen} from '../../src/circuits/symmetric-eigen.ts';
import {charging, type Drawn} from '../meter/charging.ts';
import {runNgspice} from './ngspice-engine.ts';

const cap = (microfarads: number, a = 'p', b = 'earth'): Drawn => ({a, b, microfarads});
const ohm = (ohms: number, a = 'p', b = 'earth'): Drawn => ({a, b, ohms});

describe('one capacitor and one resistor', () => {
  // e^(−t/RC): Lessons in Electric Circuits, vol. I (DC), ch. 16
  test.each([
    [1, 0.3679],
    [2, 0.1353],
    [5, 0.0067],
  ])('after %d time constants %f of the volts are left', (constants, share) => {
    const [volts] = charging([cap(100), ohm(10e3)]).after([1], constants);
    expect(volts).toBeCloseTo(share, 4);
  });

  // R–C relation read; numbers chosen: 45 µF at the crest of 370 V with 15 kΩ has 0.675 s, and 50 V after 1.585 s
  test('a bleed resistor of 15 kΩ brings 45 µF from 523.3 V to 50 V in 1.585 s', () => {
    const charge = charging([cap(45)]);
    const across = {a: 'p', b: 'earth', ohms: 15e3};
    expect(charge.after([523.3], 0.675, across)[0]).toBeCloseTo(523.3 / Math.E, 0);
    expect(charge.after([523.3], 1.585, across)[0]).toBeCloseTo(50, 1);
  });

  // Lessons in Electric Circuits, vol. I (DC), ch. 16: 15 V through 10 kΩ into 100 µF, 14.989 V after 7.25 s
  test('charging: 15 V behind 10 kΩ bring 100 µF to 14.989 V in 7.25 s', () => {
    // Norton: 1.5 mA into 10 kΩ beside the capacitor
    const {resistiveOhms, terms} = charging([cap(100), ohm(10e3)]).chargingPath('p', 'earth');
    const ohms = terms.reduce(
      (sum, term) => sum + term.ohms * (1 - Math.exp(-7.25 / term.seconds)),
      resistiveOhms,
    );
    expect(1.5e-3 * ohms).toBeCloseTo(14.989, 3);
  });

  // NEC 460.6 as quoted in a trade code quiz (read): 50 V or less within a minute
  test("a meter's 10 MΩ are no bleed resistor: after a minute most of the charge is still there", () => {
    const [left] = charging([cap(45)]).after([340], 60, {a: 'p', b: 'earth', ohms: 10e6});
    expect(left).toBeGreaterThan(50);
    expect(left).toBeCloseTo(340 * Math.exp(-60 / 450), 0);
  });
});

test('volts on two capacitors in a row share out over a divider in their middle', () => {
  const charge = charging([cap(10, 'p', 'm'), cap(20, 'm', 'earth')]);
  expect(charge.voltsBetween([6, 3], 'p', 'earth')).toBeCloseTo(9, 6);
  expect(charge.voltsBetween([6, 3], 'm', 'p')).toBeCloseTo(-6, 6);
});

test('charge only ever runs off: the stored energy falls', () => {
  const energy = (volts: readonly number[]): number => 10 * volts[0] ** 2 + 47 * volts[1] ** 2;
  fc.assert(
    fc.property(
      fc.double({min: -400, max: 400, noNaN: true}),
      fc.double({min: -400, max: 400, noNaN: true}),
      fc.double({min: 1, max: 1e6, noNaN: true}),
      fc.double({min: 0, max: 1000, noNaN: true}),
      (p, q, ohms, seconds) => {
        const charge = charging([cap(10), cap(47, 'q'), ohm(ohms, 'p', 'q')]);
        return energy(charge.after([p, q], seconds)) <= energy([p, q]) * (1 + 1e-9) + 1e-9;
      },
    ),
  );
});

test('eigenvectors give the matrix back, for random symmetric ones', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({min: -100, max: 100, noNaN: true}), {minLength: 10, maxLength: 10}),
      (upper) => {
        const at = (i: number, j: number): number => upper[(j * (j + 1)) / 2 + i];
        const matrix = [0, 1, 2, 3].map((i) =>
          [0, 1, 2, 3].map((j) => (i <= j ? at(i, j) : at(j, i))),
        );
        const {values, vectors} = symmetricEigen(matrix);
        return matrix.every((row, i) =>
          row.every(
            (each, j) =>
              Math.abs(
                values.reduce((sum, value, k) => sum + value * vectors[k][i] * vectors[k][j], 0) -
                  each,
              ) < 1e-9,
          ),
        );
      },
    ),
  );
});

test(
  'three capacitors in a net of resistors discharge as ngspice finds it',
  {timeout: 60_000},
  async () => {
    const start = [340, -120, 25];
    const charge = charging([
      cap(45, 'a'),
      cap(7.5, 'b'),
      cap(20, 'b', 'c'),
      ohm(4700, 'a', 'b'),
      ohm(10e3, 'b'),
      ohm(2200, 'c', 'a'),
      ohm(33e3, 'c'),
    ]);
    const data = await runNgspice(
      [
        'discharge',
        'C1 a 0 45u ic=340',
        'C2 b 0 7.5u ic=-120',
        'C3 b c 20u ic=25',
        'R1 a b 4700',
        'R2 b 0 10k',
        'R3 c a 2200',
        'R4 c 0 33k',
        '.tran 0.2m 0.4 0 0.2m uic',
        '.end',
      ].join('\n'),
    );
    const column = (name: string): number[] =>
      data.find((each) => each.name.toLowerCase() === name)!.values as number[];
    const [time, a, b, c] = ['time', 'v(a)', 'v(b)', 'v(c)'].map(column);
    for (const after of [0.02, 0.1, 0.3]) {
      const at = time.findIndex((each) => each >= after);
      const ours = charge.after(start, time[at]);
      const theirs = [a[at], b[at], b[at] - c[at]];
      // ngspice integrates in steps, so it is near and not equal
      ours.forEach((each, i) => expect(Math.abs(each - theirs[i])).toBeLessThan(0.05));
    }
  },
);
