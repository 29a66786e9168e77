import type {Complex} from '../parts/element.ts';
import {fixedBranch, type Base, type Branch, type Core} from './branch.ts';
import type {Elimination} from './elimination-order.ts';
import type {Stamps} from './factor.ts';

/** Stamps for a pattern, all zero. */
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

/** Stamps of one network kind for everything that no state changes. */
export function fixedStamps(
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
  const emfRe = new Float64Array(branches.length);
  const emfIm = new Float64Array(branches.length);
  for (const [index, branch] of branches.entries()) {
    const {rest, volts} = branch[kind];
    siemensRe[index] = rest.re;
    siemensIm[index] = rest.im;
    if (branch.kind !== fixedBranch) continue;
    stampBranch(stamps, branch, rest.re, rest.im);
    emfRe[index] = volts.re;
    emfIm[index] = volts.im;
    injectNorton(ampsRe, ampsIm, branch, rest, volts.re, volts.im);
  }
  for (const core of cores) {
    // direct current sees no core; its unknown then only needs some value of its own
    stamps.earthRe[core.position] += kind === 'ac' ? core.siemens.re : 1;
    stamps.earthIm[core.position] += kind === 'ac' ? core.siemens.im : 0;
  }
  return {stamps, siemensRe, siemensIm, emfRe, emfIm, ampsRe, ampsIm};
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

/** Adds the Norton current of a source, its volts times its admittance, out of its positive end `a`. */
export function injectNorton(
  ampsRe: Float64Array,
  ampsIm: Float64Array,
  branch: Branch,
  siemens: Complex,
  voltsRe: number,
  voltsIm: number,
): void {
  if (branch.from === branch.to || (voltsRe === 0 && voltsIm === 0)) return;
  const re = voltsRe * siemens.re - voltsIm * siemens.im;
  const im = voltsRe * siemens.im + voltsIm * siemens.re;
  if (branch.from >= 0) {
    ampsRe[branch.from] += re;
    ampsIm[branch.from] += im;
  }
  if (branch.to >= 0) {
    ampsRe[branch.to] -= re;
    ampsIm[branch.to] -= im;
  }
}
