import type {Unit, Wire} from '../content/unit.ts';
import type {Element} from '../parts/element.ts';
import {isMotor, motorWindings} from '../parts/motor-windings.ts';

/** What a wire carries, which decides what a burnt joint in it is worth in ohms. */
export type CircuitClass = 'line' | 'control' | 'sensor' | 'ground';

/** Part of a placed name: `K1` of `K1.A1`. */
export const partOf = (placed: string): string => placed.slice(0, placed.indexOf('.'));

/** Two-terminal stretches of an element along which a circuit continues. A transformer's windings stay apart. */
export function stretchesOf(element: Element): (readonly [string, string])[] {
  if (element.is === 'transformer') return element.windings.map((w) => [w.a, w.b]);
  if (isMotor(element)) return motorWindings(element).map(({a, b}) => [a, b]);
  return [[element.a, element.b]];
}

/** Disjoint sets of names (Tarjan's union–find with path halving). */
export class Groups {
  private readonly parent = new Map<string, string>();

  of(name: string): string {
    let at = name;
    for (;;) {
      const up = this.parent.get(at) ?? at;
      if (up === at) return at;
      const above = this.parent.get(up) ?? up;
      this.parent.set(at, above);
      at = above;
    }
  }

  join(a: string, b: string): void {
    this.parent.set(this.of(a), this.of(b));
  }

  same(a: string, b: string): boolean {
    return this.of(a) === this.of(b);
  }
}

/** Terminals joined by wires alone: one group is one conductor of the unit, whatever switches do. */
export function conductorsOf(unit: Unit): Groups {
  const groups = new Groups();
  for (const wire of unit.wires) groups.join(wire.from, wire.to);
  return groups;
}

/**
 * Class of every wire. Circuits are followed through contacts and loads, but not across a transformer's
 * core and not along the equipment ground, so that a grounded 24 V common does not make the whole unit one
 * circuit. A wire fed by the supply is line; one fed by a secondary winding, control.
 */
export function circuitClasses(unit: Unit): ReadonlyMap<string, CircuitClass> {
  const groundPoints = groundTerminals(unit);
  const circuits = new Groups();
  const line: string[] = [];
  const sensors = new Set<string>();
  for (const part of unit.parts) {
    for (const element of part.elements) {
      if (part.kind === 'supply' && element.is !== 'acSource') continue;
      if (element.is === 'acSource') line.push(element.a);
      if (element.is === 'variable') sensors.add(element.a).add(element.b);
      for (const [a, b] of stretchesOf(element)) circuits.join(a, b);
    }
  }
  const isGround = (wire: Wire): boolean =>
    groundPoints.has(wire.from) && groundPoints.has(wire.to);
  for (const wire of unit.wires) {
    if (groundPoints.has(wire.from) || groundPoints.has(wire.to)) continue;
    circuits.join(wire.from, wire.to);
  }
  const lineGroups = new Set(line.map((terminal) => circuits.of(terminal)));
  return new Map(
    unit.wires.map((wire): [string, CircuitClass] => {
      if (isGround(wire)) return [wire.id, 'ground'];
      if (sensors.has(wire.from) || sensors.has(wire.to)) return [wire.id, 'sensor'];
      // a wire that grounds something belongs to the circuit of its other end
      const end = groundPoints.has(wire.from) ? wire.to : wire.from;
      return [wire.id, lineGroups.has(circuits.of(end)) ? 'line' : 'control'];
    }),
  );
}

/** Terminals of the equipment ground: the lugs, the cabinets and the supply's ground bar. Colour says nothing: G of a thermostat is green too. */
export function groundTerminals(unit: Unit): ReadonlySet<string> {
  const ground = new Set<string>();
  for (const part of unit.parts) {
    if (part.kind === 'ground-lug')
      for (const terminal of part.terminals) ground.add(`${part.id}.${terminal}`);
    if (part.kind === 'supply') ground.add(`${part.id}.G`);
  }
  for (const enclosure of unit.enclosures) if (enclosure.cabinet) ground.add(enclosure.cabinet);
  return ground;
}
