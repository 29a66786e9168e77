import {expect, test} from 'vitest';
import {readRoster} from '../../src/classroom/roster.ts';

test('a pasted list is one name a line, blank lines left out', () => {
  expect(readRoster('Ana\r\n\r\n  Ben  Miller \nGarcía, Chi\n').names).toEqual([
    'Ana',
    'Ben Miller',
    'García, Chi',
  ]);
});

test.each([
  ['a column of names', 'Id,Name,Mail\n1,"Miller, Ben",x\n2,Ana,y\n', ['Miller, Ben', 'Ana']],
  ['nicknames before names', 'name;nickname\nBenjamin;Ben\nAna;\n', ['Ben', 'Ana']],
  ['first and last name', 'First name\tLast name\nAna\tGarcía\n', ['Ana García']],
  ['a byte order mark', '\uFEFFname\nAna\n', ['Ana']],
  ['a doubled quote', 'name\n"Ana ""Ace"" G"\n', ['Ana "Ace" G']],
])('a CSV with %s', (_what, text, names) => {
  expect(readRoster(text).names).toEqual(names);
});

test('two of the same name, or a name of control characters, are told by their line', () => {
  const {names, problems} = readRoster('Ana\nana\nB\u0007en\n');
  expect(names).toEqual(['Ana']);
  expect(problems[0]).toMatch(/^Line 2: "ana" is there already/);
  expect(problems[1]).toMatch(/^Line 3:/);
});
