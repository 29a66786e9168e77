import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import {checkHookup, sameHookup, type HookupReport} from '../../src/hookup/check-hookup.ts';
import {coverCombinations, type Cube} from '../../src/hookup/combinations.ts';
import type {HookupTask, HookupWire} from '../../src/hookup/hookup-task.ts';
import {loadTask} from '../../src/hookup/load-task.ts';
import {readShippedTask} from '../../src/hookup/node/read-shipped-task.ts';

/** Every board by cubes, whatever its number of switches. */
const byCubes = {limit: 0, mostRuns: 100_000};
const byAll = {limit: 24, mostRuns: 0};

const wire = (from: string, to: string, id: string): HookupWire => ({
  id,
  from,
  to,
  gauge: 18,
  colour: 'grey',
});

/** A board of switches, two relays with a contact of each form, and two lamps; `n` switches. */
function relayBoard(n: number, rules: readonly string[]): HookupTask {
  const switches = Array.from({length: n}, (_, i) => `S${i + 1}`);
  const relay = (id: string) =>
    `  - {id: ${id}, kind: relay, title: Relay ${id}, enclosure: board, data: {coil: {ratedVolts: 24, sealedVa: 4.5, inrushVa: 9, coilOhms: 45}, coilTerminals: ["1", "3"], contacts: [{id: no, terminals: ["2", "4"], form: "NO"}, {id: nc, terminals: ["5", "6"], form: NC}]}}`;
  const text = [
    'id: relay-board',
    'title: Relay board',
    'about: Two relays, two lamps and switches.',
    'level: 3',
    'frequencyHz: 60',
    'enclosures:',
    '  - {id: board, title: Board, cover: false, cabinet: GND1.E}',
    'runs:',
    '  - {id: loom, title: Loom, picofaradsPerFoot: 12}',
    'parts:',
    '  - {id: SUP, kind: supply, title: "120 V supply", enclosure: board, data: {legs: [{terminal: L, volts: 120, degrees: 0}]}}',
    '  - {id: T1, kind: transformer, title: Transformer, enclosure: board, data: {va: 75, taps: [{terminal: H2, volts: 120}], secondaryVolts: 24}}',
    '  - {id: F1, kind: fuse, title: Fuse, enclosure: board, data: {amps: 5}}',
    '  - {id: TB, kind: terminal-strip, title: Strip, enclosure: board, data: {terminals: [R, C]}}',
    ...switches.map(
      (id) => `  - {id: ${id}, kind: toggle-switch, title: Switch ${id}, enclosure: board}`,
    ),
    relay('K1'),
    relay('K2'),
    '  - {id: LT1, kind: lamp, title: Lamp 1, enclosure: board, data: {watts: 5, volts: 24}}',
    '  - {id: LT2, kind: lamp, title: Lamp 2, enclosure: board, data: {watts: 5, volts: 24}}',
    '  - {id: GND1, kind: ground-lug, title: Lug, enclosure: board}',
    'wires:',
    ...[
      ['SUP.L', 'T1.H1'],
      ['SUP.N', 'T1.H2'],
      ['T1.X1', 'F1.1'],
      ['F1.2', 'TB.R'],
      ['T1.X2', 'TB.C'],
      ['TB.C', 'GND1.E'],
      ['SUP.G', 'GND1.E'],
    ].map(
      ([from, to], i) =>
        `  - {id: G${i + 1}, from: ${from}, to: ${to}, gauge: 18, feet: 1, colour: black, run: loom}`,
    ),
    'circuits:',
    '  - {id: control, title: 24 V, rails: [TB.R, TB.C], railTitles: [R, C], volts: 24}',
    'inputs:',
    ...switches.map(
      (id) => `  - {id: ${id}, title: Switch ${id}, is: switch, contact: ${id}.contact}`,
    ),
    'rules:',
    ...rules.map((rule) => `  - "${rule}"`),
    'answer:',
    '  - {from: TB.R, to: S1.1}',
    '',
  ].join('\n');
  const {task, errors} = loadTask(text, 'relay-board.yaml');
  if (!task) throw new Error(errors.map(({message}) => message).join('; '));
  return task;
}

const small = relayBoard(5, [
  'LT1.filament at least 85 % of rated exactly when S1 and not S2 or S3',
  'LT2.filament at least 85 % of rated exactly when S4 and (S5 or not S1)',
  'K1.coil at least 85 % of rated exactly when S1 and S2',
]);

/** States of each load by combination, read off the cubes. Fails where a combination is covered twice or not at all. */
function unfolded({cubes, loadStates}: HookupReport, n: number, load: string): string {
  return Array.from({length: 2 ** n}, (_, mask) => {
    const over = cubes!.flatMap((cube, i) => (holds(cube, mask) ? [i] : []));
    expect(over).toHaveLength(1);
    return plain(loadStates[load][over[0]]);
  }).join('');
}
const holds = ({mask, care}: Cube, closed: number): boolean => ((mask ^ closed) & care) === 0;
/** Between and off are told apart by the rule alone. */
const plain = (states: string): string => states.replaceAll('~', '0');

const live = ['TB.R', 'TB.C'];
const ends = [
  ...live,
  ...small.inputs.flatMap(({id}) => [`${id}.1`, `${id}.2`]),
  ...['K1', 'K2'].flatMap((id) => ['1', '3', '2', '4', '5', '6'].map((name) => `${id}.${name}`)),
  ...['LT1', 'LT2'].flatMap((id) => [`${id}.1`, `${id}.2`]),
];
/** Boards that do something: coils and lamps stand on the common, the rest is wired at random. */
const boards = fc
  .tuple(
    fc.array(fc.tuple(fc.constantFrom(...ends), fc.constantFrom(...ends)), {
      minLength: 4,
      maxLength: 16,
    }),
    fc.subarray(['K1.3', 'K2.3', 'LT1.2', 'LT2.2'], {minLength: 2}),
    fc.subarray(['S1.1', 'S2.1', 'S3.1', 'K1.5', 'K1.2'], {minLength: 1}),
  )
  .map(([random, commons, fed]) =>
    [
      ...commons.map((end) => [end, 'TB.C'] as const),
      ...fed.map((end) => [end, 'TB.R'] as const),
      ...random,
    ]
      .filter(([from, to]) => from !== to)
      .map(([from, to], i) => wire(from, to, `X${i}`)),
  );

describe('covering by cubes', () => {
  test('gives every combination once, whatever the runs depend on', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(63), {minLength: 64, maxLength: 64}), (cares) => {
        const cubes = [
          ...coverCombinations(6, (mask) => ({settled: mask, care: cares[mask]}), 1000),
        ];
        for (let closed = 0; closed < 64; closed++)
          expect(cubes.filter((cube) => holds(cube!, closed))).toHaveLength(1);
      }),
      {numRuns: 100},
    );
  });

  test('agrees with every combination run one by one, on boards wired at random', () => {
    let cheaper = 0;
    fc.assert(
      fc.property(boards, (wires) => {
        const cubes = checkHookup(small, wires, byCubes);
        const all = checkHookup(small, wires, byAll);
        for (const load of Object.keys(all.loadStates))
          expect(unfolded(cubes, 5, load)).toBe(plain(all.loadStates[load]));
        expect(cubes.verdict).toBe(all.verdict);
        if (cubes.combinations < 16) cheaper++;
      }),
      {numRuns: 150, seed: 5},
    );
    // or the test would say nothing of cubes
    expect(cheaper).toBeGreaterThan(50);
  });

  test.each([
    'lock-out-relay',
    'phase-monitor',
    'fan-interlock',
    'cooling-chain',
    'three-safeties',
  ])('agrees on %s, with its kinds of findings', (id) => {
    const task = readShippedTask(id);
    const variants = [
      task.answer,
      ...task.answer.map((_, i) => task.answer.filter((__, k) => k !== i)),
    ];
    for (const wires of variants) {
      const cubes = checkHookup(task, wires, byCubes);
      const all = checkHookup(task, wires, byAll);
      expect(cubes.verdict).toBe(all.verdict);
      expect(cubes.findings.map(({kind, load}) => `${kind} ${load}`)).toEqual(
        all.findings.map(({kind, load}) => `${kind} ${load}`),
      );
      for (const load of Object.keys(all.loadStates))
        expect(unfolded(cubes, task.inputs.length, load)).toBe(plain(all.loadStates[load]));
    }
  });
});

describe('beyond the limit', () => {
  const names = Array.from({length: 16}, (_, i) => `S${i + 1}`);
  const series = (ids: readonly string[], to: string, tag: string): HookupWire[] =>
    ids.map((id, i) => wire(`${id}.2`, i + 1 < ids.length ? `${ids[i + 1]}.1` : to, `${tag}${i}`));
  const chain = [
    wire('TB.R', 'S1.1', 'A'),
    ...series(names, 'LT1.1', 'B'),
    wire('LT1.2', 'TB.C', 'C'),
  ];
  const sixteen = relayBoard(16, [
    `LT1.filament at least 85 % of rated exactly when ${names.join(' and ')}`,
  ]);

  test('sixteen switches in series take seventeen runs', () => {
    const report = checkHookup(sixteen, chain);
    expect(report.verdict).toBe('right');
    expect(report.combinations).toBe(17);
    expect(report.method).toContain('16 switches have 65536 combinations');
  });

  test('a closed relay contact around one safety is found, though it hides with all else open or all else closed', () => {
    // the relay lies on its own switch: with that closed its contact is open, with it open the safety is bridged
    const task = relayBoard(16, [
      `LT1.filament at least 85 % of rated exactly when ${names.slice(0, 15).join(' and ')}`,
    ]);
    const first15 = [
      wire('TB.R', 'S1.1', 'A'),
      ...series(names.slice(0, 15), 'LT1.1', 'B'),
      wire('LT1.2', 'TB.C', 'C'),
    ];
    expect(checkHookup(task, first15).verdict).toBe('right');
    const hidden = [
      ...first15,
      wire('TB.R', 'S16.1', 'D'),
      wire('S16.2', 'K1.1', 'E'),
      wire('K1.3', 'TB.C', 'F'),
      wire('S7.1', 'K1.5', 'X1'),
      wire('S7.2', 'K1.6', 'X2'),
    ];
    const report = checkHookup(task, hidden);
    expect(report.verdict).toBe('wrong');
    const [finding] = report.findings;
    expect(finding.kind).toBe('safety-bypassed');
    expect(finding.cause).toContain('S7');
    expect(finding.closed).not.toContain('S16');
  });

  test('a rule with "not" is proved: a relay contact that opens', () => {
    const task = relayBoard(14, [
      `LT1.filament at least 85 % of rated exactly when ${names.slice(0, 13).join(' and ')} and not S14`,
    ]);
    const right = [
      wire('TB.R', 'S1.1', 'A'),
      ...series(names.slice(0, 13), 'K1.5', 'B'),
      wire('K1.6', 'LT1.1', 'C'),
      wire('LT1.2', 'TB.C', 'D'),
      wire('TB.R', 'S14.1', 'E'),
      wire('S14.2', 'K1.1', 'F'),
      wire('K1.3', 'TB.C', 'G'),
    ];
    expect(checkHookup(task, right).verdict).toBe('right');
    const straight = right.map((each) => (each.id === 'C' ? {...each, from: 'K1.5'} : each));
    expect(checkHookup(task, straight).verdict).toBe('wrong');
  });

  test('the order of sixteen safeties never matters, and a bypass of any is found', () => {
    const right = checkHookup(sixteen, chain);
    fc.assert(
      fc.property(fc.shuffledSubarray(names, {minLength: 16}), fc.nat(15), (order, i) => {
        const wires = [
          wire('TB.R', `${order[0]}.1`, 'A'),
          ...series(order, 'LT1.1', 'B'),
          wire('LT1.2', 'TB.C', 'C'),
        ];
        expect(sameHookup(checkHookup(sixteen, wires), right)).toBe(true);
        const bypassed = checkHookup(sixteen, [
          ...wires,
          wire(`${order[i]}.1`, `${order[i]}.2`, 'X1'),
        ]);
        expect(sameHookup(bypassed, right)).toBe(false);
        expect(bypassed.findings[0]).toMatchObject({wires: ['X1']});
      }),
      {numRuns: 10},
    );
  });

  test('a board on which too many switches act at once is not called right', () => {
    // seventeen runs are needed here, and eight are allowed
    const report = checkHookup(sixteen, chain, {limit: 12, mostRuns: 8});
    expect(report.verdict).toBe('not-proved');
    expect(report.method).toContain('did not cover them all');
    expect(report.method).toContain('split the task');
  });
});
