import {bench, describe} from 'vitest';
import type {Action} from '../../src/bench/actions.ts';
import {Bench} from '../../src/bench/bench.ts';
import {complaintOf} from '../../src/bench/complaint.ts';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {compileNetwork} from '../../src/circuits/plan.ts';
import {solveAc} from '../../src/circuits/solve.ts';
import type {Unit} from '../../src/content/unit.ts';
import {CoachedCall} from '../../src/diagnosis/coached-call.ts';
import {hypothesesOf} from '../../src/diagnosis/hypotheses.ts';
import {isolate} from '../../src/diagnosis/operating-states.ts';
import {outcomeTable} from '../../src/diagnosis/outcome-table.ts';
import {restingUnit} from '../../src/diagnosis/replayed-unit.ts';
import {catalogue} from '../../src/faults/catalogue.ts';
import {readMeter} from '../../src/meter/read-meter.ts';
import {gradeStudents, tableOf} from '../diagnosis/students/grade-students.ts';

// Speed of the diagnosis, as ratios and times measured in one run on the machine at hand.

/** Suspects times pairs of terminals: the largest unit is the one of the most readings. */
function readingsOf(unit: Unit): number {
  const terminals = unit.parts.reduce((sum, part) => sum + part.terminals.length, 0);
  return hypothesesOf(unit).length * ((terminals * (terminals - 1)) / 2);
}
const largest = shippedUnitIds()
  .map(readShippedUnit)
  .sort((a, b) => readingsOf(b) - readingsOf(a))[0];
const mode = largest.sequences.find(({id}) => id === 'cooling') ?? largest.sequences.at(-1)!;
const suspects = hypothesesOf(largest);
const running = suspects.map(({faults}) => {
  const operating = restingUnit(largest, faults);
  for (const {target, value} of mode.set) operating.set(target, value);
  operating.advance(Math.round(mode.waitSeconds * 1000));
  return operating;
});
const dead = running.map((operating) => isolate(largest, operating.fork()));
const points = running[0].probePoints();
const places = (points.length * (points.length - 1)) / 2;
const readings = 2 * places * suspects.length;

const milliseconds = (work: () => void): number => {
  const from = performance.now();
  work();
  return performance.now() - from;
};

describe(`every fault × every pair × two power states of ${largest.id}`, () => {
  const whole: number[] = [];
  const single: number[] = [];
  const tell = (): void => {
    if (single.length < 400) return;
    const least = Math.min(...whole);
    const one = single.slice().sort((a, b) => a - b)[Math.floor(single.length / 2)];
    console.log(
      `${readings} readings: best ${least.toFixed(0)} ms, worst ${Math.max(...whole).toFixed(0)} ms. ` +
        `Solving for each (median ${(one * 1000).toFixed(0)} µs) would take ${((one * readings) / 1000).toFixed(0)} s: ` +
        `${((one * readings) / least).toFixed(0)} times as long.`,
    );
  };

  bench(
    `${suspects.length} suspects × ${places} pairs × 2 states`,
    () => {
      whole.push(
        milliseconds(() => {
          outcomeTable('ac-volts', running, points);
          outcomeTable('ohms', dead, points);
        }),
      );
    },
    {iterations: 5, warmupIterations: 2, time: 0},
  );

  // the plain way: solve the suspect's network for the reading, then let the meter look at it
  const plan = compileNetwork(running[0].network);
  bench(
    'one reading with a solve of its own',
    () => {
      single.push(
        milliseconds(() => {
          const solution = solveAc(plan, running[0].states);
          readMeter(
            'ac-volts',
            {
              network: running[0].network,
              thevenin: (a, b) => solution.thevenin(a, b),
              amps: (id) => solution.amps(id),
            },
            {red: points[0], black: points[40]},
          );
        }),
      );
    },
    {iterations: 400, warmupIterations: 100, time: 0, teardown: tell},
  );
});

describe('a coach answer after a reading', () => {
  for (const id of shippedUnitIds()) {
    const unit = readShippedUnit(id);
    const times: number[] = [];
    const tell = (): void => {
      const sorted = times.slice().sort((a, b) => a - b);
      const at = (share: number): string =>
        (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN).toFixed(1);
      if (sorted.length >= 100)
        console.log(
          `${id}: ${sorted.length} answers, median ${at(0.5)} ms, p99 ${at(0.99)} ms (asked for: 300 ms)`,
        );
    };
    bench(id, () => void times.push(...coachAnswers(unit)), {
      iterations: 1,
      warmupIterations: 0,
      time: 0,
      teardown: tell,
    });
  }
});

/**
 * Milliseconds from a reading to the coach's third hint, over searches for faults from all over the catalogue, each with
 * readings that a student might take. Between readings the coach works ahead, as it does in its worker.
 */
function coachAnswers(unit: Unit): number[] {
  const faults = catalogue(unit);
  const mode = unit.sequences.find(({id, set}) => set.length > 0 && id !== 'off')!;
  const times: number[] = [];
  for (let search = 0; search < 8; search += 1) {
    const fault = faults[(search * 37 + 5) % faults.length];
    const real = new Bench({unit, faults: [fault], complaint: '', seed: search + 1});
    const call = new CoachedCall(unit);
    const act = (action: Action): void => {
      const result = real.act(action);
      if (!('refused' in result)) call.follow({action, entry: result.entry, sees: real.sees});
    };
    for (const {id} of unit.enclosures) act({do: 'open-cover', enclosure: id});
    for (const {target, value} of mode.set) act({do: 'set', target, value});
    act({do: 'wait', seconds: mode.waitSeconds});
    // as much as there is time for while a person picks two terminals
    for (let slice = 0; slice < 300 && call.prepare(); slice += 1);
    const points = real.operating.probePoints();
    for (let reading = 0; reading < 14; reading += 1) {
      const red = points[(reading * 29 + search) % points.length];
      const black = points[(reading * 13 + 8) % points.length];
      times.push(
        milliseconds(() => {
          act({do: 'read', red, black});
          call.hint(3);
        }),
      );
    }
  }
  return times;
}

describe('simulated students, graded', () => {
  const panel = readShippedUnit('practice-panel');
  const noticed = catalogue(panel).filter((fault) => !complaintOf(panel, [fault]).silent);
  // every call again with a meter of another error, until there are 300
  const calls = Array.from({length: 300}, (_, call) => noticed[call % noticed.length]);
  let table = '';
  bench(
    `five ways of working at ${calls.length} calls`,
    () => {
      table = tableOf(gradeStudents(panel, calls));
    },
    {
      iterations: 1,
      warmupIterations: 0,
      time: 0,
      teardown: () => console.log(`${calls.length} calls on ${panel.id}:\n${table}`),
    },
  );
});
