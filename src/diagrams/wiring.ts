import {isMotor, motorWindings} from '../parts/motor-windings.ts';
import type {Part, Unit, Wire} from '../content/unit.ts';
import type {Element} from '../parts/element.ts';

/** An element (or one winding of it) as an edge between two placed terminals. */
export interface Edge {
  readonly id: string;
  readonly part: Part;
  readonly element: Element;
  /** `primary`, `secondary`, `main`, `start` … for windings; empty otherwise. */
  readonly winding: string;
  readonly a: string;
  readonly b: string;
  /** Place in the unit file: parts in order, elements in order within each. */
  readonly order: number;
}

/** A joint of no resistance worth drawing: a wire, or a conductor inside a part. */
export interface Joint {
  readonly to: string;
  readonly wire?: Wire;
  /** Part whose inside the conductor runs through, where it is not a wire. */
  readonly part?: Part;
}

/** What the drawings need of a unit: edges, joints, and nets as unions over joints. */
export interface Wiring {
  readonly edges: readonly Edge[];
  readonly joints: ReadonlyMap<string, readonly Joint[]>;
  /** Wires of the equipment ground, which ladder prints leave out. */
  readonly groundWires: ReadonlySet<string>;
  /** Net of a terminal, named by its first terminal in unit order. */
  netOf(terminal: string): string;
  partOf(terminal: string): Part;
}

/** Placed name of a node inside a part (`CMP.~windings`): no lead can reach it. */
export const isHidden = (terminal: string): boolean => terminal.includes('.~');

/** Local name of a placed terminal. */
export const localName = (terminal: string): string => terminal.slice(terminal.indexOf('.') + 1);

const partId = (terminal: string): string => terminal.slice(0, terminal.indexOf('.'));

/** Every element of the unit as edges, windings apart, in the order of the unit file. */
export function edgesOf(unit: Pick<Unit, 'parts'>): Edge[] {
  const edges: Edge[] = [];
  for (const part of unit.parts) {
    for (const element of part.elements) {
      const add = (id: string, a: string, b: string, winding = ''): void => {
        edges.push({id, part, element, winding, a, b, order: edges.length});
      };
      if (element.is === 'conductor') continue;
      if (element.is === 'transformer')
        for (const winding of element.windings)
          add(winding.id, winding.a, winding.b, localName(winding.id));
      else if (isMotor(element))
        for (const {id, a, b} of motorWindings(element)) add(id, a, b, localName(id));
      else add(element.id, element.a, element.b);
    }
  }
  return edges;
}

/** Terminals that are the equipment ground itself: lugs, the metal of boxes, the service's ground bar. */
function groundTerminals(unit: Unit): Set<string> {
  const grounds = new Set<string>(['earth']);
  for (const part of unit.parts) {
    if (part.kind === 'ground-lug')
      for (const name of part.terminals) grounds.add(`${part.id}.${name}`);
    if (part.kind === 'supply') grounds.add(`${part.id}.G`);
  }
  for (const {cabinet} of unit.enclosures) if (cabinet) grounds.add(cabinet);
  return grounds;
}

/** Nets and edges of a unit. The equipment ground is left out of the nets, or every common would be one. */
export function readWiring(unit: Unit): Wiring {
  const grounds = groundTerminals(unit);
  const joints = new Map<string, Joint[]>();
  const join = (from: string, joint: Joint): void => {
    const list = joints.get(from);
    if (list) list.push(joint);
    else joints.set(from, [joint]);
  };
  const groundWires = new Set<string>();
  for (const wire of unit.wires) {
    if (grounds.has(wire.from) || grounds.has(wire.to)) {
      groundWires.add(wire.id);
      continue;
    }
    join(wire.from, {to: wire.to, wire});
    join(wire.to, {to: wire.from, wire});
  }
  for (const part of unit.parts)
    for (const element of part.elements) {
      if (element.is !== 'conductor' || grounds.has(element.a) || grounds.has(element.b)) continue;
      join(element.a, {to: element.b, part});
      join(element.b, {to: element.a, part});
    }

  const net = new Map<string, string>();
  const claim = (start: string): void => {
    const queue = [start];
    net.set(start, start);
    for (let at = queue.pop(); at !== undefined; at = queue.pop())
      for (const {to} of joints.get(at) ?? [])
        if (!net.has(to)) {
          net.set(to, start);
          queue.push(to);
        }
  };
  for (const part of unit.parts)
    for (const name of part.terminals)
      if (!net.has(`${part.id}.${name}`)) claim(`${part.id}.${name}`);
  const parts = new Map(unit.parts.map((part) => [part.id, part]));
  return {
    edges: edgesOf(unit),
    joints,
    groundWires,
    netOf: (terminal) => net.get(terminal) ?? terminal,
    partOf: (terminal) => parts.get(partId(terminal))!,
  };
}

/** A tree over the terminals of one net, from a root to the ends that must be reached. */
export interface NetTree {
  readonly terminal: string;
  /** How this terminal is joined to its parent; absent at the root. */
  readonly joint?: Joint;
  readonly children: NetTree[];
}

/**
 * Shortest joints from `root` to each of `ends`, as a tree. Ends that no joint reaches (another net)
 * are left out. Where wires close a loop the first in unit order is taken.
 */
export function treeOver(wiring: Wiring, root: string, ends: readonly string[]): NetTree {
  const parent = new Map<string, {from: string; joint: Joint}>();
  const seen = new Set([root]);
  let front = [root];
  while (front.length > 0) {
    const next: string[] = [];
    for (const from of front)
      for (const joint of wiring.joints.get(from) ?? [])
        if (!seen.has(joint.to)) {
          seen.add(joint.to);
          parent.set(joint.to, {from, joint});
          next.push(joint.to);
        }
    front = next;
  }
  const nodes = new Map<string, NetTree>([[root, {terminal: root, children: []}]]);
  const reach = (terminal: string): NetTree | undefined => {
    const known = nodes.get(terminal);
    if (known) return known;
    const step = parent.get(terminal);
    if (!step) return undefined;
    const node: NetTree = {terminal, joint: step.joint, children: []};
    nodes.set(terminal, node);
    reach(step.from)!.children.push(node);
    return node;
  };
  for (const end of ends) reach(end);
  return nodes.get(root)!;
}
