import {buildNetwork, type Alterations} from '../circuits/build-network.ts';
import type {Network} from '../circuits/network.ts';
import {compileNetwork, type Plan} from '../circuits/plan.ts';
import {solveAc, solveDc} from '../circuits/solve.ts';
import {Solution} from '../circuits/solution.ts';
import {windingSource, type WindingSource} from '../circuits/winding-source.ts';
import type {Unit} from '../content/unit.ts';
import type {Element, ElementStates} from '../parts/element.ts';

/** A unit's network as altered, compiled once; shared by every copy of a unit that has the same alterations. */
export interface WiredNetwork {
  readonly network: Network;
  readonly plan: Plan;
  readonly elements: ReadonlyMap<string, Element>;
  /** Elements that are broken or whose turns are shorted: nothing acts in them whatever stands across them. */
  readonly lifeless: ReadonlySet<string>;
  readonly held: ReadonlyMap<string, 'open' | 'closed'>;
  /** Overwritten by whoever looks behind a motor: what is found there is read off at once. */
  readonly spare: Solution;
}

export function wire(unit: Unit, alterations: Alterations): WiredNetwork {
  const network = buildNetwork(unit, alterations);
  const lifeless = new Set<string>();
  const held = new Map<string, 'open' | 'closed'>();
  for (const change of alterations.changes) {
    if (change.open === true || change.besideOhms !== undefined) lifeless.add(change.element);
    if (change.held !== undefined) held.set(change.element, change.held);
  }
  const plan = compileNetwork(network);
  return {
    network,
    plan,
    elements: new Map(network.elements.map((element) => [element.id, element])),
    lifeless,
    held,
    spare: new Solution(plan),
  };
}

/** A wired network in one state, solved when somebody asks and not before. */
export class LiveNetwork {
  readonly wired: WiredNetwork;
  private states: ElementStates = {};
  private acSolution: Solution | undefined;
  private dcSolution: Solution | undefined;
  private acIsCurrent = false;
  private dcIsCurrent = false;

  constructor(wired: WiredNetwork) {
    this.wired = wired;
  }

  /** Takes new states; the next question solves anew. */
  enter(states: ElementStates): void {
    this.states = states;
    this.acIsCurrent = false;
    this.dcIsCurrent = false;
  }

  get ac(): Solution {
    if (!this.acIsCurrent) {
      this.acSolution = solveAc(this.wired.plan, this.states, this.acSolution);
      this.acIsCurrent = true;
    }
    return this.acSolution!;
  }

  get dc(): Solution {
    if (!this.dcIsCurrent) {
      this.dcSolution = solveDc(this.wired.plan, this.states, this.dcSolution);
      this.dcIsCurrent = true;
    }
    return this.dcSolution!;
  }

  /** Everything outside one motor, for finding the speed at which its torque meets its load. */
  behindMotor(motor: string): WindingSource {
    // a solution apart to overwrite: the present one stays good
    return windingSource(this.wired.plan, this.states, motor, this.wired.spare);
  }
}
