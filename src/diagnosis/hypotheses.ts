import type {Unit} from '../content/unit.ts';
import {catalogue} from '../faults/catalogue.ts';
import type {Fault} from '../faults/fault.ts';

/** One way the unit may be: healthy, with one fault, or with two. */
export interface Hypothesis {
  /** `healthy`, a fault's id, or two joined by ` + `. */
  readonly id: string;
  readonly name: string;
  readonly faults: readonly Fault[];
  /** How often it is met, a wire open = 1. Common practice, no source. */
  readonly weight: number;
}

/** A call to a unit with nothing wrong is about as frequent as three open wires (common practice, no source). */
const healthyWeight = 3;

/** Odds that a unit with one fault has a given second one as well, against its own weight. */
const secondFaultOdds = 0.01;

/** More pairs than this would take minutes to replay. */
const mostPairs = 6000;

/** Healthy, and every single fault of the unit's catalogue. */
export function hypothesesOf(unit: Unit): Hypothesis[] {
  return [
    {id: 'healthy', name: 'Nothing wrong with the unit', faults: [], weight: healthyWeight},
    ...catalogue(unit).map((fault): Hypothesis => ({
      id: fault.id,
      name: fault.name,
      faults: [fault],
      weight: fault.weight,
    })),
  ];
}

/**
 * Every two of the given faults together, for a call that no single fault explains.
 *
 * @throws Error where there would be too many to replay; choose among fewer faults then.
 */
export function pairHypotheses(faults: readonly Fault[]): Hypothesis[] {
  const count = (faults.length * (faults.length - 1)) / 2;
  if (count > mostPairs)
    throw new Error(
      `${faults.length} faults make ${count} pairs, more than the ${mostPairs} that can be replayed: choose among fewer faults.`,
    );
  return faults.flatMap((first, i) =>
    faults.slice(i + 1).map((second): Hypothesis => ({
      id: `${first.id} + ${second.id}`,
      name: `${first.name}, and ${second.name}`,
      faults: [first, second],
      weight: first.weight * second.weight * secondFaultOdds,
    })),
  );
}
