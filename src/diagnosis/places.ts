import type {Unit} from '../content/unit.ts';
import {circuitClasses, conductorsOf, partOf, type CircuitClass} from '../faults/nets.ts';

/** Two points for the leads, red first. */
export type Pair = readonly [red: string, black: string];

/**
 * Pairs that a person can reach and say something about: within one enclosure, a point against a rail of its circuit
 * or against the metal beside it, across a wire, across what lies inside one part, and a lifted end against where it
 * came from. The other pairs tell little that these do not, and nobody could say beforehand what they should read.
 *
 * @param points terminals and lifted ends that leads can go on
 * @returns the same list each time it is asked for the same points
 */
export function sensiblePairs(unit: Unit, points: readonly string[]): readonly Pair[] {
  let lists = known.get(unit);
  if (!lists) known.set(unit, (lists = new Map()));
  const key = points.join(' ');
  let pairs = lists.get(key);
  if (!pairs) lists.set(key, (pairs = findPairs(unit, points)));
  return pairs;
}

const known = new WeakMap<Unit, Map<string, readonly Pair[]>>();

function findPairs(unit: Unit, points: readonly string[]): Pair[] {
  const known = new Set(points);
  const classes = pointClasses(unit);
  const enclosureOf = enclosures(unit);
  const pairs = new Map<string, Pair>();
  const add = (red: string, black: string): void => {
    if (red === black || !known.has(red) || !known.has(black)) return;
    if (enclosureOf(red) !== enclosureOf(black)) return;
    if (!pairs.has(`${black} ${red}`)) pairs.set(`${red} ${black}`, [red, black]);
  };
  for (const wire of unit.wires) {
    add(wire.from, wire.to);
    add(`${wire.id}.from`, wire.from);
    add(`${wire.id}.to`, wire.to);
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
  for (const rail of railPoints(unit))
    for (const point of points) if (classes.get(point) === classes.get(rail)) add(point, rail);
  for (const {cabinet} of unit.enclosures)
    if (cabinet) for (const point of points) add(point, cabinet);
  return [...pairs.values()];
}

/** For each rail, one terminal of its conductor in every enclosure that it reaches: where the black lead is parked. */
function railPoints(unit: Unit): string[] {
  const conductors = conductorsOf(unit);
  const enclosureOf = enclosures(unit);
  const terminals = unit.parts.flatMap((part) =>
    part.terminals.map((terminal) => `${part.id}.${terminal}`),
  );
  const found: string[] = [];
  for (const rail of unit.circuits.flatMap(({rails}) => rails)) {
    const here = new Map([[enclosureOf(rail), rail]]);
    for (const terminal of terminals)
      if (conductors.same(terminal, rail) && !here.has(enclosureOf(terminal)))
        here.set(enclosureOf(terminal), terminal);
    found.push(...here.values());
  }
  return found;
}

/** Enclosure of a terminal or of a wire's end. */
function enclosures(unit: Unit): (point: string) => string | undefined {
  const ofPart = new Map(unit.parts.map((part) => [part.id, part.enclosure]));
  const ofEnd = new Map(
    unit.wires.flatMap((wire) => [
      [`${wire.id}.from`, ofPart.get(partOf(wire.from))],
      [`${wire.id}.to`, ofPart.get(partOf(wire.to))],
    ]),
  );
  return (point) => ofEnd.get(point) ?? ofPart.get(partOf(point));
}

/** Class of the wires on each terminal; terminals without a wire have none. */
function pointClasses(unit: Unit): ReadonlyMap<string, CircuitClass> {
  const classes = circuitClasses(unit);
  const of = new Map<string, CircuitClass>();
  for (const wire of unit.wires) {
    const found = classes.get(wire.id)!;
    // a terminal that also has a ground wire belongs to the circuit of its other wires
    for (const terminal of [wire.from, wire.to])
      if (found !== 'ground' || !of.has(terminal)) of.set(terminal, found);
    of.set(`${wire.id}.from`, found);
    of.set(`${wire.id}.to`, found);
  }
  return of;
}
