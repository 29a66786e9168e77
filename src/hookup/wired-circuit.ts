import {buildNetwork, unaltered} from '../circuits/build-network.ts';
import {motorTorque} from '../circuits/motor-impedance.ts';
import {compileNetwork, type Plan} from '../circuits/plan.ts';
import {solveAc, solveDc} from '../circuits/solve.ts';
import type {Solution} from '../circuits/solution.ts';
import type {Unit} from '../content/unit.ts';
import type {ElementState, ElementStates, Motor} from '../parts/element.ts';
import type {PhaseMonitorData} from '../parts/phase-monitor.ts';
import {phaseTrouble} from '../sequences/machines/phase-monitor.machine.ts';
import {
  armaturesOf,
  monitorsOf,
  poweredOf,
  type Armature,
  type Monitor,
  type Powered,
} from './working-parts.ts';
import {thresholdMargin, type IdleSwitches} from './idle-switches.ts';

/** What coils and motors were doing before: a lock-out relay keeps what it holds. */
export interface Memory {
  readonly sealed: ReadonlySet<string>;
  readonly turning: ReadonlyMap<string, number>;
}

/** Nothing has pulled in and nothing turns. */
export const atRest: Memory = {sealed: new Set(), turning: new Map()};

/** A circuit come to rest. `solution` is overwritten by the next settling of the same circuit. */
export interface Settled {
  readonly solution: Solution;
  readonly states: ElementStates;
  readonly memory: Memory;
  /** Coils that pull in and drop out without end. */
  readonly chattering: ReadonlySet<string>;
  /** Switches on which any step of the settling depended, as a bit set; all of them where nobody asked. */
  readonly care: number;
}

/** Contacts that a test holds open whatever works them (a blown fuse), and wires that are off. */
export interface Held {
  readonly open?: readonly string[];
}

const runningSpeed = 0.95;
/** A turning motor stalls below this share of rated volts (common practice, no source). */
const stallFraction = 0.6;
/** Below this share of rated volts a phase monitor is dark, as its machine has it. */
const monitorFraction = 0.45;
const roundLimit = 24;

/**
 * A unit as wired, settled for given positions of its switches without a clock: armatures by their volts, motors by
 * the torque that they have at standstill, electronics by their supply. Delays count as over. It knows nothing of
 * rules, and nothing of the shape of the wiring: everything comes from solved volts.
 */
export class WiredCircuit {
  readonly unit: Unit;
  readonly plan: Plan;
  private readonly armatures: readonly Armature[];
  private readonly powered: readonly Powered[];
  private readonly monitors: readonly Monitor[];
  private readonly motors: readonly Motor[];
  private solution: Solution | undefined;

  constructor(unit: Unit) {
    this.unit = unit;
    this.plan = compileNetwork(buildNetwork(unit, unaltered));
    this.armatures = armaturesOf(unit);
    this.powered = poweredOf(unit);
    this.monitors = monitorsOf(unit);
    this.motors = unit.parts.flatMap(({elements}) =>
      elements.filter((element) => element.is === 'motor'),
    );
  }

  /**
   * Settles from what has gone before.
   *
   * @param closed positions of the switches, by placed contact
   * @param idle asks of every step which switches it depended on
   */
  settle(
    closed: ReadonlyMap<string, boolean>,
    before: Memory = atRest,
    held: Held = {},
    idle?: IdleSwitches,
  ): Settled {
    const sealed = new Set(before.sealed);
    const turning = new Map(before.turning);
    const lit = new Set<Powered>(this.powered);
    const seen = new Map<string, number>();
    const changes: string[] = [];
    let chattering: ReadonlySet<string> = new Set();
    let care = idle ? 0 : -1;
    for (let round = 0; ; round++) {
      const states = this.statesOf(closed, sealed, turning, lit, held);
      this.solution = solveAc(this.plan, states, this.solution);
      if (idle) care |= idle.care(this.solution, states);
      const tight = {is: false};
      const changed =
        round === roundLimit ? [] : this.react(this.solution, sealed, turning, lit, tight);
      if (tight.is) care = -1;
      const settled = {
        solution: this.solution,
        states,
        memory: {sealed, turning},
        chattering,
        care,
      };
      if (changed.length === 0) return settled;
      changes.push(...changed);
      if (this.armatures.length + this.monitors.length === 0) continue;
      const key = [...sealed].sort().join() + '|' + [...turning].join() + '|' + lit.size;
      const first = seen.get(key);
      if (first !== undefined) {
        // the same state again: what has changed since then goes on changing for ever
        chattering = new Set(changes.slice(first));
        return {...settled, chattering};
      }
      seen.set(key, changes.length);
    }
  }

  /** The same states with one wire off, before anything has had time to react; a solution of its own. */
  frozen(states: ElementStates, wire: string): Solution {
    return solveAc(this.plan, {...states, [wire]: {open: true}});
  }

  /** The dead circuit as an ohmmeter meets it, with the switches in these positions and every coil let go. */
  dead(closed: ReadonlyMap<string, boolean>, held: Held = {}): Solution {
    return solveDc(
      this.plan,
      this.statesOf(closed, new Set(), new Map(), new Set(this.powered), held),
    );
  }

  /**
   * Lets armatures, electronics and motors act on solved volts; gives what has changed. `tight.is` is set where a
   * threshold was so near that strays might have decided.
   */
  private react(
    solution: Solution,
    sealed: Set<string>,
    turning: Map<string, number>,
    lit: Set<Powered>,
    tight: {is: boolean},
  ): string[] {
    const changed: string[] = [];
    const below = (value: number, threshold: number): boolean => {
      if (Math.abs(value - threshold) < thresholdMargin * threshold) tight.is = true;
      return value < threshold;
    };
    const volts = (a: string, b: string): number => {
      const {re, im} = solution.voltsBetween(a, b);
      return Math.hypot(re, im);
    };
    for (const {id, a, b, pullInVolts, dropOutVolts} of this.armatures) {
      const across = volts(a, b);
      if (sealed.has(id) ? below(across, dropOutVolts) : !below(across, pullInVolts)) {
        if (!sealed.delete(id)) sealed.add(id);
        changed.push(id);
      }
    }
    for (const {id, pairs, settings} of this.monitors) {
      const across = pairs.map(([a, b]) => solution.voltsBetween(a, b));
      const most = Math.max(...across.map(({re, im}) => Math.hypot(re, im)));
      // too little to feed it: dark, which its relay shows as it shows trouble
      const isRight = (by: PhaseMonitorData): boolean =>
        most >= monitorFraction * by.ratedVolts && phaseTrouble(across, by) === undefined;
      if (isRight(strained(settings, 1)) !== isRight(strained(settings, -1))) tight.is = true;
      if (isRight(settings) === sealed.has(id)) continue;
      if (!sealed.delete(id)) sealed.add(id);
      changed.push(id);
    }
    for (const each of this.powered) {
      if (below(volts(each.a, each.b), each.leastVolts) === lit.has(each)) {
        if (!lit.delete(each)) lit.add(each);
        changed.push(each.a);
      }
    }
    for (const motor of this.motors) {
      const speed = turning.get(motor.id) ?? 0;
      const across = volts(motor.main.a, motor.main.b);
      let next = speed;
      if (speed !== 0) {
        if (below(across, stallFraction * motor.model.ratedVolts)) next = 0;
      } else if (!below(across, 0.1 * motor.model.ratedVolts)) {
        const {main, start} = solution.windingAmps(motor.id);
        const torque = motorTorque(motor, main, start, 0, this.unit.frequencyHz);
        if (!below(Math.abs(torque), motor.model.breakawayNewtonMetres))
          next = Math.sign(torque) * runningSpeed;
      }
      if (next !== speed) {
        turning.set(motor.id, next);
        changed.push(motor.id);
      }
    }
    return changed;
  }

  private statesOf(
    closed: ReadonlyMap<string, boolean>,
    sealed: ReadonlySet<string>,
    turning: ReadonlyMap<string, number>,
    lit: ReadonlySet<Powered>,
    held: Held,
  ): ElementStates {
    const states: Record<string, ElementState> = {};
    for (const [contact, isClosed] of closed) states[contact] = {closed: isClosed};
    for (const {id, coil, contacts} of [...this.armatures, ...this.monitors.map(noCoil)]) {
      const isSealed = sealed.has(id);
      if (coil !== undefined) states[coil] = {sealed: isSealed};
      for (const contact of contacts)
        if (!closed.has(contact.id))
          states[contact.id] = {closed: isSealed === (contact.normally === 'open')};
    }
    for (const each of this.powered)
      for (const contact of each.contacts)
        if (!lit.has(each)) states[contact] = {closed: false};
        else if (!closed.has(contact)) states[contact] = {closed: contact.endsWith('.out')};
    for (const [motor, speed] of turning) states[motor] = {speed};
    for (const id of held.open ?? []) states[id] = {open: true};
    return states;
  }
}

const noCoil = ({id, contacts}: Monitor) => ({id, coil: undefined, contacts});

/** A monitor's settings a little wider or narrower: where that changes its mind, strays might too. */
const strained = (settings: PhaseMonitorData, by: 1 | -1): PhaseMonitorData => ({
  ...settings,
  imbalancePercent: settings.imbalancePercent - 0.3 * by,
  lowPercent: settings.lowPercent + 100 * thresholdMargin * by,
  highPercent: settings.highPercent - 100 * thresholdMargin * by,
});
