import {describe, expect, test} from 'vitest';
import {run} from './run-cli.ts';

const heat = [
  '--do',
  'plant.roomDegF=66',
  '--do',
  'TS.setPointDegF=70',
  '--do',
  'TS.mode=heat',
  '--do',
  'wait=4m',
];
const gap = ['--red', 'IB1.FS', '--black', 'W30.from'];
const herm = ['--red', 'C2.C', '--black', 'C2.HERM'];

describe('the meter on the command line', () => {
  test('microamps in series: the flame is proved through the meter, and the reading has its error', async () => {
    const lifted = ['--do', 'lift=W30.from', '--do', 'microamps=IB1.FS,W30.from'];
    const {code, out} = await run(
      'read',
      'gas-furnace',
      ...lifted,
      ...heat,
      '--meter',
      'dc-microamps',
      ...gap,
      '--error',
    );
    expect(code).toBe(0);
    expect(out).toMatch(/^3\.\d\d µA DC\n±0\.06\d µA DC = ±\(1 % of 3\.\d\d \+ 3 × 0\.01\) µA DC$/);
  });

  test('without the meter in the gap there is no flame, and no current', async () => {
    const {out} = await run(
      'read',
      'gas-furnace',
      '--do',
      'lift=W30.from',
      ...heat,
      '--meter',
      'dc-microamps',
      ...gap,
    );
    expect(out).toBe('0.00 µA DC');
  });

  test('capacitance, isolated and with the windings still beside it', async () => {
    const off = ['--do', 'DS2.position=open'];
    const meter = ['--meter', 'capacitance', ...herm];
    const isolated = await run(
      'read',
      'split-heat-pump',
      ...off,
      '--do',
      'lift=W73.from',
      ...meter,
    );
    expect(isolated.out).toMatch(/^\d\d\.\d\d µF$/);
    expect((await run('read', 'split-heat-pump', ...off, ...meter)).out).not.toBe(isolated.out);
  });

  test('records the least and the most while time passes', async () => {
    // the igniter is off, then it glows
    const {out} = await run(
      'read',
      'gas-furnace',
      ...heat.slice(0, -2),
      '--meter',
      'clamp-amps',
      '--wire',
      'W21',
      '--record',
      '1m',
    );
    const [, least, most] = /min ([\d.]+) A AC, max ([\d.]+) A AC$/.exec(out)!;
    expect(Number(least)).toBe(0);
    expect(Number(most)).toBeGreaterThan(1);
  });

  test('a broken lead shows zero on a live line', async () => {
    const live = ['--meter', 'ac-volts', '--red', 'TB1.L', '--black', 'TB1.N'];
    expect((await run('read', 'practice-panel', ...live)).out).toMatch(/^1[12]\d\.\d V AC$/);
    expect((await run('read', 'practice-panel', ...live, '--flaw', 'broken-lead')).out).toBe(
      '0.0 mV AC',
    );
  });
});
