import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll, describe, expect, test} from 'vitest';
import {attemptFile} from '../../src/bench/attempt-file.ts';
import type {Action} from '../../src/bench/actions.ts';
import {sealFaults} from '../../src/bench/sealed-fault.ts';
import {run} from '../cli/run-cli.ts';

const folder = mkdtempSync(join(tmpdir(), 'rungbench-'));
afterAll(() => rmSync(folder, {recursive: true}));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const call: Action = {do: 'set', target: 'S1.position', value: 'on'};
const log = (...lines: unknown[]): string =>
  JSON.stringify({
    format: 'rungbench-log',
    version: 1,
    unit: 'practice-panel',
    log: [call, ...lines],
  });

const attempt = (unit: string, ...actions: Action[]): string =>
  attemptFile({
    format: 'rungbench-attempt',
    version: 1,
    id: 'a1',
    unit,
    complaint: 'The lamp does not light.',
    sealed: sealFaults({unit, faults: ['HPS:stuck-open'], complaint: ''}, new Uint8Array(24)),
    seed: 5,
    begunAt: '2026-01-10T10:00:00Z',
    actions,
  });

describe('rungbench suspects', () => {
  test('a written log with 24 V across a safety leaves that safety', async () => {
    const path = file('log.json', log({do: 'read', red: 'HPS.1', black: 'HPS.2', shows: 26.2}));
    const {code, out} = await run('suspects', 'practice-panel', '--log', path, '--json');
    expect(code).toBe(0);
    const said = JSON.parse(out) as {suspects: {id: string; share: number}[]; classes: string[][]};
    expect(said.suspects).toEqual([expect.objectContaining({id: 'HPS:stuck-open', share: 1})]);
    expect(said.classes).toEqual([['HPS:stuck-open']]);
  });

  test('with suspects open it names the best readings next, each with its split', async () => {
    const path = file('open.json', log({do: 'read', red: 'TB2.Y', black: 'TB2.C', shows: 26.2}));
    const {code, out} = await run('suspects', 'practice-panel', '--log', path);
    expect(code).toBe(0);
    expect(out).toMatch(/suspects are open, \d+\.\d\d bits are missing/);
    expect(out).toMatch(/splits \d+ suspects \d+\/\d+/);
  });

  test('an attempt can stand for a log', async () => {
    const path = file(
      'attempt.json',
      attempt('practice-panel', call, {do: 'read', red: 'HPS.1', black: 'HPS.2'}),
    );
    const {out} = await run('suspects', 'practice-panel', '--log', path, '--json');
    expect((JSON.parse(out) as {suspects: unknown[]}).suspects).toHaveLength(1);
  });

  test.each([
    ['a log of another unit', log().replace('practice-panel', 'split-heat-pump'), /name that unit/],
    ['another version', log().replace('"version":1', '"version":7'), /reads version 1/],
    ['a file cut short', log().slice(0, -3), /not a whole JSON file/],
    [
      'a reading without what it showed',
      log({do: 'read', red: 'HPS.1', black: 'HPS.2'}),
      /no\. 2: the reading has no "shows"/,
    ],
    [
      'a terminal that is not there',
      log({do: 'read', red: 'HPS.9', black: 'HPS.2', shows: 1}),
      /no terminal "HPS\.9"/,
    ],
    ['an action that is not there', log({do: 'kick'}), /"log", no\. 2/],
  ])('%s is refused with the reason', async (_, text, reason) => {
    const {code, err} = await run('suspects', 'practice-panel', '--log', file('bad.json', text));
    expect(code).toBe(2);
    expect(err).toMatch(reason);
  });
});

describe('rungbench grade', () => {
  test('tells points, proof, every step and the shortest way', async () => {
    const path = file(
      'named.json',
      attempt(
        'practice-panel',
        call,
        {do: 'read', red: 'HPS.1', black: 'HPS.2'},
        {do: 'name', fault: 'HPS:stuck-open', evidence: [1]},
      ),
    );
    const {code, out} = await run('grade', path);
    expect(code).toBe(0);
    expect(out).toMatch(/outcome 40\/40/);
    expect(out).toMatch(/Right, proved/);
    expect(out).toMatch(/the shortest way takes \d+ readings/);
  });

  test('an attempt that is still on is not graded', async () => {
    const {code, err} = await run('grade', file('on.json', attempt('practice-panel', call)));
    expect(code).toBe(2);
    expect(err).toMatch(/still on/);
  });

  test('a damaged attempt is refused with the place', async () => {
    const text = attempt('practice-panel', call).replace('S1.position', '');
    const {code, err} = await run('grade', file('damaged.json', text));
    expect(code).toBe(2);
    expect(err).toMatch(/"actions", no\. 1, "target"/);
  });

  test.each([
    [
      'of another version',
      (text: string) => text.replace('"version": 1', '"version": 7'),
      /"version" is 7/,
    ],
    ['that is cut short', (text: string) => text.slice(0, -3), /not (a )?whole|JSON/],
  ])('an attempt %s is refused with the reason', async (_, spoil, reason) => {
    const text = spoil(attempt('practice-panel', call));
    expect(text).not.toBe(attempt('practice-panel', call));
    const {code, err} = await run('grade', file('spoilt.json', text));
    expect(code).toBe(2);
    expect(err).toMatch(reason);
  });

  test('an attempt at another unit than the one asked for is refused with the reason', async () => {
    const path = file('other.json', attempt('practice-panel', call));
    const {code, err} = await run('grade', path, '--unit', 'gas-furnace');
    expect(code).toBe(2);
    expect(err).toContain('practice-panel');
  });
});

describe('rungbench faults --difficulty', () => {
  test('lists readings, minutes and look-alikes by symptom, easiest first', async () => {
    const {code, out} = await run('faults', 'practice-panel', '--difficulty', '--json');
    expect(code).toBe(0);
    const lines = JSON.parse(out) as {
      fault: string;
      silent: boolean;
      minutes: number;
      readings: number;
      lookAlikes: number;
      section: string;
    }[];
    const called = lines.filter(({silent}) => !silent);
    expect(called.map(({minutes}) => minutes)).toEqual(
      called.map(({minutes}) => minutes).sort((a, b) => a - b),
    );
    const lamp = lines.find(({fault}) => fault === 'LT1:open')!;
    const fuse = lines.find(({fault}) => fault === 'F1:open')!;
    // the lamp is the end of the sequence and seen at once; the fuse has the whole control circuit before and behind it
    expect(lamp.readings).toBeLessThan(fuse.readings);
    expect(lamp.lookAlikes).toBeGreaterThan(20);
    expect(lines.find(({fault}) => fault === 'HPS:stuck-open')!.section).toBe('safeties');
  });
});
