import {bench, describe} from 'vitest';
import {readShippedUnit, shippedUnitIds} from '../../src/content/node/read-shipped-unit.ts';
import {compileNetwork} from '../../src/circuits/plan.ts';
import {solveAc} from '../../src/circuits/solve.ts';
import {hypothesesOf} from '../../src/diagnosis/hypotheses.ts';
import {isolate} from '../../src/diagnosis/operating-states.ts';
import {outcomeTable} from '../../src/diagnosis/outcome-table.ts';
import {Planner} from '../../src/diagnosis/planner.ts';
import {restingUnit} from '../../src/diagnosis/replayed-unit.ts';
import {Suspects} from '../../src/diagnosis/suspects.ts';
import {readMeter} from '../../src/meter/read-meter.ts';

// Speed of the diagnosis, as ratios and times measured in one run on the machine at hand.

/** The unit with the most parts is the slowest to work out. */
const largest = shippedUnitIds()
  .map(readShippedUnit)
  .sort((a, b) => b.wires.length - a.wires.length)[0];
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
        console.log(`${id}: ${sorted.length} answers, median ${at(0.5)} ms, p99 ${at(0.99)} ms`);
    };
    bench(
      id,
      () => {
        for (let start = 0; start < 3; start += 1) {
          const all = new Suspects(unit);
          const truth = restingUnit(unit, hypothesesOf(unit)[1 + start * 17].faults);
          const first = unit.sequences.find((each) => each.set.length > 0 && each.id !== 'off')!;
          for (const {target, value} of first.set) {
            truth.set(target, value);
            all.do({do: 'set', target, value}, truth.observations());
          }
          const planner = new Planner(all);
          planner.best(1);
          for (let reading = 0; reading < 12; reading += 1) {
            const at = {
              red: truth.probePoints()[(reading * 29 + 3) % truth.probePoints().length],
              black: truth.probePoints()[(reading * 13 + 8) % truth.probePoints().length],
            };
            const display = readMeter('ac-volts', truth, at);
            times.push(
              milliseconds(() => {
                all.read('ac-volts', at, display);
                planner.best();
              }),
            );
          }
        }
      },
      {iterations: 3, warmupIterations: 1, time: 0, teardown: tell},
    );
  }
});
