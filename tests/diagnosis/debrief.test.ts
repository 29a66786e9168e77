import {describe, expect, test} from 'vitest';
import type {Action} from '../../src/bench/actions.ts';
import {debriefOf} from '../../src/diagnosis/debrief.ts';
import {expectationHolds} from '../../src/diagnosis/expectation.ts';
import {overload, show} from '../../src/meter/display.ts';
import {benchAt, doAll, read} from '../bench-model/bench-of.ts';

const call: readonly Action[] = [
  {do: 'set', target: 'S1.position', value: 'on'},
  {do: 'wait', seconds: 5},
];
const name = (fault: string, ...evidence: number[]): Action => ({do: 'name', fault, evidence});

describe('the verdict', () => {
  test('right: the hidden fault was named', () => {
    const bench = benchAt('practice-panel', ['HPS:stuck-open']);
    doAll(bench, ...call, read('HPS.1', 'HPS.2'), name('HPS:stuck-open', 2));
    const debrief = debriefOf(bench);
    expect(debrief).toMatchObject({verdict: 'right', left: [], minutes: 0.5 + 5 / 60 + 0.5 + 1});
    expect(debrief.named).toEqual({
      id: 'HPS:stuck-open',
      name: 'High-pressure switch HPS: contact stuck open',
    });
  });

  test('wrong: the wire beside the switch was named, which a reading tells apart', () => {
    const bench = benchAt('practice-panel', ['HPS:stuck-open']);
    doAll(bench, ...call, name('W17:open'));
    expect(debriefOf(bench)).toMatchObject({verdict: 'wrong', left: [{id: 'HPS:stuck-open'}]});
  });

  test('equivalent: nothing on this unit tells which safety would not open', () => {
    const bench = benchAt('split-heat-pump', ['HPS:stuck-closed']);
    doAll(bench, name('LPS:stuck-closed'));
    expect(debriefOf(bench)).toMatchObject({verdict: 'equivalent', left: []});
  });

  test('given up', () => {
    const bench = benchAt('practice-panel', ['LT1:open']);
    doAll(bench, ...call, {do: 'give-up'});
    const debrief = debriefOf(bench);
    expect(debrief).toMatchObject({verdict: 'given-up', left: [{id: 'LT1:open'}]});
    expect(debrief.named).toBeUndefined();
  });

  test('of two hidden faults, one named leaves the other; both named leave none', () => {
    const bench = benchAt('practice-panel', ['HPS:stuck-open', 'LT1:open']);
    doAll(bench, ...call, name('LT1:open'));
    expect(debriefOf(bench)).toMatchObject({verdict: 'right', left: [{id: 'HPS:stuck-open'}]});
    doAll(bench, name('HPS:stuck-open'));
    expect(debriefOf(bench)).toMatchObject({verdict: 'right', left: []});
  });

  test('is not told while the search is on', () => {
    expect(() => debriefOf(benchAt('practice-panel', ['LT1:open']))).toThrow(
      'The search is still on',
    );
  });
});

describe('the sequence of operation', () => {
  test('shows the first step that broke, and what held before it', () => {
    const bench = benchAt('practice-panel', ['HPS:stuck-open']);
    doAll(bench, {do: 'give-up'});
    const {title, steps} = debriefOf(bench).sequence;
    expect(title).toBe('Call');
    expect(steps.every((step) => step.healthy)).toBe(true);
    const broke = steps.findIndex((step) => step.broke);
    expect(steps[broke].title).toBe('The high-pressure switch passes the call');
    expect(steps.slice(0, broke).every((step) => step.faulted)).toBe(true);
    expect(steps.filter((step) => step.broke)).toHaveLength(1);
  });
});

describe('the readings', () => {
  test('stand beside what a healthy unit would have shown, at the same moment with the same meter', () => {
    const bench = benchAt('practice-panel', ['HPS:stuck-open'], 99);
    doAll(
      bench,
      ...call,
      {do: 'read', red: 'TB2.R', black: 'TB2.C', expected: {value: 24}},
      {do: 'read', red: 'HPS.1', black: 'HPS.2', expected: {value: 0}},
      {do: 'meter', function: 'clamp-amps'},
      {do: 'clamp', wire: 'W19'},
      name('HPS:stuck-open', 3),
    );
    const [supply, open, clamp] = debriefOf(bench).readings;
    expect(supply).toMatchObject({
      logIndex: 2,
      telling: false,
      evidence: false,
      expectedRight: true,
    });
    expect(open).toMatchObject({logIndex: 3, telling: true, evidence: true, expectedRight: false});
    expect(open.healthy.value).toBeLessThan(0.1);
    expect(open.read.value).toBeGreaterThan(22);
    expect(clamp.healthy.value).toBeGreaterThan(0.1);
    expect(clamp.expectedRight).toBeUndefined();
  });

  test('of a healthy unit tell nothing', () => {
    const bench = benchAt('practice-panel');
    doAll(bench, ...call, read('HPS.1', 'HPS.2'), read('K1.1', 'K1.3'), {do: 'give-up'});
    const {readings} = debriefOf(bench);
    expect(readings).toHaveLength(2);
    for (const {read: was, healthy, telling} of readings) {
      expect(was).toEqual(healthy);
      expect(telling).toBe(false);
    }
  });

  test('taken to prove the repair are not part of the search', () => {
    const bench = benchAt('practice-panel', ['HPS:stuck-open']);
    doAll(
      bench,
      ...call,
      read('HPS.1', 'HPS.2'),
      name('HPS:stuck-open', 2),
      {do: 'clear'},
      read('HPS.1', 'HPS.2'),
    );
    expect(debriefOf(bench).readings).toHaveLength(1);
  });
});

describe('an expectation holds', () => {
  test.each([
    [24, show('ac-volts', 26.1), true],
    [24, show('ac-volts', 12), false],
    [0, show('ac-volts', 0.4), true],
    [240, show('ac-volts', 238.6), true],
  ])('%d V against what was read', (value, read, holds) => {
    expect(expectationHolds('ac-volts', {value}, read)).toBe(holds);
  });
  test('OL when OL was read, and not otherwise', () => {
    expect(expectationHolds('ohms', {open: true}, overload('ohms'))).toBe(true);
    expect(expectationHolds('ohms', {open: true}, show('ohms', 12))).toBe(false);
    expect(expectationHolds('ohms', {value: 12}, overload('ohms'))).toBe(false);
  });
  test('never where there were only words', () => {
    expect(expectationHolds('ohms', {}, show('ohms', 12))).toBe(false);
  });
});
