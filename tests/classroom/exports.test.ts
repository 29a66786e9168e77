import fc from 'fast-check';
import {parse} from 'csv-parse/sync';
import {expect, test} from 'vitest';
import {csvCell} from '../../src/classroom/csv-cell.ts';
import {xapiStatement} from '../../src/classroom/xapi-schema.ts';
import {
  isoDuration,
  xapiStatements,
  type RecordedAttempt,
} from '../../src/classroom/xapi-statements.ts';
import {csv, uuidOf} from '../../src/server/class/exports.ts';

// OWASP, "CSV Injection": cells that begin with one of these may be taken for a formula
const dangerous = ['=', '+', '-', '@', '\t', '\r', '\n'];

test('no text begins as a formula does, whatever it is', () => {
  fc.assert(
    fc.property(fc.constantFrom(...dangerous), fc.string(), (mark, rest) => {
      const cell = String(csvCell(mark + rest));
      return !dangerous.includes(cell[0]) && cell.endsWith(rest);
    }),
  );
  expect(csvCell(-3)).toBe(-3);
});

test('another CSV reader finds the same cells again (RFC 4180)', () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(fc.string(), {minLength: 2, maxLength: 2}), {minLength: 1}),
      (rows) => {
        const read: string[][] = parse(csv(rows), {bom: true, record_delimiter: '\r\n'});
        expect(read).toEqual(rows.map((row) => row.map((cell) => String(csvCell(cell)))));
      },
    ),
  );
});

test('a spreadsheet sees UTF-8 and rows: byte order mark, CRLF, quotes where they are needed', () => {
  expect(
    csv([
      ['Zoë', '=1+1'],
      ['a, b', 'say "yes"\nthen no'],
      [3, null],
    ]),
  ).toBe('\uFEFFZoë,\'=1+1\r\n"a, b","say ""yes""\nthen no"\r\n3,\r\n');
});

const attempt: RecordedAttempt = {
  assignment: 'abcdefgh',
  student: {id: 'student1', name: 'Ana'},
  className: 'Period 3',
  set: {id: 'set12345', title: 'Monday'},
  kind: 'call',
  unit: 'practice-panel',
  openedAt: 1_700_000_000_000,
  finishedAt: 1_700_000_600_000,
  verdict: 'right',
  points: 83,
  minutes: 12.5,
  hints: 1,
  findings: 0,
  actions: [
    {number: 1, action: {do: 'meter', function: 'ohms'}, at: 1_700_000_100_000},
    {number: 2, action: {do: 'read', red: 'K1.A1', black: 'K1.A2'}, at: 1_700_000_200_000},
    {number: 3, action: {do: 'note', text: 'private thoughts'}, at: 1_700_000_300_000},
    {number: 4, action: {do: 'name', fault: 'W8:open', evidence: [0]}, at: 1_700_000_600_000},
  ],
};
const options = {
  home: 'http://school.invalid/',
  uuidOf,
  isoTime: (ms: number) => new Date(ms).toISOString(),
};

test('an attempt becomes valid statements: begun, each action, passed with a score', () => {
  const statements = xapiStatements(attempt, options);
  for (const statement of statements) expect(xapiStatement.parse(statement)).toEqual(statement);
  expect(statements).toHaveLength(6);
  expect(statements.at(-1)).toMatchObject({
    verb: {id: 'http://adlnet.gov/expapi/verbs/passed'},
    result: {success: true, score: {scaled: 0.83, raw: 83}, duration: 'PT12M30S'},
  });
  expect(new Set(statements.map(({id}) => id)).size).toBe(statements.length);
  expect(JSON.stringify(statements)).not.toContain('private thoughts');
});

// rules of the xAPI 1.0.3 specification, part two; from memory
test.each([
  ['no actor', {actor: undefined}],
  ['an id that is no UUID', {id: 'one'}],
  ['a verb without an IRI', {verb: {id: 'passed'}}],
  ['a score out of range', {result: {score: {scaled: 1.5}}}],
  ['raw above max', {result: {score: {raw: 5, min: 0, max: 3}}}],
  ['a duration that is none', {result: {duration: '12 minutes'}}],
  ['a time without a zone', {timestamp: '2026-01-01T10:00:00'}],
  ['a time with the offset -00:00', {timestamp: '2026-01-01T10:00:00-00:00'}],
  ['a key of extensions that is no IRI', {result: {extensions: {hints: 1}}}],
  ['a language that is none', {verb: {id: 'http://a.b/c', display: {'not a tag': 'x'}}}],
  [
    'an agent with two identifiers',
    {actor: {mbox: 'mailto:a@b.c', account: {homePage: 'http://a.b', name: 'x'}}},
  ],
  ['a property beside the specification', {weather: 'fine'}],
  ['a null', {result: null}],
])('a statement with %s is refused', (_what, change) => {
  const [good] = xapiStatements(attempt, options);
  expect(xapiStatement.safeParse({...good, ...change}).success).toBe(false);
});

test('minutes of work become an ISO 8601 duration', () => {
  expect([0, 0.5, 61.25].map(isoDuration)).toEqual(['PT0M0S', 'PT0M30S', 'PT61M15S']);
});

test('a UUID from a name is the one that RFC 4122 makes: version 5, variant 10', () => {
  fc.assert(
    fc.property(fc.string(), (text) =>
      /^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/.test(uuidOf(text)),
    ),
  );
  expect(uuidOf('a')).toBe(uuidOf('a'));
  expect(uuidOf('a')).not.toBe(uuidOf('b'));
});
