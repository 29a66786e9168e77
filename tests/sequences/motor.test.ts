import {describe, expect, test} from 'vitest';
import {balancedSpeed} from '../../src/sequences/motor-balance.ts';
import {BenchPart} from './fixtures/bench-part.ts';
import {partOf} from './fixtures/small-unit.ts';

const overload = {
  ratedAmps: 15,
  riseDegFAtRated: 90,
  tripDegF: 260,
  resetDegF: 170,
  timeConstantMinutes: 5,
  coolingTimeConstantMinutes: 25,
};
const model = {
  ratedVolts: 230,
  poles: 2,
  mainOhms: 0.8,
  mainReactanceOhms: 0.69,
  startOhms: 2,
  startReactanceOhms: 1.37,
  turnsRatio: 1.33,
  rotorOhms: 1.32,
  rotorReactanceOhms: 1.1,
  magnetisingOhms: 28.9,
  loadNewtonMetres: 7.94,
  loadExponent: 1,
  breakawayNewtonMetres: 1.6,
};
const compressor = () =>
  new BenchPart(
    partOf('CMP', 'psc-motor', {
      drives: 'compressor',
      leads: {common: 'C', run: 'R', start: 'S'},
      model,
      overload,
    }),
  );
const draws = (amps: number, atMs = 0) => ({
  amps: {'CMP.overload': amps},
  plant: {outdoorDegF: 95},
  atMs,
});
const seconds = (ms: number) => ms / 1000;

describe('the internal overload of a compressor', () => {
  test('carries its rated amps for ever', () => {
    expect(compressor().show(draws(15)).dueAtMs).toBeUndefined();
  });

  test('on locked rotor opens in seconds: by hand, 300 s · ln(2434 / (2434 − 165)) = 21 s', () => {
    const cmp = compressor().show(draws(78));
    const rise = 90 * (78 / 15) ** 2;
    expect(seconds(cmp.dueAtMs!)).toBeCloseTo(300 * Math.log(rise / (rise - (260 - 95))), 1);
    cmp.untilDue();
    expect(cmp.isClosed('overload')).toBe(false);
  });

  test('closes again when it has cooled, many minutes later', () => {
    const cmp = compressor().show(draws(78)).untilDue().show({amps: {}});
    const opened = cmp.atMs;
    // 25 min · ln((260 − 95) / (170 − 95))
    expect(seconds(cmp.dueAtMs! - opened) / 60).toBeCloseTo(25 * Math.log(165 / 75), 1);
    expect(cmp.untilDue().isClosed('overload')).toBe(true);
  });

  test('opens sooner the second time, for it starts warm', () => {
    const cmp = compressor().show(draws(78)).untilDue().show({amps: {}}).untilDue();
    const again = cmp.show({amps: {'CMP.overload': 78}});
    expect(seconds(again.dueAtMs! - again.atMs)).toBeLessThan(15);
  });

  test('a small overload takes minutes', () => {
    const minutes = seconds(compressor().show(draws(24)).dueAtMs!) / 60;
    expect(minutes).toBeGreaterThan(3);
    expect(minutes).toBeLessThan(15);
  });
});

describe('a rotor', () => {
  const load = {loadNewtonMetres: 1, loadExponent: 0, breakawayNewtonMetres: 1};
  /** A torque curve with a starting torque, a hump at 0.8 and nothing at synchronous speed. */
  const hump = (starting: number) => (speed: number) =>
    speed < 0.8 ? starting + (3 - starting) * (speed / 0.8) : 15 * (1 - speed);

  test('that cannot beat the breakaway torque stays at rest', () => {
    expect(balancedSpeed(load, 0, hump(0.9))).toBe(0);
  });

  test('that can runs up to where torque meets load', () => {
    expect(balancedSpeed(load, 0, hump(1.1))).toBeCloseTo(1 - 1 / 15, 6);
  });

  test('once running keeps running where it could not have started', () => {
    expect(balancedSpeed(load, 0.93, hump(0))).toBeCloseTo(1 - 1 / 15, 6);
  });

  test('stalls when the torque sinks below the load at every speed', () => {
    expect(balancedSpeed(load, 0.93, (speed) => hump(0)(speed) / 4)).toBe(0);
  });

  test('without power comes to rest', () => {
    expect(balancedSpeed({...load, loadExponent: 2}, 0.93, () => 0)).toBe(0);
  });

  test('driven backwards runs backwards', () => {
    const backwards = (speed: number) => -hump(1.5)(-speed);
    expect(balancedSpeed(load, 0, backwards)).toBeCloseTo(-(1 - 1 / 15), 6);
  });
});
