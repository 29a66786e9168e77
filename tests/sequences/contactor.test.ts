import {expect, test} from 'vitest';
import {BenchPart} from './fixtures/bench-part.ts';
import {coil24, partOf} from './fixtures/small-unit.ts';

const contactor = () => new BenchPart(partOf('K1', 'contactor', {poles: 2, coil: coil24}));
const coilAt = (volts: number) => ({voltsIn: {'K1.coil': volts}});

test('a contactor stays out just below its pull-in volts and pulls in at them', () => {
  expect(contactor().show(coilAt(17.9)).isClosed('pole1')).toBe(false);
  expect(contactor().show(coilAt(18)).isClosed('pole1')).toBe(true);
});

test('all poles move together and the coil seals', () => {
  const {states} = contactor().show(coilAt(24));
  expect(states).toEqual({
    'K1.coil': {sealed: true},
    'K1.pole1': {closed: true},
    'K1.pole2': {closed: true},
  });
});

test('a held contactor ignores a dip that stays above drop-out, and lets go below', () => {
  const held = contactor().show(coilAt(24));
  expect(held.show(coilAt(10.9)).isClosed('pole1')).toBe(true);
  expect(held.show(coilAt(10.7)).isClosed('pole1')).toBe(false);
});

test('volts at which it would have held are not enough to pull it in', () => {
  expect(contactor().show(coilAt(15)).isClosed('pole1')).toBe(false);
});

test('with volts between drop-out and pull-in it can be heard buzzing', () => {
  expect(contactor().show(coilAt(14)).observed()).toEqual(['humming']);
  expect(contactor().show(coilAt(2)).observed()).toEqual(['off']);
});

test('a jammed armature never pulls in', () => {
  const jammed = contactor().show({...coilAt(24), behaviour: {armature: 'jammed'}});
  expect(jammed.isClosed('pole1')).toBe(false);
});

// IEC 60947-4-1 limits as stated in a technical note: an AC contactor must pick up from 85 % of rated coil volts.
test('it picks up at 85 % of rated volts, 20.4 V of 24 V', () => {
  expect(contactor().show(coilAt(20.4)).isClosed('pole1')).toBe(true);
});
