import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';

// The heat pump is wired as its file says, shown by operating it. What a technician expects of such
// wiring is common practice, no source.

const unit = readShippedUnit('split-heat-pump');
const all = catalogue(unit);

/** The heat pump with faults, brought into one of its sequences. */
function heatPump(sequence: string, ...faults: string[]): OperatingUnit {
  const operating = operateUnit(unit, faultsById(all, faults));
  const {set, waitSeconds} = unit.sequences.find(({id}) => id === sequence)!;
  for (const {target, value} of set) operating.set(target, value);
  operating.advance(waitSeconds * 1000);
  return operating;
}

const volts = (operating: OperatingUnit, a: string, b: string) => {
  const {re, im} = operating.acVolts(a, b);
  return Math.hypot(re, im);
};
const amps = (operating: OperatingUnit, through: string) => {
  const {re, im} = operating.amps(through);
  return Math.hypot(re, im);
};
const stateOf = (operating: OperatingUnit, part: string) =>
  operating
    .observations()
    .filter((seen) => seen.part === part)
    .map(({is}) => is);

describe('grounding', () => {
  test('a 24 V wire that touches the cabinet blows the control fuse, and no breaker trips', () => {
    const pump = heatPump('cooling', 'W56:earth');
    expect(pump.isClosed('F1.link')).toBe(false);
    expect(volts(pump, 'TB1.R', 'TB1.C')).toBeLessThan(1);
    expect(volts(pump, 'F1.1', 'TB1.C')).toBeGreaterThan(22);
    expect([pump.valueOf('CB1.position'), pump.valueOf('CB2.position')]).toEqual(['on', 'on']);
  });

  test('a line wire that touches the cabinet trips the breaker of its unit only', () => {
    const pump = heatPump('cooling', 'W76:earth');
    expect(pump.valueOf('CB2.position')).toBe('tripped');
    expect(pump.valueOf('CB1.position')).toBe('on');
    expect(volts(pump, 'TB1.R', 'TB1.C')).toBeGreaterThan(22);
  });

  test('each leg stands 120 V above the cabinet, and the 24 V common nothing', () => {
    const pump = heatPump('off');
    expect(volts(pump, 'K3.L1', 'GND5.E')).toBeCloseTo(120, 0);
    expect(volts(pump, 'K3.L2', 'GND5.E')).toBeCloseTo(120, 0);
    expect(volts(pump, 'TB2.C', 'GND5.E')).toBeLessThan(0.2);
  });
});

describe('isolation', () => {
  test('an open disconnect is live on its line side and dead past it', () => {
    const pump = heatPump('cooling');
    pump.set('DS2.position', 'open');
    expect(volts(pump, 'DS2.L1', 'DS2.L2')).toBeGreaterThan(230);
    expect(volts(pump, 'K3.L1', 'K3.L2')).toBeLessThan(0.1);
    // the 24 V comes from indoors: the outdoor unit's strip is not dead
    expect(volts(pump, 'TB2.R', 'TB2.C')).toBeGreaterThan(22);
  });

  test('the crankcase heater is live with the contactor out', () => {
    const pump = heatPump('off');
    expect(pump.isClosed('K3.pole1')).toBe(false);
    expect(amps(pump, 'W80')).toBeCloseTo(70 / 240, 2);
  });

  test('with the contactor out the compressor’s leads are dead to each other', () => {
    expect(volts(heatPump('off'), 'K3.T1', 'K3.T2')).toBeLessThan(1);
  });
});

describe('the call for the compressor', () => {
  test('an open high-pressure switch has the whole control voltage across it, and the rest of the chain none', () => {
    const pump = heatPump('cooling', 'HPS:stuck-open');
    expect(volts(pump, 'HPS.1', 'TB2.C')).toBeGreaterThan(22);
    expect(volts(pump, 'HPS.2', 'TB2.C')).toBeLessThan(1);
    expect(volts(pump, 'HPS.1', 'HPS.2')).toBeGreaterThan(22);
    expect(volts(pump, 'LPS.1', 'LPS.2')).toBeLessThan(0.1);
    expect(stateOf(pump, 'CMP')).toEqual(['off']);
  });

  test('an open common floats the coil: both its ends read 24 V to C', () => {
    const pump = heatPump('cooling', 'W59:open');
    expect(volts(pump, 'K3.A1', 'TB2.C')).toBeGreaterThan(20);
    expect(volts(pump, 'K3.A2', 'TB2.C')).toBeGreaterThan(20);
    expect(volts(pump, 'K3.A1', 'K3.A2')).toBeLessThan(1);
  });

  test('water in the pan stops the compressor and leaves the blower running', () => {
    const pump = heatPump('cooling', 'plant:pan-full');
    expect(pump.isClosed('FS1.contact')).toBe(false);
    expect(stateOf(pump, 'CMP')).toEqual(['off']);
    expect(stateOf(pump, 'M1')).toEqual(['running']);
  });

  test('a lost charge stops the compressor at the low-pressure switch', () => {
    const pump = heatPump('cooling', 'plant:charge-lost');
    expect(pump.isClosed('HPS.contact')).toBe(true);
    expect(pump.isClosed('LPS.contact')).toBe(false);
  });
});

describe('electric heat', () => {
  test('draws 5 kW’s worth of current at the voltage that is there', () => {
    const pump = heatPump('heating-auxiliary');
    // I = V·P/V², Ohm’s law with the element’s nameplate
    const expected = (volts(pump, 'EH1.1', 'EH1.2') * 5000) / 240 ** 2;
    expect(amps(pump, 'W27')).toBeCloseTo(expected, 2);
    expect(expected).toBeGreaterThan(20);
  });

  test('runs the blower by its own contact when G is dead', () => {
    const pump = heatPump('heating-auxiliary', 'TS:G-dead');
    expect(pump.isClosed('K1.blower')).toBe(false);
    expect(stateOf(pump, 'M1')).toEqual(['running']);
  });

  test('without its feed it is cold: the blower’s contacts do not carry the element', () => {
    expect(amps(heatPump('heating-auxiliary', 'W25:open'), 'W27')).toBeLessThan(0.1);
  });
});

describe('defrost', () => {
  const pump = heatPump('defrost');

  test('the board’s W2 goes back to the thermostat’s own W2 terminal, whose contact is open', () => {
    expect(pump.isClosed('TS.W2')).toBe(false);
    expect(volts(pump, 'TS.W2', 'TS.C')).toBeGreaterThan(20);
    expect(stateOf(pump, 'K2')).toEqual(['pulled-in']);
  });

  test('the valve is turned over from the board, and O to the thermostat carries no more than a stray voltage', () => {
    expect(volts(pump, 'RVS.1', 'RVS.2')).toBeGreaterThan(19);
    expect(pump.isClosed('DB1.cooling')).toBe(false);
    const {ohms} = pump.thevenin('TB1.O', 'TB1.C', 'ac');
    expect(Math.hypot(ohms.re, ohms.im)).toBeGreaterThan(100_000);
  });

  test('everything that it holds in takes less than the transformer’s 40 VA', () => {
    expect(amps(pump, 'W33') * volts(pump, 'TB1.R', 'TB1.C')).toBeLessThan(40);
    expect(amps(pump, 'W33') * volts(pump, 'TB1.R', 'TB1.C')).toBeGreaterThan(15);
  });
});

test('the spare conductor reads a stray voltage, behind an impedance that no load could be fed through', () => {
  const pump = heatPump('cooling');
  const {volts: open, ohms} = pump.thevenin('TB1.X', 'TB1.C', 'ac');
  expect(Math.hypot(open.re, open.im)).toBeGreaterThan(2);
  expect(Math.hypot(ohms.re, ohms.im)).toBeGreaterThan(100_000);
});
