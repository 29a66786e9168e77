import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {ignitionBoard} from '../../src/parts/ignition-board.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';

// Bands: a gas-furnace service manual's table of flame current (read; brand withheld): normal at least 1.5 µA DC, low
// 0.5 to 1.4 µA, drop-out at 0.4 µA or less. Method: several gas-furnace manuals (read): a meter on direct-current
// microamps in series, the flame sensor's wire broken.
const bands = {normalFrom: 1.5, lowFrom: 0.5, dropOutUpTo: 0.4};

const burning = (id: string): OperatingUnit => {
  const unit = readShippedUnit(id);
  const operating = operateUnit(unit, []);
  for (const {target, value} of unit.sequences.find((each) => each.id === 'heating')!.set)
    operating.set(target, value);
  operating.advance(120_000);
  return operating;
};

test("the board's own thresholds: the low band is proved, drop-out is lost", () => {
  const {provedMicroamps, lostMicroamps} = ignitionBoard.data.parse({});
  expect(provedMicroamps).toBeLessThanOrEqual(bands.lowFrom);
  expect(lostMicroamps).toBeGreaterThanOrEqual(bands.dropOutUpTo);
  expect(lostMicroamps).toBeLessThan(bands.lowFrom);
});

describe.each(['gas-furnace', 'furnace-split-cooling'])('the flame of %s', (id) => {
  const rodWire = 'W30';

  test('makes a normal current in the rod wire', () => {
    const micro = Math.abs(burning(id).solution('dc').amps(rodWire).re) * 1e6;
    expect(micro).toBeGreaterThanOrEqual(bands.normalFrom);
  });

  test('is direct current: the volts that it makes at the board have a sign, the rod below the burners', () => {
    expect(burning(id).dcVolts('IB1.FS', 'IB1.GND')).toBeLessThan(-1);
  });

  test('is measured in series, for in parallel the meter is only a way round: 10 MΩ take a tenth of it', () => {
    const {ohms, volts} = burning(id).thevenin('FR1.ROD', 'FR1.BNR', 'dc');
    // volts of a 10 MΩ meter across the rod, over its own input: far less than the flame's current
    const through = Math.abs(volts.re / (ohms.re + 10e6)) * 1e6;
    expect(through).toBeLessThan(bands.dropOutUpTo);
  });
});
