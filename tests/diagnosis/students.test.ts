import {describe, expect, test} from 'vitest';
import {complaintOf} from '../../src/bench/complaint.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {gradeStudents} from './students/grade-students.ts';

const panel = readShippedUnit('practice-panel');

describe('simulated students', () => {
  // a sample; all calls of both units are in tests/long
  test('are graded in the order of how they reason', () => {
    const calls = catalogue(panel)
      .filter((_, i) => i % 15 === 3)
      .filter((fault) => !complaintOf(panel, [fault]).silent);
    expect(calls.length).toBeGreaterThanOrEqual(4);
    const means = gradeStudents(panel, calls);
    const points = means.map((each) => each.points);
    expect(means.map(({name}) => name)).toEqual([
      'random prober',
      'parts changer',
      'hop-along prober',
      'half-splitter',
      'planner',
    ]);
    // in a handful of calls neighbours may change places; the three kinds of working may not
    const [random, changer, hop, half, planner] = points;
    expect(Math.max(random, changer)).toBeLessThan(Math.min(hop, half));
    expect(Math.max(hop, half)).toBeLessThan(planner);
    const proved = means.map((each) => each.proved);
    expect(proved[4]).toBe(1);
    expect(proved[4]).toBeGreaterThan(Math.max(...proved.slice(0, 4)));
  }, 60_000);
});
