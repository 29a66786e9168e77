import {describe, expect, test} from 'vitest';
import {complaintOf} from '../../src/bench/complaint.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import type {Unit} from '../../src/content/unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import type {Fault} from '../../src/faults/fault.ts';
import {gradeStudents, tableOf, type StudentMeans} from '../diagnosis/students/grade-students.ts';

const panel = readShippedUnit('practice-panel');
const heatPump = readShippedUnit('split-heat-pump');

const noticed = (unit: Unit): Fault[] =>
  catalogue(unit).filter((fault) => !complaintOf(unit, [fault]).silent);

function together(
  a: readonly StudentMeans[],
  n: number,
  b: readonly StudentMeans[],
  m: number,
): StudentMeans[] {
  return a.map((one, i) => {
    const mean = (of: (each: StudentMeans) => number): number =>
      (of(one) * n + of(b[i]) * m) / (n + m);
    return {
      name: one.name,
      points: mean((each) => each.points),
      proved: mean((each) => each.proved),
      readings: mean((each) => each.readings),
      minutes: mean((each) => each.minutes),
    };
  });
}

describe('simulated students over 300 calls and more', () => {
  test('the grades rank random prober, parts changer, hop-along prober, half-splitter and planner in that order', () => {
    const small = noticed(panel);
    // every call of the practice panel with four meters of different error, and a cut through the heat pump's
    const smallCalls = [...small, ...small, ...small, ...small];
    const largeCalls = noticed(heatPump).filter((_, i) => i % 40 === 0);
    const calls = smallCalls.length + largeCalls.length;
    expect(calls).toBeGreaterThanOrEqual(300);
    const onPanel = gradeStudents(panel, smallCalls);
    const onHeatPump = gradeStudents(heatPump, largeCalls, 1000);
    const all = together(onPanel, smallCalls.length, onHeatPump, largeCalls.length);
    console.log(`${calls} calls, of them ${largeCalls.length} on the heat pump:\n${tableOf(all)}`);
    const points = all.map((each) => each.points);
    expect(points).toEqual([...points].sort((x, y) => x - y));
  }, 3_000_000);
});
