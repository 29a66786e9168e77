import {mkdtempSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {main} from '../../src/cli/main.ts';
import {readShippedTask} from '../../src/hookup/node/read-shipped-task.ts';

const folder = mkdtempSync(join(tmpdir(), 'hookup-'));
const task = readShippedTask('three-safeties');

/** Runs the command over wires, with whatever else stands on the command line. */
async function judge(
  wires: readonly {from: string; to: string; gauge?: number}[],
  ...more: string[]
): Promise<{code: number; lines: string[]}> {
  const file = join(folder, 'wires.yaml');
  const lines = wires.map(
    ({from, to, gauge = 18}) => `  - {from: ${from}, to: ${to}, gauge: ${gauge}}`,
  );
  writeFileSync(file, ['wires:', ...lines, ''].join('\n'));
  const printed: string[] = [];
  const say = (line: string) => printed.push(line);
  const code = await main(['hookup', 'three-safeties', file, ...more], {print: say, complain: say});
  return {code, lines: printed};
}

test('right wires exit with 0', async () => {
  const {code, lines} = await judge(task.answer);
  expect(code).toBe(0);
  expect(lines).toEqual([
    'Three safeties and a relay: right.',
    'All 16 combinations of 4 switches were run.',
  ]);
});

test('a bypass exits with 1 and tells cause, wire, combination and reading', async () => {
  const {code, lines} = await judge([...task.answer, {from: 'LPS.1', to: 'LPS.2'}]);
  expect(code).toBe(1);
  expect(lines.slice(2)).toEqual([
    '1. Safety bypassed: K1 (control relay) stays on while LPS (low-pressure switch) is open: something bridges it.',
    '   wires: H13',
    '   with these closed: S1, FS1, HPS',
    '   reading: ac-volts, red on LPS.1, black on LPS.2: 0.00 V; should be 24 V across the open switch',
  ]);
});

test('--json gives the same as data', async () => {
  const {code, lines} = await judge([...task.answer, {from: 'LPS.1', to: 'LPS.2'}], '--json');
  expect(code).toBe(1);
  expect(JSON.parse(lines.join('\n'))).toMatchObject({
    task: 'three-safeties',
    verdict: 'wrong',
    combinations: 16,
    findings: [{kind: 'safety-bypassed', wires: ['H13']}],
  });
});

test('a terminal that is not there is told with its place', async () => {
  const {code, lines} = await judge([{from: 'K1.9', to: 'TB2.C'}]);
  expect(code).toBe(1);
  expect(lines[0]).toMatch(/wires\.yaml:2:\d+ there is no terminal K1\.9/);
});

test('a task that is not there is a wrong command line', async () => {
  expect(
    await main(['hookup', 'three-safetys', 'x.yaml'], {
      print: () => undefined,
      complain: () => undefined,
    }),
  ).toBe(2);
});
