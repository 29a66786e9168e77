import {PairOhms} from '../circuits/pair-ohms.ts';
import type {Plan} from '../circuits/plan.ts';
import type {Solution} from '../circuits/solution.ts';
import {TransferWork, transferOhms} from '../circuits/transfer-ohms.ts';
import type {OperatingUnit} from '../sequences/operating-unit.ts';
import type {Pair} from './places.ts';

/** Open-circuit volts of the first point of every place against the second, and the ohms behind them. */
export interface Behind {
  readonly voltsRe: Float64Array;
  readonly voltsIm: Float64Array;
  readonly ohmsRe: Float64Array;
  readonly ohmsIm: Float64Array;
}

interface Found {
  readonly behind: Behind;
  hasVolts: boolean;
  hasOhms: boolean;
}

/**
 * Places for the leads on one unit after the other: what a meter meets there, worked out when it is first asked for.
 * For all pairs of the points every transfer impedance is found; for a list of pairs only what they need.
 */
export class Places {
  /** Index into the points of the first and second point of each place. */
  readonly first: Uint16Array;
  readonly second: Uint16Array;
  private readonly points: readonly string[];
  private readonly pairs: readonly Pair[] | undefined;
  private unit: OperatingUnit | undefined;
  private readonly found: Record<'ac' | 'dc', Found | undefined> = {
    ac: undefined,
    dc: undefined,
  };

  /** @param pairs absent = every pair of the points */
  constructor(points: readonly string[], pairs?: readonly Pair[]) {
    this.points = points;
    this.pairs = pairs;
    const count = pairs?.length ?? (points.length * (points.length - 1)) / 2;
    this.first = new Uint16Array(count);
    this.second = new Uint16Array(count);
    if (pairs) {
      const indexOf = new Map(points.map((point, index) => [point, index]));
      pairs.forEach(([red, black], place) => {
        this.first[place] = indexOf.get(red)!;
        this.second[place] = indexOf.get(black)!;
      });
      return;
    }
    let place = 0;
    for (let p = 0; p < points.length; p += 1)
      for (let q = p + 1; q < points.length; q += 1) {
        this.first[place] = p;
        this.second[place] = q;
        place += 1;
      }
  }

  /** Goes on to a unit as it stands. */
  at(unit: OperatingUnit): void {
    this.unit = unit;
    for (const each of [this.found.ac, this.found.dc])
      if (each) each.hasVolts = each.hasOhms = false;
  }

  /**
   * What the meter meets of line-frequency volts; overwritten for the next unit.
   *
   * @param withOhms false = the volts are enough, and the ohms may be those of another unit
   */
  readonly ac = (withOhms = true): Behind => this.behind('ac', withOhms);

  /** What it meets of direct volts and ohms; overwritten for the next unit. */
  readonly dc = (): Behind => this.behind('dc', true);

  private behind(kind: 'ac' | 'dc', withOhms: boolean): Behind {
    const found = (this.found[kind] ??= {
      behind: emptyBehind(this.first.length),
      hasVolts: false,
      hasOhms: false,
    });
    const {behind} = found;
    if (found.hasVolts && (found.hasOhms || !withOhms)) return behind;
    const solution = this.unit!.solution(kind);
    const {plan} = solution;
    const positions = positionsIn(plan, this.points);
    if (!found.hasVolts) this.lookAtVolts(solution, positions, behind);
    found.hasVolts = true;
    if (!withOhms) return behind;
    if (this.pairs)
      this.pairOhms(plan, this.pairs, positions).find(solution, behind.ohmsRe, behind.ohmsIm);
    else this.allOhms(solution, positions, behind);
    found.hasOhms = true;
    return behind;
  }

  private lookAtVolts(solution: Solution, positions: Int32Array, behind: Behind): void {
    const {first, second} = this;
    const {voltsRe, voltsIm} = behind;
    const {voltsRe: nodeRe, voltsIm: nodeIm} = solution;
    for (let place = 0; place < first.length; place += 1) {
      const p = positions[first[place]];
      const q = positions[second[place]];
      voltsRe[place] = (p < 0 ? 0 : nodeRe[p]) - (q < 0 ? 0 : nodeRe[q]);
      voltsIm[place] = (p < 0 ? 0 : nodeIm[p]) - (q < 0 ? 0 : nodeIm[q]);
    }
  }

  private pairOhms(plan: Plan, pairs: readonly Pair[], positions: Int32Array): PairOhms {
    let lists = known.get(plan);
    if (!lists) known.set(plan, (lists = new WeakMap()));
    let list = lists.get(pairs);
    if (!list) {
      const of = (ends: Uint16Array): Int32Array => Int32Array.from(ends, (end) => positions[end]);
      list = new PairOhms(plan, of(this.first), of(this.second));
      lists.set(pairs, list);
    }
    return list;
  }

  private allOhms(solution: Solution, positions: Int32Array, {ohmsRe, ohmsIm}: Behind): void {
    const {first, second} = this;
    const {count, re, im} = transferOhms(solution, positions, transferWork);
    for (let place = 0; place < first.length; place += 1) {
      const p = first[place];
      const q = second[place];
      const pp = p * count;
      const qq = q * count;
      ohmsRe[place] = re[pp + p] + re[qq + q] - re[pp + q] - re[qq + p];
      ohmsIm[place] = im[pp + p] + im[qq + q] - im[pp + q] - im[qq + p];
    }
  }
}

/** Lists of pairs looked through for a network, by the list. */
const known = new WeakMap<Plan, WeakMap<readonly Pair[], PairOhms>>();
const positionsOf = new WeakMap<Plan, WeakMap<readonly string[], Int32Array>>();

/** Scratch for one unit's transfer ohms, kept from suspect to suspect. */
const transferWork = new TransferWork();

/** Elimination position of each point; a point that the network does not have counts as earth. */
function positionsIn(plan: Plan, points: readonly string[]): Int32Array {
  let lists = positionsOf.get(plan);
  if (!lists) positionsOf.set(plan, (lists = new WeakMap()));
  let positions = lists.get(points);
  if (!positions) {
    positions = Int32Array.from(points, (point) => plan.positionOf.get(point) ?? -1);
    lists.set(points, positions);
  }
  return positions;
}

function emptyBehind(places: number): Behind {
  return {
    voltsRe: new Float64Array(places),
    voltsIm: new Float64Array(places),
    ohmsRe: new Float64Array(places),
    ohmsIm: new Float64Array(places),
  };
}
