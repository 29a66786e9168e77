import {describe, expect, test} from 'vitest';
import {degrees} from '../../src/circuits/complex.ts';
import {
  capacitor,
  inductor,
  load,
  magnitude,
  near,
  resistor,
  solved,
  supply,
} from './circuit-by-hand.ts';

describe('Lessons in Electric Circuits, vol. AC', () => {
  test('ch. 3: 10 V, 60 Hz on 5 Ω and 10 mH in series: 1.597 A at −37.016°, 7.9847 V and 6.0203 V at 52.984°', () => {
    const s = solved('ac', [
      supply('a', 'earth', 10),
      resistor('a', 'b', 5, 'r'),
      inductor('b', 'earth', 0.01),
    ]);
    expect(near(magnitude(s.amps('r')), 1.597, 0.001)).toBe(true);
    expect(near(degrees(s.amps('r')), -37.016, 0.001)).toBe(true);
    expect(near(magnitude(s.voltsBetween('a', 'b')), 7.9847, 0.001)).toBe(true);
    expect(near(magnitude(s.volts('b')), 6.0203, 0.001)).toBe(true);
    expect(near(degrees(s.volts('b')), 52.984, 0.001)).toBe(true);
  });

  test('ch. 5: 120 V on 250 Ω, 650 mH and 1.5 µF in series: 77.734 mA, and 137.46 V on the capacitor', () => {
    const s = solved('ac', [
      supply('a', 'earth', 120),
      resistor('a', 'b', 250, 'r'),
      inductor('b', 'c', 0.65),
      capacitor('c', 'earth', 1.5),
    ]);
    expect(near(magnitude(s.amps('r')), 0.077734, 0.001)).toBe(true);
    expect(near(magnitude(s.voltsBetween('a', 'b')), 19.434, 0.001)).toBe(true);
    expect(near(magnitude(s.voltsBetween('b', 'c')), 19.048, 0.001)).toBe(true);
    expect(near(magnitude(s.volts('c')), 137.46, 0.001)).toBe(true);
    expect(near(degrees(s.amps('r')), 80.68, 0.001)).toBe(true);
  });

  test('ch. 5: the same three in parallel: 0.48, 0.48971 and 0.067858 A, 0.63903 A at −41.311° in all', () => {
    const s = solved('ac', [
      supply('a', 'earth', 120, 0, 'source'),
      resistor('a', 'earth', 250, 'r'),
      inductor('a', 'earth', 0.65, 'l'),
      capacitor('a', 'earth', 1.5, 'c'),
    ]);
    expect(near(magnitude(s.amps('r')), 0.48, 0.001)).toBe(true);
    expect(near(magnitude(s.amps('l')), 0.48971, 0.001)).toBe(true);
    expect(near(magnitude(s.amps('c')), 0.067858, 0.001)).toBe(true);
    const {re, im} = s.amps('source');
    expect(near(Math.hypot(re, im), 0.63903, 0.001)).toBe(true);
    expect(near(degrees({re: -re, im: -im}), -41.311, 0.001)).toBe(true);
  });

  test('ch. 11: 60 Ω and 160 mH on 120 V: 119.365 W, 119.998 var, 169.256 VA', () => {
    const s = solved('ac', [
      supply('a', 'earth', 120, 0, 'source'),
      resistor('a', 'b', 60, 'r'),
      inductor('b', 'earth', 0.16),
    ]);
    const {re, im} = s.voltAmperes('source');
    expect(near(-re, 119.365, 0.001)).toBe(true);
    expect(near(-im, 119.998, 0.001)).toBe(true);
    expect(near(Math.hypot(re, im), 169.256, 0.001)).toBe(true);
  });

  test('ch. 11: 1.5 kW at 9.615 A, 240 V lagging draws 6.25 A with 80 µF beside it', () => {
    const volts = 240;
    const apparent = volts * 9.615;
    const angle = Math.acos(1500 / apparent);
    const ohms = volts / 9.615;
    const s = solved('ac', [
      supply('a', 'earth', volts, 0, 'source'),
      load('a', 'earth', {re: ohms * Math.cos(angle), im: ohms * Math.sin(angle)}, 'motor'),
      capacitor('a', 'earth', 80),
    ]);
    expect(near(s.voltAmperes('motor').im, 1754, 0.002)).toBe(true);
    expect(near(magnitude(s.amps('source')), 6.25, 0.002)).toBe(true);
  });

  test('ch. 10: three 10 kW loads in delta on 120 V lines draw 83.33 A each and 144.34 A from each line', () => {
    const ohms = 120 ** 2 / 10000;
    const phase = 120 / Math.sqrt(3);
    const s = solved('ac', [
      supply('a', 'earth', phase, 0, 'La'),
      supply('b', 'earth', phase, -120),
      supply('c', 'earth', phase, 120),
      resistor('a', 'b', ohms, 'ab'),
      resistor('b', 'c', ohms),
      resistor('c', 'a', ohms),
    ]);
    expect(near(magnitude(s.amps('ab')), 83.33, 0.001)).toBe(true);
    expect(near(magnitude(s.amps('La')), 144.34, 0.001)).toBe(true);
  });

  test('ch. 10: 120 V windings in wye stand at 207.85 V between lines and carry 83.33 A into 10 kW each', () => {
    const ohms = 120 ** 2 / 10000;
    const s = solved('ac', [
      supply('a', 'earth', 120, 0, 'La'),
      supply('b', 'earth', 120, -120),
      supply('c', 'earth', 120, 120),
      resistor('a', 'n', ohms),
      resistor('b', 'n', ohms),
      resistor('c', 'n', ohms),
    ]);
    expect(near(magnitude(s.voltsBetween('a', 'b')), 207.85, 0.001)).toBe(true);
    expect(near(magnitude(s.amps('La')), 83.33, 0.001)).toBe(true);
    // balanced: the star point stays at the neutral without being joined to it
    expect(magnitude(s.volts('n'))).toBeLessThan(1e-3);
  });
});

describe('OpenStax College Physics 2e', () => {
  test('m42431: 40 Ω, 3 mH and 5 µF on 120 V, 60 Hz: 531 Ω, 0.226 A, 2.04 W', () => {
    const series = [
      supply('a', 'earth', 120),
      resistor('a', 'b', 40, 'r'),
      inductor('b', 'c', 0.003),
      capacitor('c', 'earth', 5),
    ];
    const s = solved('ac', series);
    expect(near(magnitude(s.amps('r')), 0.226, 0.005)).toBe(true);
    expect(near(120 / magnitude(s.amps('r')), 531, 0.005)).toBe(true);
    expect(near(s.voltAmperes('r').re, 2.04, 0.005)).toBe(true);
    expect(near(degrees(s.amps('r')), 85.7, 0.005)).toBe(true);
  });

  test('m42431: at its resonance of 1300 Hz the same circuit draws 3.00 A and 360 W', () => {
    const hertz = 1 / (2 * Math.PI * Math.sqrt(0.003 * 5e-6));
    expect(near(hertz, 1300, 0.005)).toBe(true);
    const s = solved(
      'ac',
      [
        supply('a', 'earth', 120),
        resistor('a', 'b', 40, 'r'),
        inductor('b', 'c', 0.003, '', hertz),
        capacitor('c', 'earth', 5),
      ],
      {},
      hertz,
    );
    expect(near(magnitude(s.amps('r')), 3, 0.005)).toBe(true);
    expect(near(s.voltAmperes('r').re, 360, 0.005)).toBe(true);
  });

  test('m42427: on 120 V, 60 Hz a 3 mH coil draws 106 A and a 5 µF capacitor 0.226 A', () => {
    const s = solved('ac', [
      supply('a', 'earth', 120),
      inductor('a', 'earth', 0.003, 'l'),
      capacitor('a', 'earth', 5, 'c'),
    ]);
    expect(near(magnitude(s.amps('l')), 106, 0.005)).toBe(true);
    expect(near(magnitude(s.amps('c')), 0.226, 0.005)).toBe(true);
  });
});

describe('capacitors', () => {
  test.each([
    [60, 2652.6],
    [50, 3183.1],
  ])(
    'at %d Hz microfarads are %d times amps over volts (field rule on public pages)',
    (hertz, k) => {
      const s = solved(
        'ac',
        [supply('a', 'earth', 240), capacitor('a', 'earth', 45, 'c')],
        {},
        hertz,
      );
      expect(near((k * magnitude(s.amps('c'))) / 240, 45, 0.0005)).toBe(true);
    },
  );

  test('5 and 7.5 µF are 3 µF in series and 12.5 µF in parallel (public parts-supply page)', () => {
    const series = solved('ac', [
      supply('a', 'earth', 240),
      capacitor('a', 'b', 5, 'c'),
      capacitor('b', 'earth', 7.5),
    ]);
    expect(near((2652.58 * magnitude(series.amps('c'))) / 240, 3, 0.001)).toBe(true);
    const parallel = solved('ac', [
      supply('a', 'earth', 240, 0, 'source'),
      capacitor('a', 'earth', 5),
      capacitor('a', 'earth', 7.5),
    ]);
    expect(near((2652.58 * magnitude(parallel.amps('source'))) / 240, 12.5, 0.001)).toBe(true);
  });
});
