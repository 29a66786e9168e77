import {describe, expect, test} from 'vitest';
import {inSequence} from '../../src/bench/complaint.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue, faultsById} from '../../src/faults/catalogue.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';

const unit = readShippedUnit('rooftop-unit');
const minute = 60_000;
const magnitude = ({re, im}: {re: number; im: number}) => Math.hypot(re, im);
const volts = (operating: OperatingUnit, a: string, b: string) =>
  magnitude(operating.acVolts(a, b));
const is = (operating: OperatingUnit, part: string) =>
  operating.observations().find((seen) => seen.part === part)!.is;
const lamp = (operating: OperatingUnit, part: string) =>
  operating.observations().find((seen) => seen.part === part)!.display;
const wireBetween = (from: string, to: string) =>
  unit.wires.find((wire) => wire.from === from && wire.to === to)!.id;

function running(sequence: string, ...faults: string[]): OperatingUnit {
  const operating = operateUnit(unit, faultsById(catalogue(unit), faults));
  return inSequence(
    operating,
    unit.sequences.find(({id}) => id === sequence)!,
  );
}

describe('the lock-out relay of a circuit', () => {
  test('has its coil bridged by the closed safety string: no volts on it', () => {
    expect(volts(running('cooling-1'), 'LR1.1', 'LR1.3')).toBeLessThan(1);
  });

  test('takes nearly all of the 24 V when a switch opens, and starves the contactor coil', () => {
    // coils in series share by impedance (Kirchhoff): hundreds of ohms beside ten to sixty
    const operating = running('lock-out');
    expect(volts(operating, 'LR1.1', 'LR1.3')).toBeGreaterThan(20);
    expect(volts(operating, 'K1.A1', 'K1.A2')).toBeLessThan(5);
  });

  test('holds the circuit out although the switch has closed again, until the call is taken away', () => {
    const operating = running('lock-out');
    expect(operating.isClosed('HP1.contact')).toBe(true);
    operating.advance(20 * minute);
    expect(operating.isClosed('K1.pole1')).toBe(false);
    operating.set('TS.mode', 'off');
    expect(is(operating, 'LR1')).toBe('off');
    operating.set('TS.mode', 'cool');
    expect(operating.isClosed('K1.pole1')).toBe(true);
  });

  test('with its own coil open the circuit cycles on its high-pressure switch instead', () => {
    const operating = running('lock-out', 'LR1:coil-open');
    expect(operating.isClosed('K1.pole1')).toBe(true);
  });

  test('a blocked condenser locks both circuits out', () => {
    const operating = running('cooling-2', 'plant:outdoor-coil-blocked');
    operating.advance(10 * minute);
    expect(is(operating, 'LR1')).toBe('pulled-in');
    expect(is(operating, 'LR2')).toBe('pulled-in');
    expect(is(operating, 'CMP1')).toBe('off');
  });
});

describe('a lost phase on the roof', () => {
  test('drops everything out before a motor can single-phase', () => {
    const operating = running('cooling-2', 'SUP:L2-dead');
    expect(lamp(operating, 'PM1')).toBe('two flashes: phase missing');
    expect(is(operating, 'CMP1')).toBe('off');
  });

  test('out of balance by more than 4 % is told apart from a missing one', () => {
    const operating = running('cooling-2', 'SUP:L2-low');
    operating.advance(10_000);
    expect(lamp(operating, 'PM1')).toBe('four flashes: volts out of balance');
    expect(is(operating, 'CMP1')).toBe('off');
  });

  test('past the monitor, in one contactor pole, it is not seen: the compressor hums and goes off on its overload', () => {
    const operating = running('cooling-1', 'K1:pole3-open');
    expect(lamp(operating, 'PM1')).toBe('steady: phases right');
    operating.advance(minute);
    expect(operating.isClosed('CMP1.overload1')).toBe(false);
    // off or humming, by whether the overload has closed again
    expect(['off', 'humming']).toContain(is(operating, 'CMP1'));
  });
});

describe('an interrupted supply on the roof', () => {
  // three to five minutes between stop and start, for the pressures to even out: common practice, no source
  test('keeps both compressors off for three minutes after the power has come back', () => {
    const operating = running('cooling-2');
    operating.set('DS1.position', 'open');
    operating.advance(10_000);
    operating.set('DS1.position', 'closed');
    operating.advance(170_000);
    expect(lamp(operating, 'PM1')).toBe('slow flashing: waiting to pull in');
    expect(is(operating, 'CMP1')).toBe('off');
    operating.advance(30_000);
    expect(is(operating, 'CMP1')).toBe('running');
    expect(is(operating, 'CMP2')).toBe('running');
  });
});

describe('the module blower', () => {
  test('has line volts on it all the time and runs only on 24 V at a tap', () => {
    const off = running('off');
    expect(volts(off, 'IFM.L1', 'IFM.L2')).toBeGreaterThan(195);
    expect(is(off, 'IFM')).toBe('off');
    expect(is(running('fan'), 'IFM')).toBe('running');
  });

  test('takes more watts on the tap of the second stage than on that of the first', () => {
    const amps = (sequence: string) => magnitude(running(sequence).amps('IFM.line'));
    expect(amps('cooling-2')).toBeGreaterThan(1.3 * amps('cooling-1'));
  });

  test.each([
    ['IFM:module-dead', 195],
    ['IFM:power-connector-open', 195],
  ])('%s: 24 V on the tap, line volts at the plug, and no air', (fault, least) => {
    const operating = running('fan', fault);
    expect(volts(operating, 'IFM.1', 'IFM.C')).toBeGreaterThan(20);
    expect(volts(operating, 'IFM.L1', 'IFM.L2')).toBeGreaterThan(least);
    expect(is(operating, 'IFM')).toBe('off');
  });

  test('with a failed winding twitches and does not start', () => {
    expect(is(running('fan', 'IFM:winding-fault'), 'IFM')).toBe('humming');
  });

  test('with a tap wire open stands still on that call and runs on the others', () => {
    const wire = wireBetween('TB2.G', 'IFM.1');
    expect(is(running('fan', `${wire}:open`), 'IFM')).toBe('off');
    expect(is(running('cooling-1', `${wire}:open`), 'IFM')).toBe('running');
  });

  test('holds its torque against a blocked filter by turning faster, and draws more', () => {
    // constant torque: less air, less load on the wheel, more speed (fan laws)
    const clean = magnitude(running('cooling-1').amps('IFM.line'));
    const blocked = magnitude(running('cooling-1', 'plant:air-filter-blocked').amps('IFM.line'));
    expect(blocked).toBeGreaterThan(1.05 * clean);
  });
});

describe('the economiser', () => {
  test('cools with outdoor air on the first call and starts compressor 1 on the second', () => {
    const operating = running('free-cooling');
    expect(operating.plantValues().damperFraction).toBeGreaterThan(0.95);
    expect(operating.isClosed('K1.pole1')).toBe(false);
    operating.set('plant.roomDegF', 80);
    expect(operating.isClosed('K1.pole1')).toBe(true);
    expect(operating.isClosed('K2.pole1')).toBe(false);
  });

  test('goes back to compressors when it grows warm outside', () => {
    const operating = running('free-cooling');
    operating.set('plant.outdoorDegF', 70);
    expect(operating.isClosed('K1.pole1')).toBe(true);
  });

  test.each([
    ['cooling-1', 20, 3.6],
    ['free-cooling', 100, 10],
  ])('in %s asks for %i %% with %f V DC', (sequence, _percent, signal) => {
    // 2 to 10 V over the stroke: 2 + 8 × share
    expect(running(sequence).dcVolts('DA1.SIG', 'DA1.COM')).toBeCloseTo(signal, 0);
  });

  test('an open outdoor sensor is told by the lamp and leaves the compressors to cool', () => {
    const operating = running('free-cooling', 'OAS:open');
    expect(lamp(operating, 'EC1')).toMatch(/^two flashes: outdoor sensor/);
    expect(operating.isClosed('K1.pole1')).toBe(true);
  });

  test('a damper stuck shut leaves free cooling warm, with the signal right', () => {
    const operating = running('free-cooling', 'DA1:stuck-shut');
    expect(operating.dcVolts('DA1.SIG', 'DA1.COM')).toBeGreaterThan(9.5);
    expect(operating.plantValues().damperFraction).toBeLessThan(0.05);
    expect(operating.plantValues().supplyAirDegF).toBeGreaterThan(70);
  });

  test('with no power of its own passes the calls straight to the compressors', () => {
    const operating = running('cooling-2', 'EC1:dead');
    expect(operating.isClosed('K1.pole1')).toBe(true);
    expect(operating.isClosed('K2.pole1')).toBe(true);
  });
});
