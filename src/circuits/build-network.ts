import type {Unit, Wire} from '../content/unit.ts';
import type {Element} from '../parts/element.ts';
import {isMotor, motorWindings} from '../parts/motor-windings.ts';
import type {ElementChange} from '../parts/part-kind.ts';
import {applyChange, changeableIds} from './apply-change.ts';
import type {Network} from './network.ts';
import {strayCapacitors} from './stray-capacitance.ts';
import {UnknownNameError} from './unknown-name.ts';
import {wireOhms} from './wire-resistance.ts';

/** What is different from the unit as drawn: structural, so it decides the network's pattern. */
export interface Alterations {
  /** Wire ends lifted off their terminal: `W12.from`, `W12.to`. A lifted end is a node of that name. */
  readonly lifted: readonly string[];
  /** Wire ends that land on another terminal than the unit file says. */
  readonly moved?: readonly {readonly end: string; readonly terminal: string}[];
  /** Jumper leads between two placed terminals (or lifted ends). */
  readonly jumpers: readonly (readonly [string, string])[];
  /** Changes and extra paths of the faults present. */
  readonly changes: readonly ElementChange[];
  readonly paths: readonly {
    readonly id: string;
    readonly a: string;
    readonly b: string;
    readonly ohms: number;
  }[];
}

export type BuildNetwork = (unit: Unit, alterations: Alterations) => Network;

/** The unit as drawn. */
export const unaltered: Alterations = {lifted: [], jumpers: [], changes: [], paths: []};

/** Insulation of every node to earth: terminals, lifted ends and points inside parts alike. */
export const insulationOhms = 1e8;
/** A crimped or screwed joint, at each end of a wire (common practice, no source). */
export const jointOhms = 0.001;
/** A short clip lead with its two clips (common practice, no source). */
export const jumperOhms = 0.02;

/**
 * The network of a unit: the parts' elements, every wire as a conductor of its gauge and length with its joints
 * (id = wire id), insulation leakage `insulation:<node>`, stray capacitance `stray:…`, jumpers `jumper:A~B`, and the
 * faults' changes and paths. Names that the unit does not have throw UnknownNameError with the nearest that it has.
 */
export const buildNetwork: BuildNetwork = (unit, alterations) => {
  const nodes = new Set<string>(['earth']);
  for (const part of unit.parts)
    for (const terminal of part.terminals) nodes.add(`${part.id}.${terminal}`);

  const lifted = new Set(alterations.lifted);
  requireNames('wire end', lifted, () =>
    unit.wires.flatMap((wire) => [`${wire.id}.from`, `${wire.id}.to`]),
  );
  const moved = new Map((alterations.moved ?? []).map(({end, terminal}) => [end, terminal]));
  requireNames('terminal', moved.values(), () => nodes);
  const endOf = (wire: Wire, end: 'from' | 'to'): string => {
    const name = `${wire.id}.${end}`;
    return lifted.has(name) ? name : (moved.get(name) ?? wire[end]);
  };
  for (const end of lifted) nodes.add(end);

  let elements: Element[] = unit.parts.flatMap((part) => [...part.elements]);
  for (const element of elements) for (const node of nodesOf(element)) nodes.add(node);
  for (const wire of unit.wires)
    elements.push({
      is: 'conductor',
      id: wire.id,
      a: endOf(wire, 'from'),
      b: endOf(wire, 'to'),
      ohms: wireOhms(wire.gauge, wire.feet) + 2 * jointOhms,
    });

  elements = withChanges(elements, alterations.changes, nodes);

  const leads = alterations.jumpers.map(([a, b]) => ({
    id: `jumper:${a}~${b}`,
    a,
    b,
    ohms: jumperOhms,
  }));
  // a path may begin at a wire's end: it lies on the wire, and goes with it when that end is lifted
  const points = new Map(
    unit.wires.flatMap((wire) => [
      [`${wire.id}.from`, endOf(wire, 'from')],
      [`${wire.id}.to`, endOf(wire, 'to')],
    ]),
  );
  for (const path of [...leads, ...alterations.paths]) {
    const a = points.get(path.a) ?? path.a;
    const b = points.get(path.b) ?? path.b;
    requireNames(`terminal for ${path.id}`, [a, b], () => nodes);
    elements.push({is: 'conductor', id: path.id, a, b, ohms: path.ohms});
  }

  elements.push(...strayCapacitors(unit, endOf));
  for (const node of nodes)
    if (node !== 'earth')
      elements.push({
        is: 'conductor',
        id: `insulation:${node}`,
        a: node,
        b: 'earth',
        ohms: insulationOhms,
      });
  return {frequencyHz: unit.frequencyHz, nodes: [...nodes], elements};
};

/** Applies the changes in order; what a change has added can be changed no further. */
function withChanges(
  elements: readonly Element[],
  changes: readonly ElementChange[],
  nodes: Set<string>,
): Element[] {
  if (changes.length === 0) return [...elements];
  const list = [...elements];
  const indexOf = new Map<string, number>();
  list.forEach((element, index) => {
    for (const id of changeableIds(element)) indexOf.set(id, index);
  });
  for (const change of merged(changes)) {
    const index = indexOf.get(change.element);
    if (index === undefined)
      throw new UnknownNameError('element, winding or wire', change.element, indexOf.keys());
    const changed = applyChange(list[index], change);
    list[index] = changed.elements[0];
    list.push(...changed.elements.slice(1));
    for (const node of changed.nodes) nodes.add(node);
  }
  return list;
}

/**
 * Two faults on one element act together: an open wins over everything, paths beside it add up in parallel, ohms in
 * series add, scales multiply, of two holds the later stands.
 */
function merged(changes: readonly ElementChange[]): ElementChange[] {
  const byElement = new Map<string, ElementChange>();
  for (const change of changes) {
    const before = byElement.get(change.element);
    byElement.set(change.element, before ? together(before, change) : change);
  }
  return [...byElement.values()];
}

function together(p: ElementChange, q: ElementChange): ElementChange {
  const both = (
    r: number | undefined,
    s: number | undefined,
    f: (r: number, s: number) => number,
  ) => (r === undefined ? s : s === undefined ? r : f(r, s));
  return {
    element: p.element,
    open: p.open || q.open,
    besideOhms: both(p.besideOhms, q.besideOhms, (r, s) => 1 / (1 / r + 1 / s)),
    seriesOhms: both(p.seriesOhms, q.seriesOhms, (r, s) => r + s),
    scale: both(p.scale, q.scale, (r, s) => r * s),
    held: q.held ?? p.held,
  };
}

/** Names of the nodes that an element is joined to. */
export function nodesOf(element: Element): string[] {
  if (element.is === 'transformer')
    return element.windings.flatMap((winding) => [winding.a, winding.b]);
  if (isMotor(element)) return motorWindings(element).flatMap(({a, b}) => [a, b]);
  return [element.a, element.b];
}

function requireNames(what: string, wanted: Iterable<string>, names: () => Iterable<string>): void {
  let known: Set<string> | undefined;
  for (const name of wanted) {
    known ??= new Set(names());
    if (!known.has(name)) throw new UnknownNameError(what, name, known);
  }
}
