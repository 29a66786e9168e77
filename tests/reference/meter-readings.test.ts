import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';
import {errorLimit} from '../../src/meter/accuracy.ts';
import {show} from '../../src/meter/display.ts';
import {acVoltsSeen, dcVoltsSeen, loadedAcVolts, readMeter} from '../../src/meter/read-meter.ts';
import {thermistorOhms} from '../../src/parts/thermistor-curve.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import {behind, leads} from '../meter/thevenin-look.ts';

const within =
  (share: number, expected: number) =>
  (value: number): void =>
    expect(Math.abs(value - expected)).toBeLessThanOrEqual(share * Math.abs(expected));

describe('a voltmeter loads what it reads', () => {
  // Lessons in Electric Circuits, vol. I (DC) ch. 8, "voltmeter impact on measured circuit"
  test('24 V over two 250 MΩ, a 10 MΩ meter across one: 0.8889 V in place of 12 V', () => {
    const look = behind({dcVolts: 12, dcOhms: 125e6});
    within(0.001, 0.8889)(dcVoltsSeen('dc-volts', look, 'red', 'black'));
    expect(readMeter('dc-volts', look, leads)).toMatchObject({text: '0.889', unit: 'V DC'});
  });

  // Lessons in Electric Circuits, vol. I (DC) ch. 10, Thevenin's theorem
  test('11.2 V behind 0.8 Ω on 2 Ω leaves 8 V', () => {
    within(0.001, 8)(loadedAcVolts({re: 11.2, im: 0}, {re: 0.8, im: 0}, 2, 0, 60));
  });

  // Lessons in Electric Circuits, vol. I (DC) ch. 6, voltage dividers
  test.each([
    [5000, 10],
    [10000, 20],
    [7500, 15],
  ])('45 V across 5, 10 and 7.5 kΩ in series: %d Ω shows %d V', (ohms, volts) => {
    const rest = 22500 - ohms;
    const look = behind({dcVolts: (45 * ohms) / 22500, dcOhms: (ohms * rest) / 22500});
    within(0.001, volts)(readMeter('dc-volts', look, leads).value!);
  });

  // OpenStax College Physics 2e §21.4: a 50 µA movement makes 20,000 Ω per volt, 200 kΩ on its 10 V range
  test('an old 20,000 Ω-per-volt meter of 200 kΩ reads a 200 kΩ source at half, ours at 98 %', () => {
    const source = [
      {re: 10, im: 0},
      {re: 200e3, im: 0},
    ] as const;
    within(0.001, 5)(loadedAcVolts(...source, 200e3, 0, 60));
    within(
      0.001,
      10 / 1.02,
    )(dcVoltsSeen('dc-volts', behind({dcVolts: 10, dcOhms: 200e3}), 'red', 'black'));
  });
});

describe('alternating volts', () => {
  const ohm = (re: number, im: number) => ({re, im});
  const parallel = (r: number, x: number) => {
    const d = r * r + x * x;
    return ohm((r * x * x) / d, (r * r * x) / d);
  };

  // Lessons in Electric Circuits, vol. II (AC) ch. 3, series resistor–inductor circuits, figures 12020–12025
  test('5 Ω and 10 mH on 10 V, 60 Hz: 7.985 V on the one and 6.020 V on the other', () => {
    const x = 2 * Math.PI * 60 * 0.01;
    const total = Math.hypot(5, x);
    const across = (part: number) =>
      acVoltsSeen(
        'ac-volts',
        behind({acVolts: (10 * part) / total, acOhms: parallel(5, x)}),
        'red',
        'black',
      );
    within(0.001, 7.9847)(across(5));
    within(0.001, 6.0203)(across(x));
  });

  // Lessons in Electric Circuits, vol. II (AC) ch. 5, figures 02080 and 12058–12063
  test('120 V on 250 Ω, 650 mH and 1.5 µF in series: 137.5 V on the capacitor, more than the supply', () => {
    const xl = 2 * Math.PI * 60 * 0.65;
    const xc = 1 / (2 * Math.PI * 60 * 1.5e-6);
    const amps = 120 / Math.hypot(250, xl - xc);
    const look = behind({acVolts: amps * xc, acOhms: ohm(250, xl)});
    within(0.001, 137.46)(readMeter('ac-volts', look, leads).value!);
  });

  // Divider of a stray capacitance and the meter, with about 3 kΩ for the low-impedance mode: public
  // application notes on stray voltage; numbers chosen for the check
  test('a floating wire 100 pF from a 120 V one: 42.3 V at 10 MΩ, 13.6 mV at 3 kΩ', () => {
    const stray = [ohm(120, 0), ohm(0, -1 / (2 * Math.PI * 60 * 100e-12))] as const;
    within(0.01, 42.3)(loadedAcVolts(...stray, 10e6, 0, 60));
    within(0.01, 0.0136)(loadedAcVolts(...stray, 3000, 0, 60));
  });

  // Kirchhoff; numbers chosen for the check
  test('24 V, an open switch and a 128 Ω coil: the meter across the switch shows the source', () => {
    const seen = acVoltsSeen(
      'low-impedance-volts',
      behind({acVolts: 24, acOhms: ohm(128, 0)}),
      'red',
      'black',
    );
    const high = dcVoltsSeen('dc-volts', behind({dcVolts: 24, dcOhms: 128}), 'red', 'black');
    expect(high).toBeCloseTo(23.9997, 4);
    // at 3 kΩ the coil takes its share
    within(0.001, (24 * 3000) / 3128)(seen);
  });
});

describe('accuracy', () => {
  // worked figure on a public forum of instrument users
  test('±(0.7 % + 2 counts) on a 0.1 V last digit at 120.0 V: ±1.04 V', () => {
    expect(errorLimit(120, {percent: 0.7, counts: 2}, 0.1)).toBeCloseTo(1.04, 6);
  });
});

describe('amps', () => {
  // contactor data sheet, 4.5 VA sealed and 30 VA inrush; converted to 24 V
  test('a sealed contactor coil of 4.5 VA at 24 V shows 0.19 A, at inrush 1.25 A', () => {
    expect(show('clamp-amps', 4.5 / 24).text).toBe('0.19');
    expect(show('clamp-amps', 30 / 24).text).toBe('1.25');
  });
});

describe('direct volts', () => {
  // an equipment manual's table of sensor resistance and volts: 10 kΩ sensor under 10 kΩ from 5 V
  test.each([
    [10000, 2.5],
    [32654, 3.828],
    [5327, 1.738],
  ])('a sensor of %d Ω shows %d V', (ohms, volts) => {
    const look = behind({dcVolts: (5 * ohms) / (ohms + 1e4), dcOhms: (ohms * 1e4) / (ohms + 1e4)});
    expect(Math.abs(readMeter('dc-volts', look, leads).value! - volts)).toBeLessThanOrEqual(0.003);
  });

  // the same table's resistances at 25, 0 and 40 °C, by way of the heat pump's own board and sensor
  test('the defrost board’s sensor terminals show 3.83 V with the ambient sensor at 32 °F', () => {
    const operating = operateUnit(readShippedUnit('split-heat-pump'), []);
    operating.set('plant.outdoorDegF', 32);
    const {value} = readMeter('dc-volts', operating, {red: 'DB1.A1', black: 'DB1.A2'});
    // the sensor's curve is the beta equation, a few tenths of a percent off the table
    expect(Math.abs(value! - 3.828)).toBeLessThan(0.04);
    expect(thermistorOhms(77, 10000, 3827)).toBe(10000);
  });
});

describe('resistance', () => {
  // Lessons in Electric Circuits, vol. I (DC) ch. 3: an ohmmeter is for de-energised parts only
  test('is not measured on an energised component: no reading, and a warning', () => {
    const operating = operateUnit(readShippedUnit('practice-panel'), []);
    operating.set('S1.position', 'on');
    operating.advance(1000);
    const display = readMeter('ohms', operating, {red: 'K1.1', black: 'K1.3'});
    expect(display).toMatchObject({overload: true, hazard: true});
  });

  // trade tech tip: common to run plus common to start is run to start
  test('compressor windings, wires off: C–R plus C–S equals R–S, and C–R is the least', () => {
    const operating = isolatedCompressor([]);
    const ohms = (red: string, black: string) => readMeter('ohms', operating, {red, black}).value!;
    const [cr, cs, rs] = [ohms('CMP.C', 'CMP.R'), ohms('CMP.C', 'CMP.S'), ohms('CMP.R', 'CMP.S')];
    // each reading may be two counts of 0.1 Ω off
    expect(Math.abs(cr + cs - rs)).toBeLessThanOrEqual(0.2);
    expect(cr).toBeLessThan(cs);
  });

  // the same tip: an open internal overload in the common leaves only R–S
  test('an open internal overload: C–R and C–S open, R–S finite', () => {
    const operating = isolatedCompressor(['CMP:overload-open']);
    const ohms = (red: string, black: string) => readMeter('ohms', operating, {red, black});
    expect(ohms('CMP.C', 'CMP.R').overload).toBe(true);
    expect(ohms('CMP.C', 'CMP.S').overload).toBe(true);
    expect(ohms('CMP.R', 'CMP.S').overload).toBe(false);
  });

  function isolatedCompressor(faults: string[]) {
    const unit = readShippedUnit('split-heat-pump');
    const operating = operateUnit(unit, faultsById(catalogue(unit), faults));
    operating.set('DS2.position', 'open');
    for (const end of ['W71.to', 'W72.to', 'W73.to']) operating.lift(end);
    return operating;
  }
});

// reactance of a capacitor, OpenStax College Physics 2e §23.11: C = K·A/V with K = 10⁶/(2π·60) = 2652.6
test('a running compressor’s 45 µF, from the clamp and the voltmeter, comes out within the field tolerance of 6 %', () => {
  const operating = operateUnit(readShippedUnit('split-heat-pump'), []);
  operating.set('plant.roomDegF', 80);
  operating.set('TS.mode', 'cool');
  operating.advance(60_000);
  const amps = readMeter('clamp-amps', operating, {wire: 'W73'}).value!;
  const volts = readMeter('ac-volts', operating, {red: 'C2.HERM', black: 'C2.C'}).value!;
  within(0.06, 45)((2652.6 * amps) / volts);
});
