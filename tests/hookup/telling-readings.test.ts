import {describe, expect, test} from 'vitest';
import {checkHookup} from '../../src/hookup/check-hookup.ts';
import {findingKinds, type Finding, type FindingKind} from '../../src/hookup/finding.ts';
import type {HookupTask, HookupWire} from '../../src/hookup/hookup-task.ts';
import {HookupRun, voltsAcross} from '../../src/hookup/hookup-run.ts';
import {loadsOf} from '../../src/hookup/loads.ts';
import {readShippedTask} from '../../src/hookup/node/read-shipped-task.ts';
import {atRest} from '../../src/hookup/wired-circuit.ts';

const wire = (from: string, to: string, id = 'X1', gauge = 14): HookupWire => ({
  id,
  from,
  to,
  gauge,
  colour: 'grey',
});
const task = (id: string): HookupTask => readShippedTask(id);
const without = ({answer}: HookupTask, ...ids: string[]) =>
  answer.filter(({id}) => !ids.includes(id));

interface Example {
  readonly kind: FindingKind;
  readonly how: string;
  readonly task: HookupTask;
  readonly wires: readonly HookupWire[];
}

const three = task('three-safeties');
const lamp = task('lamp-and-switch');
const stages = task('two-stage-heat');
const apart = task('isolation-relay');
const lockOut = task('lock-out-relay');
const pump = task('condensate-alarm');
const parallel = task('mend-parallel-safeties');

/** One wrong board for each kind of finding, and a second way to some of them. */
const examples: readonly Example[] = [
  {
    kind: 'dead-short',
    how: 'R to common',
    task: three,
    wires: [...three.answer, wire('TB2.R', 'TB2.C')],
  },
  {
    kind: 'unfused-path',
    how: 'a wire around the fuse',
    task: three,
    wires: [...three.answer, wire('T1.X1', 'TB2.R')],
  },
  {
    kind: 'never-fed',
    how: 'both ends of the coil on R',
    task: three,
    wires: [...without(three, 'H9'), wire('K1.3', 'TB2.R')],
  },
  {
    kind: 'safety-bypassed',
    how: 'a wire across the high-pressure switch',
    task: three,
    wires: [...three.answer, wire('HPS.1', 'HPS.2')],
  },
  {
    kind: 'safety-bypassed',
    how: 'two safeties in parallel',
    task: parallel,
    wires: parallel.begin,
  },
  {
    kind: 'common-side',
    how: 'a safety between coil and common',
    task: task('mend-common-side'),
    wires: task('mend-common-side').begin,
  },
  {
    kind: 'loads-in-series',
    how: 'relay and lamp one after the other',
    task: task('mend-series-loads'),
    wires: task('mend-series-loads').begin,
  },
  {
    kind: 'on-without-call',
    how: 'a wire across the call',
    task: three,
    wires: [...three.answer, wire('S1.1', 'S1.2')],
  },
  {
    kind: 'back-feed',
    how: 'the common of a sequencer on the power line',
    task: stages,
    wires: [...stages.answer, wire('SQ2.3', 'SQ1.2')],
  },
  {
    kind: 'on-when-off',
    how: 'an alarm without its relay',
    task: pump,
    wires: without(pump, 'H3'),
  },
  {
    kind: 'off-when-on',
    how: 'an alarm that waits for more than its float',
    task: pump,
    wires: [...pump.answer, wire('FS1.2', 'S1.2')],
  },
  {
    kind: 'sequence',
    how: 'a lock-out relay that locks nothing',
    task: lockOut,
    wires: [...lockOut.answer, wire('HPS.1', 'HPS.2')],
  },
  {
    kind: 'joined',
    how: 'two secondaries on one wire',
    task: apart,
    wires: [...apart.answer, wire('TS.R', 'F2.1')],
  },
  {
    kind: 'wire-too-small',
    how: '18 AWG in a lamp circuit',
    task: lamp,
    wires: lamp.answer.map((each) => ({...each, gauge: 18})),
  },
  {kind: 'not-bonded', how: 'no green wire', task: lamp, wires: without(lamp, 'H5')},
  {
    kind: 'spare-wire',
    how: 'a second wire between two joined terminals',
    task: three,
    wires: [...three.answer, wire('S1.2', 'FS1.1')],
  },
  {
    kind: 'dangling-wire',
    how: 'a chain left half done',
    task: pump,
    wires: without(pump, 'H9'),
  },
];

/** What a meter shows on a board, leads and switches as the finding says; taken from the circuit anew. */
function meterOn(board: Example['task'], wires: readonly HookupWire[], finding: Finding): number {
  const run = new HookupRun(board, wires);
  const {meter, red, black} = finding.reading;
  const positions = run.positions(run.maskOf(finding.closed));
  if (meter === 'ohms') {
    const supply = board.parts.find(({kind}) => kind === 'supply')!;
    // power off: the service is open, and its own bond of the neutral does not count for a lug
    const open =
      finding.kind === 'not-bonded'
        ? [`${supply.id}.main-bond`]
        : finding.kind === 'dead-short'
          ? board.parts.flatMap(({elements}) =>
              elements.flatMap((element) =>
                element.is === 'transformer' ? element.windings.map(({id}) => id) : [],
              ),
            )
          : [];
    return run.circuit.dead(positions, {open}).thevenin(red, black!).ohms.re;
  }
  const open =
    finding.kind === 'unfused-path'
      ? board.protection.find(({loads}) => loads.includes(finding.load!))!.device
      : [];
  let memory = atRest;
  if (finding.kind === 'sequence')
    for (const {closed} of board.trials[0].steps) {
      if (closed === finding.closed) break;
      memory = run.settle(run.maskOf(closed), memory).memory;
    }
  const settled = run.circuit.settle(positions, memory, {open});
  if (meter === 'clamp-amps') {
    const {re, im} = settled.solution.amps(red);
    return Math.hypot(re, im);
  }
  return voltsAcross(settled, red, black!);
}

test('there is an example of every kind of finding', () => {
  expect(new Set(examples.map(({kind}) => kind))).toEqual(new Set(findingKinds));
});

describe.each(examples)('$kind: $how', ({kind, task: board, wires}) => {
  const {findings} = checkHookup(board, wires);
  const finding = findings.find((each) => each.kind === kind)!;

  test('is found, said in one line, with wires to show on the board', () => {
    expect(findings.map((each) => each.kind)).toContain(kind);
    expect(finding.cause).toMatch(/^[^\n]{10,260}\.$/);
    const known = [...wires, ...board.given].map(({id}) => id);
    // a wire that is missing cannot be shown; then the reading's terminals are
    if (kind !== 'not-bonded') expect(finding.wires.length).toBeGreaterThan(0);
    for (const id of finding.wires) expect(known).toContain(id);
  });

  test('its reading shows what it says on this board, and something else on a right one', () => {
    const shown = meterOn(board, wires, finding);
    expect(shown).toBeCloseTo(finding.reading.shows, 1);
    // a clamp on a wire that the right answer does not have, or that is only too thin, has nothing to compare with
    if (finding.reading.meter === 'clamp-amps') return;
    const right = meterOn(board, board.answer, finding);
    expect(Math.abs(right - shown)).toBeGreaterThan(0.2 * Math.max(right, shown));
  });
});

test('two loads in series share the volts, and the finding says what that does to a coil', () => {
  const mend = task('mend-series-loads');
  const finding = checkHookup(mend, mend.begin).findings.find(
    ({kind}) => kind === 'loads-in-series',
  )!;
  const load = loadsOf(mend.parts).get(finding.load!)!;
  expect(finding.volts! / load.ratedVolts).toBeLessThan(0.8);
  expect(finding.cause).toMatch(/too few to pull in|chatters/);
});

test('two equal coils in series stand at half their volts each', () => {
  const wires = stages.answer.map((each) => (each.id === 'H4' ? {...each, to: 'SQ2.1'} : each));
  const cut = wires.filter(({id}) => id !== 'H5' && id !== 'H6');
  const found = checkHookup(stages, cut).findings.filter(({kind}) => kind === 'loads-in-series');
  expect(found.length).toBeGreaterThan(0);
  for (const {volts} of found) {
    expect(volts! / 24).toBeGreaterThan(0.45);
    expect(volts! / 24).toBeLessThan(0.6);
  }
});

test('a coil behind its own closed contact chatters, and is said to', () => {
  const wires = [
    ...without(lockOut, 'H9', 'H10', 'H6', 'H7'),
    // the relay's own contact feeds its coil
    wire('LPS.2', 'K2.4', 'X1'),
    wire('K2.5', 'K2.1', 'X2'),
    wire('K2.2', 'TB2.C', 'X3'),
    wire('LPS.2', 'K3.A1', 'X4'),
  ];
  const finding = checkHookup(lockOut, wires).findings.find(({cause}) =>
    cause.includes('chatters'),
  );
  expect(finding?.cause).toContain('K2');
  expect(finding?.reading.should).toContain('steady');
});
