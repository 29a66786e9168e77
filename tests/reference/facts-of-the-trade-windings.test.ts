import {describe, expect, test} from 'vitest';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';
import {partOf, smallUnit} from '../sequences/fixtures/small-unit.ts';
import {amps, is, ohms, secondsUntil, set, unitWith, volts} from './at-a-unit.ts';

// Common practice, no source, but where a source stands beside the check.

const cooling = (fault: string): OperatingUnit =>
  set(
    unitWith('split-heat-pump', fault),
    {'plant.outdoorDegF': 92, 'plant.roomDegF': 80, 'TS.mode': 'cool'},
    2,
  );

/** The outdoor unit locked out, the compressor's and the capacitor's wires lifted, as an ohmmeter wants them. */
function dead(fault: string): OperatingUnit {
  const operating = unitWith('split-heat-pump', fault);
  set(operating, {'CB2.position': 'off', 'DS2.position': 'open'});
  for (const end of ['W71.to', 'W72.to', 'W73.to', 'W73.from', 'W74.to']) operating.lift(end);
  return operating;
}

describe('common practice, no source: a compressor and its capacitor', () => {
  test('a shorted run capacitor puts the start winding across the line: far over rated amps, then off on overload', () => {
    const operating = cooling('C2:herm-shorted');
    // 240 V on the 2 Ω and 1.37 Ω of the start winding at rest would be about 100 A; it turns, so less
    expect(amps(operating, 'W73')).toBeGreaterThan(25);
    expect(amps(operating, 'W71')).toBeGreaterThan(60);
    expect(secondsUntil(operating, () => is(operating, 'CMP').includes('off'), 60)).toBeGreaterThan(
      2,
    );
    expect(ohms(dead('C2:herm-shorted'), 'C2.C', 'C2.HERM')).toBeLessThan(1);
  });

  test('with its run winding open it hums on the little that the capacitor passes, and two of three ohm readings are OL', () => {
    const operating = cooling('CMP:run-open');
    expect(is(operating, 'CMP')).toEqual(['humming']);
    expect(amps(operating, 'W72')).toBeLessThan(0.05);
    expect(amps(operating, 'W71')).toBeLessThan(15 / 2); // half its rated amps
    const windings = dead('CMP:run-open');
    expect(ohms(windings, 'CMP.C', 'CMP.R')).toBe(Infinity);
    expect(ohms(windings, 'CMP.R', 'CMP.S')).toBe(Infinity);
    expect(ohms(windings, 'CMP.C', 'CMP.S')).toBeCloseTo(2, 1);
  });
});

describe('common practice, no source: control volts', () => {
  const loaded = (watts: number): number => {
    const supply = partOf('S', 'supply', {
      legs: [{terminal: 'L', volts: 120, degrees: 0}],
      sourceOhms: 0.05,
    });
    const transformer = partOf('T', 'transformer', {
      va: 40,
      taps: [{terminal: '120', volts: 120}],
      secondaryVolts: 24,
    });
    const load = partOf('H', 'heater', {watts, volts: 24});
    const wires = ['S.L-T.H1', 'T.120-S.N', 'T.X1-H.1', 'H.2-T.X2'];
    return volts(operateUnit(smallUnit([supply, transformer, load], wires), []), 'T.X1', 'T.X2');
  };

  test('a 40 VA transformer gives its 24 V at 40 VA, more below and ever less above', () => {
    const read = [1, 20, 40, 60, 80, 100].map(loaded);
    expect(read[2]).toBeGreaterThan(23.5);
    expect(read[2]).toBeLessThan(24.5);
    expect(read).toEqual([...read].sort((a, b) => b - a));
    // regulation about 10 % from none to full load; at twice its load it is that much below again
    expect(read[0]! / read[2]!).toBeGreaterThan(1.06);
    expect(read[4]! / read[2]!).toBeLessThan(0.94);
  });

  test('a long thin wire lets a contactor buzz that pulls in on a thicker or a shorter one', () => {
    const heard = (gauge: number, feet: number): string[] => {
      const supply = partOf('S', 'supply', {
        legs: [{terminal: 'L', volts: 24, degrees: 0}],
        sourceOhms: 0.5,
      });
      const contactor = partOf('K', 'contactor', {
        poles: 1,
        coil: {ratedVolts: 24, sealedVa: 7, inrushVa: 33, coilOhms: 10.5},
      });
      const unit = smallUnit([supply, contactor], ['S.L-K.A1', 'K.A2-S.N']);
      const wires = unit.wires.map((wire) => ({...wire, gauge, feet}));
      return is(operateUnit({...unit, wires}, []), 'K');
    };
    expect(heard(18, 200)).toEqual(['pulled-in']);
    expect(heard(22, 400)).toEqual(['humming']);
    expect(heard(22, 50)).toEqual(['pulled-in']);
    expect(heard(24, 1500)).toEqual(['off']);
  });
});
