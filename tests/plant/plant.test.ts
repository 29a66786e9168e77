import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {isBeyond, reachesAtMs, valueAt, type Course} from '../../src/plant/first-order.ts';
import {plantControls, plantKinds, plantOf} from '../../src/plant/plant-of.ts';
import {atRest} from '../../src/plant/plant.ts';
import {saturationPsig} from '../../src/plant/refrigerant-pressure.ts';

describe('a first-order response', () => {
  const course: Course = {startMs: 0, start: 100, target: 0, tauMs: 60_000};

  test('has gone 63.2 % of the way after one time constant (1 − 1/e)', () => {
    expect(valueAt(course, 60_000)).toBeCloseTo(100 / Math.E, 9);
  });

  test('a set point is reached at τ·ln(start/set point): half way after 0.693 τ', () => {
    expect(reachesAtMs(course, 50, 'fall', 0)).toBe(Math.ceil(60_000 * Math.LN2));
  });

  test('a set point past the target is never reached', () => {
    expect(reachesAtMs(course, -1, 'fall', 0)).toBeUndefined();
    expect(reachesAtMs(course, 0, 'fall', 0)).toBeUndefined();
    expect(reachesAtMs(course, 101, 'rise', 0)).toBeUndefined();
  });

  test('the answer is the first whole millisecond at or beyond the set point', () => {
    const value = fc.integer({min: -1000, max: 10_000}).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(
        value,
        value,
        value,
        fc.integer({min: 1, max: 4e6}),
        fc.integer({min: 0, max: 1e6}),
        (start, target, setPoint, tauMs, after) => {
          const c: Course = {startMs: 0, start, target, tauMs};
          const on = target > start ? 'rise' : 'fall';
          const at = reachesAtMs(c, setPoint, on, after);
          if (at === undefined) return true;
          return (
            at > after &&
            isBeyond(valueAt(c, at), setPoint, on) &&
            !isBeyond(valueAt(c, at - 1), setPoint, on)
          );
        },
      ),
      {numRuns: 2000},
    );
  });
});

// Open property library CoolProp 8 (bubble points, gauge = absolute − 14.696 psi): 48.4, 118.8, 318.5 psig; and the
// saturation temperatures −21.3 °F at 25 psig and 153.5 °F at 640 psig.
test.each([
  [0, 48.4, 0.005],
  [40, 118.8, 0.015],
  [100, 318.5, 0.005],
  [-21.3, 25, 0.06],
  [153.5, 640, 0.03],
])('the refrigerant at %d °F stands at %d psig', (degF, psig, within) => {
  expect(Math.abs(saturationPsig(degF) / psig - 1)).toBeLessThan(within);
});

describe('a plant set by hand', () => {
  const plant = plantOf('hand', {dischargePsig: 320});

  test('keeps what it is given', () => {
    expect(plant.value('dischargePsig', 1e9)).toBe(320);
    expect(plant.set('dischargePsig', 650, 0).value('dischargePsig', 1e9)).toBe(650);
    expect(plant.value('noSuchThing', 0)).toBeUndefined();
  });

  test('a fault holds a value against the hand until it is repaired', () => {
    const held = plant.hold({panInches: 2}, 0);
    expect(held.set('panInches', 0, 0).value('panInches', 0)).toBe(2);
    expect(held.release({panInches: 0}, 0).set('panInches', 1, 0).value('panInches', 0)).toBe(1);
  });
});

describe('the plant of a split heat pump', () => {
  const start = {roomDegF: 78, outdoorDegF: 92};
  const rest = plantOf('split-heat-pump', start);
  const cooling = {
    ...atRest,
    compressor: 0.96,
    outdoorFan: 0.9,
    indoorBlower: 0.9,
    valveShifted: true,
  };
  const after = (
    drive: typeof atRest,
    name: string,
    minutes = 15,
    set: Record<string, number> = {},
  ) => {
    let plant = rest;
    for (const [each, value] of Object.entries(set)) plant = plant.set(each, value, 0);
    plant = plant.drive(drive, 0);
    // looks at its course again when it wants to
    for (
      let due = plant.dueAtMs();
      due !== undefined && due <= minutes * 60_000;
      due = plant.dueAtMs()
    )
      plant = plant.arrive(due);
    return plant.value(name, minutes * 60_000)!;
  };

  test('at rest both pressures are the same', () => {
    expect(after(atRest, 'suctionPsig')).toBeCloseTo(after(atRest, 'dischargePsig'), 0);
  });

  test('running it draws suction down and drives discharge up', () => {
    expect(after(cooling, 'suctionPsig')).toBeLessThan(160);
    expect(after(cooling, 'dischargePsig')).toBeGreaterThan(320);
  });

  test('cools the supply air by some twenty degrees', () => {
    // common practice, no source: 16 to 22 °F across an indoor coil
    const drop = after(cooling, 'roomDegF') - after(cooling, 'supplyAirDegF');
    expect(drop).toBeGreaterThan(15);
    expect(drop).toBeLessThan(23);
  });

  test('without the outdoor fan the discharge pressure passes 610 psig within five minutes', () => {
    expect(
      rest.drive({...cooling, outdoorFan: 0}, 0).reachesAtMs('dischargePsig', 610, 'rise', 0),
    ).toBeLessThan(300_000);
    expect(rest.drive(cooling, 0).reachesAtMs('dischargePsig', 610, 'rise', 0)).toBeUndefined();
  });

  test('with a tenth of its charge suction falls below 25 psig', () => {
    expect(after(cooling, 'suctionPsig', 5, {chargeFraction: 0.1})).toBeLessThan(25);
  });

  test('in cold-weather heating suction stays above the loss-of-charge cut-out', () => {
    const heating = {...cooling, valveShifted: false};
    expect(after(heating, 'suctionPsig', 30, {outdoorDegF: 10})).toBeGreaterThan(25);
  });

  test('frosts the outdoor coil in damp cold, and defrost thaws it', () => {
    const heating = {...cooling, valveShifted: false};
    expect(after(heating, 'outdoorCoilDegF', 30, {outdoorDegF: 30})).toBeLessThan(28);
    const thawing = {...cooling, outdoorFan: 0};
    expect(
      after(thawing, 'outdoorCoilDegF', 10, {
        outdoorDegF: 30,
        outdoorCoilDegF: 20,
        frostFraction: 0.4,
      }),
    ).toBeGreaterThan(65);
  });

  test('electric heat without air makes the heater hot enough for its limit', () => {
    const heat = {...atRest, airHeatWatts: 5000};
    expect(after(heat, 'heaterDegF', 5)).toBeGreaterThan(333);
    expect(after({...heat, indoorBlower: 0.9}, 'heaterDegF', 30)).toBeLessThan(160);
  });

  test('a lost charge cannot be set back while the fault holds it; repaired, it can', () => {
    const leaking = rest.hold({chargeFraction: 0.1}, 0).set('chargeFraction', 1, 0);
    expect(leaking.value('chargeFraction', 0)).toBe(0.1);
    expect(leaking.release({chargeFraction: 1}, 0).value('chargeFraction', 0)).toBe(1);
  });

  test('the same drive again changes nothing', () => {
    const running = rest.drive(cooling, 0);
    expect(running.drive({...cooling}, 5000)).toBe(running);
  });
});

test('every control of a plant is a value that it has, within its range', () => {
  for (const kind of plantKinds)
    for (const {id, min, max, initial} of plantControls(kind)) {
      expect(plantOf(kind, {}).names).toContain(id);
      expect(Number(initial)).toBeGreaterThanOrEqual(min!);
      expect(Number(initial)).toBeLessThanOrEqual(max!);
    }
});

test('an unknown kind of plant names the known ones', () => {
  expect(() => plantOf('furnace', {})).toThrow('hand, split-heat-pump');
});
