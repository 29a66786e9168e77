import {Bench} from '../bench/bench.ts';
import {doneText} from '../bench/done-text.ts';
import type {Action} from '../bench/actions.ts';
import type {Unit} from '../content/unit.ts';
import {catalogue, faultsById} from '../faults/catalogue.ts';
import type {Fault} from '../faults/fault.ts';
import {functionNames} from '../meter/function-names.ts';
import {readMeter} from '../meter/read-meter.ts';
import type {MeterDisplay} from '../meter/meter.ts';
import type {PollBody} from './protocol/poll.ts';

/** What the wall shows before and after the change of a poll, both worked out when it is asked. */
export interface PollOutcome {
  readonly readings: readonly {
    readonly text: string;
    readonly before: MeterDisplay;
    readonly after: MeterDisplay;
  }[];
  /** What was done, in words. */
  readonly changed: string;
}

/**
 * Brings a unit to where a poll begins, reads, makes the change and reads again. An exact meter: the class is to see
 * the unit move, not a meter's own error. A fault is there from the start on a second unit that is brought to the same
 * place.
 *
 * @throws Error with a sentence for people where an action cannot be done or a name is not the unit's.
 */
export function pollReadings(unit: Unit, poll: PollBody): PollOutcome {
  const before = stand(unit, [], poll.actions);
  const {change} = poll;
  const fault = 'fault' in change ? faultsById(catalogue(unit), [change.fault]) : [];
  const after =
    'fault' in change
      ? stand(unit, fault, poll.actions)
      : stand(unit, [], [...poll.actions, ...change.actions]);
  const terminals = new Set(before.operating.probePoints());
  const wires = new Set(unit.wires.map(({id}) => id));
  const readings = poll.watch.map((watch) => {
    const names = 'wire' in watch ? [watch.wire] : [watch.red, watch.black];
    const unknown = names.find((name) => !('wire' in watch ? wires : terminals).has(name));
    if (unknown !== undefined) {
      throw new Error(`The ${unit.title} has no "${unknown}" to put the meter on.`);
    }
    const read = (bench: Bench): MeterDisplay => readMeter(watch.function, bench.operating, watch);
    return {
      text: `${functionNames[watch.function].title}, ${'wire' in watch ? `around ${watch.wire}` : `${watch.red} to ${watch.black}`}`,
      before: read(before),
      after: read(after),
    };
  });
  return {
    readings,
    changed:
      'fault' in change
        ? fault[0].name
        : change.actions.map((action) => doneText(action, unit)).join('; '),
  };
}

function stand(unit: Unit, faults: readonly Fault[], actions: readonly Action[]): Bench {
  const bench = new Bench({unit, faults, complaint: '', seed: 0});
  for (const [i, action] of actions.entries()) {
    const result = bench.act(action);
    if ('refused' in result) {
      throw new Error(`Action ${i + 1} of the question cannot be done: ${result.refused}`);
    }
  }
  return bench;
}
