import {describe, expect, test} from 'vitest';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {
  callSetFile,
  complaintsOf,
  fillSet,
  key,
  levelsIn,
  planLines,
  readCallSet,
  type CallSet,
  type PlanLine,
} from '../../src/diagnosis/call-set.ts';
import {shippedDifficulties} from '../../src/diagnosis/node/read-difficulties.ts';
import {catalogue} from '../../src/faults/catalogue.ts';

const unit = readShippedUnit('practice-panel');
const names = new Map(catalogue(unit).map(({id, name}) => [id, name]));
const lines = shippedDifficulties(unit).map((each): PlanLine => ({
  ...each,
  unit: unit.id,
  name: names.get(each.fault)!,
}));

describe('faults listed for planning', () => {
  test('are those that a customer notices, the quickest to find first', () => {
    const listed = planLines(lines, {});
    expect(listed.some(({silent}) => silent)).toBe(false);
    const minutes = listed.map((line) => line.minutes);
    expect(minutes).toEqual([...minutes].sort((a, b) => a - b));
  });

  test('are narrowed by level, section, complaint and words together', () => {
    const safeties = planLines(lines, {section: 'safeties', words: 'pressure open'});
    expect(safeties.map(({fault}) => fault).sort()).toEqual(['HPS:stuck-open', 'LPS:stuck-open']);
    expect(planLines(lines, {difficulty: 'easy', section: 'safeties', words: 'HPS stuck'})).toEqual(
      [],
    );
    const [{complaint, faults}] = complaintsOf(lines);
    expect(planLines(lines, {complaint})).toHaveLength(faults);
  });
});

describe('a set filled up to ten', () => {
  const filled = fillSet([], lines, 10, 3);

  test('has ten different faults of as many sections as there are', () => {
    expect(new Set(filled.map(key)).size).toBe(10);
    const sectionOf = new Map(lines.map((line) => [key(line), line.section]));
    const sections = new Set(filled.map((call) => sectionOf.get(key(call))));
    expect(sections).toEqual(new Set(planLines(lines, {}).map(({section}) => section)));
  });

  test('keeps what was chosen, and is the same for the same seed', () => {
    const own = {unit: unit.id, fault: 'LT1:open', complaint: 'My words.'};
    expect(fillSet([own], lines, 4, 1)).toContainEqual(own);
    expect(fillSet([], lines, 10, 3)).toEqual(filled);
    expect(fillSet([], lines, 10, 4)).not.toEqual(filled);
  });

  test('goes from what is quick to find to what is not', () => {
    const minutesOf = new Map(lines.map((line) => [key(line), line.minutes]));
    const minutes = filled.map((call) => minutesOf.get(key(call))!);
    expect(minutes).toEqual([...minutes].sort((a, b) => a - b));
    const {easy, medium, hard} = levelsIn(filled, lines);
    expect(easy + medium + hard).toBe(10);
  });

  test('ends where there is nothing left to choose from', () => {
    const few = planLines(lines, {section: 'safeties', words: 'pressure open'});
    expect(fillSet([], few, 10, 1)).toHaveLength(2);
  });
});

describe('a set as a file', () => {
  const set: CallSet = {
    format: 'rungbench-set',
    version: 1,
    id: 's1',
    title: 'Week 3',
    calls: fillSet([], lines, 3, 1),
  };

  test('comes back as it was', () => {
    expect(readCallSet(callSetFile(set))).toEqual({set});
  });

  test.each([
    ['cut short', callSetFile(set).slice(0, 40), /cut short/],
    ['of another version', callSetFile(set).replace('"version": 1', '"version": 2'), /version/],
    [
      'with a call that hides nothing',
      callSetFile(set).replace(/"fault": "[^"]+"/, '"fault": ""'),
      /no\. 1, fault/,
    ],
  ])('%s is refused with the reason', (_, file, reason) => {
    const read = readCallSet(file);
    expect('reason' in read && read.reason).toMatch(reason);
  });
});
