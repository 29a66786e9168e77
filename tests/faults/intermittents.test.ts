import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import type {Fault} from '../../src/faults/fault.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';

const unit = readShippedUnit('rooftop-unit');
const faultOf = (mode: string): Fault => catalogue(unit).find((fault) => fault.mode === mode)!;
const cooling = unit.sequences.find(({id}) => id === 'cooling-1')!;

function calling(mode: string): OperatingUnit {
  const operating = operateUnit(unit, [faultOf(mode)]);
  for (const {target, value} of cooling.set) operating.set(target, value);
  // a hot day that never satisfies the room
  operating.set('TS.setPointDegF', 60);
  return operating;
}
const pulledIn = (operating: OperatingUnit): boolean => operating.isClosed('K1.pole1');
const minute = 60_000;

describe('a loose joint at the contactor coil', () => {
  test('by time: the unit runs, drops out by itself, and comes back with nobody near it', () => {
    const operating = calling('loose-by-time');
    expect(pulledIn(operating)).toBe(true);
    operating.advance(100_000);
    expect(pulledIn(operating)).toBe(false);
    operating.advance(140_000);
    expect(pulledIn(operating)).toBe(true);
  });

  test('by heat: it drops out when the unit has warmed up and makes again when it has cooled', () => {
    const operating = calling('loose-when-hot');
    expect(pulledIn(operating)).toBe(true);
    operating.advance(40 * minute);
    const {value, breaksAt} = faultOf('loose-when-hot').intermittent!.by as {
      value: string;
      breaksAt: number;
    };
    expect(value).toBe('compressorShellDegF');
    expect(breaksAt).toBe(110);
    let opened = 0;
    let made = 0;
    let before = pulledIn(operating);
    for (let i = 0; i < 180; i++) {
      operating.advance(minute);
      const now = pulledIn(operating);
      if (before && !now) opened++;
      if (!before && now) made++;
      before = now;
    }
    expect(opened).toBeGreaterThan(1);
    expect(made).toBeGreaterThan(1);
  });

  test('by vibration: out until somebody taps the panel, then in for four minutes', () => {
    const operating = calling('loose-until-tapped');
    operating.advance(minute);
    expect(pulledIn(operating)).toBe(false);
    operating.set('compressor-section.tap', 'pressed');
    expect(pulledIn(operating)).toBe(false);
    operating.set('control-box.tap', 'pressed');
    expect(pulledIn(operating)).toBe(true);
    operating.advance(4 * minute - 1);
    expect(pulledIn(operating)).toBe(true);
    operating.advance(1);
    expect(pulledIn(operating)).toBe(false);
  });

  test('repaired, it stays in', () => {
    const operating = calling('loose-until-tapped');
    operating.repair();
    expect(pulledIn(operating)).toBe(true);
    operating.advance(10 * minute);
    expect(pulledIn(operating)).toBe(true);
  });

  test.each(['loose-by-time', 'loose-when-hot', 'loose-until-tapped'])(
    '%s: waiting in two goes is waiting in one',
    (mode) => {
      const once = calling(mode);
      const twice = calling(mode);
      once.set('control-box.tap', 'pressed');
      twice.set('control-box.tap', 'pressed');
      once.advance(17 * minute);
      for (const part of [1, 93_456, 400_000]) twice.advance(part);
      twice.advance(17 * minute - 493_457);
      expect(twice.states).toEqual(once.states);
      expect(twice.plantValues()).toEqual(once.plantValues());
    },
  );
});
