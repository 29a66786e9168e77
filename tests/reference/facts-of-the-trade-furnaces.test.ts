import {describe, expect, test} from 'vitest';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';
import {amps, is, ohms, secondsUntil, set, unitWith, volts} from './at-a-unit.ts';

// What everybody in the trade knows, and no standard says. Each is common practice, no source.

const heat = {'plant.roomDegF': 66, 'TS.setPointDegF': 72, 'TS.mode': 'heat'};
const gas = (...faults: string[]): OperatingUnit => unitWith('gas-furnace', ...faults);
const electric = (...faults: string[]): OperatingUnit => unitWith('electric-furnace', ...faults);

describe('common practice, no source: a gas furnace', () => {
  test('lights in this order: inducer, draft proved, igniter, gas, flame, blower', () => {
    const furnace = set(gas(), heat);
    const since = (holds: () => boolean): number => secondsUntil(furnace, holds, 120)!;
    const inducer = since(() => is(furnace, 'M2').includes('running'));
    const draft = inducer + since(() => furnace.isClosed('PS1.contact'));
    const igniter = draft + since(() => volts(furnace, 'IG1.1', 'IG1.2') > 110);
    const valve = igniter + since(() => is(furnace, 'GV1').includes('shifted'));
    const flame = valve + since(() => is(furnace, 'FR1').includes('lit'));
    const blower = flame + since(() => is(furnace, 'M1').includes('running'));
    const order = [inducer, draft, igniter, valve, flame, blower];
    expect(order.every(Number.isFinite)).toBe(true);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    expect(blower).toBeGreaterThan(valve + 20);
  });

  test('the pre-purge takes ten seconds and more, the igniter some twenty to warm up', () => {
    const furnace = set(gas(), heat);
    secondsUntil(furnace, () => furnace.isClosed('PS1.contact'), 30);
    const purge = secondsUntil(furnace, () => volts(furnace, 'IG1.1', 'IG1.2') > 110, 60)!;
    const warmUp = secondsUntil(furnace, () => is(furnace, 'GV1').includes('shifted'), 60)!;
    expect(purge).toBeGreaterThanOrEqual(10);
    expect(warmUp).toBeGreaterThanOrEqual(15);
    expect(warmUp).toBeLessThanOrEqual(45);
  });

  test('the igniter is off again once the flame is proved', () => {
    const furnace = set(gas(), heat, 100);
    expect(is(furnace, 'FR1')).toContain('lit');
    expect(volts(furnace, 'IG1.1', 'IG1.2')).toBeLessThan(5);
  });

  test('a silicon carbide igniter reads 40 to 90 Ω cold, and draws some 4 A hot', () => {
    const cold = gas();
    set(cold, {'CB1.position': 'off'});
    cold.lift('W21.to');
    expect(ohms(cold, 'IG1.1', 'IG1.2')).toBeGreaterThan(40);
    expect(ohms(cold, 'IG1.1', 'IG1.2')).toBeLessThan(90);
    const glowing = set(gas(), heat, 35);
    expect(amps(glowing, 'W21')).toBeGreaterThan(3);
    expect(amps(glowing, 'W21')).toBeLessThan(5);
  });

  test('with the igniter broken there is 120 V on it, no amps and no flame', () => {
    const furnace = set(gas('IG1:open'), heat, 33);
    expect(volts(furnace, 'IG1.1', 'IG1.2')).toBeGreaterThan(110);
    expect(amps(furnace, 'W21')).toBeLessThan(0.02);
  });

  test('24 V on the gas valve and no flame: the valve or the gas, not the control', () => {
    const furnace = set(gas('plant:gas-off'), heat);
    const valve = secondsUntil(furnace, () => volts(furnace, 'GV1.1', 'GV1.2') > 20, 120);
    expect(valve).toBeDefined();
    furnace.advance(2000);
    expect(is(furnace, 'FR1')).not.toContain('lit');
  });

  test('without flame the valve is shut again within seconds, and after a few tries the board locks out', () => {
    const furnace = set(gas('plant:gas-off'), heat);
    secondsUntil(furnace, () => volts(furnace, 'GV1.1', 'GV1.2') > 20, 120);
    const open = secondsUntil(furnace, () => volts(furnace, 'GV1.1', 'GV1.2') < 5, 30)!;
    expect(open).toBeLessThanOrEqual(10);
    furnace.advance(10 * 60_000);
    // locked out: no more tries for a long time
    const again = secondsUntil(furnace, () => volts(furnace, 'GV1.1', 'GV1.2') > 20, 600, 2);
    expect(again).toBeUndefined();
  });

  test('a board that is not told of the flame shuts the gas on a good fire', () => {
    const furnace = set(gas('FR1:open'), heat);
    const lit = secondsUntil(furnace, () => is(furnace, 'FR1').includes('lit'), 120)!;
    expect(lit).toBeGreaterThan(20);
    expect(secondsUntil(furnace, () => !is(furnace, 'FR1').includes('lit'), 15)).toBeDefined();
  });

  test('a pressure switch that is closed before the inducer turns keeps the furnace from lighting', () => {
    const furnace = set(gas('PS1:stuck-closed'), heat, 120);
    expect(is(furnace, 'FR1')).not.toContain('lit');
    expect(volts(furnace, 'GV1.1', 'GV1.2')).toBeLessThan(5);
  });

  test('with the vent blocked the inducer turns, the pressure switch stays open, and no gas comes', () => {
    const furnace = set(gas('plant:vent-blocked'), heat, 60);
    expect(is(furnace, 'M2')).toContain('running');
    expect(furnace.isClosed('PS1.contact')).toBe(false);
    expect(volts(furnace, 'GV1.1', 'GV1.2')).toBeLessThan(5);
  });

  test('a filter blocked hard opens the limit while the burners are on, and the blower goes on cooling', () => {
    const furnace = set(gas('plant:air-filter-blocked'), heat);
    const opened = secondsUntil(furnace, () => !furnace.isClosed('LS1.contact'), 1800, 5);
    expect(opened).toBeDefined();
    furnace.advance(3000);
    expect(is(furnace, 'FR1')).not.toContain('lit');
    expect(volts(furnace, 'IB1.BLO', 'IB1.N')).toBeGreaterThan(110);
  });

  test('a limit closes again by itself as it cools; a roll-out switch waits for a hand', () => {
    const limit = set(gas('plant:air-filter-blocked'), heat);
    secondsUntil(limit, () => !limit.isClosed('LS1.contact'), 1800, 5);
    expect(secondsUntil(limit, () => limit.isClosed('LS1.contact'), 1800, 5)).toBeDefined();
    const rollOut = set(gas('plant:flue-sooted'), heat);
    expect(secondsUntil(rollOut, () => !rollOut.isClosed('ROS.contact'), 1800, 5)).toBeDefined();
    set(rollOut, {'TS.mode': 'off'}, 3600);
    expect(rollOut.isClosed('ROS.contact')).toBe(false);
  });

  test('the blower runs on after the burners, to use the heat that is left', () => {
    const furnace = set(gas(), heat, 300);
    set(furnace, {'TS.mode': 'off'}, 5);
    expect(is(furnace, 'FR1')).not.toContain('lit');
    expect(is(furnace, 'M1')).toContain('running');
    expect(
      secondsUntil(furnace, () => !is(furnace, 'M1').includes('running'), 300),
    ).toBeGreaterThan(30);
  });

  test('the door switch takes everything behind it dead; its line side stays live', () => {
    const furnace = gas();
    furnace.set('DRS.position', 'open');
    furnace.advance(5000);
    expect(volts(furnace, 'IB1.L', 'IB1.N')).toBeLessThan(5);
    expect(volts(furnace, 'DRS.1', 'IB1.N')).toBeGreaterThan(110);
    expect(volts(furnace, 'IB1.R', 'IB1.C')).toBeLessThan(1);
  });

  test('with the neutral open nothing runs, and the neutral behind the break is as hot as the line', () => {
    const furnace = set(gas('W4:open'), heat, 10);
    expect(is(furnace, 'M2')).not.toContain('running');
    expect(volts(furnace, 'IB1.L', 'GND2.E')).toBeGreaterThan(110);
    // through the loads that would like to run
    expect(volts(furnace, 'IB1.N', 'GND2.E')).toBeGreaterThan(80);
  });

  test('a 24 V gas valve is a coil of tens of ohms', () => {
    const furnace = gas();
    set(furnace, {'CB1.position': 'off'});
    furnace.lift('W28.to');
    expect(ohms(furnace, 'GV1.1', 'GV1.2')).toBeGreaterThan(10);
    expect(ohms(furnace, 'GV1.1', 'GV1.2')).toBeLessThan(200);
  });
});

describe('common practice, no source: an electric furnace', () => {
  const elements = ['W27', 'W32', 'W37'];
  const drawing = (furnace: OperatingUnit): number =>
    elements.filter((wire) => amps(furnace, wire) > 15).length;

  test('brings its elements on one after another, not all at once', () => {
    const furnace = set(electric(), heat);
    const first = secondsUntil(furnace, () => drawing(furnace) === 1, 300)!;
    const second = secondsUntil(furnace, () => drawing(furnace) === 2, 300)!;
    const third = secondsUntil(furnace, () => drawing(furnace) === 3, 300)!;
    expect(first).toBeGreaterThan(5);
    expect(second).toBeGreaterThan(5);
    expect(third).toBeGreaterThan(5);
  });

  test('turns its blower with the first element or before', () => {
    const furnace = set(electric(), heat);
    secondsUntil(furnace, () => drawing(furnace) === 1, 300);
    expect(is(furnace, 'M1')).toContain('running');
  });

  test('lets its elements go before its blower', () => {
    const furnace = set(electric(), heat, 600);
    set(furnace, {'TS.mode': 'off'});
    secondsUntil(furnace, () => drawing(furnace) === 0, 600);
    expect(is(furnace, 'M1')).toContain('running');
    expect(secondsUntil(furnace, () => !is(furnace, 'M1').includes('running'), 600)).toBeDefined();
  });

  test('an element of 5 kW at 240 V takes some 20.8 A', () => {
    const furnace = set(electric(), heat, 600);
    for (const wire of elements) {
      expect(amps(furnace, wire)).toBeGreaterThan(19.5);
      expect(amps(furnace, wire)).toBeLessThan(21);
    }
  });

  test('an open element has its full volts and no amps; its neighbours heat on', () => {
    const furnace = set(electric('EH2:open'), heat, 600);
    expect(volts(furnace, 'EH2.1', 'EH2.2')).toBeGreaterThan(225);
    expect(amps(furnace, 'W32')).toBeLessThan(0.02);
    expect(drawing(furnace)).toBe(2);
  });

  test('a blown fusible link stays open when it is cold again, and holds the full volts', () => {
    const furnace = set(electric('FL1:open'), heat, 600);
    expect(volts(furnace, 'FL1.1', 'FL1.2')).toBeGreaterThan(225);
    expect(drawing(furnace)).toBe(2);
  });

  test('without its blower the limits open and the element cycles on them', () => {
    const furnace = set(electric('M1:seized'), heat);
    expect(secondsUntil(furnace, () => !furnace.isClosed('LS1.contact'), 900, 2)).toBeDefined();
    expect(secondsUntil(furnace, () => furnace.isClosed('LS1.contact'), 1800, 5)).toBeDefined();
  });

  test('a welded sequencer contact heats with nobody calling, on and off by the limit', () => {
    const furnace = set(electric('SQ1:element-welded'), {'TS.mode': 'off'});
    expect(secondsUntil(furnace, () => amps(furnace, 'W27') > 15, 1800, 5)).toBeDefined();
    expect(secondsUntil(furnace, () => amps(furnace, 'W27') < 1, 1800, 5)).toBeDefined();
    expect(is(furnace, 'M1')).not.toContain('running');
  });

  test('pulling one of two disconnects leaves the other half of the furnace live', () => {
    const furnace = electric();
    set(furnace, {'DS1.position': 'open'}, 5);
    expect(volts(furnace, 'TB1.L1', 'TB1.L2')).toBeLessThan(5);
    expect(volts(furnace, 'TB2.L3', 'TB2.L4')).toBeGreaterThan(225);
  });
});
