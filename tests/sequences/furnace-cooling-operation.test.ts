import {expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {operateUnit} from '../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../src/sequences/operating-unit.ts';

const unit = readShippedUnit('furnace-split-cooling');
const faults = catalogue(unit);
function inMode(mode: string, seconds: number, ...ids: string[]): OperatingUnit {
  const present = ids.map((id) => {
    const found = faults.find((each) => each.id === id);
    if (!found) throw new Error(`No fault "${id}".`);
    return found;
  });
  const operating = operateUnit(unit, present);
  for (const {target, value} of unit.sequences.find(({id}) => id === mode)!.set)
    operating.set(target, value);
  operating.advance(seconds * 1000);
  return operating;
}
const is = (operating: OperatingUnit, part: string): string =>
  operating
    .observations()
    .filter((each) => each.part === part)
    .map((each) => each.display ?? each.is)
    .join();
const volts = (operating: OperatingUnit, a: string, b: string): number => {
  const {re, im} = operating.acVolts(a, b);
  return Math.hypot(re, im);
};

test('in cooling the compressor and both fans run, and no burner', () => {
  const operating = inMode('cooling', 120);
  expect(['CMP', 'M3', 'M1'].map((part) => is(operating, part))).toEqual([
    'running',
    'running',
    'running',
  ]);
  expect([is(operating, 'FR1'), is(operating, 'M2')]).toEqual(['off', 'off']);
});

test('in heating the burners burn and the condensing unit stands', () => {
  const operating = inMode('heating', 120);
  expect([is(operating, 'FR1'), is(operating, 'M1')]).toEqual(['lit', 'running']);
  expect([is(operating, 'CMP'), is(operating, 'M3')]).toEqual(['off', 'off']);
});

test('a full drain pan stops the condensing unit with 24 volts across the float switch, and the blower goes on', () => {
  const operating = inMode('cooling', 120, 'plant:pan-full');
  expect(is(operating, 'CMP')).toBe('off');
  expect(is(operating, 'M1')).toBe('running');
  expect(volts(operating, 'FSW.1', 'FSW.2')).toBeGreaterThan(20);
});

test('a lost charge opens the low-pressure switch', () => {
  const operating = inMode('cooling', 60, 'plant:charge-lost');
  expect(operating.isClosed('LPS.contact')).toBe(false);
  expect(is(operating, 'CMP')).toBe('off');
});

test('a blocked outdoor coil opens the high-pressure switch after some minutes', () => {
  const operating = inMode('cooling', 900, 'plant:outdoor-coil-blocked');
  expect(operating.plantValues().dischargePsig).toBeGreaterThan(450);
});

test('a tripped outdoor breaker leaves the furnace at work: it is fed by its own', () => {
  const operating = inMode('cooling', 60);
  operating.set('CB2.position', 'off');
  operating.advance(5000);
  expect(is(operating, 'CMP')).toBe('off');
  expect(is(operating, 'M1')).toBe('running');
  expect(is(operating, 'TS')).toContain('Cool');
});

test('with the furnace switch open the condensing unit has no call, though its 240 volts stand', () => {
  const operating = inMode('cooling', 60);
  operating.set('DS1.position', 'open');
  operating.advance(5000);
  expect(is(operating, 'K1')).toBe('off');
  expect(volts(operating, 'K1.L1', 'K1.L2')).toBeGreaterThan(225);
});

test('a short in the yellow wire outdoors blows the control fuse, and everything is dark', () => {
  const earthed = faults.find(
    ({site, mode}) => mode === 'earth' && site.on === 'wire' && site.wire === 'W51',
  )!;
  const operating = inMode('cooling', 30, earthed.id);
  expect(operating.isClosed('F1.link')).toBe(false);
  expect(is(operating, 'TS')).toBe('blank');
});
