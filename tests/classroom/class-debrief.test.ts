import {beforeAll, expect, test} from 'vitest';
import type {Action} from '../../src/bench/actions.ts';
import {Bench} from '../../src/bench/bench.ts';
import {complaintOf} from '../../src/bench/complaint.ts';
import {classDebrief, type DebriefedCall} from '../../src/classroom/class-debrief.ts';
import {LongWork} from '../../src/classroom/long-jobs.ts';
import {readShippedUnit} from '../../src/content/node/read-shipped-unit.ts';
import {stepsOf} from '../../src/diagnosis/planner.ts';
import {shortestRoute} from '../../src/diagnosis/shortest-route.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {shippedContent} from '../../src/server/class/shipped-content.ts';

const unit = readShippedUnit('practice-panel');
const fault = 'W8:open';
const other = 'W17:open';
const wrong = 'HPS:stuck-open';
const complaint = 'The call switch is on, but the lamp does not light.';
const nameOf = (id: string): string => catalogue(unit).find((each) => each.id === id)!.name;
const work = new LongWork(shippedContent);

/** A student's whole call, judged as the server judges it. */
function call(name: string, hidden: string, actions: readonly Action[]): DebriefedCall {
  const record = {unit: unit.id, faults: [hidden], complaint, seed: 0, actions};
  const judged = work.do('judge', {call: record});
  return {
    name,
    faults: [hidden],
    faultNames: [nameOf(hidden)],
    complaint,
    readings: actions.filter((each) => each.do === 'read' || each.do === 'clamp').length,
    minutes: judged.debrief.minutes,
    stage: 'named',
    actions,
    judged,
  };
}

/** What the planner does to find a fault, as a student's actions, up to the right name. */
function found(hidden: string): Action[] {
  const faults = catalogue(unit).filter(({id}) => id === hidden);
  const bench = new Bench({unit, faults, complaint, seed: 0});
  for (const {proposal} of shortestRoute(unit, faults).steps) {
    for (const action of stepsOf(proposal, bench.view().meter.function)) bench.act(action);
  }
  return [...bench.actions, {do: 'name', fault: hidden, evidence: []}];
}

const cover: Action = {do: 'open-cover', enclosure: 'panel'};
const [red, black] = unit.circuits[0].rails;
/** Looks at the supply only, and guesses. */
const guess: Action[] = [
  ...(unit.enclosures.some(({id, cover}) => cover && id === 'panel') ? [cover] : []),
  {do: 'read', red, black},
  {do: 'name', fault: wrong, evidence: []},
];
/** Puts ohms across a live supply before guessing. */
const dangerous: Action[] = [
  ...guess.slice(0, -1),
  {do: 'meter', function: 'ohms'},
  {do: 'read', red, black},
  guess.at(-1)!,
];

let debrief: ReturnType<typeof classDebrief>;
let way: Action[];
beforeAll(() => {
  way = found(fault);
  debrief = classDebrief([
    call('Eva', other, found(other)),
    call('Ana', fault, way),
    call('Ben', fault, guess),
    call('Chi', fault, dangerous),
    // has begun, and is at it still
    {
      name: 'Dan',
      faults: [fault],
      faultNames: [nameOf(fault)],
      complaint,
      readings: 0,
      minutes: 0,
      stage: 'working',
      actions: [],
    },
  ]);
}, 120_000);

test('the call with the most guesses comes first: a naming that the log proves is none', () => {
  expect(debrief.calls.map(({faults, guesses}) => [faults, guesses])).toEqual([
    [[nameOf(fault)], 2],
    [[nameOf(other)], 0],
  ]);
  expect(debrief.calls[0]).toMatchObject({complaint, students: 4, right: 1});
});

test('the wrong suspect that most took it for is told with its count', () => {
  expect(debrief.calls[0].wrong).toEqual([{name: nameOf(wrong), count: 2}]);
  expect(debrief.calls[1].wrong).toEqual([]);
});

test('the planner’s way stands beside the ways of the class, each with its readings, minutes and points', () => {
  const [{bestRoute, routes}] = debrief.calls;
  const faults = catalogue(unit).filter(({id}) => id === fault);
  const {sequence, afterSeconds} = complaintOf(unit, faults);
  const planned = shortestRoute(unit, faults, sequence, undefined, afterSeconds);
  expect(bestRoute!.readings).toBe(planned.readings);
  expect(bestRoute!.minutes).toBe(planned.minutes);
  expect(bestRoute!.steps).toHaveLength(planned.readings);
  planned.steps.forEach(({shown}, i) => expect(bestRoute!.steps[i]).toContain(shown));
  // each step says where the leads go and what the meter shows there
  for (const step of bestRoute!.steps) expect(step).toMatch(/: \S/);
  expect(routes.map(({name}) => name)).toEqual(['Ana', 'Ben', 'Chi', 'Dan']);
  const [ana, ben, , dan] = routes;
  const taken = way.filter((each) => each.do === 'read' || each.do === 'clamp').length;
  expect(ana).toMatchObject({verdict: 'right', readings: taken});
  expect(ana.steps).toHaveLength(taken);
  expect(ben).toMatchObject({
    verdict: 'wrong',
    readings: 1,
    steps: [`${red} to ${black}, AC volts`],
  });
  expect(ana.points!).toBeGreaterThan(ben.points! + 30);
  expect(dan).not.toHaveProperty('points');
  expect(dan.verdict).toBe('working');
});

test('safety findings of all calls are counted by what was done, the worst named as such', () => {
  const ohmsOnLive = debrief.safety.filter(({severity}) => severity === 'danger');
  expect(ohmsOnLive.length).toBeGreaterThan(0);
  expect(ohmsOnLive[0].text).toMatch(/ohms|live|energi[sz]ed/i);
  // only Chi did that, once
  expect(ohmsOnLive[0].count).toBe(1);
  const counts = debrief.safety.map(({count}) => count);
  expect(counts).toEqual([...counts].sort((a, b) => b - a));
});

test('what somebody did who has not finished is among the safety findings too', () => {
  const {judged, ...unfinished} = call('Gil', fault, dangerous);
  const both = classDebrief([
    {...unfinished, stage: 'working', safety: judged!.debrief.safety},
    call('Hal', fault, dangerous),
  ]);
  expect(both.safety[0]).toMatchObject({severity: 'danger', count: 2});
  expect(both.calls[0].guesses).toBe(1);
});
