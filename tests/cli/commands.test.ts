import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll, describe, expect, test} from 'vitest';
import {readShippedUnitText} from '../../src/content/node/read-shipped-unit.ts';
import {run} from './run-cli.ts';

const folder = mkdtempSync(join(tmpdir(), 'rungbench-'));
afterAll(() => rmSync(folder, {recursive: true}));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const panel = 'practice-panel';

describe('rungbench', () => {
  test('without a command, or asked for help, prints the usage and is done', async () => {
    for (const args of [[], ['--help'], ['read', '--help'], ['-h']]) {
      const {code, out} = await run(...args);
      expect(code).toBe(0);
      expect(out).toContain('rungbench read UNIT');
      expect(out).toContain('--do wait=30s');
    }
  });

  test('does not know a command, and names the nearest', async () => {
    expect(await run('raed')).toMatchObject({
      code: 2,
      err: expect.stringContaining('the nearest: read'),
    });
  });

  test('does not know an option', async () => {
    const {code, err} = await run('faults', panel, '--colour');
    expect(code).toBe(2);
    expect(err).toContain("Unknown option '--colour'");
  });

  test('does not know a unit, and names those that there are', async () => {
    const {code, err} = await run('faults', 'practise-panel');
    expect(code).toBe(2);
    expect(err).toContain('practice-panel');
    expect((await run('faults')).err).toMatch(/^Name a unit: .*practice-panel, .*or a unit file/);
  });
});

describe('check', () => {
  test('of right files ends with 0 and says what they hold', async () => {
    const {code, out} = await run('check', 'content/units/practice-panel.yaml');
    expect(code).toBe(0);
    expect(out).toMatch(/unit "practice-panel" is right: \d+ parts, \d+ wires/);
  });

  test('of a wrong file ends with 1 and every mistake at its place', async () => {
    const text = readShippedUnitText(panel)
      .replace('kind: lamp', 'kind: lmap')
      .replace('{id: W3, from: CB1.T1', '{id: W3, from: CB1.T9');
    const path = file('wrong.yaml', text);
    const {code, out} = await run('check', path);
    expect(code).toBe(1);
    const lines = out.split('\n');
    expect(lines.length).toBeGreaterThanOrEqual(2);
    for (const line of lines) expect(line).toMatch(/wrong\.yaml:\d+:\d+ .+ — .+/);
    expect(out).toContain('lmap');
    expect(out).toContain('no terminal T9');
  });

  test('of one right and one missing file ends with 1', async () => {
    const {code, out} = await run(
      'check',
      'content/units/practice-panel.yaml',
      join(folder, 'none.yaml'),
    );
    expect(code).toBe(1);
    expect(out).toContain('is right');
    expect(out).toContain('none.yaml cannot be read (ENOENT)');
  });

  test('of nothing is a wrong command line', async () => {
    expect((await run('check')).code).toBe(2);
  });
});

describe('faults', () => {
  test('lists ids and plain names', async () => {
    const {code, out} = await run('faults', panel);
    expect(code).toBe(0);
    expect(out).toMatch(/^HPS:stuck-open +medium +High-pressure switch HPS: contact stuck open$/m);
  });

  test('as JSON has one entry for each, with its site', async () => {
    const {out} = await run('faults', 'split-heat-pump', '--json');
    const list = JSON.parse(out) as {id: string; site: {on: string}}[];
    expect(list.length).toBeGreaterThanOrEqual(150);
    expect(list.find(({id}) => id === 'W49~W50:short')?.site).toEqual({
      on: 'wires',
      wires: ['W49', 'W50'],
    });
  });

  test('with complaints tells what a customer would say', async () => {
    const {out} = await run('faults', panel, '--complaints', '--json');
    const list = JSON.parse(out) as {id: string; complaint: {text: string; silent: boolean}}[];
    expect(list.find(({id}) => id === 'LT1:open')?.complaint.text).toContain('does not light');
  });

  test('takes a unit file of one’s own', async () => {
    const path = file(
      'mine.yaml',
      readShippedUnitText(panel).replace('id: practice-panel', 'id: mine'),
    );
    expect((await run('faults', path)).code).toBe(0);
    const broken = file('broken.yaml', 'id: [');
    expect(await run('faults', broken)).toMatchObject({
      code: 2,
      err: expect.stringContaining('broken.yaml:1:'),
    });
  });
});

describe('read', () => {
  const call = ['--do', 'S1.position=on', '--do', 'wait=1s'];
  const leads = ['--red', 'K1.1', '--black', 'K1.3'];

  test('prints what the meter shows', async () => {
    const {code, out} = await run('read', panel, ...call, '--meter', 'ac-volts', ...leads);
    expect(code).toBe(0);
    expect(out).toMatch(/^2\d\.\d\d V AC$/);
  });

  test('as JSON gives display, unit and value', async () => {
    const {out} = await run('read', panel, ...call, '--meter', 'ac-volts', ...leads, '--json');
    const {display, unit, value} = JSON.parse(out) as {
      display: string;
      unit: string;
      value: number;
    };
    expect(unit).toBe('V AC');
    expect(Number(display)).toBe(value);
  });

  test('gives OL no value, and says why ohms on a live circuit are none', async () => {
    const live = [...call, '--meter', 'ohms', ...leads];
    expect((await run('read', panel, ...live)).out).toBe(
      'OL MΩ (warning triangle: voltage on the leads, no resistance reading)',
    );
    expect(JSON.parse((await run('read', panel, ...live, '--json')).out)).toEqual({
      display: 'OL',
      unit: 'MΩ',
      value: null,
      overload: true,
      hazard: true,
    });
  });

  test('sounds the tone in words', async () => {
    const {out} = await run(
      'read',
      panel,
      '--do',
      'DS1.position=open',
      '--meter',
      'continuity',
      '--red',
      'HPS.1',
      '--black',
      'HPS.2',
    );
    expect(out).toMatch(/^0\.\d Ω \(tone\)$/);
  });

  test('reads amps in a wire', async () => {
    const {out} = await run('read', panel, ...call, '--meter', 'clamp-amps', '--wire', 'W10');
    // 25 W at 120 V
    expect(out).toMatch(/^0\.2[01] A AC$/);
  });

  test('does every kind of action, in order', async () => {
    const actions = [
      'open=supply-box',
      'DS1.position=open',
      'lock=DS1',
      'lift=W19.to',
      'land=W19.to',
      'jumper=HPS.1,HPS.2',
      'remove-jumper=HPS.1,HPS.2',
      'unlock=DS1',
      'DS1.position=closed',
      'plant.dischargePsig=650',
      'wait=500ms',
      'plant.dischargePsig=300',
      'HPS.reset=press',
      'close=supply-box',
      'S1.position=on',
      'wait=1m',
      'wait=1h',
    ];
    const dos = actions.flatMap((action) => ['--do', action]);
    const {code, out, err} = await run('read', panel, ...dos, '--meter', 'ac-volts', ...leads);
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toMatch(/^2\d\.\d\d V AC$/);
  });

  test('an expressed fault is there from the start, two of them too', async () => {
    const {out} = await run(
      'read',
      panel,
      '--fault',
      'HPS:stuck-open',
      '--fault',
      'LT1:open',
      ...call,
      '--meter',
      'ac-volts',
      '--red',
      'HPS.1',
      '--black',
      'HPS.2',
    );
    expect(out).toMatch(/^2\d\.\d\d V AC$/);
  });

  test('a seed gives the meter its own error, within its accuracy', async () => {
    const shown = await Promise.all(
      ['1', '2', '3', '4', '5'].map(
        async (seed) =>
          (await run('read', panel, ...call, '--meter', 'ac-volts', ...leads, '--seed', seed)).out,
      ),
    );
    expect(new Set(shown).size).toBeGreaterThan(1);
  });

  const wrong: [string, string[], string][] = [
    [
      'a fault',
      ['--fault', 'HPS:stuck', '--meter', 'ac-volts', ...leads],
      'There is no fault "HPS:stuck"; the nearest: HPS:stuck-open',
    ],
    [
      'a second fault that is the first',
      [
        ...['--fault', 'HPS:stuck-open', '--fault', 'HPS:stuck-open'],
        ...['--meter', 'ac-volts', ...leads],
      ],
      'A fault is given twice.',
    ],
    [
      'a terminal',
      ['--meter', 'ac-volts', '--red', 'K1.11', '--black', 'K1.3'],
      'There is no point for a lead "K1.11"; the nearest: K1.1',
    ],
    [
      'a meter function',
      ['--meter', 'ac-volt', ...leads],
      'There is no meter function "ac-volt"; the nearest: ac-volts',
    ],
    [
      'a wire',
      ['--meter', 'clamp-amps', '--wire', 'W99'],
      'There is no wire "W99"; the nearest: W9',
    ],
    ['a control', ['--do', 'S1.positon=on', '--meter', 'ac-volts', ...leads], 'S1.position'],
    ['a position', ['--do', 'S1.position=up', '--meter', 'ac-volts', ...leads], '"up"'],
    [
      'an action',
      ['--do', 'lfit=W1.to', '--meter', 'ac-volts', ...leads],
      'There is no action "lfit"; the nearest: lift',
    ],
    [
      'a time',
      ['--do', 'wait=soon', '--meter', 'ac-volts', ...leads],
      'write wait=30s, wait=10m or wait=2h',
    ],
    [
      'an action without a value',
      ['--do', 'wait', '--meter', 'ac-volts', ...leads],
      'write it as ACTION=VALUE',
    ],
    [
      'a jumper with one end',
      ['--do', 'jumper=K1.1', '--meter', 'ac-volts', ...leads],
      'needs two points',
    ],
    [
      'a lock on a closed switch',
      ['--do', 'lock=DS1', '--meter', 'ac-volts', ...leads],
      'DS1 is not open',
    ],
    [
      'an enclosure',
      ['--do', 'open=suply-box', '--meter', 'ac-volts', ...leads],
      'the nearest: supply-box',
    ],
    ['no function', leads, 'Choose a function: --meter ac-volts'],
    ['no black lead', ['--meter', 'ac-volts', '--red', 'K1.1'], 'Put the black lead somewhere'],
    ['no wire for the clamp', ['--meter', 'clamp-amps', ...leads], 'Close the clamp around a wire'],
    [
      'a seed that is no number',
      ['--meter', 'ac-volts', ...leads, '--seed', 'x'],
      '--seed x is not a whole number',
    ],
  ];
  test.each(wrong)(
    '%s that is wrong ends with 2 and says what is right',
    async (_what, args, sentence) => {
      const {code, out, err} = await run('read', panel, ...args);
      expect(err).toContain(sentence);
      expect({code, out}).toEqual({code: 2, out: ''});
    },
  );
});

describe('netlist and nodes', () => {
  const state = [panel, '--fault', 'HPS:stuck-open', '--do', 'S1.position=on', '--do', 'wait=1s'];

  test('name the same nodes', async () => {
    const netlist = (await run('netlist', ...state)).out;
    const nodes = JSON.parse((await run('nodes', ...state, '--json')).out) as {
      node: string;
      volts: number;
    }[];
    expect(nodes.length).toBeGreaterThan(30);
    const words = new Set(netlist.split(/\s+/));
    for (const {node} of nodes) expect(words.has(node), node).toBe(true);
    expect(nodes.every(({volts}) => Number.isFinite(volts))).toBe(true);
    expect(netlist.trimEnd().endsWith('.end')).toBe(true);
  });

  test('a node’s volts are what the meter reads there to earth', async () => {
    const nodes = JSON.parse((await run('nodes', ...state, '--json')).out) as {
      point: string;
      volts: number;
    }[];
    const {out} = await run(
      'read',
      ...state,
      '--meter',
      'ac-volts',
      '--red',
      'TB2.R',
      '--black',
      'earth',
      '--json',
    );
    const {value} = JSON.parse(out) as {value: number};
    expect(value).toBeCloseTo(nodes.find(({point}) => point === 'TB2.R')!.volts, 1);
  });

  test('in words, one line a node', async () => {
    const {out} = await run('nodes', ...state);
    expect(out).toMatch(/^tb2_r +2\d\.\d{6} V +-?\d+\.\d\d°$/m);
    expect((await run('nodes', ...state, '--dc')).out).toMatch(/^tb2_r +-?0\.\d{6} V$/m);
  });
});
