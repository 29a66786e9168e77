import {airGapTorque} from '../circuits/motor-windings.ts';
import {motorAmpsBehind} from '../circuits/winding-source.ts';
import type {Complex, ElementState, ElementStates, ShaftLoad} from '../parts/element.ts';
import type {AnyMotor} from '../parts/motor-windings.ts';
import {valueAt, type Course} from '../plant/first-order.ts';
import type {Plant} from '../plant/plant.ts';
import {LiveNetwork, type WiredNetwork} from './live-network.ts';
import type {Look} from './look.ts';
import {jointAt, looseJoints, tapped, type LooseJoint} from './loose-joint.ts';
import {overloadAmps, speedOf, windingDegF} from './machines/motor.machine.ts';
import {balancedSpeed} from './motor-balance.ts';
import {after, sameStates, stateValue, type OperatedPart} from './operated-part.ts';
import type {MachineEvent} from './part-behaviour.ts';
import {plantDrive} from './plant-drive.ts';
import {unitFacts, type Situation, type UnitFacts} from './situation.ts';
import {settle, type Settleable} from './settle.ts';
import {speedFound} from './speed-search.ts';
import {copperAt, warmedBy} from './winding-heat.ts';
import type {Observation, Settling} from './operating-unit.ts';
import type {Part} from '../content/unit.ts';

/** A torque that misses the load's by less than this share of it is in balance. */
const balanceShare = 1e-4;
/** A standing motor that draws this share of its rated amps hums. */
const humShare = 0.2;
/** Below this share of its rated amps nothing drives a motor: it only coasts to rest. */
const idleShare = 0.005;

/**
 * The machines, the network and the plant of one unit at one moment of the clock: what settling works on. Holds no
 * history; {@link RunningUnit} moves the clock and the controls.
 */
export class Works implements Settleable, Look {
  /** The plant on its present course. */
  course: Plant;
  /** The simulated clock, whole milliseconds since the unit was put into operation. */
  atMs: number;
  changes = 0;
  watcher: (() => void) | undefined;
  /** Temperatures of coils and transformers, in the order of the facts' windings. */
  windingHeat: readonly Course[] | undefined;
  readonly facts: UnitFacts;
  private readonly parts: OperatedPart[];
  private behaviours: Situation['faults'];
  private loose: readonly LooseJoint[];
  private live: LiveNetwork;
  private states: ElementStates = {};
  /** The states gathered are behind the parts'. */
  private stale = true;

  constructor({unit, faults, parts, plant, timeMs, wired, joints, windingHeat}: Situation) {
    this.facts = unitFacts(unit);
    this.behaviours = faults.filter((fault) => Object.keys(fault.behaviour).length > 0);
    this.parts = [...parts];
    this.loose = joints ?? looseJoints(faults);
    this.course = plant;
    this.atMs = timeMs;
    this.live = new LiveNetwork(wired);
    this.windingHeat = windingHeat;
  }

  // ── what the machines look at ──

  get look(): Look {
    return this;
  }

  phasor(a: string, b: string): Complex {
    return this.network.ac.voltsBetween(a, b);
  }

  volts(a: string, b: string): number {
    const {re, im} = this.phasor(a, b);
    return Math.hypot(re, im);
  }

  voltsIn(id: string): number {
    // the element as faults left it: a joint in series has its own end, so its drop is not counted here
    const {elements, lifeless} = this.live.wired;
    const element = elements.get(id);
    if (!element || !('a' in element) || lifeless.has(id)) return 0;
    return this.volts(element.a, element.b);
  }

  amps(element: string): number {
    const {re, im} = this.network.ac.roughAmps(element);
    return Math.hypot(re, im);
  }

  dcVolts(a: string, b: string): number {
    return this.network.dc.voltsBetween(a, b).re;
  }

  plant(name: string): number | undefined {
    return this.course.value(name, this.atMs);
  }

  behaviour(part: string): Readonly<Record<string, string | number | boolean>> {
    let found = healthy;
    // two faults on one part act together
    for (const {behaviour} of this.behaviours)
      if (Object.hasOwn(behaviour, part)) found = {...found, ...behaviour[part]};
    return found;
  }

  /** The faults that changed behaviours and loosened joints are repaired. */
  healBehaviour(): void {
    this.behaviours = [];
    this.loose = [];
  }

  // ── parts and network ──

  operated(): readonly OperatedPart[] {
    return this.parts;
  }

  part(id: string): OperatedPart | undefined {
    const index = this.facts.indexOf.get(id);
    return index === undefined ? undefined : this.parts[index];
  }

  /** What a person sees and hears of a part. */
  observe(part: Part): readonly Observation[] {
    const operated = this.part(part.id);
    if (operated) return operated.behaviour.observe?.(operated.state, this, part) ?? [];
    const passive = this.facts.passive.find((each) => each.part === part);
    return passive?.observe?.(this) ?? [];
  }

  /** The network in the parts' present states. */
  get network(): LiveNetwork {
    this.gather();
    return this.live;
  }

  get elementStates(): ElementStates {
    this.gather();
    return this.states;
  }

  /** Goes on with another wiring: a wire lifted, a jumper put on. */
  rewire(wired: WiredNetwork): void {
    this.live = new LiveNetwork(wired);
    this.changed();
  }

  /** Puts a part in a new state; the network counts as changed only when its elements do. */
  replace(index: number, part: OperatedPart): void {
    const changed = !sameStates(this.parts[index]!.states, part.states);
    this.parts[index] = part;
    if (changed) this.changed();
  }

  send(index: number, event: MachineEvent): void {
    this.replace(index, after(this.parts[index]!, event));
  }

  /** Something that the network depends on has changed: sensors follow the plant, contacts move. */
  changed(): void {
    this.stale = true;
    this.changes++;
  }

  /** Joints that make and break, as they are now. */
  get joints(): readonly LooseJoint[] {
    return this.loose;
  }

  /** Somebody taps the cover of an enclosure. */
  tap(enclosure: string): void {
    this.loose = this.loose.map((joint) => tapped(joint, enclosure, this.atMs));
    this.changed();
  }

  /** Gathers the states of all parts, sensors at their present temperature included. */
  private gather(): void {
    if (!this.stale) return;
    this.stale = false;
    const states: Record<string, ElementState | undefined> = {};
    for (const part of this.parts) Object.assign(states, part.states);
    for (const {state} of this.facts.passive) {
      if (!state) continue;
      const [id, now] = state((name) => this.plant(name));
      states[id] = now;
    }
    this.warm(states);
    for (const {broken, elements} of this.loose)
      if (broken) for (const id of elements) states[id] = {...states[id], open: true};
    this.states = states;
    this.live.enter(states);
  }

  /** Winding ohms follow temperature; in steps, so that a motor need not find its speed anew for every degree. */
  private warm(states: Record<string, ElementState | undefined>): void {
    const {windings, motors, indexOf} = this.facts;
    const enter = (id: string, degF: number | undefined): void => {
      const copper = degF === undefined ? 1 : copperAt(degF);
      if (copper !== 1) states[id] = {...states[id], copper};
    };
    this.windingHeat?.forEach((course, index) =>
      enter(windings[index]!.element, valueAt(course, this.atMs)),
    );
    for (const {part} of motors)
      enter(`${part.id}.motor`, windingDegF(this.parts[indexOf.get(part.id)!]!.state, this.atMs));
  }

  /** Lets everything that is quick happen, then tells the plant what runs now. */
  settle(): Settling {
    if (this.loose.length > 0)
      this.loose = this.loose.map((joint) => jointAt(joint, this.atMs, (name) => this.plant(name)));
    // sensors have followed the plant since the last time
    this.changed();
    const settling = settle(this);
    this.course = this.course.drive(
      plantDrive(this.facts.feelers, (id) => this.part(id)!, this.network.ac),
      this.atMs,
    );
    const first = this.windingHeat === undefined;
    this.windingHeat = warmedBy(
      this.facts.windings,
      this.windingHeat,
      this.network.ac,
      (name) => this.plant(name),
      this.atMs,
    );
    // until the first time nobody knew how warm the windings are
    if (first) this.changed();
    return settling;
  }

  /**
   * Motors one after the other in the order of the unit, each against the network as the others leave it: through
   * the supply they hardly feel one another, so a second look settles what is left.
   */
  balanceMotors(): boolean {
    let any = false;
    for (const {part, ratedAmps} of this.facts.motors) {
      const index = this.facts.indexOf.get(part.id)!;
      const before = this.parts[index]!;
      const speed = this.speedNow(part.id, speedOf(before.state), ratedAmps);
      const rotor = (stateValue(before) as {rotor: string}).rotor;
      const hums = speed === 0 && overloadAmps(part, this) > humShare * ratedAmps;
      const turns = speed !== 0 ? 'turning' : hums ? 'stalled' : 'standing';
      if (turns === rotor && speed === speedOf(before.state)) continue;
      const events = {
        turning: {type: 'rotor.turned', speed},
        stalled: {type: 'rotor.stalled'},
        standing: {type: 'rotor.stopped'},
      };
      this.send(index, events[turns]);
      // the overload and the hum are judged at the amps of the new speed, so look again
      any ||= speed !== speedOf(before.state);
    }
    return any;
  }

  /** Where a motor's speed goes from here, its torque against its load; the same where they balance. */
  private speedNow(part: string, present: number, ratedAmps: number): number {
    if (this.behaviour(part).rotor === 'seized') return 0;
    const id = `${part}.motor`;
    const {plan, network} = this.live.wired;
    const {motor} = plan.motors.find((each) => each.motor.id === id)!;
    const {model} = motor;
    const amps = this.network.ac.roughMotorAmps(id);
    if (amps.reduce((sum, {re, im}) => sum + Math.hypot(re, im), 0) < idleShare * ratedAmps)
      return 0;
    const hertz = network.frequencyHz;
    const torque = airGapTorque(motor, amps, present, hertz);
    // the two commonest cases need no search: it cannot leave standstill, or it runs in balance already
    if (present === 0 && Math.abs(torque) <= model.breakawayNewtonMetres) return 0;
    const load = shaftLoad(motor, present === 0 ? torque : present);
    const asked = load.loadNewtonMetres * Math.abs(present) ** load.loadExponent;
    const missing = Math.abs(Math.sign(present) * torque - asked);
    if (present !== 0 && missing <= balanceShare * model.loadNewtonMetres) return present;
    // the rest of the network as a source behind its windings, so that trying a speed is a small system and no solve
    const source = this.network.behindMotor(id);
    return speedFound(this.live.wired, source, present, () => {
      const torqueAt = (speed: number): number =>
        airGapTorque(motor, motorAmpsBehind(source, speed), speed, hertz);
      const balanced = balancedSpeed(load, present, torqueAt);
      // three phases that have changed their order brake a running motor to rest and drive it the other way
      const starting = present !== 0 && balanced === 0 ? torqueAt(0) : 0;
      return Math.abs(starting) > model.breakawayNewtonMetres
        ? balancedSpeed(shaftLoad(motor, starting), 0, torqueAt)
        : balanced;
    });
  }
}

/** The load on a shaft that turns that way. */
function shaftLoad(motor: AnyMotor, direction: number): ShaftLoad {
  const {model} = motor;
  return motor.is === 'threePhaseMotor' && direction < 0
    ? {...model, loadNewtonMetres: model.loadNewtonMetres * motor.model.backwardLoadFraction}
    : model;
}

const healthy: Readonly<Record<string, string | number | boolean>> = {};
