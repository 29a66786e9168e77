import type {Across, ChargingPath} from '../circuits/capacitor-charge.ts';
import type {Network} from '../circuits/network.ts';
import type {Solution} from '../circuits/solution.ts';
import type {Unit} from '../content/unit.ts';
import type {Fault} from '../faults/fault.ts';
import type {Complex, ElementStates} from '../parts/element.ts';
import {plantControls, plantOf} from '../plant/plant-of.ts';
import {setControl} from './control-value.ts';
import {nextDue} from './next-due.ts';
import {wire, type WiredNetwork} from './live-network.ts';
import {startPart} from './operated-part.ts';
import type {Observation, OperatingUnit, Settling, Thevenin} from './operating-unit.ts';
import {alterationsOf} from '../faults/alterations.ts';
import type {Situation} from './situation.ts';
import {StoredCharge, chargeOf, handSeconds, type Discharging} from './stored-charge.ts';
import {Works} from './works.ts';
import {WrongTargetError} from './wrong-target-error.ts';

/** More things due at one millisecond than any unit has parts are a mistake in a machine. */
const mostAtOneMs = 1000;

/** Leads with more ohms between them than this change nothing in a circuit but the charge of its capacitors. */
const burdenOhms = 1e4;

/** Values that only a test or a sequence of operation sets, such as a coil's temperature; every sane number will do. */
const anyNumber = {type: 'number', min: -10_000, max: 10_000} as const;

/** A unit in operation: see {@link OperatingUnit} for what each member does. */
export class RunningUnit implements OperatingUnit {
  readonly unit: Unit;
  private present: readonly Fault[];
  private readonly works: Works;
  private readonly controls: Map<string, string | number>;
  private lifted: readonly string[];
  private jumpers: readonly (readonly [string, string])[];
  private last: Settling;
  private leads: Across | undefined;
  private charge: StoredCharge;

  /** Goes on from a situation; one that has never settled settles now. */
  constructor(situation: Situation) {
    this.unit = situation.unit;
    this.present = situation.faults;
    this.controls = new Map(situation.controls);
    this.lifted = situation.lifted;
    this.jumpers = situation.jumpers;
    this.works = new Works(situation);
    this.leads = situation.meterLeads;
    this.charge = situation.charge ?? StoredCharge.none;
    this.last = situation.settling ?? this.works.settle();
    if (!situation.settling) this.chargeSwitched(0);
  }

  get faults(): readonly Fault[] {
    return this.present;
  }

  get timeMs(): number {
    return this.works.atMs;
  }

  get settling(): Settling {
    return this.last;
  }

  get states(): ElementStates {
    return this.works.elementStates;
  }

  get network(): Network {
    return this.works.network.wired.network;
  }

  // ── what a person does ──

  set(target: string, value: string | number): void {
    const [owner, name] = split(target);
    if (name === 'tap' && this.controls.has(target)) {
      this.works.tap(owner);
    } else if (owner === 'plant') {
      if (!this.works.course.names.includes(name)) throw this.wrongTarget(target);
      const control = plantControls(this.unit.plant.kind).find(({id}) => id === name);
      const now = Number(setControl(target, control ?? anyNumber, value));
      this.works.course = this.works.course.set(name, now, this.timeMs);
    } else {
      const part = this.unit.parts.find(({id}) => id === owner);
      const control = part?.controls.find(({id}) => id === name);
      if (!part || !control) throw this.wrongTarget(target);
      const now = setControl(target, control, value);
      // a button springs back, so there is no position to keep
      if (control.type !== 'press') this.controls.set(target, now);
      const operated = this.works.part(owner);
      const event = operated?.behaviour.handle?.(operated.state, name, now, this.works, part);
      if (event) this.works.send(this.works.facts.indexOf.get(owner)!, event);
    }
    this.last = this.works.settle();
    this.chargeSwitched(handSeconds);
  }

  valueOf(target: string): string | number {
    const [owner, name] = split(target);
    if (owner === 'plant') {
      const value = this.works.plant(name);
      if (value === undefined) throw this.wrongTarget(target);
      return value;
    }
    const value = this.controls.get(target);
    if (value === undefined) throw this.wrongTarget(target);
    const operated = this.works.part(owner);
    return operated?.behaviour.positionOf?.(operated.state, name) ?? value;
  }

  lift(end: string): void {
    const ends = this.unit.wires.flatMap(({id}) => [`${id}.from`, `${id}.to`]);
    if (!ends.includes(end)) throw new WrongTargetError('wire end', end, ends);
    if (!this.lifted.includes(end)) this.rewire([...this.lifted, end], this.jumpers);
  }

  land(end: string): void {
    if (!this.lifted.includes(end)) throw new WrongTargetError('lifted wire end', end, this.lifted);
    // a jumper clipped to the loose end comes off with it
    const jumpers = this.jumpers.filter((jumper) => !jumper.includes(end));
    // and so does a meter's lead
    if (this.leads?.a === end || this.leads?.b === end) this.leads = undefined;
    this.rewire(
      this.lifted.filter((each) => each !== end),
      jumpers,
    );
  }

  jumper(a: string, b: string): void {
    const points = this.probePoints();
    for (const point of [a, b])
      if (!points.includes(point)) throw new WrongTargetError('terminal', point, points);
    if (a === b) throw new WrongTargetError(`second terminal for a jumper from ${a}`, b, []);
    if (!this.jumpers.some((jumper) => joins(jumper, a, b)))
      this.rewire(this.lifted, [...this.jumpers, [a, b]]);
  }

  removeJumper(a: string, b: string): void {
    if (!this.jumpers.some((jumper) => joins(jumper, a, b)))
      throw new WrongTargetError(
        'jumper',
        `${a}~${b}`,
        this.jumpers.map((jumper) => jumper.join('~')),
      );
    this.rewire(
      this.lifted,
      this.jumpers.filter((jumper) => !joins(jumper, a, b)),
    );
  }

  connectMeter(a: string, b: string, ohms: number): void {
    const before = this.leads;
    if (before?.a === a && before.b === b && before.ohms === ohms) return;
    const {plan} = this.works.network.wired;
    for (const point of [a, b])
      if (!plan.positionOf.has(point))
        throw new WrongTargetError('point for a lead', point, this.probePoints());
    this.leads = a === b ? undefined : {a, b, ohms};
    if (isBurden(before) || isBurden(this.leads)) this.rewire(this.lifted, this.jumpers);
  }

  disconnectMeter(): void {
    const before = this.leads;
    this.leads = undefined;
    if (isBurden(before)) this.rewire(this.lifted, this.jumpers);
  }

  get meterLeads(): Across | undefined {
    return this.leads;
  }

  bleed(a: string, b: string, ohms: number, seconds: number): void {
    this.charge = this.charge.after(seconds, this.discharging, {a, b, ohms});
  }

  watch(watcher: (() => void) | undefined): void {
    this.works.watcher = watcher;
  }

  advance(milliseconds: number): void {
    if (!Number.isInteger(milliseconds) || milliseconds < 0)
      throw new RangeError(`Time passes in whole milliseconds, not ${milliseconds}.`);
    const {works} = this;
    const untilMs = works.atMs + milliseconds;
    let atThisMs = 0;
    // one thing at a time, in order: what one changes may bring the next nearer or put it off
    for (;;) {
      const due = nextDue(works);
      if (!due || due.atMs > untilMs) break;
      atThisMs = due.atMs === works.atMs ? atThisMs + 1 : 0;
      if (atThisMs > mostAtOneMs)
        throw new Error(
          `Time stands still at ${due.atMs} ms: a machine does not move its due time on.`,
        );
      this.passTo(Math.max(works.atMs, due.atMs));
      due.fire();
      this.last = works.settle();
      this.chargeSwitched(0);
    }
    this.passTo(untilMs);
    // machines move at events alone; but sensors follow the plant, so readings must see the present
    works.changed();
  }

  repair(): void {
    const held = Object.assign({}, ...this.present.map((fault) => fault.plant)) as Record<
      string,
      number
    >;
    // what a fault held goes back to what the unit started with; what runs drove stays where it is
    const start = plantOf(this.unit.plant.kind, this.unit.plant.start);
    const sound = Object.fromEntries(
      Object.keys(held).map((name) => [name, start.value(name, 0) ?? held[name]!]),
    );
    this.works.course = this.works.course.release(sound, this.timeMs);
    this.present = [];
    this.works.healBehaviour();
    this.works.operated().forEach((operated, index) => {
      if (operated.behaviour.burnt?.(operated.state))
        this.works.replace(index, startPart(operated.part)!);
    });
    this.rewire(this.lifted, this.jumpers);
  }

  // ── what a meter or an eye finds ──

  acVolts(a: string, b: string): Complex {
    return this.works.network.ac.voltsBetween(a, b);
  }

  dcVolts(a: string, b: string): number {
    return this.works.dcVolts(a, b);
  }

  thevenin(a: string, b: string, network: 'ac' | 'dc'): Thevenin {
    return this.works.network[network].thevenin(a, b);
  }

  chargeVolts(a: string, b: string, inputOhms: number): number {
    return this.charge.voltsBetween(a, b, inputOhms, this.discharging);
  }

  chargingPath(a: string, b: string): ChargingPath {
    return chargeOf(this.discharging).chargingPath(a, b);
  }

  solution(network: 'ac' | 'dc'): Solution {
    return this.works.network[network];
  }

  amps(element: string): Complex {
    return this.works.network.ac.amps(element);
  }

  isClosed(contact: string): boolean {
    const {held} = this.works.network.wired;
    const {contacts} = this.works.facts;
    const drawn = contacts.get(contact);
    if (!drawn) throw new WrongTargetError('contact', contact, [...contacts.keys()]);
    const kept = held.get(contact);
    if (kept !== undefined) return kept === 'closed';
    return this.states[contact]?.closed ?? drawn === 'closed';
  }

  probePoints(): readonly string[] {
    return [
      ...this.unit.parts.flatMap((part) =>
        part.terminals.map((terminal) => `${part.id}.${terminal}`),
      ),
      ...this.lifted,
    ];
  }

  observations(): readonly Observation[] {
    return this.unit.parts.flatMap((part) => {
      const seen = this.works.observe(part);
      // on an open board nothing is hidden
      return this.works.facts.covered.has(part.enclosure)
        ? seen
        : seen.map((each) => (each.behindCover ? {...each, behindCover: false} : each));
    });
  }

  plantValues(): Readonly<Record<string, number>> {
    const {course} = this.works;
    return Object.fromEntries(course.names.map((name) => [name, course.value(name, this.timeMs)!]));
  }

  fork(): OperatingUnit {
    // everything handed over is immutable, so a copy costs a few references; it solves when first asked
    return new RunningUnit({
      unit: this.unit,
      faults: this.present,
      timeMs: this.timeMs,
      parts: this.works.operated(),
      plant: this.works.course,
      controls: this.controls,
      lifted: this.lifted,
      jumpers: this.jumpers,
      wired: this.works.network.wired,
      joints: this.works.joints,
      settling: this.last,
      meterLeads: this.leads,
      charge: this.charge,
      windingHeat: this.works.windingHeat,
    });
  }

  private rewire(lifted: readonly string[], jumpers: readonly (readonly [string, string])[]): void {
    const altered = alterationsOf(this.present, lifted, jumpers);
    const burden = isBurden(this.leads) ? [{id: 'meter:leads', ...this.leads}] : [];
    const wired: WiredNetwork = wire(this.unit, {...altered, paths: [...altered.paths, ...burden]});
    this.lifted = lifted;
    this.jumpers = jumpers;
    this.works.rewire(wired);
    this.last = this.works.settle();
    this.chargeSwitched(handSeconds);
  }

  /** The clock moves on with everything as it stands; meanwhile charge runs off. */
  private passTo(atMs: number): void {
    const seconds = (atMs - this.works.atMs) / 1000;
    this.charge = this.charge.after(seconds, this.discharging, this.leads);
    this.works.atMs = atMs;
  }

  /** What has settled may have switched capacitors on or off; hands take their time to the next thing. */
  private chargeSwitched(seconds: number): void {
    const {network} = this.works;
    this.charge = this.charge
      .switched(network.wired.network, network.ac)
      .after(seconds, this.discharging, this.leads);
  }

  private get discharging(): Discharging {
    return {network: this.network, dc: () => this.works.network.dc};
  }

  private wrongTarget(target: string): WrongTargetError {
    const names = [
      ...this.controls.keys(),
      ...this.works.course.names.map((name) => `plant.${name}`),
    ];
    return new WrongTargetError('control or plant value', target, names);
  }
}

/** `TS.mode` into part and control. */
function split(target: string): [owner: string, name: string] {
  const dot = target.indexOf('.');
  return dot < 0 ? [target, ''] : [target.slice(0, dot), target.slice(dot + 1)];
}

function isBurden(leads: Across | undefined): leads is Across {
  return leads !== undefined && leads.ohms < burdenOhms;
}

function joins([p, q]: readonly [string, string], a: string, b: string): boolean {
  return (p === a && q === b) || (p === b && q === a);
}
