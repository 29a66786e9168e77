import {expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';

const unit = readShippedUnit('electric-furnace');
const faults = catalogue(unit);
function heating(seconds: number, ...ids: string[]): OperatingUnit {
  const present = ids.map((id) => {
    const found = faults.find((each) => each.id === id);
    if (!found) throw new Error(`No fault "${id}".`);
    return found;
  });
  const operating = operateUnit(unit, present);
  for (const {target, value} of unit.sequences.find(({id}) => id === 'heating')!.set)
    operating.set(target, value);
  operating.advance(seconds * 1000);
  return operating;
}
const amps = (operating: OperatingUnit, wire: string): number => {
  const {re, im} = operating.amps(wire);
  return Math.hypot(re, im);
};
/** Elements that draw current, by the wire that feeds each. */
const hot = (operating: OperatingUnit): boolean[] =>
  ['W27', 'W32', 'W37'].map((wire) => amps(operating, wire) > 15);
const running = (operating: OperatingUnit): boolean =>
  operating.observations().some(({part, is}) => part === 'M1' && is === 'running');
const until = (operating: OperatingUnit, so: () => boolean): number => {
  for (let second = 1; second <= 900; second++) {
    operating.advance(1000);
    if (so()) return second;
  }
  throw new Error('Never within a quarter of an hour.');
};

test('blower, then element 1, 2 and 3 come on one after another', () => {
  const operating = heating(0);
  const times = [
    until(operating, () => running(operating)),
    until(operating, () => hot(operating)[0]),
    until(operating, () => hot(operating)[1]),
    until(operating, () => hot(operating)[2]),
  ];
  for (const time of times) expect(time).toBeGreaterThan(2);
});

test('when the call ends the elements go off one by one and the blower last', () => {
  const operating = heating(300);
  operating.set('TS.mode', 'off');
  expect(hot(operating)).toEqual([true, true, true]);
  until(operating, () => hot(operating).every((is) => !is));
  expect(running(operating)).toBe(true);
  until(operating, () => !running(operating));
});

// I = P/U and R = U²/P: 5000 W at 240 V is 20.83 A and 11.52 Ω (Lessons in Electric Circuits, open textbook, vol. DC ch. 2)
test('an element reads 11.5 Ω with its wire lifted', () => {
  const operating = operateUnit(unit, []);
  operating.lift('W27.to');
  expect(operating.thevenin('EH1.1', 'EH1.2', 'dc').ohms.re).toBeCloseTo(11.52, 1);
});

test('an open element leaves the others hot: a third of the heat is gone, and no complaint of the breaker', () => {
  const operating = heating(300, 'EH2:open');
  expect(hot(operating)).toEqual([true, false, true]);
  expect(operating.plantValues().supplyAirDegF).toBeLessThan(88);
});

test('an open heater of the first sequencer keeps everything off: the second is fed through the first', () => {
  const operating = heating(300, 'SQ1:heater-open');
  expect(hot(operating)).toEqual([false, false, false]);
  expect(running(operating)).toBe(false);
});

test('an open heater of the second sequencer leaves element 1 alone', () => {
  expect(hot(heating(300, 'SQ2:heater-open'))).toEqual([true, false, false]);
});

test('a welded contact keeps its element hot after the call, with no blower the limit must cycle it', () => {
  const operating = heating(0, 'SQ1:element-welded');
  operating.set('TS.mode', 'off');
  let opened = 0;
  let before = true;
  for (let second = 0; second < 1800; second++) {
    operating.advance(1000);
    const closed = operating.isClosed('LS1.contact');
    if (before && !closed) opened++;
    before = closed;
  }
  expect(opened).toBeGreaterThanOrEqual(2);
});

test('a limit stuck closed without air melts the fusible link, for good', () => {
  const operating = heating(0, 'LS1:stuck-closed', 'SQ1:element-welded');
  operating.set('TS.mode', 'off');
  operating.advance(1_800_000);
  expect(operating.isClosed('FL1.link')).toBe(false);
  expect(hot(operating)).toEqual([false, false, false]);
});

test('with one breaker off the furnace still has live parts: both must be off', () => {
  const operating = heating(0);
  operating.set('CB1.position', 'off');
  const {re, im} = operating.acVolts('TB2.L3', 'TB2.L4');
  expect(Math.hypot(re, im)).toBeGreaterThan(225);
});
