import {describe, expect, test} from 'vitest';
import {copperFactor, wireOhms} from '../../src/circuits/wire-resistance.ts';
import {loadUnit} from '../../src/content/load-unit.ts';
import {
  readShippedUnit,
  readShippedUnitText,
  shippedUnitIds,
} from '../../src/content/node/read-shipped-unit.ts';
import {electricFurnaceLaw} from '../../src/plant/electric-furnace-law.ts';
import {atRest} from '../../src/plant/plant.ts';
import {saturationPsig} from '../../src/plant/refrigerant-pressure.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';
import {amps, is, secondsUntil, set, unitWith, volts} from './at-a-unit.ts';
import {near} from './circuit-by-hand.ts';

/** The heat pump on another supply than its 120/240 V. */
function heatPumpAt(legVolts: number): OperatingUnit {
  const text = readShippedUnitText('split-heat-pump').replaceAll(
    'volts: 120, degrees',
    `volts: ${legVolts}, degrees`,
  );
  return operateUnit(loadUnit(text, 'split-heat-pump.yaml').unit!, []);
}

const called = {'plant.outdoorDegF': 92, 'plant.roomDegF': 80, 'TS.mode': 'cool'};

describe('service voltage', () => {
  // COMAR 20.50.07.02 (read): 120/240 V service is 114 to 126 V and 228 to 252 V
  test.each([114, 126])(
    'COMAR 20.50.07.02: at %i V a leg the contactor pulls in and the compressor runs',
    (legVolts) => {
      const operating = set(heatPumpAt(legVolts), called, 60);
      expect(volts(operating, 'CB2.L1', 'CB2.L2')).toBeGreaterThan(2 * legVolts - 2);
      expect(is(operating, 'K3')).toContain('pulled-in');
      expect(is(operating, 'CMP')).toContain('running');
    },
  );

  // public engineering table on motor tolerances (read): a 230 V motor works from 207 to 253 V
  test.each([207, 253])(
    'motor tolerance of ten percent: at %i V the motors still start',
    (lineVolts) => {
      const operating = set(heatPumpAt(lineVolts / 2), called, 60);
      for (const motor of ['CMP', 'M1', 'M2']) expect(is(operating, motor)).toContain('running');
    },
  );

  // NEMA ST 1 part 4 as quoted on a public transformer page: not below 85 % of nominal during inrush
  test('NEMA ST 1: the control transformer holds 20.4 V while the contactor draws its inrush', () => {
    const operating = set(unitWith('split-heat-pump', 'K3:armature-jammed'), called, 60);
    expect(volts(operating, 'T1.X1', 'T1.X2')).toBeGreaterThan(20.4);
  });
});

describe('control circuits', () => {
  // NEC article 725, Class 2: 100 VA at 30 V or less (read in a trade summary)
  test.each(shippedUnitIds())(
    'NEC 725: every control transformer of %s is within Class 2',
    (id) => {
      const transformers = readShippedUnit(id).parts.filter(({kind}) => kind === 'transformer');
      expect(transformers.length).toBeGreaterThan(0);
      for (const {data} of transformers) {
        const {va, secondaryVolts} = data as {va: number; secondaryVolts: number};
        expect(secondaryVolts).toBeLessThanOrEqual(30);
        expect(va).toBeLessThanOrEqual(100);
      }
    },
  );

  // public comparison of UL 489 and the 80 percent rule (read): 80 % of a breaker for what runs three hours and more
  test('80 percent rule: a furnace at full heat leaves a fifth of each breaker', () => {
    const furnace = set(
      unitWith('electric-furnace'),
      {'plant.roomDegF': 66, 'TS.setPointDegF': 72, 'TS.mode': 'heat'},
      600,
    );
    expect(amps(furnace, 'W6')).toBeGreaterThan(20);
    expect(amps(furnace, 'W6')).toBeLessThanOrEqual(0.8 * 30);
    expect(amps(furnace, 'W8')).toBeGreaterThan(40);
    expect(amps(furnace, 'W8')).toBeLessThanOrEqual(0.8 * 60);
  });
});

describe('settings of a split heat pump against those of one manufacturer’s manuals (read; brand withheld)', () => {
  test('the low-pressure switch opens at 25 psig', () => {
    expect(cutOut('LPS')).toBe(25);
  });

  test('the high-pressure switch opens near 640 psig, the outdoor unit’s own limit, and not above', () => {
    expect(cutOut('HPS')).toBeLessThanOrEqual(650);
    expect(cutOut('HPS')).toBeGreaterThan(550);
  });

  test('the anti-short-cycle delay is five minutes: a call two minutes after the stop waits three more', () => {
    const operating = set(unitWith('split-heat-pump'), called, 600);
    set(operating, {'TS.mode': 'off'}, 120);
    expect(is(operating, 'CMP')).not.toContain('running');
    set(operating, {'TS.mode': 'cool'});
    const waited = secondsUntil(operating, () => is(operating, 'CMP').includes('running'), 400)!;
    expect(waited).toBeGreaterThan(175);
    expect(waited).toBeLessThan(195);
  });

  test('a defrost ends with the coil at 65 °F ± 5, or after ten minutes', () => {
    const operating = set(
      unitWith('split-heat-pump'),
      {'plant.outdoorDegF': 30, 'plant.roomDegF': 66, 'TS.mode': 'heat'},
      300,
    );
    const coil = (): number => operating.plantValues().outdoorCoilDegF;
    const inDefrost = (): boolean =>
      is(operating, 'CMP').includes('running') && !is(operating, 'M2').includes('running');
    expect(secondsUntil(operating, inDefrost, 3 * 3600, 5)).toBeDefined();
    // it began on a cold coil
    expect(coil()).toBeLessThan(35);
    const lasted = secondsUntil(operating, () => !inDefrost(), 900)!;
    expect(lasted).toBeLessThanOrEqual(600);
    if (lasted < 599) expect(Math.abs(coil() - 65)).toBeLessThanOrEqual(5);
  });
});

function cutOut(part: string): number {
  const {data} = readShippedUnit('split-heat-pump').parts.find(({id}) => id === part)!;
  return (data as {cutOutPsig: number}).cutOutPsig;
}

describe('R-410A: bubble points of the open property library CoolProp 8.0.0 (gauge = absolute − 14.696 psi)', () => {
  test.each([
    [0, 48.4],
    [40, 118.8],
    [100, 318.5],
    [110, 366.5],
  ])('%i °F stands at %f psig', (degF, psig) => {
    expect(Math.abs(saturationPsig(degF) - psig)).toBeLessThanOrEqual(1.5);
  });

  test('25 psig is −21.3 °F and 640 psig is 153.5 °F', () => {
    expect(Math.abs(saturationPsig(-21.3) - 25)).toBeLessThan(1);
    expect(near(saturationPsig(153.5), 640, 0.015)).toBe(true);
  });
});

describe('air', () => {
  // 400 cfm a ton and 1.08 read; 3412 Btu/h a kilowatt
  test('10 kW at 1400 cfm warm the air by 22.57 °F', () => {
    const now = (name: string): number =>
      ({roomDegF: 70, indoorAirflowFraction: 1400 / 1600, outdoorDegF: 40})[name]!;
    // a blower at its full speed moves all of the air that the filter lets by
    const drive = {...atRest, airHeatWatts: 10_000, indoorBlower: 0.9};
    const {supplyAirDegF} = electricFurnaceLaw.headings(drive, now);
    expect(near(supplyAirDegF!.target - 70, 22.57, 0.01)).toBe(true);
  });
});

describe('wire', () => {
  // wire table on the page of a maker of cable testers (read), solid copper at 20 °C, ohms in 1000 feet
  test.each([
    [12, 1.588],
    [14, 2.525],
    [16, 4.016],
    [18, 6.385],
    [20, 10.15],
    [22, 16.14],
  ])('a public wire table: %i gauge has %f Ω in 1000 feet', (gauge, ohms) => {
    expect(near(wireOhms(gauge, 1000), ohms, 0.003)).toBe(true);
  });

  // electricians' training page (read): 16 gauge stranded by table 8, 4.99 Ω in 1000 feet, 100 feet there and back
  test('a training page: 4 A through 100 feet of two 16 gauge wires drop 4.0 V, 16.7 % of 24 V', () => {
    // solid wire is 2 % better than the stranded one of the page
    const drop = 4 * 2 * wireOhms(16, 100) * copperFactor(75);
    expect(near(drop, 4, 0.035)).toBe(true);
    expect(near((100 * drop) / 24, 16.7, 0.035)).toBe(true);
  });
});
