import {describe, expect, test} from 'vitest';
import {plantOf} from '../../src/plant/plant-of.ts';
import {atRest, type Plant, type PlantDrive} from '../../src/plant/plant.ts';

/** The plant after a time under one drive, looking at its own course whenever it wants to. */
function after(plant: Plant, drive: Partial<PlantDrive>, seconds: number, fromMs = 0): Plant {
  let now = plant.drive({...atRest, ...drive}, fromMs);
  const untilMs = fromMs + seconds * 1000;
  for (let due = now.dueAtMs(); due !== undefined && due <= untilMs; due = now.dueAtMs())
    now = now.arrive(due);
  return now;
}

describe('the plant of a gas furnace', () => {
  const cold = plantOf('gas-furnace', {roomDegF: 66});
  const inducing = {inducer: 0.95};
  const igniting = {...inducing, igniterWatts: 480};

  test('the inducer makes its draft within some seconds, and a blocked vent takes it away', () => {
    expect(after(cold, inducing, 20).value('draftInches', 20_000)).toBeGreaterThan(0.8);
    const blocked = cold.set('ventFraction', 0.05, 0);
    expect(after(blocked, inducing, 20).value('draftInches', 20_000)).toBeLessThan(0.5);
  });

  test('gas without an igniter never burns', () => {
    const open = after(cold, {...inducing, gasOpen: true}, 60);
    expect(open.value('flameFraction', 60_000)).toBeLessThan(0.01);
  });

  test('a hot igniter lights the gas, and the flame stays when the igniter is off', () => {
    const hot = after(cold, igniting, 20);
    expect(hot.value('igniterDegF', 20_000)).toBeGreaterThan(2000);
    const lit = after(hot, {...igniting, gasOpen: true}, 5, 20_000);
    expect(lit.value('flameFraction', 25_000)).toBeGreaterThan(0.95);
    const alone = after(lit, {...inducing, gasOpen: true}, 60, 25_000);
    expect(alone.value('flameFraction', 85_000)).toBeGreaterThan(0.95);
    const shut = after(alone, inducing, 5, 85_000);
    expect(shut.value('flameFraction', 90_000)).toBeLessThan(0.01);
  });

  test('an igniter that gets hot late lights the gas late', () => {
    const open = after(cold, {...inducing, gasOpen: true}, 10);
    const lit = after(open, {...igniting, gasOpen: true}, 20, 10_000);
    expect(lit.value('flameFraction', 30_000)).toBeGreaterThan(0.9);
  });

  // Btu/h = 1.08 × cfm × °F for standard air (the rule of air-side texts): 80 000 Btu/h at 80 % into 1200 cfm is 49 °F
  test('with its air the furnace warms it by about 50 °F, without it the exchanger passes its limit', () => {
    const burning = {...inducing, gasOpen: true};
    const lit = after(after(cold, igniting, 20), {...igniting, gasOpen: true}, 5, 20_000);
    const blown = after(lit, {...burning, indoorBlower: 0.91}, 900, 25_000);
    const rise = blown.value('supplyAirDegF', 925_000)! - blown.value('roomDegF', 925_000)!;
    expect(rise).toBeGreaterThan(49 * 0.85);
    expect(rise).toBeLessThan(49 * 1.15);
    expect(blown.value('heatExchangerDegF', 925_000)).toBeLessThan(190);
    expect(after(lit, burning, 900, 25_000).value('heatExchangerDegF', 925_000)).toBeGreaterThan(
      200,
    );
  });

  test('sooted flue passages roll the flame out in front of the burners', () => {
    const lit = after(after(cold, igniting, 20), {...igniting, gasOpen: true}, 5, 20_000);
    const rolled = lit.set('flueFraction', 0.35, 25_000);
    const later = after(rolled, {...inducing, gasOpen: true, indoorBlower: 0.9}, 60, 25_000);
    expect(later.value('burnerFrontDegF', 85_000)).toBeGreaterThan(300);
  });
});

describe('the plant of an electric furnace', () => {
  const cold = plantOf('electric-furnace', {roomDegF: 66});

  // 15 000 W × 3.412 = 51 180 Btu/h; over 1.08 × 1600 cfm: 29.6 °F
  test('15 kW warm 1600 cfm by some 30 °F', () => {
    const hot = after(cold, {airHeatWatts: 15_000, indoorBlower: 0.91}, 600);
    const rise = hot.value('supplyAirDegF', 600_000)! - hot.value('roomDegF', 600_000)!;
    expect(rise).toBeCloseTo(29.6, 0);
  });

  test('without air the elements pass limit and fusible link', () => {
    const still = after(cold, {airHeatWatts: 5000}, 900);
    expect(still.value('heaterDegF', 900_000)).toBeGreaterThan(333);
  });
});
