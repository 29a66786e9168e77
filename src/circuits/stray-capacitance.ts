import type {Unit, Wire} from '../content/unit.ts';
import type {Element} from '../parts/element.ts';
import {openOhms} from './element-admittance.ts';

/**
 * Capacitance between wires that lie next to each other in a run. Order in the unit file is order in the run, and
 * the last lies beside the first (a round cable). A pair has the run's picofarads per foot over the shorter of the
 * two, half at each end; for wires from one enclosure to another the ends that share an enclosure are paired.
 *
 * @param endOf node that an end of a wire is on now (its own, when lifted)
 */
export function strayCapacitors(
  unit: Unit,
  endOf: (wire: Wire, end: 'from' | 'to') => string,
): Element[] {
  const enclosureOf = new Map<string, string>(
    unit.parts.flatMap((part) =>
      part.terminals.map((terminal): [string, string] => [
        `${part.id}.${terminal}`,
        part.enclosure,
      ]),
    ),
  );
  const elements: Element[] = [];
  for (const run of unit.runs) {
    if (run.picofaradsPerFoot <= 0) continue;
    const wires = unit.wires.filter((wire) => wire.run === run.id);
    for (const [first, second] of neighbours(wires)) {
      const picofarads = run.picofaradsPerFoot * Math.min(first.feet, second.feet);
      const crossed =
        enclosureOf.get(first.from) !== enclosureOf.get(second.from) &&
        enclosureOf.get(first.from) === enclosureOf.get(second.to);
      for (const end of ['from', 'to'] as const) {
        const other = crossed ? (end === 'from' ? 'to' : 'from') : end;
        const a = endOf(first, end);
        const b = endOf(second, other);
        if (a === b) continue; // both land on one terminal
        elements.push({
          is: 'capacitor',
          id: `stray:${first.id}.${end}~${second.id}.${other}`,
          a,
          b,
          microfarads: (picofarads / 2) * 1e-6,
          leakageOhms: openOhms,
        });
      }
    }
  }
  return elements;
}

/** Each wire with the next, round the ring; of two wires there is one pair. */
function neighbours(wires: readonly Wire[]): (readonly [Wire, Wire])[] {
  if (wires.length < 2) return [];
  const pairs = wires.slice(1).map((wire, i) => [wires[i], wire] as const);
  return wires.length === 2 ? pairs : [...pairs, [wires[wires.length - 1], wires[0]]];
}
