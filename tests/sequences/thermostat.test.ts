import {describe, expect, test} from 'vitest';
import {BenchPart} from './fixtures/bench-part.ts';
import {partOf} from './fixtures/small-unit.ts';

const thermostat = (room: number) =>
  new BenchPart(
    partOf('TS', 'thermostat', {differentialDegF: 1, auxiliaryBelowDegF: 2.5, blankBelowVolts: 16}),
  ).show({
    voltsIn: {'TS.supply': 24},
    plant: {roomDegF: room},
  });
const room = (roomDegF: number) => ({plant: {roomDegF}});
const calls = (ts: BenchPart) =>
  ['Y', 'G', 'O', 'W2'].filter((call) => ts.isClosed(call)).join(' ');

test('off, it calls for nothing and shows the room', () => {
  const ts = thermostat(80);
  expect(calls(ts)).toBe('');
  expect(ts.observed()).toEqual(['Off 80 °F · set 72 °F']);
});

test('fan on closes G whatever the mode', () => {
  expect(calls(thermostat(72).set('fan', 'on'))).toBe('G');
});

describe('cooling', () => {
  test('calls Y, G and O once the room is the differential above the set point', () => {
    expect(calls(thermostat(72.9).set('mode', 'cool'))).toBe('');
    expect(calls(thermostat(73).set('mode', 'cool'))).toBe('Y G O');
  });

  test('goes on down to the set point, then lets go', () => {
    const ts = thermostat(75).set('mode', 'cool');
    expect(calls(ts.show(room(72.1)))).toBe('Y G O');
    expect(calls(ts.show(room(72)))).toBe('');
  });

  test('calls at once when the set point is turned down', () => {
    const ts = thermostat(72).set('mode', 'cool');
    expect(calls(ts.set('setPointDegF', 70))).toBe('Y G O');
  });
});

describe('heating', () => {
  test('calls Y and G below the set point, without O', () => {
    expect(calls(thermostat(71).set('mode', 'heat'))).toBe('Y G');
  });

  test('adds W2 when the room falls far behind and drops it on the way back up', () => {
    const ts = thermostat(69.5).set('mode', 'heat');
    expect(calls(ts)).toBe('Y G W2');
    expect(calls(ts.show(room(70.4)))).toBe('Y G W2');
    expect(calls(ts.show(room(70.5)))).toBe('Y G');
    expect(calls(ts.show(room(72)))).toBe('');
  });

  test('turned to cooling in the middle of a call it lets go of the heating', () => {
    expect(calls(thermostat(68).set('mode', 'heat').set('mode', 'cool'))).toBe('');
  });
});

describe('without its 24 volts', () => {
  test('it goes blank and lets go of every call', () => {
    const ts = thermostat(80).set('mode', 'cool').set('fan', 'on');
    ts.show({voltsIn: {'TS.supply': 0}, atMs: 10_000}).untilDue();
    expect(calls(ts)).toBe('');
    expect(ts.observed()).toEqual(['blank']);
  });

  test('it rides through a dip of a second', () => {
    const ts = thermostat(80).set('mode', 'cool');
    ts.show({voltsIn: {'TS.supply': 5}, atMs: 10_000}).show({
      voltsIn: {'TS.supply': 24},
      atMs: 11_000,
    });
    expect(calls(ts)).toBe('Y G O');
    expect(ts.dueAtMs).toBeUndefined();
  });

  test('it starts up again with the settings it had', () => {
    const ts = thermostat(80).set('mode', 'cool').set('setPointDegF', 70);
    ts.show({voltsIn: {'TS.supply': 0}, atMs: 10_000}).untilDue();
    ts.show({voltsIn: {'TS.supply': 24}, atMs: 60_000});
    expect(calls(ts)).toBe('');
    ts.untilDue();
    expect(ts.observed()).toEqual(['Cool 80 °F · set 70 °F']);
    expect(calls(ts)).toBe('Y G O');
  });
});

describe('a thermostat set up for a furnace', () => {
  const furnace = (equipment: string) =>
    new BenchPart(partOf('TS', 'thermostat', {equipment})).show({
      voltsIn: {'TS.supply': 25},
      plant: {roomDegF: 66},
      atMs: 0,
    });

  test('calls W alone for heat: the furnace runs its own blower', () => {
    const ts = furnace('furnace').set('setPointDegF', 70).set('mode', 'heat');
    expect([ts.isClosed('W'), ts.isClosed('G')]).toEqual([true, false]);
    ts.set('fan', 'on');
    expect(ts.isClosed('G')).toBe(true);
  });

  test('with cooling it calls Y and G for cool, and never a second stage for heat', () => {
    const ts = furnace('furnace-cooling').set('setPointDegF', 60).set('mode', 'cool');
    expect(['Y', 'W', 'G'].map((call) => ts.isClosed(call))).toEqual([true, false, true]);
    ts.set('setPointDegF', 80).set('mode', 'heat');
    expect(['Y', 'W', 'G'].map((call) => ts.isClosed(call))).toEqual([false, true, false]);
    expect(ts.isClosed('W2')).toBeUndefined();
  });
});
