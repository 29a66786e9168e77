import fc from 'fast-check';
import {expect, test} from 'vitest';
import type {Complex} from '../../src/parts/element.ts';
import {magnetCoil, magnetCoilData} from '../../src/parts/magnet-coil.ts';

const size = ({re, im}: Complex) => Math.hypot(re, im);

test('30 VA inrush and 4.5 VA sealed at 24 V are 19.2 Ω and 128 Ω', () => {
  // VA figures of a small contactor's data sheet, at 24 V (references.json G04-04: 19.2 Ω, 128 Ω, 1.25 A, 0.1875 A)
  const coil = magnetCoil(
    'coil',
    'A1',
    'A2',
    magnetCoilData.parse({ratedVolts: 24, sealedVa: 4.5, inrushVa: 30, coilOhms: 10}),
  );
  expect(size(coil.inrushOhms)).toBeCloseTo(19.2, 6);
  expect(size(coil.sealedOhms)).toBeCloseTo(128, 6);
  expect(24 / size(coil.inrushOhms)).toBeCloseTo(1.25, 6);
  expect(24 / size(coil.sealedOhms)).toBeCloseTo(0.1875, 6);
});

test('a NEMA size 2 coil of 216 VA and 30 VA draws 1.8 A and 0.25 A at 120 V', () => {
  // public table of NEMA coil ratings (references.json G04-05)
  const coil = magnetCoil(
    'coil',
    'A1',
    'A2',
    magnetCoilData.parse({ratedVolts: 120, sealedVa: 30, inrushVa: 216, coilOhms: 9}),
  );
  expect(120 / size(coil.inrushOhms)).toBeCloseTo(1.8, 6);
  expect(120 / size(coil.sealedOhms)).toBeCloseTo(0.25, 6);
});

test('an unspecified coil pulls in at less than 85 % of rated volts and lets go below that', () => {
  // pick-up band 85 to 110 % of rated volts, IEC 60947-4-1 as stated in a technical note (references.json G04-01)
  const data = magnetCoilData.parse({ratedVolts: 24, sealedVa: 7, inrushVa: 33, coilOhms: 10});
  expect(data.pullInFraction).toBeLessThanOrEqual(0.85);
  expect(data.dropOutFraction).toBeLessThan(data.pullInFraction);
});

test('a coil is never less resistive than its copper, and its VA are as given', () => {
  const ratings = fc.record({
    ratedVolts: fc.constantFrom(24, 120, 208, 240),
    sealedVa: fc.double({min: 1, max: 60, noNaN: true}),
    times: fc.double({min: 1.2, max: 10, noNaN: true}),
    copperShare: fc.double({min: 0.05, max: 0.9, noNaN: true}),
  });
  fc.assert(
    fc.property(ratings, ({ratedVolts, sealedVa, times, copperShare}) => {
      const inrushVa = sealedVa * times;
      const coilOhms = (copperShare * ratedVolts ** 2) / inrushVa;
      const coil = magnetCoil(
        'coil',
        'A1',
        'A2',
        magnetCoilData.parse({ratedVolts, sealedVa, inrushVa, coilOhms}),
      );
      const close = (a: number, b: number) => Math.abs(a - b) <= 1e-9 * b;
      return (
        coil.inrushOhms.re >= coilOhms * 0.999 &&
        coil.sealedOhms.re >= coilOhms * 0.999 &&
        close(ratedVolts ** 2 / size(coil.inrushOhms), inrushVa) &&
        close(ratedVolts ** 2 / size(coil.sealedOhms), sealedVa)
      );
    }),
  );
});
