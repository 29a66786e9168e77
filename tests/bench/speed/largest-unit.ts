import {readShippedUnit, shippedUnitIds} from '../../../src/content/node/read-shipped-unit.ts';
import type {OperatingSequence, Unit} from '../../../src/content/unit.ts';
import {operateUnit} from '../../../src/sequences/operate-unit.ts';
import type {OperatingUnit} from '../../../src/sequences/operating-unit.ts';

/** The shipped unit with the most wires. */
export function largestUnit(): Unit {
  return shippedUnitIds()
    .map(readShippedUnit)
    .sort((a, b) => b.wires.length - a.wires.length)[0];
}

/** The sequence with the most running: cooling where there is one. */
export function busiest(unit: Unit): OperatingSequence {
  return unit.sequences.find(({id}) => id.startsWith('cooling')) ?? unit.sequences.at(-1)!;
}

export function running(unit: Unit, sequence = busiest(unit)): OperatingUnit {
  const operating = operateUnit(unit, []);
  for (const {target, value} of sequence.set) operating.set(target, value);
  operating.advance(Math.round(sequence.waitSeconds * 1000));
  return operating;
}
