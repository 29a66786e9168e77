import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {accuracyBand, differ} from '../../src/meter/accuracy.ts';
import {calibrationOf, exact} from '../../src/meter/calibration.ts';
import {overload, show} from '../../src/meter/display.ts';
import {clampFunctions, meterFunctions} from '../../src/meter/meter-function.ts';
import {readMeter} from '../../src/meter/read-meter.ts';
import {behind, leads} from './thevenin-look.ts';

test('24 V AC may be 23.73 to 24.27: 1 % and 3 counts of 0.01 V', () => {
  const band = accuracyBand('ac-volts', show('ac-volts', 24));
  expect(band.low).toBeCloseTo(23.73, 6);
  expect(band.high).toBeCloseTo(24.27, 6);
});

test('OL leaves everything above the last range open', () => {
  const band = accuracyBand('ohms', overload('ohms'));
  expect(band.low).toBeCloseTo(60e6 - 0.009 * 60e6 - 2 * 1e4, 0);
  expect(band.high).toBe(Infinity);
});

test('readings a count apart do not differ; 24 V and 26 V do; OL and a reading do', () => {
  expect(differ('ac-volts', show('ac-volts', 24), show('ac-volts', 24.01))).toBe(false);
  expect(differ('ac-volts', show('ac-volts', 24), show('ac-volts', 26))).toBe(true);
  expect(differ('ohms', show('ohms', 12), overload('ohms'))).toBe(true);
});

test('the warning triangle on one of two tells them apart', () => {
  const live = {...overload('ohms'), hazard: true};
  expect(differ('ohms', live, overload('ohms'))).toBe(true);
  expect(differ('ohms', live, live)).toBe(false);
});

/** Functions whose amount a made-up source can set: hertz come with the network, microamps and farads have tests of their own. */
const readable = meterFunctions.filter(
  (fn) => !clampFunctions.has(fn) && !['hertz', 'capacitance', 'dc-microamps'].includes(fn),
);

describe('the meter of an attempt', () => {
  test('without a seed is exact', () => {
    expect(calibrationOf(0)).toBe(exact);
  });

  test('is the same for a seed, and another for another', () => {
    expect(calibrationOf(7)).toEqual(calibrationOf(7));
    expect(calibrationOf(7)).not.toEqual(calibrationOf(8));
  });

  test('never reads outside the accuracy that it states, whichever the seed', () => {
    fc.assert(
      fc.property(
        fc.integer({min: 1, max: 1e6}),
        fc.double({min: 0.01, max: 990, noNaN: true}),
        fc.constantFrom(...readable),
        (seed, amount, fn) => {
          const resistance = fn === 'ohms' || fn === 'continuity';
          const look = behind(resistance ? {dcOhms: amount} : {acVolts: amount, dcVolts: amount});
          const display = readMeter(fn, look, leads, calibrationOf(seed));
          const {low, high} = accuracyBand(fn, display);
          return low <= amount && amount <= high;
        },
      ),
    );
  });
});
