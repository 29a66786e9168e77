import type {LadderCircuit, Unit, Wire} from '../content/unit.ts';
import {decompose, edgesIn, type Branch, type NetworkEdge, type SpTree} from './series-parallel.ts';
import {isHidden, readWiring, type Edge, type Wiring} from './wiring.ts';

/** An edge between nets: what the decomposition works on. */
export interface NetEdge extends NetworkEdge {
  readonly edge: Edge;
}

/** How an end of a rung is tied: to a rail, to a terminal drawn elsewhere, or not at all. */
export type RungEnd =
  | {readonly to: 'rail'; readonly terminal: string}
  | {readonly to: 'flag'; readonly terminal: string}
  | {readonly to: 'nothing'};

/** One rung: a branch between two ends. It takes as many rows as it has parallel branches. */
export interface Rung {
  readonly tree: SpTree<NetEdge>;
  readonly left: RungEnd;
  readonly right: RungEnd;
}

/** A wire that ties a rail's own terminal to the equipment ground: the common that is grounded on purpose. */
export interface RailGround {
  readonly wire: Wire;
  readonly rail: 0 | 1;
  /** The ground terminal at its other end. */
  readonly ground: string;
}

export interface CircuitPlan {
  readonly circuit: LadderCircuit;
  readonly grounds: readonly RailGround[];
  /** From the left rail through the source to the right rail; absent if no source feeds these rails. */
  readonly header?: SpTree<NetEdge>;
  readonly rungs: readonly Rung[];
}

export interface LadderPlan {
  readonly wiring: Wiring;
  readonly circuits: readonly CircuitPlan[];
}

const isSource = ({element, winding}: Edge): boolean =>
  element.is === 'acSource' || winding.startsWith('secondary');

/** Net name of a rail, or of a node cut off it so that a loop can be drawn as a rung. */
const cutEnd = (net: string): string => `${net}|loop`;

/**
 * Sorts every element of the unit onto a rung of one circuit. Sources and what lies between them and the
 * rails make the header of each circuit that they feed; every other element is on exactly one rung.
 */
export function planLadder(unit: Unit): LadderPlan {
  const wiring = readWiring(unit);
  const edges: NetEdge[] = wiring.edges.map((edge) => ({
    edge,
    a: wiring.netOf(edge.a),
    b: wiring.netOf(edge.b),
  }));
  const railNets = new Set(unit.circuits.flatMap(({rails}) => rails.map(wiring.netOf)));
  const headers = unit.circuits.map((circuit) => findHeader(edges, circuit, wiring, railNets));
  const inHeader = new Set(headers.flatMap((path) => (path ?? []).map(({edge}) => edge.edge.id)));
  const rest = edges.filter(({edge}) => !inHeader.has(edge.id));

  const rungs = new Map<LadderCircuit, Rung[]>(unit.circuits.map((circuit) => [circuit, []]));
  const strays: {circuit?: LadderCircuit; branch: Branch<NetEdge>}[] = [];
  for (const group of groupsBetweenRails(rest, railNets)) {
    const touched = new Set(group.flatMap(({a, b}) => [a, b]).filter((net) => railNets.has(net)));
    const between = unit.circuits.find(({rails}) =>
      rails.every((rail) => touched.has(wiring.netOf(rail))),
    );
    const circuit =
      between ??
      unit.circuits.find(({rails}) => rails.some((rail) => touched.has(wiring.netOf(rail))));
    const placed = between
      ? betweenRails(
          group,
          between,
          wiring,
          unit.circuits.flatMap(({rails}) => rails).filter((rail) => !between.rails.includes(rail)),
        )
      : circuit
        ? aroundOneRail(group, circuit, wiring, touched)
        : {rungs: [], strays: group.map(asBranch)};
    if (circuit) rungs.get(circuit)!.push(...placed.rungs);
    strays.push(...placed.strays.map((branch) => ({branch, ...(circuit ? {circuit} : {})})));
  }
  placeStrays(unit, wiring, rungs, strays);
  return {
    wiring,
    circuits: unit.circuits.map((circuit, i) => {
      const header = headers[i];
      return {
        circuit,
        rungs: rungs.get(circuit)!,
        grounds: groundsOf(unit, circuit, wiring),
        ...(header ? {header: asSeries(header)} : {}),
      };
    }),
  };
}

function groundsOf(unit: Unit, {rails}: LadderCircuit, wiring: Wiring): RailGround[] {
  return unit.wires.flatMap((wire) => {
    if (!wiring.groundWires.has(wire.id)) return [];
    return ([0, 1] as const).flatMap((rail): RailGround[] => {
      if (wire.from === rails[rail]) return [{wire, rail, ground: wire.to}];
      return wire.to === rails[rail] ? [{wire, rail, ground: wire.from}] : [];
    });
  });
}

const asBranch = (edge: NetEdge): Branch<NetEdge> => ({
  from: edge.a,
  to: edge.b,
  tree: {kind: 'edge', edge, reversed: false},
});

interface Step {
  readonly edge: NetEdge;
  readonly reversed: boolean;
}

const asSeries = (path: readonly Step[]): SpTree<NetEdge> => {
  const parts = path.map((step) => ({kind: 'edge', ...step}) as const);
  return parts.length === 1 ? parts[0]! : {kind: 'series', parts};
};

/**
 * The shortest way from one rail to the other through a source: fuses, breakers and disconnects in the
 * feed come with it. Other circuits' rails are not crossed, save from one leg of the supply to the other: the
 * neutral between two legs may be the rail of a circuit at half their volts.
 */
function findHeader(
  edges: readonly NetEdge[],
  circuit: LadderCircuit,
  wiring: Wiring,
  railNets: ReadonlySet<string>,
): Step[] | undefined {
  const [start, end] = circuit.rails.map(wiring.netOf) as [string, string];
  const feeding = edges.filter(({edge}) => isSource(edge) || edge.element.is === 'contact');
  interface State {
    readonly net: string;
    readonly sourced: boolean;
    readonly path: readonly Step[];
  }
  const seen = new Set<string>();
  let front: State[] = [{net: start, sourced: false, path: []}];
  while (front.length > 0) {
    const next: State[] = [];
    for (const {net, sourced, path} of front)
      for (const edge of feeding) {
        const isLeg = edge.edge.element.is === 'acSource';
        if (net !== start && railNets.has(net) && !isLeg) continue;
        const reversed = edge.b === net;
        if ((!reversed && edge.a !== net) || path.some((step) => step.edge === edge)) continue;
        const to = reversed ? edge.a : edge.b;
        const state = {
          net: to,
          sourced: sourced || isSource(edge.edge),
          path: [...path, {edge, reversed}],
        };
        if (to === end && state.sourced) return state.path;
        const key = `${to} ${state.sourced}`;
        if ((railNets.has(to) && !isLeg) || seen.has(key)) continue;
        seen.add(key);
        next.push(state);
      }
    front = next;
  }
  return undefined;
}

/** Groups of edges that hang together without crossing a rail, in order of their first element. */
function groupsBetweenRails(edges: readonly NetEdge[], railNets: ReadonlySet<string>): NetEdge[][] {
  const parent = new Map<string, string>();
  const find = (key: string): string => {
    const up = parent.get(key) ?? key;
    if (up === key) return key;
    const top = find(up);
    parent.set(key, top);
    return top;
  };
  const key = (edge: NetEdge): string => `element ${edge.edge.id}`;
  for (const edge of edges)
    for (const net of [edge.a, edge.b])
      if (!railNets.has(net)) parent.set(find(key(edge)), find(`net ${net}`));
  const groups = new Map<string, NetEdge[]>();
  for (const edge of edges) {
    const top = find(key(edge));
    groups.set(top, [...(groups.get(top) ?? []), edge]);
  }
  return [...groups.values()];
}

interface Placed {
  readonly rungs: readonly Rung[];
  readonly strays: readonly Branch<NetEdge>[];
}

function betweenRails(
  group: readonly NetEdge[],
  circuit: LadderCircuit,
  wiring: Wiring,
  otherRails: readonly string[],
): Placed {
  const [left, right] = circuit.rails;
  const {tree, cut, loose} = decompose(group, wiring.netOf(left), wiring.netOf(right));
  const rung: Rung[] = tree
    ? [{tree, left: {to: 'rail', terminal: left}, right: {to: 'rail', terminal: right}}]
    : [];
  const rest = [...cut, ...loose];
  const third = tree ? thirdLeg(tree, rest, wiring, otherRails) : undefined;
  return third ? {rungs: [...rung, third], strays: []} : {rungs: rung, strays: rest};
}

/**
 * The third leg of a three-phase load: from another circuit's rail, by way of what is left over, to a point that the
 * rung of the first two legs already has (the star). One rung, tied by flags at both ends, or none if it does not fit.
 */
function thirdLeg(
  drawn: SpTree<NetEdge>,
  strays: readonly Branch<NetEdge>[],
  wiring: Wiring,
  otherRails: readonly string[],
): Rung | undefined {
  const edges = strays.flatMap(({tree}) => edgesIn(tree));
  if (!edges.some(({edge}) => edge.element.is === 'threePhaseMotor')) return undefined;
  const nets = edges.flatMap(({a, b}) => [a, b]);
  const here = new Set(edgesIn(drawn).flatMap(({a, b}) => [a, b]));
  const rail = otherRails.find((terminal) => nets.includes(wiring.netOf(terminal)));
  const star = nets.find((net) => here.has(net) && net !== (rail && wiring.netOf(rail)));
  if (rail === undefined || star === undefined) return undefined;
  const {tree, cut, loose} = decompose(edges, wiring.netOf(rail), star);
  if (!tree || cut.length + loose.length > 0) return undefined;
  return {tree, left: {to: 'flag', terminal: rail}, right: {to: 'flag', terminal: star}};
}

/**
 * A group that meets one rail only: a board that feeds its own sensor. The loop is cut open at the
 * source, whose far end is tied to the rail's terminal by a flag.
 */
function aroundOneRail(
  group: readonly NetEdge[],
  circuit: LadderCircuit,
  wiring: Wiring,
  touched: ReadonlySet<string>,
): Placed {
  const rail = circuit.rails.find((terminal) => touched.has(wiring.netOf(terminal)))!;
  const net = wiring.netOf(rail);
  const source = group.find(
    ({edge, a, b}) => edge.element.is === 'dcSource' && (a === net) !== (b === net),
  );
  if (!source) return {rungs: [], strays: group.map(asBranch)};
  const opened = group.map((edge) =>
    edge !== source ? edge : edge.a === net ? {...edge, a: cutEnd(net)} : {...edge, b: cutEnd(net)},
  );
  const railIsLeft = rail === circuit.rails[0];
  const flag: RungEnd = {to: 'flag', terminal: rail};
  const tied: RungEnd = {to: 'rail', terminal: rail};
  const [from, to] = railIsLeft ? [net, cutEnd(net)] : [cutEnd(net), net];
  const {tree, cut, loose} = decompose(opened, from!, to!);
  const rung: Rung[] = tree
    ? [{tree, left: railIsLeft ? tied : flag, right: railIsLeft ? flag : tied}]
    : [];
  return {rungs: rung, strays: [...cut, ...loose]};
}

/** Terminals at which the edges of a tree end. */
const endsOf = (tree: SpTree<NetEdge>): string[] =>
  edgesIn(tree).flatMap(({edge}) => [edge.a, edge.b]);

/**
 * Branches with no place between the rails, drawn after the rungs of the circuit that they belong to,
 * tied by flags to terminals already drawn; a spare terminal stays untied.
 */
function placeStrays(
  unit: Unit,
  wiring: Wiring,
  rungs: Map<LadderCircuit, Rung[]>,
  strays: readonly {circuit?: LadderCircuit; branch: Branch<NetEdge>}[],
): void {
  const drawn = new Map<string, LadderCircuit>();
  const draw = (circuit: LadderCircuit, tree: SpTree<NetEdge>): void => {
    for (const terminal of endsOf(tree))
      if (!drawn.has(wiring.netOf(terminal))) drawn.set(wiring.netOf(terminal), circuit);
  };
  for (const [circuit, list] of rungs) for (const {tree} of list) draw(circuit, tree);
  for (const circuit of unit.circuits)
    for (const rail of circuit.rails)
      if (!drawn.has(wiring.netOf(rail))) drawn.set(wiring.netOf(rail), circuit);
  for (const {circuit, branch} of strays) {
    const home =
      circuit ??
      drawn.get(branch.from) ??
      drawn.get(branch.to) ??
      homeOfPart(edgesIn(branch.tree)[0]!.edge.part.id, rungs) ??
      unit.circuits[unit.circuits.length - 1];
    if (!home) continue;
    const end = (net: string): RungEnd =>
      drawn.has(net)
        ? {to: 'flag', terminal: flagTerminal(net, rungs, wiring, unit)}
        : {to: 'nothing'};
    rungs.get(home)!.push({tree: branch.tree, left: end(branch.from), right: end(branch.to)});
    draw(home, branch.tree);
  }
}

function homeOfPart(
  part: string,
  rungs: ReadonlyMap<LadderCircuit, readonly Rung[]>,
): LadderCircuit | undefined {
  for (const [circuit, list] of rungs)
    if (list.some(({tree}) => edgesIn(tree).some(({edge}) => edge.part.id === part)))
      return circuit;
  return undefined;
}

/** A terminal of the net that is drawn and that a lead can reach: a rail's own first, else an element's end. */
function flagTerminal(
  net: string,
  rungs: ReadonlyMap<LadderCircuit, readonly Rung[]>,
  wiring: Wiring,
  unit: Unit,
): string {
  const rails = unit.circuits.flatMap(({rails}) => rails);
  const ends = [...rungs.values()].flat().flatMap(({tree}) => endsOf(tree));
  const here = [...rails, ...ends].filter((terminal) => wiring.netOf(terminal) === net);
  return here.find((terminal) => !isHidden(terminal)) ?? here[0]!;
}
