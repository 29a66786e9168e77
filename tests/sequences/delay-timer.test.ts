import {expect, test} from 'vitest';
import {BenchPart} from './fixtures/bench-part.ts';
import {partOf} from './fixtures/small-unit.ts';

const timer = () => new BenchPart(partOf('TD1', 'delay-timer', {delayOnBreakSeconds: 300}));
const call = (volts: number, atMs: number) => ({voltsIn: {'TD1.supply': volts}, atMs});

test('a rested timer passes a call at once', () => {
  expect(timer().show(call(24, 0)).isClosed('out')).toBe(true);
});

test('after a break it holds the next call back until the delay has run', () => {
  const td = timer().show(call(24, 0)).show(call(0, 10_000)).untilDue();
  // half a second of riding through, then the break counts
  expect(td.atMs).toBe(10_500);
  expect(td.isClosed('out')).toBe(false);
  td.show(call(24, 60_000));
  expect(td.isClosed('out')).toBe(false);
  expect(td.dueAtMs).toBe(310_500);
  expect(td.untilDue().isClosed('out')).toBe(true);
});

test('without a call the delay just runs out, and the next call passes at once', () => {
  const td = timer().show(call(24, 0)).show(call(0, 10_000)).untilDue().untilDue();
  expect(td.state).toBe('rested');
  expect(td.show(call(24, 400_000)).isClosed('out')).toBe(true);
});

test('a dip shorter than half a second is not a break', () => {
  const td = timer().show(call(24, 0)).show(call(3, 10_000)).show(call(24, 10_200));
  expect(td.isClosed('out')).toBe(true);
  expect(td.dueAtMs).toBeUndefined();
});

test('stray volts are no call', () => {
  expect(timer().show(call(12, 0)).isClosed('out')).toBe(false);
});
