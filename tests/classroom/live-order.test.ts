import {expect, test} from 'vitest';
import {liveRows} from '../../src/classroom/live-order.ts';
import type {LiveRow} from '../../src/classroom/protocol/instructor-messages.ts';

const row = (name: string, more: Partial<LiveRow> = {}): Omit<LiveRow, 'needs'> => ({
  student: name,
  name,
  online: true,
  stage: 'working',
  readings: 3,
  minutes: 4,
  stuckMs: 0,
  hints: 0,
  safety: {danger: 0, caution: 0},
  ...more,
});

test('a dangerous act comes first, then a wrong name, then who is stuck longest; the others by name', () => {
  const rows = liveRows([
    row('Zoe'),
    row('Ana'),
    row('stuck', {stuckMs: 8 * 60_000}),
    row('more stuck', {stuckMs: 15 * 60_000}),
    row('wrong', {stage: 'named', verdict: 'wrong'}),
    row('danger', {safety: {danger: 1, caution: 0}}),
  ]);
  expect(rows.map(({name}) => name)).toEqual([
    'danger',
    'wrong',
    'more stuck',
    'stuck',
    'Ana',
    'Zoe',
  ]);
  expect(rows[2].needs).toBe('stuck for 15 min');
  expect(rows.at(-1)!.needs).toBe('');
});

test('a log that rules everything out is told', () => {
  expect(liveRows([row('Ana', {suspects: 0})])[0].needs).toMatch(/rules everything out/);
});
