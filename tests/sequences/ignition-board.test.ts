import {expect, test} from 'vitest';
import {BenchPart, type Seen} from './fixtures/bench-part.ts';
import {partOf} from './fixtures/small-unit.ts';

const volts = (on: Record<string, boolean>): Seen['voltsIn'] =>
  Object.fromEntries(Object.entries(on).map(([input, is]) => [`IB1.${input}`, is ? 25 : 0]));
const standing = {supply: true, 'limit-input': true, 'pressure-input': false, 'w-input': false};
const board = () =>
  new BenchPart(partOf('IB1', 'ignition-board')).show({voltsIn: volts(standing), atMs: 0});
const inputs = (change: Record<string, boolean>, atMs: number): Seen => ({
  voltsIn: volts({...standing, ...change}),
  atMs,
});
/** Flame current in microamps of direct current, as the volts that it makes across the board's input. */
const flame = (microamps: number): Seen['dcVolts'] => ({'IB1.FS-IB1.GND': -microamps});
const called = {'w-input': true};
const drafting = {...called, 'pressure-input': true};

/** A board with a call, the draft proved, its gas valve just opened. */
const inTrial = () => {
  const ib = board().show(inputs(called, 1000)).show(inputs(drafting, 3000));
  return ib.untilDue().untilDue();
};

test('on a call it first runs the inducer and waits for the draft', () => {
  const ib = board().show(inputs(called, 1000));
  expect(ib.isClosed('inducer')).toBe(true);
  expect(ib.isClosed('igniter')).toBe(false);
  expect(ib.isClosed('valve')).toBe(false);
});

test('draft proved, it airs 15 s, heats the igniter 20 s, then opens the gas', () => {
  const ib = board().show(inputs(called, 1000)).show(inputs(drafting, 3000));
  expect(ib.untilDue().atMs).toBe(18_000);
  expect([ib.isClosed('igniter'), ib.isClosed('valve')]).toEqual([true, false]);
  expect(ib.untilDue().atMs).toBe(38_000);
  expect([ib.isClosed('igniter'), ib.isClosed('valve')]).toEqual([true, true]);
});

test('a flame proved lets the igniter go and keeps the gas on', () => {
  const ib = inTrial().show({dcVolts: flame(3.3), atMs: 39_000});
  expect([ib.isClosed('igniter'), ib.isClosed('valve')]).toEqual([false, true]);
});

test('the blower comes half a minute after the flame and runs on a minute and a half after the call', () => {
  const ib = inTrial().show({dcVolts: flame(3.3), atMs: 39_000});
  expect(ib.isClosed('blower')).toBe(false);
  expect(ib.untilDue().atMs).toBe(69_000);
  expect(ib.isClosed('blower')).toBe(true);
  ib.show(inputs({'pressure-input': true}, 200_000)).untilDue();
  expect(ib.isClosed('valve')).toBe(false);
  expect(ib.isClosed('inducer')).toBe(true);
  ib.show({atMs: 290_000});
  expect(ib.isClosed('inducer')).toBe(false);
  expect(ib.isClosed('blower')).toBe(true);
  expect(ib.show({atMs: 292_000}).isClosed('blower')).toBe(false);
});

test('flame not proved: three tries, then it locks out with three flashes', () => {
  const ib = inTrial();
  let tries = 0;
  for (
    let guard = 0;
    guard < 20 && ib.observed()[0] !== 'three flashes: no flame, locked out';
    guard++
  ) {
    const before = ib.isClosed('valve');
    ib.untilDue();
    if (before && !ib.isClosed('valve')) tries++;
    if (tries === 1 && !ib.isClosed('igniter'))
      expect(ib.observed()).toEqual(['two flashes: no flame, trying again']);
  }
  expect(tries).toBe(3);
  expect(ib.observed()).toEqual(['three flashes: no flame, locked out']);
  expect([ib.isClosed('inducer'), ib.isClosed('igniter'), ib.isClosed('valve')]).toEqual([
    false,
    false,
    false,
  ]);
});

test('a lock-out ends when the call is broken, and by itself after an hour', () => {
  const lockedOut = () => {
    const ib = inTrial();
    while (!ib.observed()[0].startsWith('three flashes')) ib.untilDue();
    return ib;
  };
  const broken = lockedOut();
  broken.show(inputs({}, broken.atMs + 1000)).untilDue();
  expect(broken.observed()).toEqual(['slow flashing: standing by']);
  const waited = lockedOut();
  const since = waited.atMs;
  expect(waited.dueAtMs).toBe(since + 3_600_000);
  // the switch has long fallen open behind an inducer at rest
  waited.show(inputs(called, since + 10_000)).show({atMs: since + 3_600_001});
  expect(waited.isClosed('inducer')).toBe(true);
});

test('a pressure switch closed before the inducer runs holds everything, with five flashes', () => {
  const ib = board().show(inputs(drafting, 1000));
  expect(ib.isClosed('inducer')).toBe(false);
  ib.untilDue();
  expect(ib.observed()).toEqual(['five flashes: pressure switch closed with the inducer off']);
  expect(ib.isClosed('inducer')).toBe(false);
  expect(ib.show(inputs(called, 60_000)).untilDue().isClosed('inducer')).toBe(true);
});

test('a pressure switch that does not close leaves the inducer running, with four flashes', () => {
  const ib = board().show(inputs(called, 1000)).untilDue();
  expect(ib.atMs).toBe(31_000);
  expect(ib.observed()).toEqual(['four flashes: pressure switch open with the inducer on']);
  expect([ib.isClosed('inducer'), ib.isClosed('igniter')]).toEqual([true, false]);
});

test('an open limit or roll-out takes the flame away and runs inducer and blower, with six flashes', () => {
  const ib = inTrial().show({dcVolts: flame(3.3), atMs: 39_000});
  // the pressure switch is fed through the limit, so both are gone; the flame with them
  ib.show({...inputs({...called, 'limit-input': false}, 100_000), dcVolts: flame(0)}).untilDue();
  expect(ib.observed()).toEqual(['six flashes: limit or roll-out switch open']);
  expect(['inducer', 'blower', 'valve', 'igniter'].map((each) => ib.isClosed(each))).toEqual([
    true,
    true,
    false,
    false,
  ]);
});

test('a flame lost while it heats closes the gas within a second and counts as a failed try', () => {
  const ib = inTrial().show({dcVolts: flame(3.3), atMs: 39_000});
  ib.show({dcVolts: flame(0.3), atMs: 100_000});
  expect(ib.isClosed('valve')).toBe(true);
  expect(ib.untilDue().atMs).toBe(101_000);
  expect(ib.isClosed('valve')).toBe(false);
  expect(ib.observed()).toEqual(['two flashes: no flame, trying again']);
});

test('draft lost while it heats closes the gas and goes back to waiting for the draft', () => {
  const ib = inTrial().show({dcVolts: flame(3.3), atMs: 39_000});
  ib.show({...inputs(called, 100_000), dcVolts: flame(0)}).untilDue();
  expect([ib.isClosed('valve'), ib.isClosed('inducer')]).toEqual([false, true]);
});

test('G runs the blower at once and lets it go with the call', () => {
  const ib = board().show(inputs({'g-input': true}, 1000));
  expect(ib.isClosed('blower')).toBe(true);
  expect(ib.show(inputs({}, 60_000)).untilDue().isClosed('blower')).toBe(false);
});

test('a dip of the supply shorter than a second changes nothing', () => {
  const ib = inTrial().show({dcVolts: flame(3.3), atMs: 39_000});
  ib.show({voltsIn: volts({}), atMs: 50_000}).show(inputs(drafting, 50_600));
  expect(ib.isClosed('valve')).toBe(true);
});

test('without its 24 volts it is dark and lets go of everything', () => {
  const ib = inTrial()
    .show({dcVolts: flame(3.3), atMs: 39_000})
    .untilDue();
  ib.show({voltsIn: volts({}), atMs: 80_000}).untilDue();
  expect(ib.observed()).toEqual(['dark']);
  expect(['inducer', 'blower', 'valve', 'igniter'].some((each) => ib.isClosed(each))).toBe(false);
});

test('a dead board never lights', () => {
  const ib = new BenchPart(partOf('IB1', 'ignition-board')).show({
    voltsIn: volts(standing),
    behaviour: {logic: 'dead'},
    atMs: 0,
  });
  expect(ib.observed()).toEqual(['dark']);
});
