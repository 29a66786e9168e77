import {describe, expect, test} from 'vitest';
import {BenchPart} from './fixtures/bench-part.ts';
import {coil24, partOf} from './fixtures/small-unit.ts';

const contacts = [
  {id: 'make', terminals: ['2', '4'], form: 'NO'},
  {id: 'break', terminals: ['5', '6'], form: 'NC'},
];
const relay = (delays = {}) =>
  new BenchPart(partOf('K1', 'relay', {coil: coil24, contacts, ...delays}));
const on = {voltsIn: {'K1.coil': 24}};
const off = {voltsIn: {'K1.coil': 0}};

test('normally open and normally closed contacts change over together', () => {
  const k1 = relay();
  expect([k1.isClosed('make'), k1.isClosed('break')]).toEqual([false, true]);
  k1.show(on);
  expect([k1.isClosed('make'), k1.isClosed('break')]).toEqual([true, false]);
  k1.show(off);
  expect([k1.isClosed('make'), k1.isClosed('break')]).toEqual([false, true]);
});

describe('an off-delay relay', () => {
  test('holds its contacts for the delay after its coil lets go', () => {
    const k1 = relay({offDelaySeconds: 45})
      .show({...on, atMs: 1000})
      .show({...off, atMs: 5000});
    expect(k1.isClosed('make')).toBe(true);
    expect(k1.dueAtMs).toBe(50000);
    expect(k1.untilDue().isClosed('make')).toBe(false);
  });

  test('stays in when the coil comes back within the delay, and starts the whole delay again', () => {
    const k1 = relay({offDelaySeconds: 45})
      .show(on)
      .show({...off, atMs: 5000});
    k1.show({...on, atMs: 20000});
    expect(k1.dueAtMs).toBeUndefined();
    expect(k1.show({...off, atMs: 30000}).dueAtMs).toBe(75000);
  });
});

describe('an on-delay relay', () => {
  test('makes its contacts late', () => {
    const k1 = relay({onDelaySeconds: 10}).show({...on, atMs: 2000});
    expect(k1.isClosed('make')).toBe(false);
    expect(k1.dueAtMs).toBe(12000);
    expect(k1.untilDue().isClosed('make')).toBe(true);
  });

  test('forgets a call that goes before the delay is over', () => {
    const k1 = relay({onDelaySeconds: 10})
      .show({...on, atMs: 2000})
      .show({...off, atMs: 5000});
    expect(k1.dueAtMs).toBeUndefined();
    expect(k1.isClosed('make')).toBe(false);
  });
});

test('a solenoid shifts its valve when it pulls in and lets it return', () => {
  const valve = new BenchPart(partOf('K1', 'solenoid', {coil: coil24}));
  expect(valve.observed()).toEqual([]);
  expect(valve.show(on).observed()).toEqual(['shifted']);
  expect(valve.show(off).state).toBe('returned');
});
