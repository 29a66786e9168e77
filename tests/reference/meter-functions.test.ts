import {describe, expect, test} from 'vitest';
import {Bench} from '../../src/bench/bench.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';
import {accuracyBand, errorLimit} from '../../src/meter/accuracy.ts';
import {statedError} from '../../src/meter/accuracy-text.ts';
import {show} from '../../src/meter/display.ts';
import {meterFunctions} from '../../src/meter/meter-function.ts';
import {meterSpec} from '../../src/meter/meter-spec.ts';
import {readMeter} from '../../src/meter/read-meter.ts';
import {thermistorOhms} from '../../src/parts/thermistor-curve.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import {behind, leads} from '../meter/thevenin-look.ts';

describe('accuracy', () => {
  // worked figure on a public forum (read): ±(0.7 % + 2 counts) at 0.1 V, 120.0 V: 118.96 to 121.04 V
  test('±(0.7 % + 2 × 0.1 V) of 120 V is 1.04 V', () => {
    expect(errorLimit(120, {percent: 0.7, counts: 2}, 0.1)).toBeCloseTo(1.04, 9);
  });

  test.each([
    ['ac-volts', 120, '±(1 % of 120.0 + 3 × 0.1) V AC', '±1.5 V AC'],
    ['dc-volts', -2.5, '±(0.5 % of 2.500 + 2 × 0.001) V DC', '±0.015 V DC'],
    ['dc-microamps', 3.2e-6, '±(1 % of 3.20 + 3 × 0.01) µA DC', '±0.062 µA DC'],
    ['capacitance', 45e-6, '±(1.9 % of 45.00 + 2 × 0.01) µF', '±0.88 µF'],
    ['ohms', 10e3, '±(0.9 % of 10.00 + 2 × 0.01) kΩ', '±0.11 kΩ'],
    ['hertz', 60, '±(0.1 % of 60.00 + 1 × 0.01) Hz', '±0.07 Hz'],
  ] as const)('of %s at %d is stated with its arithmetic', (fn, amount, arithmetic, limit) => {
    const display = show(fn, amount);
    expect(statedError(fn, display)).toEqual({arithmetic, limit});
    // and the text says what the band is
    const {low, high} = accuracyBand(fn, display);
    expect((high - low) / 2).toBeCloseTo(
      errorLimit(amount, meterSpec[fn].accuracy, resolutionAt(fn, amount)),
      9,
    );
  });

  const resolutionAt = (fn: (typeof meterFunctions)[number], amount: number): number =>
    meterSpec[fn].ranges.find(({upTo}) => Math.abs(amount) <= upTo)!.resolution;

  test('6000 counts on every range, save the one that ends at the input rating', () => {
    const counts = meterFunctions.flatMap((fn) =>
      meterSpec[fn].ranges.map(({upTo, resolution}) => Math.round(upTo / resolution)),
    );
    expect(new Set(counts)).toEqual(new Set([6000, 1000]));
  });
});

describe('run capacitors', () => {
  // trade-press article on motor capacitors (read): a run capacitor is sold within 6 % of what stands on it
  test('sound ones measure within 6 % of the nameplate, weak ones do not', () => {
    const unit = readShippedUnit('split-heat-pump');
    const measured = (faults: readonly string[]): number => {
      const operating = operateUnit(unit, faultsById(catalogue(unit), faults));
      operating.set('DS2.position', 'open');
      operating.lift('W73.from');
      return readMeter('capacitance', operating, {red: 'C2.C', black: 'C2.HERM'}).value! * 1e6;
    };
    const {hermMicrofarads: stated} = unit.parts.find(({id}) => id === 'C2')!.data as {
      hermMicrofarads: number;
    };
    expect(Math.abs(measured([]) / stated - 1)).toBeLessThan(0.06);
    expect(Math.abs(measured(['C2:herm-weak']) / stated - 1)).toBeGreaterThan(0.06);
  });

  // field rule read on public pages: µF = 2652 × A / V at 60 Hz (reactance: OpenStax College Physics 2e, §23.11)
  test('under load by amps and volts, and isolated by the meter, are the same microfarads', () => {
    const unit = readShippedUnit('split-heat-pump');
    const running = operateUnit(unit, []);
    const cooling = unit.sequences.find(({id}) => id === 'cooling')!;
    for (const {target, value} of cooling.set) running.set(target, value);
    running.advance(cooling.waitSeconds * 1000);
    const at = {red: 'C2.C', black: 'C2.HERM'};
    const volts = readMeter('ac-volts', running, at).value!;
    const amps = readMeter('clamp-amps', running, {wire: 'W73'}).value!;
    running.set('DS2.position', 'open');
    running.lift('W73.from');
    running.bleed(at.red, at.black, 15e3, 10);
    const microfarads = readMeter('capacitance', running, at).value! * 1e6;
    expect(Math.abs((2652 * amps) / volts - microfarads)).toBeLessThan(0.01 * microfarads);
  });
});

describe('sensors of the defrost board, 5 V through 10 kΩ', () => {
  // equipment manual table of resistance and volts (read): 2.5 V at 25 °C, 3.828 V at 0 °C, 1.738 V at 40 °C
  test.each([
    [10000, 2.5],
    [32654, 3.828],
    [5327, 1.738],
  ])('%d Ω stand at %f V DC', (ohms, volts) => {
    const look = behind({
      dcVolts: (5 * ohms) / (ohms + 10e3),
      dcOhms: (ohms * 10e3) / (ohms + 10e3),
    });
    expect(Math.abs(readMeter('dc-volts', look, leads).value! - volts)).toBeLessThanOrEqual(0.003);
  });

  test('the heat pump shows it on the meter, warm and cold', () => {
    const operating = operateUnit(readShippedUnit('split-heat-pump'), []);
    for (const degF of [77, 32]) {
      operating.set('plant.outdoorDegF', degF);
      const ohms = thermistorOhms(degF, 10e3, 3827);
      const {value} = readMeter('dc-volts', operating, {red: 'DB1.A1', black: 'DB1.A2'});
      expect(Math.abs(value! - (5 * ohms) / (ohms + 10e3))).toBeLessThan(0.02);
    }
  });
});

describe('live work', () => {
  // IEC 61010 definitions in instrument manuals (read): a panelboard or fixed motor asks for CAT III at least
  test('the caution over live line voltage asks for a meter and leads of CAT III', () => {
    const bench = new Bench({
      unit: readShippedUnit('gas-furnace'),
      faults: [],
      complaint: '',
      seed: 0,
    });
    bench.act({do: 'open-cover', enclosure: 'blower-compartment'});
    const live = bench.view().cautions.find(({id}) => id === 'live:blower-compartment');
    expect(live!.text).toContain('CAT III');
  });

  // several gas-furnace manuals (read): direct-current microamps in series, the flame sensor's wire broken
  test('on microamps the caution says series, and power off before the wire is lifted', () => {
    const bench = new Bench({
      unit: readShippedUnit('gas-furnace'),
      faults: [],
      complaint: '',
      seed: 0,
    });
    bench.act({do: 'meter', function: 'dc-microamps'});
    const {text} = bench.view().cautions.find(({id}) => id === 'microamps-in-series')!;
    expect(text).toMatch(/in series: power off, lift the wire/);
  });

  // Lessons in Electric Circuits, vol. I, ch. 3 (read): resistance only on de-energised parts
  test('no function that sends a current of its own gives a number on a live circuit', () => {
    const look = behind({acVolts: 24, acOhms: {re: 1, im: 0}, dcOhms: 10});
    for (const fn of ['ohms', 'continuity', 'capacitance'] as const)
      expect(readMeter(fn, look, leads)).toMatchObject({overload: true, hazard: true});
  });
});

describe('flame current', () => {
  // Several gas-furnace manuals and a service manual's table (read; brand withheld): normal from 1.5 µA DC
  test("the meter's shunt takes nothing that matters: less than its own error", () => {
    const {inputOhms = 0, accuracy} = meterSpec['dc-microamps'];
    const look = behind({dcVolts: 20, dcOhms: 6e6});
    const {value} = readMeter('dc-microamps', look, leads);
    expect(Math.abs(value! - 20 / 6e6)).toBeLessThan(errorLimit(20 / 6e6, accuracy, 1e-8));
    expect(inputOhms / 6e6).toBeLessThan(accuracy.percent / 100);
  });
});
