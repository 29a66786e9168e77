import {expect, test} from 'vitest';
import {Allowance, BackOff} from '../../../src/server/class/back-off.ts';
import {ServerClock} from '../../../src/server/class/server-clock.ts';

test('four failures are free; after that each one doubles the wait, up to a quarter of an hour', () => {
  let now = 0;
  const backOff = new BackOff(() => now);
  for (let i = 0; i < 3; i++) backOff.fail('a');
  expect(backOff.waitMs('a')).toBe(0);
  const waits: number[] = [];
  for (let i = 0; i < 12; i++) {
    backOff.fail('a');
    waits.push(backOff.waitMs('a'));
    now += waits.at(-1)!;
  }
  expect(waits.slice(0, 4)).toEqual([2000, 4000, 8000, 16000]);
  expect(waits.at(-1)).toBe(15 * 60_000);
  expect(backOff.waitMs('b')).toBe(0);
  backOff.fail('a');
  backOff.succeed('a');
  expect(backOff.waitMs('a')).toBe(0);
});

test('an allowance lets a burst through, then so many a second', () => {
  let now = 0;
  const allowance = new Allowance(2, 3, () => now);
  expect([1, 2, 3, 4].map(() => allowance.take())).toEqual([true, true, true, false]);
  now += 500;
  expect([allowance.take(), allowance.take()]).toEqual([true, false]);
});

test('setting the computer’s clock in mid-lesson changes no time in the records', () => {
  let steady = 0;
  const clock = new ServerClock(1_000_000, () => steady);
  steady = 5_000;
  expect(clock.now()).toBe(1_005_000);
});

test('a clock that is behind the records at the start goes on from the last one', () => {
  const {clock, behindMs} = ServerClock.notBefore(2_000_000, 1_000_000);
  expect(behindMs).toBe(1_000_000);
  expect(clock.now()).toBeGreaterThanOrEqual(2_000_000);
});
