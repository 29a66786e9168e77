import type {Unit} from '../content/unit.ts';
import {circuitClasses, groundTerminals, partOf, type CircuitClass} from '../faults/nets.ts';

/** Two points for the leads, red first. */
export type Pair = readonly [red: string, black: string];

/** Every pair of points, each once. */
export function allPairs(points: readonly string[]): Pair[] {
  return points.flatMap((red, i) => points.slice(i + 1).map((black): Pair => [red, black]));
}

/**
 * Pairs that a person can say something about: a point against a rail of its circuit or against the metal beside it,
 * across a wire, across what lies inside one part, and a lifted end against where it came from. The other pairs tell
 * nothing that these do not, and nobody could say beforehand what they should read.
 *
 * @param points terminals and lifted ends that leads can go on
 */
export function sensiblePairs(unit: Unit, points: readonly string[]): Pair[] {
  const known = new Set(points);
  const classes = pointClasses(unit);
  const ground = groundTerminals(unit);
  const pairs = new Map<string, Pair>();
  const add = (red: string, black: string): void => {
    if (red === black || !known.has(red) || !known.has(black)) return;
    if (!pairs.has(`${black} ${red}`)) pairs.set(`${red} ${black}`, [red, black]);
  };
  for (const wire of unit.wires) {
    add(wire.from, wire.to);
    for (const [end, terminal] of [
      [`${wire.id}.from`, wire.from],
      [`${wire.id}.to`, wire.to],
    ]) {
      add(end, terminal);
      if (known.has(end)) for (const lug of ground) add(end, lug);
    }
    add(`${wire.id}.from`, wire.to);
    add(wire.from, `${wire.id}.to`);
    add(`${wire.id}.from`, `${wire.id}.to`);
  }
  for (const part of unit.parts) {
    const own = part.terminals.map((terminal) => `${part.id}.${terminal}`);
    own.forEach((red, i) => {
      for (const black of own.slice(i + 1))
        if (classes.get(red) === classes.get(black)) add(red, black);
    });
  }
  for (const {rails} of unit.circuits)
    for (const rail of rails)
      for (const point of points) if (classes.get(point) === classes.get(rail)) add(point, rail);
  const enclosureOf = new Map(unit.parts.map((part) => [part.id, part.enclosure]));
  for (const {id, cabinet} of unit.enclosures)
    if (cabinet)
      for (const point of points) if (enclosureOf.get(partOf(point)) === id) add(point, cabinet);
  return [...pairs.values()];
}

/** Class of the wires on each terminal; terminals without a wire have none. */
function pointClasses(unit: Unit): ReadonlyMap<string, CircuitClass> {
  const classes = circuitClasses(unit);
  const of = new Map<string, CircuitClass>();
  for (const wire of unit.wires) {
    const found = classes.get(wire.id)!;
    for (const terminal of [wire.from, wire.to]) if (found !== 'ground') of.set(terminal, found);
    of.set(`${wire.id}.from`, found);
    of.set(`${wire.id}.to`, found);
  }
  return of;
}
