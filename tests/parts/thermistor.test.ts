import fc from 'fast-check';
import {expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {thermistorDegF, thermistorOhms} from '../../src/parts/thermistor-curve.ts';
import {thermistor} from '../../src/parts/thermistor.ts';

const degF = (degC: number) => degC * 1.8 + 32;
const within = (found: number, published: number, share: number) =>
  expect(Math.abs(found / published - 1), `${found} against ${published}`).toBeLessThan(share);

/** The sensor that a unit file gets when it says no more than what is sensed. */
const standard = thermistor.data.parse({senses: 'outdoorDegF'}) as {
  ohmsAt77DegF: number;
  betaKelvin: number;
};
const ohms = (at: number) => thermistorOhms(at, standard.ohmsAt77DegF, standard.betaKelvin);

test('a 10 kΩ type 2 sensor follows the published table in the cold, within 1 %', () => {
  // instrument and equipment manuals' tables of a 10K3-family thermistor (references.json G07-01)
  within(ohms(degF(-20)), 97007, 0.01);
  within(ohms(degF(0)), 32651, 0.01);
  within(ohms(degF(25)), 10000, 1e-9);
});

test('… and the Fahrenheit chart of an equipment manual, within 1 %', () => {
  // kΩ at 32, 40 and 50 °F (references.json G07-03)
  within(ohms(32), 32660, 0.01);
  within(ohms(40), 26120, 0.01);
  within(ohms(50), 19900, 0.01);
});

test('15 kΩ at 0 °C with B 3480 is 9.6 kΩ at 10 °C, 5.2 kΩ at 25 °C, 3.0 kΩ at 40 °C, within 3 %', () => {
  // service manual thermistor note (references.json G07-09)
  const at25 = 5200;
  within(thermistorOhms(degF(0), at25, 3480), 15000, 0.03);
  within(thermistorOhms(degF(10), at25, 3480), 9600, 0.03);
  within(thermistorOhms(degF(40), at25, 3480), 3000, 0.03);
});

test('the heat pump’s own sensors are of this curve', () => {
  const sensors = readShippedUnit('split-heat-pump').parts.filter(
    (part) => part.kind === 'thermistor',
  );
  expect(sensors).toHaveLength(2);
  for (const sensor of sensors)
    expect(sensor.data).toMatchObject({...standard, senses: expect.stringMatching(/^outdoor/)});
});

test('temperature from ohms undoes ohms from temperature', () => {
  fc.assert(
    fc.property(
      fc.double({min: -60, max: 250, noNaN: true}),
      fc.double({min: 2000, max: 6000, noNaN: true}),
      (at, beta) =>
        Math.abs(thermistorDegF(thermistorOhms(at, 10000, beta), 10000, beta) - at) < 1e-6,
    ),
  );
});
