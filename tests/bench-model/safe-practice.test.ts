import {describe, expect, test} from 'vitest';
import type {Bench} from '../../src/bench/bench.ts';
import type {Action} from '../../src/bench/actions.ts';
import {dangerousVolts} from '../../src/bench/live.ts';
import {benchAt, coolingCall, doAll, read} from './bench-of.ts';

const heatPump = (...faults: string[]): Bench => benchAt('split-heat-pump', faults);
const outdoorOpen: Action = {do: 'open-cover', enclosure: 'outdoor-unit'};
const disconnectOpen: Action = {do: 'open-cover', enclosure: 'outdoor-disconnect'};
const off: Action = {do: 'set', target: 'DS2.position', value: 'open'};
const lock: Action = {do: 'lock', part: 'DS2'};
const knownLive = read('DS2.L1', 'DS2.L2');
const deadTest = read('K3.L1', 'K3.L2');

const severities = (bench: Bench): string[] =>
  bench.view().safety.map((each) => `${each.severity} ${each.id}`);

describe('resistance on a live circuit', () => {
  test('of 24 V is a caution, and the line in the log points at it', () => {
    const bench = heatPump();
    const entry = doAll(
      bench,
      ...coolingCall,
      outdoorOpen,
      {do: 'meter', function: 'ohms'},
      read('K3.A1', 'K3.A2'),
    );
    expect(entry.display).toMatchObject({text: 'OL', hazard: true});
    expect(entry.findings).toEqual([0]);
    expect(bench.view().safety[0]).toMatchObject({severity: 'caution', logIndex: entry.index});
  });

  test('of 240 V is a danger', () => {
    const bench = heatPump();
    doAll(bench, outdoorOpen, {do: 'meter', function: 'ohms'}, read('K3.L1', 'K3.L2'));
    expect(bench.view().safety[0].severity).toBe('danger');
  });

  test('counts too where both leads are at the same live point and nothing stands between them', () => {
    const bench = heatPump();
    doAll(bench, disconnectOpen, {do: 'meter', function: 'continuity'}, read('DS2.L1', 'DS2.T1'));
    expect(bench.view().safety).toHaveLength(1);
  });

  test('is no finding on a dead circuit, nor where only stray voltage is about', () => {
    const bench = heatPump();
    doAll(bench, outdoorOpen, off, lock, {do: 'meter', function: 'ohms'}, read('K3.T1', 'K3.T2'));
    expect(bench.view().safety).toEqual([]);
  });
});

describe('lifting a line-voltage wire', () => {
  const lift: Action = {do: 'lift', end: 'W71.to'};

  test('live is a danger', () => {
    const bench = heatPump();
    doAll(bench, ...coolingCall, outdoorOpen, lift);
    expect(severities(bench)[0]).toBe('danger lifted-live:W71.to');
  });

  test('with the switch open, not locked and not tested: a caution and a danger', () => {
    const bench = heatPump();
    doAll(bench, outdoorOpen, off, lift);
    expect(severities(bench)).toEqual(['caution no-lock', 'danger not-tested:outdoor-unit']);
  });

  test('locked and tested, but the meter not proved before and after: a caution', () => {
    const bench = heatPump();
    doAll(bench, outdoorOpen, disconnectOpen, off, lock, deadTest, knownLive, lift);
    expect(severities(bench)).toEqual(['caution not-proved:outdoor-unit']);
  });

  // Lessons in Electric Circuits, vol. I (DC) ch. 3: known live source, the conductors, known live source again
  test('locked, live–dead–live: nothing to find', () => {
    const bench = heatPump();
    doAll(bench, outdoorOpen, disconnectOpen, off, lock, knownLive, deadTest, knownLive, lift);
    expect(bench.view().safety).toEqual([]);
  });

  test('with the lock on the other unit’s disconnect, locked out is not locked out', () => {
    const bench = heatPump();
    const indoor: Action = {do: 'set', target: 'DS1.position', value: 'open'};
    doAll(bench, outdoorOpen, disconnectOpen, indoor, {do: 'lock', part: 'DS1'}, off);
    doAll(bench, knownLive, deadTest, knownLive, lift);
    expect(severities(bench)).toEqual(['caution no-lock']);
  });

  test('a test before the switch was moved again proves nothing', () => {
    const bench = heatPump();
    doAll(bench, outdoorOpen, disconnectOpen, off, knownLive, deadTest, knownLive);
    doAll(bench, {do: 'set', target: 'DS2.position', value: 'closed'}, off, lock, lift);
    expect(severities(bench)).toEqual(['danger not-tested:outdoor-unit']);
  });

  test('a reading between two points of one conductor is no test', () => {
    const bench = heatPump();
    doAll(
      bench,
      outdoorOpen,
      disconnectOpen,
      off,
      lock,
      knownLive,
      read('K3.T2', 'C2.C'),
      knownLive,
      lift,
    );
    expect(severities(bench)).toEqual(['danger not-tested:outdoor-unit']);
  });
});

describe('other wires', () => {
  test('a 24 V wire lifted live is a caution', () => {
    const bench = heatPump();
    doAll(bench, ...coolingCall, outdoorOpen, {do: 'lift', end: 'W54.from'});
    expect(severities(bench)).toEqual(['caution lifted-live:W54.from']);
  });

  test('an equipment ground lifted with power on is a danger', () => {
    const bench = heatPump();
    doAll(bench, outdoorOpen, {do: 'lift', end: 'W17.to'});
    expect(severities(bench)).toEqual(['danger ground-lifted:W17.to']);
  });

  test('power put on with a lifted end bare is a caution', () => {
    const bench = heatPump();
    doAll(bench, outdoorOpen, disconnectOpen, off, lock, knownLive, deadTest, knownLive, {
      do: 'lift',
      end: 'W15.to',
    });
    doAll(bench, {do: 'unlock', part: 'DS2'}, {do: 'set', target: 'DS2.position', value: 'closed'});
    expect(severities(bench)).toEqual(['caution end-energised:W15.to']);
  });

  // a neutral carries its load's current, and stands at line voltage once it is lifted
  test('a neutral lifted under load becomes live', () => {
    const bench = benchAt('practice-panel');
    doAll(
      bench,
      {do: 'set', target: 'S1.position', value: 'on'},
      {do: 'wait', seconds: 1},
      {do: 'lift', end: 'W11.to'},
    );
    expect(severities(bench)).toContain('danger live-end:W11.to');
  });
});

describe('jumpers', () => {
  test('around a safety: a caution that names it', () => {
    const bench = benchAt('practice-panel', ['HPS:stuck-open']);
    doAll(bench, {do: 'jumper', from: 'HPS.1', to: 'HPS.2'});
    expect(bench.view().safety[0]).toMatchObject({severity: 'caution', id: 'bypass:HPS.1~HPS.2'});
    expect(bench.view().safety[0].text).toContain('high-pressure switch HPS');
  });

  test('around three of them names the three', () => {
    const bench = benchAt('practice-panel');
    doAll(bench, {do: 'jumper', from: 'TB2.Y', to: 'K1.1'});
    for (const part of ['FS1', 'HPS', 'LPS']) expect(bench.view().safety[0].text).toContain(part);
  });

  test('across a coil is a short, not a way around', () => {
    const bench = benchAt('practice-panel');
    doAll(
      bench,
      {do: 'set', target: 'S1.position', value: 'on'},
      {do: 'wait', seconds: 1},
      {do: 'jumper', from: 'K1.1', to: 'K1.3'},
    );
    expect(severities(bench)).toEqual(['danger jumper-short:K1.1~K1.3']);
    // and has its consequence: the control fuse
    doAll(bench, {do: 'wait', seconds: 1}, {do: 'remove-jumper', from: 'K1.1', to: 'K1.3'});
    expect(doAll(bench, read('F1.1', 'F1.2')).display!.value).toBeGreaterThan(22);
  });

  test('on live line voltage: a danger', () => {
    const bench = heatPump();
    doAll(bench, outdoorOpen, {do: 'jumper', from: 'K3.L1', to: 'K3.T1'});
    expect(severities(bench)).toContain('danger jumper-live:K3.L1~K3.T1');
  });

  test('left in the unit at the repair: a danger', () => {
    const bench = benchAt('practice-panel', ['HPS:stuck-open']);
    doAll(bench, {do: 'jumper', from: 'HPS.1', to: 'HPS.2'}, {do: 'give-up'}, {do: 'clear'});
    expect(severities(bench)).toContain('danger jumper-left:HPS.1~HPS.2');
  });
});

test('reading live with the cover off is ordinary work and no finding', () => {
  const bench = heatPump('HPS:stuck-open');
  doAll(bench, ...coolingCall, outdoorOpen, read('K3.L1', 'K3.L2'), read('HPS.1', 'HPS.2'));
  expect(bench.view().safety).toEqual([]);
});

// 29 CFR 1910.333(a)(1), as summarised publicly: live parts below 50 V to ground may be exempt from de-energising
test('danger begins at 50 V to ground', () => {
  expect(dangerousVolts).toBe(50);
});

describe('cautions of the moment', () => {
  const ids = (bench: Bench): string[] => bench.view().cautions.map((each) => each.id);

  test('lead through a lock-out step by step, and always defer', () => {
    const bench = heatPump();
    expect(ids(bench)).toEqual([]);
    doAll(bench, outdoorOpen);
    expect(ids(bench)).toEqual(['live:outdoor-unit', 'deference']);
    doAll(bench, off);
    expect(ids(bench)).toEqual(['lock:outdoor-unit', 'control-live:outdoor-unit', 'deference']);
    doAll(bench, lock);
    expect(ids(bench)).toEqual(['prove:outdoor-unit', 'control-live:outdoor-unit', 'deference']);
    doAll(bench, disconnectOpen, knownLive, deadTest);
    expect(ids(bench)).toContain('prove:outdoor-unit');
    doAll(bench, knownLive);
    expect(ids(bench)).toEqual([
      'live:outdoor-disconnect',
      'discharge:outdoor-unit',
      'control-live:outdoor-unit',
      'deference',
    ]);
  });

  test('the line side of an open disconnect is still called live', () => {
    const bench = heatPump();
    doAll(bench, off, disconnectOpen);
    expect(ids(bench)).toContain('live:outdoor-disconnect');
  });

  test('ohms on the selector with power on: a word before the reading', () => {
    const bench = heatPump();
    bench.act({do: 'meter', function: 'ohms'});
    expect(ids(bench)).toContain('resistance-wants-dead');
  });
});
