import {describe, expect, test} from 'vitest';
import {thermistorOhms} from '../../src/parts/thermistor-curve.ts';
import {readSensor} from '../../src/sequences/machines/defrost-board.machine.ts';
import {BenchPart, type Seen} from './fixtures/bench-part.ts';
import {partOf} from './fixtures/small-unit.ts';

/** Volts that a sensor at a temperature leaves of 5 V behind 10 kΩ. */
function sensorVolts(degF: number): number {
  const ohms = thermistorOhms(degF, 10000, 3827);
  return (5 * ohms) / (ohms + 10000);
}

const sensors = (coilDegF: number, ambientDegF: number): Seen => ({
  dcVolts: {'DB1.S1-DB1.S2': sensorVolts(coilDegF), 'DB1.A1-DB1.A2': sensorVolts(ambientDegF)},
});
const calling = {voltsIn: {'DB1.supply': 24, 'DB1.y-input': 24}};
const standing = {voltsIn: {'DB1.supply': 24, 'DB1.y-input': 0}};

const board = () =>
  new BenchPart(
    partOf('DB1', 'defrost-board', {
      intervalMinutes: 30,
      initiateDegF: 28,
      terminateDegF: 65,
      maximumMinutes: 10,
      ambientLimitDegF: 45,
    }),
  );
const minutes = (ms: number) => ms / 60_000;

describe('a defrost board', () => {
  test('after half an hour of compressor running with a frosted coil goes into defrost', () => {
    const db = board()
      .show({...calling, ...sensors(20, 34)})
      .untilDue();
    expect(minutes(db.atMs)).toBe(30);
    // the valve turned over, the fan held off, the heat called
    expect([db.isClosed('defrost'), db.isClosed('fan'), db.isClosed('auxiliary')]).toEqual([
      true,
      false,
      true,
    ]);
    // O is let go, so that the valve's volts do not feed back to the thermostat
    expect(db.isClosed('cooling')).toBe(false);
  });

  test('with a coil too warm for frost it counts another half hour', () => {
    const db = board()
      .show({...calling, ...sensors(33, 34)})
      .untilDue();
    expect(db.isClosed('defrost')).toBe(false);
    expect(minutes(db.dueAtMs!)).toBe(60);
  });

  test('above the ambient limit it never defrosts', () => {
    expect(
      board()
        .show({...calling, ...sensors(20, 50)})
        .untilDue()
        .isClosed('defrost'),
    ).toBe(false);
  });

  test('counts only while the compressor is called', () => {
    const db = board().show({...calling, ...sensors(20, 34)});
    db.show({...standing, atMs: 10 * 60_000}).untilDue();
    expect(db.dueAtMs).toBeUndefined();
    db.show({...calling, atMs: 60 * 60_000});
    // ten minutes are counted already (and the second that it rode through)
    expect(minutes(db.dueAtMs!)).toBeCloseTo(80, 1);
  });

  test('ends the defrost when the coil is warm', () => {
    const db = board()
      .show({...calling, ...sensors(20, 34)})
      .untilDue();
    db.show(sensors(64, 34)).untilDue();
    expect(db.isClosed('defrost')).toBe(true);
    db.show(sensors(66, 34)).untilDue();
    expect(db.isClosed('defrost')).toBe(false);
    expect(db.isClosed('fan')).toBe(true);
  });

  test('gives up after the longest time with a coil that stays cold', () => {
    const db = board()
      .show({...calling, ...sensors(20, 34)})
      .untilDue();
    while (db.isClosed('defrost')) db.untilDue();
    expect(minutes(db.atMs)).toBe(40);
  });

  test('with an open coil sensor does not defrost and flashes its code', () => {
    const db = board().show({
      ...calling,
      dcVolts: {'DB1.S1-DB1.S2': 4.999, 'DB1.A1-DB1.A2': sensorVolts(34)},
    });
    expect(db.untilDue().isClosed('defrost')).toBe(false);
    expect(db.observed()).toEqual(['two flashes: coil sensor open']);
  });

  test('with a shorted ambient sensor flashes the other code', () => {
    const db = board().show({
      ...calling,
      dcVolts: {'DB1.S1-DB1.S2': sensorVolts(20), 'DB1.A1-DB1.A2': 0.001},
    });
    expect(db.observed()).toEqual(['three flashes: ambient sensor shorted']);
  });

  test('without power passes O to the valve, runs the fan, and its lamp is dark', () => {
    const db = board().show({voltsIn: {}});
    expect([db.isClosed('cooling'), db.isClosed('fan')]).toEqual([true, true]);
    expect(db.observed()).toEqual(['dark']);
  });
});

test('the board reads a sensor at 28 °F within a tenth of a degree', () => {
  const reading = readSensor(sensorVolts(28));
  expect(reading).toEqual({degF: expect.closeTo(28, 1)});
});
