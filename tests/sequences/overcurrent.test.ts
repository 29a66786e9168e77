import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {breakerCurve} from '../../src/sequences/machines/breaker.machine.ts';
import {fuseCurve} from '../../src/sequences/machines/fuse.machine.ts';
import {windingCurve} from '../../src/sequences/machines/transformer.machine.ts';
import {
  cold,
  follow,
  opensAtMs,
  secondsToOpen,
  type TimeCurrentCurve,
} from '../../src/sequences/time-current-curve.ts';
import {BenchPart} from './fixtures/bench-part.ts';
import {partOf} from './fixtures/small-unit.ts';

describe('a branch breaker', () => {
  // Public comparison of UL 489 and UL 1077: 100 % held; 135 % within 1 h to 50 A; 200 % within 2 min to 30 A.
  test('holds its rating, trips within an hour at 135 % and within two minutes at 200 % (UL 489)', () => {
    expect(secondsToOpen(breakerCurve, 1)).toBe(Infinity);
    expect(secondsToOpen(breakerCurve, 27 / 20)).toBeLessThanOrEqual(3600);
    expect(secondsToOpen(breakerCurve, 40 / 20)).toBeLessThanOrEqual(120);
  });

  // common practice, no source: a locked compressor draws five times its running amps for a few seconds at a start
  test('does not trip on the few seconds of a motor starting at five times its rating', () => {
    expect(secondsToOpen(breakerCurve, 5)).toBeGreaterThan(2);
  });

  const breaker = () => new BenchPart(partOf('CB1', 'breaker', {poles: 2, amps: 30}));

  test('trips at once on a bolted short, both poles', () => {
    const cb = breaker().show({amps: {'CB1.pole2': 400}});
    expect([cb.isClosed('pole1'), cb.isClosed('pole2')]).toEqual([false, false]);
    expect(cb.observed()).toEqual(['tripped']);
  });

  test('tripped, its handle goes on again only by way of off', () => {
    const cb = breaker().show({amps: {'CB1.pole1': 400}});
    cb.show({amps: {}});
    expect(cb.set('position', 'on').state).toBe('tripped');
    expect(cb.set('position', 'off').state).toBe('off');
    expect(cb.set('position', 'on').isClosed('pole1')).toBe(true);
  });

  test('heats up through an overload that comes and goes', () => {
    const cb = breaker().show({amps: {'CB1.pole1': 60}, atMs: 0});
    expect(cb.dueAtMs).toBe(60_000);
    // forty seconds of it, twenty of rest: it has not forgotten
    cb.show({amps: {'CB1.pole1': 10}, atMs: 40_000});
    expect(cb.dueAtMs).toBeUndefined();
    cb.show({amps: {'CB1.pole1': 60}, atMs: 60_000});
    expect(cb.dueAtMs! - 60_000).toBeLessThan(30_000);
    expect(cb.dueAtMs! - 60_000).toBeGreaterThan(20_000);
    expect(cb.untilDue().state).toBe('tripped');
  });
});

describe('a control fuse', () => {
  const fuse = () => new BenchPart(partOf('F1', 'fuse', {amps: 3}));

  test('carries its rating for ever', () => {
    expect(fuse().show({amps: {'F1.link': 3}}).dueAtMs).toBeUndefined();
  });

  // Fuse selection guide summary of UL 248-14: carries 100 %, opens within 1 h at 135 % and 2 min at 200 % (to 30 A).
  test('opens within an hour at 135 % and within two minutes at 200 % (UL 248-14)', () => {
    expect(secondsToOpen(fuseCurve, 1)).toBe(Infinity);
    expect(secondsToOpen(fuseCurve, 6.75 / 5)).toBeLessThanOrEqual(3600);
    expect(secondsToOpen(fuseCurve, 10 / 5)).toBeLessThanOrEqual(120);
  });

  test('blows in well under a second on a shorted 40 VA transformer, and stays blown', () => {
    const f1 = fuse().show({amps: {'F1.link': 12}});
    expect(f1.dueAtMs).toBeLessThan(500);
    f1.untilDue();
    expect(f1.isClosed('link')).toBe(false);
    expect(f1.show({amps: {'F1.link': 0}}).isClosed('link')).toBe(false);
  });

  // 135 % of the rated 1.67 A of a 40 VA transformer is 2.25 A, 0.75 of the fuse (arithmetic)
  test('does not protect a 40 VA transformer from a mild overload', () => {
    expect(secondsToOpen(fuseCurve, (1.35 * 40) / 24 / 3)).toBe(Infinity);
  });

  test('cannot be seen to be blown: that is what a meter is for', () => {
    const f1 = fuse().show({amps: {'F1.link': 100}});
    expect(f1.isClosed('link')).toBe(false);
    expect(f1.observed()).toEqual([]);
  });
});

test('a shorted transformer without a fuse burns its primary open, and not in the first half minute', () => {
  const t1 = new BenchPart(
    partOf('T1', 'transformer', {va: 40, taps: [{terminal: 'H2', volts: 240}], secondaryVolts: 24}),
  ).show({amps: {'T1.secondary': 16}});
  expect(t1.dueAtMs).toBeGreaterThan(30_000);
  expect(t1.dueAtMs).toBeLessThan(300_000);
  t1.untilDue();
  expect(t1.states).toEqual({'T1.primary': {open: true}});
  expect(t1.observed()).toEqual(['burnt']);
});

describe.each([
  ['breaker', breakerCurve],
  ['fuse', fuseCurve],
  ['transformer winding', windingCurve],
] as [string, TimeCurrentCurve][])('the curve of a %s', (_name, curve) => {
  const multiple = fc.double({min: 0.5, max: 200, noNaN: true});

  test('never takes longer at more current', () => {
    fc.assert(
      fc.property(multiple, multiple, (p, q) => {
        const [less, more] = p < q ? [p, q] : [q, p];
        return secondsToOpen(curve, more) <= secondsToOpen(curve, less);
      }),
    );
  });

  test('opens at the same moment however often the current is looked at in between', () => {
    fc.assert(
      fc.property(
        fc.double({min: 1.4, max: 8, noNaN: true}),
        fc.double({min: 0.1, max: 0.9, noNaN: true}),
        (m, cut) => {
          const whole = opensAtMs(curve, follow(curve, cold, m, 0))!;
          const third = Math.round((whole * cut) / 2);
          let looked = follow(curve, cold, m, 0);
          for (const atMs of [third, 2 * third]) looked = follow(curve, looked, m, atMs);
          return Math.abs(opensAtMs(curve, looked)! - whole) <= 2;
        },
      ),
    );
  });
});
