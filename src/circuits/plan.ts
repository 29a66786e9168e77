import type {Element} from '../parts/element.ts';
import {isMotor, motorWindings} from '../parts/motor-windings.ts';
import {acSiemens, dcSiemens, fixed, inverse, type Siemens} from './element-admittance.ts';
import {
  coilBranch,
  contactBranch,
  dcSourceBranch,
  fixedBranch,
  motorBranch,
  transformerBranch,
  variableBranch,
  type Base,
  type Branch,
  type Core,
  type MotorCoupling,
} from './branch.ts';
import {edgeBetween, planElimination, type Elimination} from './elimination-order.ts';
import type {Stamps} from './factor.ts';
import type {Network} from './network.ts';
import {emptyStamps, fixedStamps} from './stamps.ts';
import {UnknownNameError} from './unknown-name.ts';

/**
 * A network compiled for solving: names to indices, elimination order and pattern, fixed stamps. One plan serves
 * any number of states; it holds scratch arrays, so two solves may not run at once (nothing here is concurrent).
 */
export interface Plan {
  readonly network: Network;
  readonly elimination: Elimination;
  /** Node name to elimination position; earth is −1. */
  readonly positionOf: ReadonlyMap<string, number>;
  readonly branches: readonly Branch[];
  readonly branchOf: ReadonlyMap<string, number>;
  /** Branches of a transformer or motor (or the one of any other element), by element id. */
  readonly branchesOf: ReadonlyMap<string, readonly number[]>;
  /** Indices of the branches that a state can change. */
  readonly live: Int32Array;
  readonly cores: readonly Core[];
  readonly motors: readonly MotorCoupling[];
  readonly ac: Base;
  readonly dc: Base;
  readonly scratch: Stamps;
}

/**
 * Compiles a network.
 * Throws an Error when an element is joined to a node that is not listed, when two have one id, when a value gives
 * no finite admittance, or when a node has no path to earth at all (every node of a real unit has insulation leakage).
 */
export function compileNetwork(network: Network): Plan {
  const unknowns = new Map<string, number>();
  for (const name of network.nodes) {
    if (name === 'earth') continue;
    if (unknowns.has(name)) throw new Error(`The node "${name}" is listed twice.`);
    unknowns.set(name, unknowns.size);
  }
  const unknownOf = (name: string, element: string): number => {
    if (name === 'earth') return -1;
    const found = unknowns.get(name);
    if (found === undefined)
      throw new UnknownNameError(`node for ${element}`, name, unknowns.keys());
    return found;
  };

  const drafts = draftBranches(network, unknownOf, unknowns.size);
  const size = unknowns.size + drafts.cores.length;
  requireEarth(network, drafts.branches, unknowns);
  const elimination = planElimination(size, drafts.pairs);
  const at = (unknown: number): number => (unknown < 0 ? -1 : elimination.position[unknown]);
  const edge = (p: number, q: number): number =>
    p < 0 || q < 0 || p === q ? -1 : edgeBetween(elimination, p, q);

  for (const draft of drafts.branches) {
    draft.from = at(draft.from);
    draft.to = at(draft.to);
    draft.core = at(draft.core);
    draft.edge = edge(draft.from, draft.to);
    if (draft.core < 0) continue;
    draft.coreFromEdge = edge(draft.core, draft.from);
    draft.coreToEdge = edge(draft.core, draft.to);
  }
  const branches: readonly Branch[] = drafts.branches;
  const branchOf = new Map<string, number>();
  const branchesOf = new Map<string, number[]>();
  branches.forEach((branch, index) => {
    const siblings = branchesOf.get(branch.owner);
    if (siblings) siblings.push(index);
    else branchesOf.set(branch.owner, [index]);
    if (branchOf.has(branch.id)) throw new Error(`Two elements have the id "${branch.id}".`);
    branchOf.set(branch.id, index);
  });
  for (const {windings, edges} of drafts.motors)
    windings.forEach((own, i) =>
      windings.forEach((other, j) => {
        const [p, q] = [branches[own], branches[other]];
        edges.set(
          [edge(p.from, q.from), edge(p.from, q.to), edge(p.to, q.from), edge(p.to, q.to)],
          4 * (i * windings.length + j),
        );
      }),
    );
  const cores = drafts.cores.map((core) => ({...core, position: at(core.position)}));
  const positionOf = new Map<string, number>([['earth', -1]]);
  for (const [name, unknown] of unknowns) positionOf.set(name, at(unknown));

  return {
    network,
    elimination,
    positionOf,
    branches,
    branchOf,
    branchesOf,
    live: Int32Array.from(
      branches.flatMap((branch, index) =>
        branch.kind === fixedBranch || branch.kind === motorBranch ? [] : [index],
      ),
    ),
    cores,
    motors: drafts.motors,
    ac: fixedStamps(elimination, branches, cores, 'ac'),
    dc: fixedStamps(elimination, branches, cores, 'dc'),
    scratch: emptyStamps(elimination),
  };
}

/** A branch while the network is compiled: ends and core are unknowns until the elimination order is known. */
type Draft = {-readonly [Field in keyof Branch]: Branch[Field]};

/** A motor winding's admittance comes with its speed. */
const noSiemens = fixed({re: 0, im: 0});

const kinds: Partial<Record<Element['is'], number>> = {
  contact: contactBranch,
  coil: coilBranch,
  variable: variableBranch,
  dcSource: dcSourceBranch,
};

/** Branches with unknowns instead of names, still in the order of the network; cores take the unknowns after the nodes. */
function draftBranches(
  network: Network,
  unknownOf: (name: string, element: string) => number,
  nodeCount: number,
): {branches: Draft[]; cores: Core[]; motors: MotorCoupling[]; pairs: number[]} {
  const branches: Draft[] = [];
  const cores: Core[] = [];
  const motors: MotorCoupling[] = [];
  const pairs: number[] = [];
  let offset = 0;
  const join = (p: number, q: number): void => {
    if (p >= 0 && q >= 0 && p !== q) pairs.push(p, q);
  };
  const push = (
    id: string,
    owner: string,
    kind: number,
    from: number,
    to: number,
    ac: Siemens,
    dc: Siemens,
  ): Draft => {
    requireFinite(id, ac);
    requireFinite(id, dc);
    const draft: Draft = {
      id,
      owner,
      kind,
      from,
      to,
      edge: -1,
      closedAtRest: false,
      ac,
      dc,
      core: -1,
      coreFromEdge: -1,
      coreToEdge: -1,
      turns: 0,
    };
    branches.push(draft);
    return draft;
  };

  for (const element of network.elements) {
    if (element.is === 'transformer') {
      const core = nodeCount + cores.length;
      // the core's unknown is scaled to the largest winding's volts, so that turns stay at or below one
      const most = Math.max(...element.windings.map((winding) => winding.turnsVolts));
      const {re, im} = element.magnetisingVa;
      const siemens = {re: re / most ** 2, im: -im / most ** 2};
      cores.push({id: element.id, position: core, turnsVolts: most, siemens});
      for (const winding of element.windings) {
        const from = unknownOf(winding.a, winding.id);
        const to = unknownOf(winding.b, winding.id);
        join(from, to);
        join(from, core);
        join(to, core);
        const ac = fixed(inverse({re: winding.ohms, im: winding.reactanceOhms}));
        const dc = fixed({re: 1 / winding.ohms, im: 0});
        const draft = push(winding.id, element.id, transformerBranch, from, to, ac, dc);
        draft.core = core;
        draft.turns = winding.turnsVolts / most;
      }
    } else if (isMotor(element)) {
      const ends = motorWindings(element).map(({id, a, b, ohms}) => ({
        id,
        from: unknownOf(a, id),
        to: unknownOf(b, id),
        ohms,
      }));
      const among = ends.flatMap((end) => [end.from, end.to]);
      for (const p of among) for (const q of among) join(p, q);
      const windings = ends.map(({id, from, to, ohms}) => {
        push(id, element.id, motorBranch, from, to, noSiemens, fixed({re: 1 / ohms, im: 0}));
        return branches.length - 1;
      });
      const pairsOfWindings = windings.length ** 2;
      const siemens = new Float64Array(2 * pairsOfWindings);
      const edges = new Int32Array(4 * pairsOfWindings);
      motors.push({
        motor: element,
        windings,
        edges,
        offset,
        siemens,
        speed: Number.NaN,
        copper: 1,
        burnt: 0,
      });
      offset += pairsOfWindings;
    } else {
      const from = unknownOf(element.a, element.id);
      const to = unknownOf(element.b, element.id);
      join(from, to);
      const draft = push(
        element.id,
        element.id,
        kinds[element.is] ?? fixedBranch,
        from,
        to,
        acSiemens(element, network.frequencyHz),
        dcSiemens(element),
      );
      draft.closedAtRest = element.is === 'contact' && element.normally === 'closed';
    }
  }
  return {branches, cores, motors, pairs};
}

function requireFinite(id: string, {rest, acted}: Siemens): void {
  const sum = rest.re + rest.im + acted.re + acted.im;
  if (!Number.isFinite(sum)) throw new Error(`"${id}" has no impedance: give it ohms above zero.`);
}

/** Every node needs a path to earth through branches, or its volts would mean nothing. */
function requireEarth(
  network: Network,
  branches: readonly Draft[],
  unknowns: ReadonlyMap<string, number>,
): void {
  const leader = Int32Array.from({length: unknowns.size + 1}, (_, index) => index);
  const find = (index: number): number => {
    let at = index;
    while (leader[at] !== at) {
      leader[at] = leader[leader[at]];
      at = leader[at];
    }
    return at;
  };
  for (const {from, to} of branches) leader[find(from + 1)] = find(to + 1);
  for (const [name, unknown] of unknowns)
    if (find(unknown + 1) !== find(0))
      throw new Error(
        `The node "${name}" has no path to earth among ${network.elements.length} elements: give it its insulation leakage.`,
      );
}
