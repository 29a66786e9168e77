import type {OperatingSequence, Unit} from '../content/unit.ts';
import type {Fault} from '../faults/fault.ts';
import {inSequence} from '../bench/complaint.ts';
import {controlsOf} from '../bench/bench-controls.ts';
import {isolate} from './operating-states.ts';
import {restingUnit} from './replayed-unit.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';

/** A unit brought into one state in which readings can be taken. */
export interface ComparedState {
  readonly id: string;
  readonly operating: OperatingUnit;
  /** What is worth comparing: a look and the clamp while it starts, volts while it runs, ohms while it is isolated. */
  readonly compare: 'start' | 'running' | 'isolated';
}

/** A motor that has tripped its own overload has cooled down and closed it by then. */
const restSeconds = 3600;

/**
 * Every state of a unit in which readings are compared: each sequence of operation as it starts and when it has
 * established itself; the last of them with every value that a hand can set and a switch senses turned all the way
 * up and down; and the unit with every isolating switch open, after an hour's rest.
 */
export function* comparedStates(unit: Unit, faults: readonly Fault[]): Generator<ComparedState> {
  const rest = restingUnit(unit, faults);
  let last: OperatingUnit | undefined;
  for (const sequence of unit.sequences) {
    const starting = startOf(rest, sequence);
    yield {id: `${sequence.id}, start`, operating: starting, compare: 'start'};
    last = starting.fork();
    last.advance(Math.max(0, sequence.waitSeconds * 1000 - last.timeMs));
    yield {id: sequence.id, operating: last, compare: 'running'};
  }
  if (!last) return;
  for (const {target, value} of extremes(unit)) {
    const turned = last.fork();
    turned.set(target, value);
    turned.advance(1000);
    yield {id: `${target}=${value}`, operating: turned, compare: 'running'};
  }
  const resting = isolate(unit, last.fork());
  resting.advance(restSeconds * 1000);
  yield {id: 'isolated', operating: resting, compare: 'isolated'};
}

/** A second into a sequence of operation: a stalled motor still hums. */
function startOf(rest: OperatingUnit, sequence: OperatingSequence): OperatingUnit {
  return inSequence(rest, {...sequence, waitSeconds: Math.min(1, sequence.waitSeconds)});
}

/** Ends of the range of each pressure, level or temperature that is set by hand and worked by a sensing switch. */
function extremes(unit: Unit): {target: string; value: number}[] {
  if (unit.plant.kind !== 'hand') return [];
  const sensed = new Set(
    unit.parts.map((part) => (part.data as {senses?: string} | undefined)?.senses),
  );
  return controlsOf(unit).flatMap(({target, part, control}) =>
    part === 'plant' && sensed.has(control.id)
      ? [control.min, control.max].flatMap((value) => (value === undefined ? [] : {target, value}))
      : [],
  );
}
