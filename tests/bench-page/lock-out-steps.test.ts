import {describe, expect, test} from 'vitest';
import type {LogEntry} from '../../src/bench/bench-view.ts';
import {doneText} from '../../src/bench/done-text.ts';
import {lockOutSteps} from '../../src/bench/lock-out-steps.ts';
import {readingEntry, smallUnit, viewOf, volts} from '../browser/bench-fixtures.ts';

const isolated = (locked: boolean, log: readonly LogEntry[]) => {
  const [disconnect, ...others] = viewOf().controls;
  return viewOf({controls: [{...disconnect, value: 'open', locked}, ...others], log});
};
const lockHung: LogEntry = {
  index: 0,
  kind: 'done',
  timeMs: 0,
  minutes: 1,
  state: 'DS1 open',
  text: doneText({do: 'lock', part: 'DS1'}, smallUnit),
  findings: [],
};
const dead = (index: number): LogEntry =>
  readingEntry(index, {red: 'DS1.T1', black: 'K1.3', display: volts('0.00')});
const live = (index: number): LogEntry =>
  readingEntry(index, {red: 'DS1.L1', black: 'K1.3', display: volts('119.8')});
const doneOf = (view: ReturnType<typeof viewOf>) =>
  lockOutSteps(view, 'DS1').map((step) => step.done);

describe('the steps of a lock-out', () => {
  test('a closed disconnect has none done', () => {
    expect(doneOf(viewOf())).toEqual([false, false, false]);
  });

  test('opening alone is not locking', () => {
    expect(doneOf(isolated(false, []))).toEqual([true, false, false]);
  });

  test('live, dead, live: the meter proved before and after a dead reading on the load side proves it', () => {
    const log = [{...lockHung, index: 1}, dead(2), live(3)];
    expect(doneOf(isolated(true, [live(0), ...log]))).toEqual([true, true, true]);
  });

  test('a dead reading with a meter that was not proved afterwards proves nothing, and says what is next', () => {
    const view = isolated(true, [live(0), {...lockHung, index: 1}, dead(2)]);
    expect(doneOf(view)).toEqual([true, true, false]);
    expect(lockOutSteps(view, 'DS1')[2]?.detail).toContain('before and after');
  });

  test('a dead reading before the lock proves nothing', () => {
    expect(doneOf(isolated(true, [dead(0), {...lockHung, index: 1}]))).toEqual([true, true, false]);
  });

  test('a live reading does not prove it dead', () => {
    const stillLive = readingEntry(1, {red: 'DS1.T1', black: 'K1.3', display: volts('119.8')});
    expect(doneOf(isolated(true, [lockHung, stillLive]))).toEqual([true, true, false]);
  });
});
