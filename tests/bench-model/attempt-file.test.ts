import {describe, expect, test} from 'vitest';
import {attemptFile, readAttemptFile} from '../../src/bench/attempt-file.ts';
import type {AttemptRecord} from '../../src/bench/attempt.ts';

const record: AttemptRecord = {
  format: 'rungbench-attempt',
  version: 1,
  id: 'a1',
  unit: 'practice-panel',
  complaint: 'The lamp does not light.',
  sealed: 'c2VhbGVk',
  seed: 42,
  begunAt: '2026-11-25T07:30:00Z',
  actions: [
    {do: 'set', target: 'S1.position', value: 'on'},
    {do: 'open-cover', enclosure: 'supply-box'},
    {do: 'meter', function: 'ohms'},
    {do: 'read', red: 'HPS.1', black: 'HPS.2', expected: {open: true}},
    {do: 'clamp', wire: 'W3'},
    {do: 'lift', end: 'W3.to'},
    {do: 'jumper', from: 'HPS.1', to: 'HPS.2'},
    {do: 'wait', seconds: 0.5},
    {do: 'note', text: 'dead here'},
    {do: 'name', fault: 'HPS:stuck-open', evidence: [3]},
    {do: 'clear'},
  ],
};

const changed = (change: (value: Record<string, unknown>) => void): string => {
  const value = JSON.parse(attemptFile(record)) as Record<string, unknown>;
  change(value);
  return JSON.stringify(value);
};
const reasonOf = (text: string): string => {
  const read = readAttemptFile(text);
  return 'reason' in read ? read.reason : 'none';
};

test('an attempt comes back from its file as it went in', () => {
  expect(readAttemptFile(attemptFile(record))).toEqual({attempt: record});
  const empty = {...record, actions: []};
  expect(readAttemptFile(attemptFile(empty))).toEqual({attempt: empty});
});

test('one action stands on one line', () => {
  expect(
    attemptFile(record)
      .split('\n')
      .filter((line) => line.includes('"do":')),
  ).toHaveLength(record.actions.length);
});

describe('a damaged file is refused with where, what and how to mend it', () => {
  test('cut short', () => {
    expect(reasonOf(attemptFile(record).slice(0, 200))).toMatch(
      /^This is not a whole JSON file .*export the attempt again/,
    );
  });
  test('another kind of file', () => {
    expect(reasonOf('{"name": "something"}')).toContain('not a Rungbench attempt');
    expect(reasonOf('[]')).toContain('not a Rungbench attempt');
    expect(reasonOf('null')).toContain('not a Rungbench attempt');
  });
  test('another version', () => {
    expect(reasonOf(changed((value) => (value.version = 2)))).toContain(
      '"version" is 2, and this Rungbench reads version 1',
    );
  });
  test('an action that there is not', () => {
    const text = changed((value) => ((value.actions as {do: string}[])[4].do = 'hammer'));
    expect(reasonOf(text)).toMatch(/^At "actions", no\. 5, "do": /);
  });
  test('a reading without its black lead', () => {
    const text = changed((value) => delete (value.actions as Record<string, unknown>[])[3].black);
    expect(reasonOf(text)).toMatch(/^At "actions", no\. 4, "black": .*string/);
  });
  test('a key that does not belong', () => {
    expect(reasonOf(changed((value) => (value.grade = 'A')))).toMatch(/grade/);
  });
  test('a time that is none', () => {
    expect(reasonOf(changed((value) => (value.begunAt = 'yesterday')))).toMatch(/^At "begunAt"/);
  });
});
