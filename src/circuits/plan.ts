import type {Element, Motor} from '../parts/element.ts';
import {acSiemens, dcSiemens, inverse, type Siemens} from './element-admittance.ts';
import {edgeBetween, planElimination, type Elimination} from './elimination-order.ts';
import type {Stamps} from './factor.ts';
import type {Network} from './network.ts';
import {UnknownNameError} from './unknown-name.ts';

/** What a branch's state can change. */
export const fixedBranch = 0;
export const contactBranch = 1;
export const coilBranch = 2;
export const variableBranch = 3;
export const dcSourceBranch = 4;
export const motorBranch = 5;

/** One two-ended path: an element, a transformer winding or a motor winding. Indices are elimination positions, −1 is earth. */
export interface Branch {
  readonly id: string;
  /** The transformer or motor that a winding belongs to; otherwise the same as `id`. */
  readonly owner: string;
  readonly kind: number;
  readonly from: number;
  readonly to: number;
  /** Edge between both ends, −1 where one is earth or both are the same node. */
  readonly edge: number;
  /** A contact that is closed with no state. */
  readonly closedAtRest: boolean;
  readonly ac: Siemens;
  readonly dc: Siemens;
  /** Transformer windings only: the core's unknown, its edges to both ends, and turns per core volt. */
  readonly core: number;
  readonly coreFromEdge: number;
  readonly coreToEdge: number;
  readonly turns: number;
}

/** Magnetising branch of one core, from its unknown to earth, per core volt squared. */
export interface Core {
  readonly id: string;
  readonly position: number;
  /** Volts on the largest winding at rated flux: one core volt is one volt on that winding. */
  readonly turnsVolts: number;
  readonly siemens: {readonly re: number; readonly im: number};
}

/** The antisymmetric coupling of a turning motor: main amps get +g·start volts, start amps −g·main volts. */
export interface MotorCoupling {
  readonly motor: Motor;
  readonly main: number;
  readonly start: number;
  /** Edges from the main's ends to the start's: a–a, a–b, b–a, b–b; −1 where there is none. */
  readonly edges: Int32Array;
  /** Admittances at `speed`, kept until the speed changes: main re, im; start re, im; g re, im. */
  readonly siemens: Float64Array;
  /** Speed and burnt windings that `siemens` is for. */
  speed: number;
  burnt: number;
}

/** Stamps of everything that no state changes, for one network kind. */
export interface Base {
  readonly stamps: Stamps;
  /** Per branch: its admittance at rest and, for a line source, its Norton amps. */
  readonly siemensRe: Float64Array;
  readonly siemensIm: Float64Array;
  readonly nortonRe: Float64Array;
  readonly nortonIm: Float64Array;
  /** Amps into each unknown. */
  readonly ampsRe: Float64Array;
  readonly ampsIm: Float64Array;
}

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

  const branches = drafts.branches.map((draft): Branch => {
    const from = at(draft.from);
    const to = at(draft.to);
    const core = draft.core < 0 ? -1 : at(draft.core);
    return {
      ...draft,
      from,
      to,
      edge: edge(from, to),
      core,
      coreFromEdge: edge(core, from),
      coreToEdge: edge(core, to),
    };
  });
  const branchOf = new Map<string, number>();
  const branchesOf = new Map<string, number[]>();
  branches.forEach((branch, index) => {
    const siblings = branchesOf.get(branch.owner);
    if (siblings) siblings.push(index);
    else branchesOf.set(branch.owner, [index]);
    if (branchOf.has(branch.id)) throw new Error(`Two elements have the id "${branch.id}".`);
    branchOf.set(branch.id, index);
  });
  for (const {main, start, edges} of drafts.motors) {
    const [m, s] = [branches[main], branches[start]];
    edges.set([edge(m.from, s.from), edge(m.from, s.to), edge(m.to, s.from), edge(m.to, s.to)]);
  }
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

interface Draft {
  readonly id: string;
  readonly owner: string;
  readonly kind: number;
  readonly from: number;
  readonly to: number;
  readonly closedAtRest: boolean;
  readonly ac: Siemens;
  readonly dc: Siemens;
  readonly core: number;
  readonly turns: number;
}

const noSiemens: Siemens = {rest: {re: 0, im: 0}, acted: {re: 0, im: 0}, amps: {re: 0, im: 0}};

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
  const join = (...among: number[]): void => {
    for (let p = 0; p < among.length; p += 1)
      for (let q = p + 1; q < among.length; q += 1)
        if (among[p] >= 0 && among[q] >= 0) pairs.push(among[p], among[q]);
  };
  const push = (draft: Draft): number => {
    requireFinite(draft);
    return branches.push(draft) - 1;
  };
  const plain = {closedAtRest: false, core: -1, turns: 0};

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
        join(from, to, core);
        const y = inverse({re: winding.ohms, im: winding.reactanceOhms});
        const g = {re: 1 / winding.ohms, im: 0};
        const turns = winding.turnsVolts / most;
        const ac = {rest: y, acted: y, amps: noSiemens.amps};
        const dc = {rest: g, acted: g, amps: noSiemens.amps};
        push({
          id: winding.id,
          owner: element.id,
          kind: fixedBranch,
          closedAtRest: false,
          from,
          to,
          ac,
          dc,
          core,
          turns,
        });
      }
    } else if (element.is === 'motor') {
      const ends = (['main', 'start'] as const).map((winding) => {
        const id = windingId(element, winding);
        return {
          id,
          from: unknownOf(element[winding].a, id),
          to: unknownOf(element[winding].b, id),
          ohms: winding === 'main' ? element.model.mainOhms : element.model.startOhms,
        };
      });
      join(...ends.flatMap((end) => [end.from, end.to]));
      const [main, start] = ends.map(({id, from, to, ohms}) => {
        const g = {re: 1 / ohms, im: 0};
        const dc = {rest: g, acted: g, amps: noSiemens.amps};
        return push({
          ...plain,
          id,
          owner: element.id,
          kind: motorBranch,
          from,
          to,
          ac: noSiemens,
          dc,
        });
      });
      const siemens = new Float64Array(6);
      const edges = new Int32Array(4);
      motors.push({motor: element, main, start, edges, siemens, speed: Number.NaN, burnt: 0});
    } else {
      const from = unknownOf(element.a, element.id);
      const to = unknownOf(element.b, element.id);
      join(from, to);
      push({
        ...plain,
        id: element.id,
        owner: element.id,
        kind: kinds[element.is] ?? fixedBranch,
        from,
        to,
        closedAtRest: element.is === 'contact' && element.normally === 'closed',
        ac: acSiemens(element, network.frequencyHz),
        dc: dcSiemens(element),
      });
    }
  }
  return {branches, cores, motors, pairs};
}

/** Placed id of a motor's winding: `M1.motor` has `M1.main` and `M1.start`. */
export function windingId(motor: Motor, winding: 'main' | 'start'): string {
  const dot = motor.id.lastIndexOf('.');
  return dot < 0 ? `${motor.id}.${winding}` : `${motor.id.slice(0, dot)}.${winding}`;
}

function requireFinite(draft: Draft): void {
  for (const {rest, acted} of [draft.ac, draft.dc])
    for (const y of [rest, acted])
      if (!Number.isFinite(y.re) || !Number.isFinite(y.im))
        throw new Error(`"${draft.id}" has no impedance: give it ohms above zero.`);
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

export function emptyStamps(elimination: Elimination): Stamps {
  const edges = elimination.row.length;
  return {
    edgeRe: new Float64Array(edges),
    edgeIm: new Float64Array(edges),
    backRe: new Float64Array(edges),
    backIm: new Float64Array(edges),
    earthRe: new Float64Array(elimination.size),
    earthIm: new Float64Array(elimination.size),
  };
}

function fixedStamps(
  elimination: Elimination,
  branches: readonly Branch[],
  cores: readonly Core[],
  kind: 'ac' | 'dc',
): Base {
  const stamps = emptyStamps(elimination);
  const ampsRe = new Float64Array(elimination.size);
  const ampsIm = new Float64Array(elimination.size);
  const siemensRe = new Float64Array(branches.length);
  const siemensIm = new Float64Array(branches.length);
  const nortonRe = new Float64Array(branches.length);
  const nortonIm = new Float64Array(branches.length);
  for (const [index, branch] of branches.entries()) {
    const {rest, amps} = branch[kind];
    siemensRe[index] = rest.re;
    siemensIm[index] = rest.im;
    if (branch.kind === motorBranch && kind === 'dc') stampBranch(stamps, branch, rest.re, 0);
    if (branch.kind !== fixedBranch) continue;
    if (branch.core >= 0 && kind === 'ac') stampWinding(stamps, branch, rest.re, rest.im);
    else stampBranch(stamps, branch, rest.re, rest.im);
    nortonRe[index] = amps.re;
    nortonIm[index] = amps.im;
    injectAmps(ampsRe, ampsIm, branch, amps.re, amps.im);
  }
  for (const core of cores) {
    // direct current sees no core; its unknown then only needs some value of its own
    stamps.earthRe[core.position] += kind === 'ac' ? core.siemens.re : 1;
    stamps.earthIm[core.position] += kind === 'ac' ? core.siemens.im : 0;
  }
  return {stamps, siemensRe, siemensIm, nortonRe, nortonIm, ampsRe, ampsIm};
}

/** Adds an admittance between a branch's ends. */
export function stampBranch(stamps: Stamps, branch: Branch, re: number, im: number): void {
  const {from, to, edge} = branch;
  if (edge >= 0) {
    stamps.edgeRe[edge] += re;
    stamps.edgeIm[edge] += im;
  } else if (from !== to) {
    const end = from < 0 ? to : from;
    stamps.earthRe[end] += re;
    stamps.earthIm[end] += im;
  }
}

/**
 * Adds a transformer winding: amps = y(va − vb − n·φ), and n·amps taken from the core. In joins and row sums:
 * core to a is n·y, core to b is −n·y, the row sums of a and b lose and gain n·y, the core's is what is left of n²·y.
 */
export function stampWinding(stamps: Stamps, branch: Branch, re: number, im: number): void {
  const {from, to, core, coreFromEdge, coreToEdge, turns} = branch;
  stampBranch(stamps, branch, re, im);
  const {edgeRe, edgeIm, earthRe, earthIm} = stamps;
  if (from === to) {
    // shorted on itself: its amps still load the core
    earthRe[core] += turns * turns * re;
    earthIm[core] += turns * turns * im;
    return;
  }
  // share of n that the joins to both ends leave to the core's own path to earth
  let left = turns * turns;
  if (from >= 0) {
    edgeRe[coreFromEdge] += turns * re;
    edgeIm[coreFromEdge] += turns * im;
    earthRe[from] -= turns * re;
    earthIm[from] -= turns * im;
    left -= turns;
  }
  if (to >= 0) {
    edgeRe[coreToEdge] -= turns * re;
    edgeIm[coreToEdge] -= turns * im;
    earthRe[to] += turns * re;
    earthIm[to] += turns * im;
    left += turns;
  }
  earthRe[core] += left * re;
  earthIm[core] += left * im;
}

/** Adds a source's Norton current, out of its positive end `a`. */
export function injectAmps(
  ampsRe: Float64Array,
  ampsIm: Float64Array,
  branch: Branch,
  re: number,
  im: number,
): void {
  if (branch.from === branch.to) return;
  if (branch.from >= 0) {
    ampsRe[branch.from] += re;
    ampsIm[branch.from] += im;
  }
  if (branch.to >= 0) {
    ampsRe[branch.to] -= re;
    ampsIm[branch.to] -= im;
  }
}
