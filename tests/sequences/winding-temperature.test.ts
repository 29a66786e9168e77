import {describe, expect, test} from 'vitest';
import {inSequence} from '../../src/bench/complaint.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {magnitude} from '../../src/circuits/complex.ts';
import {copperShare} from '../../src/parts/copper.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';

const minute = 60_000;

/** What an ohmmeter reads between two points with the power off: ohms of everything behind its leads. */
const ohms = (operating: OperatingUnit, a: string, b: string): number =>
  operating.thevenin(a, b, 'dc').ohms.re;

/** The heat pump in a mode, for some time; then off at its disconnects, with the compressor's leads lifted off the unit. */
function heatPump(minutes: number, outdoorDegF = 77): OperatingUnit {
  const unit = readShippedUnit('split-heat-pump');
  const cooling = unit.sequences.find(({id}) => id === 'cooling')!;
  const operating = inSequence(operateUnit(unit, []), cooling);
  operating.set('plant.outdoorDegF', outdoorDegF);
  operating.advance(minutes * minute);
  return operating;
}

function compressorOhms(operating: OperatingUnit): {cs: number; cr: number; rs: number} {
  const fork = operating.fork();
  for (const wire of fork.unit.wires)
    for (const end of ['from', 'to'] as const)
      if (wire[end].startsWith('CMP.')) fork.lift(`${wire.id}.${end}`);
  return {
    cs: ohms(fork, 'CMP.C', 'CMP.S'),
    cr: ohms(fork, 'CMP.C', 'CMP.R'),
    rs: ohms(fork, 'CMP.R', 'CMP.S'),
  };
}

describe('a compressor that has run', () => {
  const cold = compressorOhms(heatPump(0));
  const running = heatPump(60);
  const hot = compressorOhms(running);

  test('reads more ohms hot than cold, by the copper rule at the temperature of its windings', () => {
    // 90 °F of rise over 77 °F outdoors at rated amps; this one runs a little below them
    const share = hot.cr / cold.cr;
    expect(share).toBeGreaterThan(copperShare(77 + 60));
    expect(share).toBeLessThan(copperShare(77 + 95));
  });

  test.each([
    ['cold', cold],
    ['hot', hot],
  ])('%s: C–S and C–R make R–S', (_name, {cs, cr, rs}) => {
    // the overload's contact, 10 mΩ, lies in C–S and in C–R but not in R–S
    expect(cs + cr - 0.02).toBeCloseTo(rs, 6);
  });

  test('falls back as it cools', () => {
    const off = running.fork();
    off.set('TS.mode', 'off');
    off.advance(15 * minute);
    const cooling = compressorOhms(off).cr;
    off.advance(240 * minute);
    expect(cooling).toBeLessThan(hot.cr);
    expect(compressorOhms(off).cr).toBeLessThan(cooling);
    expect(compressorOhms(off).cr / cold.cr).toBeCloseTo(1, 1);
  });
});

describe('a motor at rest', () => {
  test.each([20, 110])('is as warm as the air: at %d °F its ohms follow', (outdoorDegF) => {
    const unit = readShippedUnit('split-heat-pump');
    const start = {...unit.plant.start, outdoorDegF};
    const operating = operateUnit({...unit, plant: {...unit.plant, start}}, []);
    operating.set('TS.mode', 'off');
    const {cr} = compressorOhms(operating);
    const data = unit.parts.find(({id}) => id === 'CMP')!.data as {model: {mainOhms: number}};
    // it moves in steps of one per cent
    const share = (cr - 0.01) / data.model.mainOhms;
    expect(Math.abs(share - copperShare(outdoorDegF))).toBeLessThan(0.0051);
  });
});

describe('a coil and a transformer', () => {
  const coil = (operating: OperatingUnit): number => ohmsOfLiftedCoil(operating, 'K3', 'A1', 'A2');

  test('a contactor that has been in for an hour reads more ohms than at rest', () => {
    const rest = coil(heatPump(0));
    const long = coil(heatPump(60));
    expect(long / rest).toBeGreaterThan(1.08);
    expect(long / rest).toBeLessThan(1.25);
  });

  test('a transformer that has carried its load has a little less volts to give than when it was cold', () => {
    const volts = (minutes: number): number =>
      magnitude(heatPump(minutes).acVolts('T1.X1', 'T1.X2'));
    expect(volts(60)).toBeLessThan(volts(0));
    expect(volts(60)).toBeGreaterThan(0.98 * volts(0));
  });
});

function ohmsOfLiftedCoil(operating: OperatingUnit, part: string, a: string, b: string): number {
  const fork = operating.fork();
  for (const wire of fork.unit.wires)
    for (const end of ['from', 'to'] as const)
      if (wire[end] === `${part}.${a}`) fork.lift(`${wire.id}.${end}`);
  return ohms(fork, `${part}.${a}`, `${part}.${b}`);
}

test('the same deeds give the same temperatures, whole or in pieces', () => {
  const whole = heatPump(30);
  const pieces = heatPump(0);
  for (let i = 0; i < 30; i++) pieces.advance(minute);
  expect(compressorOhms(pieces)).toEqual(compressorOhms(whole));
});
