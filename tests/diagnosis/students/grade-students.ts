import {complaintOf} from '../../../src/bench/complaint.ts';
import type {Unit} from '../../../src/content/unit.ts';
import {reasoningOf} from '../../../src/diagnosis/reasoning.ts';
import {shortestRoute, type Route} from '../../../src/diagnosis/shortest-route.ts';
import type {Fault} from '../../../src/faults/fault.ts';
import {Desk} from './desk.ts';
import {students} from './students.ts';

/** Means of one way of working over a row of calls. */
export interface StudentMeans {
  readonly name: string;
  readonly points: number;
  readonly proved: number;
  readonly readings: number;
  readonly minutes: number;
}

/** Lets every student take every call, and grades what each did from its actions alone. */
export function gradeStudents(unit: Unit, calls: readonly Fault[], firstSeed = 1): StudentMeans[] {
  const sums = students.map(({name}) => ({name, points: 0, proved: 0, readings: 0, minutes: 0}));
  const routes = new Map<Fault, Route>();
  calls.forEach((fault, call) => {
    const {sequence = '', afterSeconds} = complaintOf(unit, [fault]);
    const route =
      routes.get(fault) ?? shortestRoute(unit, [fault], sequence, undefined, afterSeconds);
    routes.set(fault, route);
    students.forEach(({work}, i) => {
      const desk = new Desk({unit, faults: [fault], complaint: '', seed: firstSeed + call});
      work(desk, sequence);
      if (desk.bench.view().stage === 'working') desk.act({do: 'give-up'});
      const report = reasoningOf(desk.setup, desk.bench.actions, route);
      sums[i].points += report.grade.points;
      sums[i].minutes += report.minutes;
      sums[i].readings += report.steps.filter(({kind}) => kind === 'reading').length;
      if (report.namings.at(-1)?.right && report.namings.at(-1)?.proof.is === 'proved')
        sums[i].proved += 1;
    });
  });
  return sums.map(({name, ...sum}) => ({
    name,
    points: sum.points / calls.length,
    proved: sum.proved / calls.length,
    readings: sum.readings / calls.length,
    minutes: sum.minutes / calls.length,
  }));
}

/** The means as a table for people. */
export function tableOf(means: readonly StudentMeans[]): string {
  return means
    .map(
      ({name, points, proved, readings, minutes}) =>
        `${name.padEnd(18)} ${points.toFixed(1).padStart(6)} points  ${(100 * proved).toFixed(0).padStart(3)} % proved  ` +
        `${readings.toFixed(1).padStart(5)} readings  ${minutes.toFixed(1).padStart(5)} min`,
    )
    .join('\n');
}
