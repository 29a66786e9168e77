import {contactBranch} from '../circuits/branch.ts';
import type {Plan} from '../circuits/plan.ts';
import type {Solution} from '../circuits/solution.ts';
import type {ElementStates} from '../parts/element.ts';

/**
 * An open switch without volts across it may close, and a closed one without amps through it may open, and the
 * solution stands: it solves the changed network too, and a linear network has one solution. That holds for any number
 * of such switches at once. Volts and amps below these are strays; what so many strays could add up to is kept away
 * from every threshold by {@link thresholdMargin}.
 */
const idleVolts = 0.02;
const idleAmps = 1e-4;
/** Spread below which a piece without a source counts as being at one potential. */
const spreadVolts = 0.05;

/** Share of rated volts within which a threshold is too near to trust that strays do not matter. */
export const thresholdMargin = 0.02;

/** Stray capacitance and insulation are named so; nothing flows in them that matters. */
const strayIds = /^(stray|insulation):/;

/** Finds the idle ones among the switches of a task, for one plan. */
export class IdleSwitches {
  private readonly plan: Plan;
  /** Branch of each switch, in the order of the inputs. */
  private readonly switches: readonly number[];
  private readonly piece: Int32Array;

  constructor(plan: Plan, contacts: readonly string[]) {
    this.plan = plan;
    this.switches = contacts.map((id) => plan.branchOf.get(id)!);
    this.piece = new Int32Array(plan.elimination.size + 1);
  }

  /** Bit set of the switches that this solution depends on; bit i for the contact at i. */
  care(solution: Solution, states: ElementStates): number {
    const {plan, switches} = this;
    const level = this.potentials(solution, states);
    let care = 0;
    switches.forEach((index, i) => {
      const {id, from, to} = plan.branches[index];
      const busy = isClosed(id, states)
        ? magnitude(solution.amps(id)) > idleAmps
        : distance(level, from, to) > idleVolts;
      if (busy) care |= 1 << i;
    });
    return care;
  }

  /**
   * Potentials of every node. A piece of the board that is cut off from all sources and from earth may stand at any
   * potential, since only strays hold it anywhere: it is given that of a neighbour across an open switch, so that of a
   * string of open switches one alone has volts across it.
   */
  private potentials(
    solution: Solution,
    states: ElementStates,
  ): {re: Float64Array; im: Float64Array} {
    const {plan, piece} = this;
    const size = plan.elimination.size;
    const re = new Float64Array(size + 1);
    const im = new Float64Array(size + 1);
    re.set(solution.voltsRe, 1);
    im.set(solution.voltsIm, 1);
    for (let node = 0; node <= size; node++) piece[node] = node;
    const find = (node: number): number => {
      let at = node;
      while (piece[at] !== at) {
        piece[at] = piece[piece[at]];
        at = piece[at];
      }
      return at;
    };
    for (const {id, from, to, kind, closedAtRest} of plan.branches) {
      if (strayIds.test(id)) continue;
      if (kind === contactBranch && !(states[id]?.closed ?? closedAtRest)) continue;
      piece[find(from + 1)] = find(to + 1);
    }
    const held = new Uint8Array(size + 1);
    held[find(0)] = 1;
    for (let node = 0; node <= size; node++) {
      const top = find(node);
      if (Math.hypot(re[node] - re[top], im[node] - im[top]) > spreadVolts) held[top] = 1;
    }
    const sources = plan.network.elements.filter(({is}) => is === 'acSource');
    for (const source of sources) {
      const index = plan.branchOf.get(source.id);
      if (index !== undefined) held[find(plan.branches[index].from + 1)] = 1;
    }
    // outwards from what is held, across open switches
    for (let more = true; more;) {
      more = false;
      for (const index of this.switches) {
        const {id, from, to} = plan.branches[index];
        if (isClosed(id, states)) continue;
        const [p, q] = [find(from + 1), find(to + 1)];
        if (held[p] === held[q]) continue;
        const [near, far] = held[p] ? [from + 1, q] : [to + 1, p];
        const [levelRe, levelIm] = [re[near], im[near]];
        for (let node = 0; node <= size; node++)
          if (find(node) === far) {
            re[node] = levelRe;
            im[node] = levelIm;
          }
        held[far] = 1;
        more = true;
      }
    }
    return {re, im};
  }
}

const isClosed = (id: string, states: ElementStates): boolean => states[id]?.closed === true;

const magnitude = ({re, im}: {re: number; im: number}): number => Math.hypot(re, im);

const distance = (
  {re, im}: {re: Float64Array; im: Float64Array},
  from: number,
  to: number,
): number => Math.hypot(re[from + 1] - re[to + 1], im[from + 1] - im[to + 1]);
