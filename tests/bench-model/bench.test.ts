import {describe, expect, test} from 'vitest';
import {Bench} from '../../src/bench/bench.ts';
import type {Action} from '../../src/bench/actions.ts';
import {benchAt, coolingCall, doAll, read, refusalOf} from './bench-of.ts';

describe('the field log', () => {
  test('keeps a reading with its time, state, function, leads, expectation and display', () => {
    const bench = benchAt('practice-panel', ['HPS:stuck-open']);
    const entry = doAll(
      bench,
      {do: 'set', target: 'S1.position', value: 'on'},
      {do: 'wait', seconds: 5},
      {do: 'read', red: 'HPS.1', black: 'HPS.2', expected: {value: 0}},
    );
    expect(entry).toMatchObject({
      index: 2,
      kind: 'reading',
      timeMs: 5000,
      state: 'Switch on · power on',
      function: 'ac-volts',
      red: 'HPS.1',
      black: 'HPS.2',
      expected: {value: 0},
      findings: [],
    });
    expect(entry.display!.value).toBeGreaterThan(22);
  });

  test('choosing a function leaves no line and costs no time', () => {
    const bench = benchAt('practice-panel');
    expect(bench.act({do: 'meter', function: 'ohms'})).toEqual({});
    expect(bench.view()).toMatchObject({minutes: 0, log: [], meter: {function: 'ohms'}});
  });

  test('the unit’s clock moves by waiting only; minutes count every action', () => {
    const bench = benchAt('practice-panel');
    doAll(bench, read('TB2.R', 'TB2.C'), {do: 'lift', end: 'W19.to'}, {do: 'wait', seconds: 120});
    expect(bench.view()).toMatchObject({timeMs: 120_000, minutes: 0.5 + 2 + 2});
  });

  test('a display is shown until the unit is changed, and the leads stay where they are', () => {
    const bench = benchAt('practice-panel');
    doAll(bench, read('TB2.R', 'TB2.C'), {do: 'note', text: '24 V here'});
    expect(bench.view().meter.display?.value).toBeGreaterThan(22);
    doAll(bench, {do: 'set', target: 'S1.position', value: 'on'});
    expect(bench.view().meter).toEqual({function: 'ac-volts', red: 'TB2.R', black: 'TB2.C'});
  });
});

describe('refused, with a reason, and nothing changed', () => {
  const panel = () => benchAt('practice-panel');
  const cases: [string, (bench: Bench) => void, Action, string][] = [
    [
      'a lead on a terminal that is not there',
      () => {},
      read('K1.9', 'TB2.C'),
      'There is no terminal "K1.9" on this unit; the nearest is "K1.1".',
    ],
    [
      'a lead behind a closed cover',
      () => {},
      read('CB1.L1', 'CB1.T1'),
      'CB1.L1 is behind the cover of the supply box; open that cover first.',
    ],
    [
      'a lead on a wire end that is on its terminal',
      () => {},
      read('W19.to', 'TB2.C'),
      'Wire end W19.to is not lifted; put the lead on its terminal K1.1.',
    ],
    [
      'leads while the meter stands on clamp amps',
      (b) => doAll(b, {do: 'meter', function: 'clamp-amps'}, {do: 'note', text: 'x'}),
      read('TB2.R', 'TB2.C'),
      'The meter stands on clamp amps; choose volts, ohms or continuity to use the leads.',
    ],
    [
      'the clamp while the meter stands on volts',
      () => {},
      {do: 'clamp', wire: 'W19'},
      'Choose clamp amps on the meter before you close the clamp around a wire.',
    ],
    [
      'lifting what is behind a closed cover',
      () => {},
      {do: 'lift', end: 'W1.from'},
      'W1.from is behind the cover of the supply box; open that cover first.',
    ],
    [
      'lifting a wire end twice',
      (b) => doAll(b, {do: 'lift', end: 'W19.to'}),
      {do: 'lift', end: 'W19.to'},
      'Wire end W19.to is already lifted.',
    ],
    [
      'landing what was not lifted',
      () => {},
      {do: 'land', end: 'W19.to'},
      'Wire end W19.to is on its terminal.',
    ],
    [
      'a wire end that is not there',
      () => {},
      {do: 'lift', end: 'W99.to'},
      'There is no wire end "W99.to" on this unit; the nearest is "W9.to".',
    ],
    [
      'a lock on a closed disconnect',
      () => {},
      {do: 'lock', part: 'DS1'},
      'DS1 is not open; open it before you hang a lock and tag on it.',
    ],
    [
      'a lock on what does not isolate',
      () => {},
      {do: 'lock', part: 'S1'},
      'There is no isolating switch "S1" on this unit; the nearest is "DS1".',
    ],
    [
      'moving what is locked',
      (b) =>
        doAll(b, {do: 'set', target: 'DS1.position', value: 'open'}, {do: 'lock', part: 'DS1'}),
      {do: 'set', target: 'DS1.position', value: 'closed'},
      'DS1 is locked and tagged; take your lock off before you move it.',
    ],
    [
      'taking off a lock that does not hang',
      () => {},
      {do: 'unlock', part: 'DS1'},
      'No lock of yours hangs on DS1.',
    ],
    [
      'a position that a switch has not',
      () => {},
      {do: 'set', target: 'S1.position', value: 'up'},
      'S1.position cannot be "up"; it is one of off, on.',
    ],
    [
      'a value out of range',
      () => {},
      {do: 'set', target: 'plant.dischargePsig', value: 9000},
      'plant.dischargePsig cannot be 9000; give a number from 0 to 700 psig.',
    ],
    [
      'a control that is not there',
      () => {},
      {do: 'set', target: 'S1.positon', value: 'on'},
      'There is no control "S1.positon" on this unit; the nearest is "S1.position".',
    ],
    [
      'a cover that is already off',
      (b) => doAll(b, {do: 'open-cover', enclosure: 'supply-box'}),
      {do: 'open-cover', enclosure: 'supply-box'},
      'The cover of the supply box is already off.',
    ],
    [
      'a cover that is none',
      () => {},
      {do: 'open-cover', enclosure: 'board'},
      'The practice board has no cover; everything in it can be reached.',
    ],
    [
      'a jumper from a point to itself',
      () => {},
      {do: 'jumper', from: 'K1.1', to: 'K1.1'},
      'A jumper goes between two different points.',
    ],
    [
      'a jumper twice',
      (b) => doAll(b, {do: 'jumper', from: 'HPS.1', to: 'HPS.2'}),
      {do: 'jumper', from: 'HPS.2', to: 'HPS.1'},
      'There is already a jumper between HPS.2 and HPS.1.',
    ],
    [
      'landing a wire with a jumper on it',
      (b) => doAll(b, {do: 'lift', end: 'W19.to'}, {do: 'jumper', from: 'W19.to', to: 'K1.1'}),
      {do: 'land', end: 'W19.to'},
      'A jumper is clipped to W19.to; take it off before you land the wire.',
    ],
    [
      'waiting no time',
      () => {},
      {do: 'wait', seconds: 0},
      'Wait more than 0 and at most 24 hours at a time.',
    ],
    [
      'an empty note',
      () => {},
      {do: 'note', text: '  '},
      'The note is empty; write what you want to remember.',
    ],
    [
      'naming a fault that is not there',
      () => {},
      {do: 'name', fault: 'HPS:stuck-opn', evidence: []},
      'There is no fault "HPS:stuck-opn" on this unit; the nearest is "HPS:stuck-open".',
    ],
    [
      'naming on the evidence of a line that is not there',
      () => {},
      {do: 'name', fault: 'HPS:stuck-open', evidence: [3]},
      'Line 4 of the field log is not a reading; choose readings as evidence.',
    ],
    [
      'naming on the evidence of a note',
      (b) => doAll(b, {do: 'note', text: 'hm'}),
      {do: 'name', fault: 'HPS:stuck-open', evidence: [0]},
      'Line 1 of the field log is not a reading; choose readings as evidence.',
    ],
    [
      'clearing before naming',
      () => {},
      {do: 'clear'},
      'Name the fault, or give up, before it is cleared.',
    ],
  ];
  test.each(cases)('%s', (_title, prepare, action, sentence) => {
    const bench = panel();
    prepare(bench);
    expect(refusalOf(bench, action)).toBe(sentence);
  });
});

describe('covers', () => {
  test('hide what is behind them, and show it when they are off', () => {
    const bench = benchAt('split-heat-pump');
    doAll(bench, ...coolingCall);
    const seen = () => bench.view().observations.map((each) => each.part);
    expect(seen()).not.toContain('K3');
    expect(seen()).toContain('M2');
    doAll(bench, {do: 'open-cover', enclosure: 'outdoor-unit'});
    expect(seen()).toContain('K3');
    doAll(bench, {do: 'close-cover', enclosure: 'outdoor-unit'});
    expect(seen()).not.toContain('K3');
    expect(refusalOf(bench, read('K3.A1', 'K3.A2'))).toContain(
      'behind the cover of the outdoor unit',
    );
  });
});

describe('wires and jumpers', () => {
  test('a lifted end can be read, and takes its short along', () => {
    const bench = benchAt('practice-panel', ['W19:earth']);
    doAll(
      bench,
      {do: 'set', target: 'DS1.position', value: 'open'},
      {do: 'lift', end: 'W19.from'},
      {do: 'lift', end: 'W19.to'},
      {do: 'meter', function: 'ohms'},
    );
    expect(doAll(bench, read('W19.to', 'GND2.E')).display!.value).toBeLessThan(1);
    // what is left on the terminals reads insulation only
    expect(doAll(bench, read('LPS.2', 'GND2.E')).display!.value ?? Infinity).toBeGreaterThan(1e6);
    doAll(bench, {do: 'land', end: 'W19.to'});
    expect(bench.view().lifted).toEqual(['W19.from']);
  });

  test('a jumper around an open switch lets the relay pull in', () => {
    const bench = benchAt('practice-panel', ['HPS:stuck-open']);
    doAll(
      bench,
      {do: 'set', target: 'S1.position', value: 'on'},
      {do: 'jumper', from: 'HPS.1', to: 'HPS.2'},
      {do: 'wait', seconds: 1},
    );
    expect(bench.view().observations.find((each) => each.part === 'LT1')?.is).toBe('lit');
    doAll(bench, {do: 'remove-jumper', from: 'HPS.2', to: 'HPS.1'}, {do: 'wait', seconds: 1});
    expect(bench.view().observations.find((each) => each.part === 'LT1')?.is).toBe('off');
    expect(bench.view().jumpers).toEqual([]);
  });
});

describe('naming', () => {
  test('goes from working to named to cleared, and the unit then runs', () => {
    const bench = benchAt('practice-panel', ['HPS:stuck-open']);
    doAll(
      bench,
      {do: 'set', target: 'S1.position', value: 'on'},
      {do: 'wait', seconds: 2},
      read('HPS.1', 'HPS.2'),
    );
    expect(bench.view().stage).toBe('working');
    doAll(bench, {do: 'name', fault: 'HPS:stuck-open', evidence: [2]});
    expect(bench.view().stage).toBe('named');
    doAll(bench, {do: 'clear'}, {do: 'wait', seconds: 2});
    expect(bench.view().stage).toBe('cleared');
    expect(bench.view().observations.find((each) => each.part === 'LT1')?.is).toBe('lit');
    expect(doAll(bench, read('HPS.1', 'HPS.2')).display!.value).toBeLessThan(0.1);
    expect(refusalOf(bench, {do: 'name', fault: 'HPS:stuck-open', evidence: []})).toContain(
      'cleared',
    );
  });

  test('giving up closes the search too, once', () => {
    const bench = benchAt('practice-panel', ['HPS:stuck-open']);
    doAll(bench, {do: 'give-up'});
    expect(bench.hasGivenUp).toBe(true);
    expect(refusalOf(bench, {do: 'give-up'})).toBe('The call is already closed.');
  });
});

describe('an attempt is its actions', () => {
  const actions: Action[] = [
    ...coolingCall,
    {do: 'open-cover', enclosure: 'outdoor-unit'},
    read('HPS.1', 'TB2.C'),
    read('HPS.2', 'TB2.C'),
    {do: 'meter', function: 'clamp-amps'},
    {do: 'clamp', wire: 'W59'},
    {do: 'lift', end: 'W59.from'},
    {do: 'wait', seconds: 600},
  ];

  test('replaying them gives the same view to the last digit', () => {
    const first = benchAt('split-heat-pump', ['HPS:stuck-open'], 1234);
    doAll(first, ...actions);
    const second = Bench.replay(first.setup, first.actions);
    expect(second.view()).toEqual(first.view());
  });

  test('an action that cannot be done again is named', () => {
    const {setup} = benchAt('practice-panel');
    expect(() =>
      Bench.replay(setup, [
        {do: 'wait', seconds: 1},
        {do: 'land', end: 'W1.to'},
      ]),
    ).toThrow(
      'Action 2 (land) of this attempt cannot be done again: W1.to is behind the cover of the supply box; open that cover first.',
    );
  });

  test('two meters differ by their seed, and only within their accuracy', () => {
    const shown = [1, 2, 3, 4].map(
      (seed) => doAll(benchAt('practice-panel', [], seed), read('TB2.R', 'TB2.C')).display!.value!,
    );
    expect(new Set(shown).size).toBeGreaterThan(1);
    expect(Math.max(...shown) - Math.min(...shown)).toBeLessThan(0.011 * shown[0]);
  });
});

describe('nothing of the fault is in a view', () => {
  test.each(['HPS:stuck-open', 'W54:open', 'plant:charge-lost', 'K3:coil-shorted'])(
    '%s',
    (fault) => {
      const bench = benchAt('split-heat-pump', [fault]);
      doAll(
        bench,
        ...coolingCall,
        {do: 'open-cover', enclosure: 'outdoor-unit'},
        read('HPS.1', 'HPS.2'),
      );
      const text = JSON.stringify(bench.view());
      const {id, name} = bench.setup.faults[0];
      for (const secret of [id, name]) expect(text).not.toContain(secret);
    },
  );
});
