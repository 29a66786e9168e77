import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {clampFunctions, meterFunctions, sourcingFunctions} from '../../src/meter/meter-function.ts';
import {readMeter} from '../../src/meter/read-meter.ts';
import {behind, leads, reversed} from './thevenin-look.ts';

const shown = (display: {text: string; unit: string}): string => `${display.text} ${display.unit}`;

describe('volts', () => {
  test('ranges change at 6000 counts', () => {
    const ac = (acVolts: number): string => shown(readMeter('ac-volts', behind({acVolts}), leads));
    expect(ac(0.3124)).toBe('312.4 mV AC');
    expect(ac(5.999)).toBe('5.999 V AC');
    expect(ac(24.314)).toBe('24.31 V AC');
    expect(ac(120.04)).toBe('120.0 V AC');
    expect(ac(599.97)).toBe('600.0 V AC');
    expect(ac(600.3)).toBe('600 V AC');
    expect(ac(1000.6)).toBe('OL V AC');
  });

  test('reversed leads change only the sign of direct volts, and nothing of alternating volts', () => {
    const look = behind({acVolts: 24, dcVolts: 5});
    expect(shown(readMeter('dc-volts', look, leads))).toBe('5.000 V DC');
    expect(shown(readMeter('dc-volts', look, reversed))).toBe('-5.000 V DC');
    expect(shown(readMeter('ac-volts', look, reversed))).toBe('24.00 V AC');
  });

  test('the direct-volts function shows next to nothing on alternating volts', () => {
    expect(shown(readMeter('dc-volts', behind({acVolts: 240}), leads))).toBe('0.0 mV DC');
  });

  test('a floating conductor reads stray volts at 10 MΩ and nothing to speak of at low impedance', () => {
    // 100 pF to a 120 V neighbour: 26.5 MΩ of reactance
    const look = behind({acVolts: 120, acOhms: {re: 0, im: -26.5e6}});
    expect(readMeter('ac-volts', look, leads).value).toBeGreaterThan(30);
    expect(readMeter('low-impedance-volts', look, leads).value).toBeLessThan(0.02);
  });

  test('a source of low impedance reads the same at either input impedance', () => {
    const look = behind({acVolts: 25.3, acOhms: {re: 1.2, im: 0.4}});
    const high = readMeter('ac-volts', look, leads).value!;
    expect(readMeter('low-impedance-volts', look, leads).value).toBeCloseTo(high, 1);
  });

  test('both leads on one point read nothing', () => {
    const look = behind({acVolts: 240, dcVolts: 5});
    expect(readMeter('ac-volts', look, {red: 'red', black: 'red'}).value).toBe(0);
    expect(readMeter('dc-volts', look, {red: 'red', black: 'red'}).value).toBe(0);
  });
});

describe('ohms', () => {
  test('ranges and OL', () => {
    const ohms = (dcOhms: number): string => shown(readMeter('ohms', behind({dcOhms}), leads));
    expect(ohms(10.44)).toBe('10.4 Ω');
    expect(ohms(1234)).toBe('1.234 kΩ');
    expect(ohms(32650)).toBe('32.65 kΩ');
    expect(ohms(10e6)).toBe('10.00 MΩ');
    expect(ohms(80e6)).toBe('OL MΩ');
  });

  test('a live circuit gives no reading and the warning triangle', () => {
    const display = readMeter(
      'ohms',
      behind({acVolts: 24, acOhms: {re: 50, im: 0}, dcOhms: 50}),
      leads,
    );
    expect(display).toMatchObject({text: 'OL', hazard: true, overload: true});
    expect(display.value).toBeUndefined();
  });

  test('stray voltage does not disturb it: the input pulls it down', () => {
    const look = behind({acVolts: 120, acOhms: {re: 0, im: -80e6}, dcOhms: 1e8});
    expect(readMeter('ohms', look, leads)).toMatchObject({text: 'OL', overload: true});
    expect(readMeter('ohms', look, leads).hazard).toBeUndefined();
  });

  test('a small direct voltage makes it wrong with no warning, one way too high, the other too low', () => {
    const look = behind({dcVolts: 0.05, dcOhms: 100});
    // 1 mA through 100 Ω makes 0.1 V; 0.05 V more or less is half of it
    expect(readMeter('ohms', look, leads).value).toBeCloseTo(150, 1);
    expect(readMeter('ohms', look, reversed).value).toBeCloseTo(50, 1);
  });

  test('both leads on one point read a dead short', () => {
    expect(shown(readMeter('ohms', behind({dcOhms: 500}), {red: 'red', black: 'red'}))).toBe(
      '0.0 Ω',
    );
  });
});

describe('continuity', () => {
  const continuity = (dcOhms: number) => readMeter('continuity', behind({dcOhms}), leads);
  test('sounds below 30 Ω and is silent from there on', () => {
    expect(continuity(0.4).tone).toBe(true);
    expect(continuity(29.9).tone).toBe(true);
    expect(continuity(30).tone).toBe(false);
  });
  test('has one range: 600 Ω, then OL', () => {
    expect(continuity(599).text).toBe('599.0');
    expect(continuity(601)).toMatchObject({text: 'OL', tone: false});
  });
});

describe('clamp', () => {
  test('shows the current of the wire, whichever way it flows', () => {
    const look = behind({amps: {re: -3, im: 4}});
    expect(shown(readMeter('clamp-amps', look, {wire: 'W1'}))).toBe('5.00 A AC');
  });
  test('does not take leads, and the other functions take no wire', () => {
    expect(() => readMeter('clamp-amps', behind({}), leads)).toThrow('around a wire');
    expect(() => readMeter('ac-volts', behind({}), {wire: 'W1'})).toThrow('two leads');
  });
});

describe('laws of the meter', () => {
  const volts = fc.double({min: -900, max: 900, noNaN: true});
  const ohms = fc.double({min: 0, max: 1e9, noNaN: true});

  test('never more than is there: loading only lowers a resistive source', () => {
    fc.assert(
      fc.property(volts, ohms, (acVolts, re) => {
        const {value = 0} = readMeter('ac-volts', behind({acVolts, acOhms: {re, im: 0}}), leads);
        return value <= Math.abs(acVolts) + 0.5;
      }),
    );
  });

  test('the text is the value, on every function and amount', () => {
    const prefix: Record<string, number> = {n: 1e-9, µ: 1e-6, m: 1e-3, k: 1e3, M: 1e6};
    fc.assert(
      fc.property(fc.constantFrom(...meterFunctions), volts, ohms, (fn, amount, dcOhms) => {
        const live = sourcingFunctions.has(fn) ? {} : {acVolts: amount, dcVolts: amount};
        const look = behind({...live, dcOhms, amps: {re: amount, im: 0}});
        const display = readMeter(fn, look, clampFunctions.has(fn) ? {wire: 'W1'} : leads);
        if (display.overload) return display.text === 'OL';
        const scale = prefix[display.unit[0]] ?? 1;
        return (
          Math.abs(Number(display.text) * scale - display.value!) <=
          1e-9 * Math.max(1, display.value!)
        );
      }),
    );
  });

  test('at most 6000 counts are shown, save on the 1000 V range', () => {
    fc.assert(
      fc.property(volts, (acVolts) => {
        const {text} = readMeter('ac-volts', behind({acVolts}), leads);
        return text === 'OL' || Number(text.replace('.', '')) <= 6000;
      }),
    );
  });
});
