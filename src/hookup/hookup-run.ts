import {circuitOfLoad} from './circuit-of-load.ts';
import {
  compileCondition,
  compileForCubes,
  findIn,
  inputsOf,
  type CubeQuestion,
} from './condition.ts';
import {hookedUnit} from './hooked-unit.ts';
import {IdleSwitches} from './idle-switches.ts';
import type {HookupInput, HookupTask, HookupWire} from './hookup-task.ts';
import {loadsOf, type Load} from './loads.ts';
import type {Rule} from './rule.ts';
import {atRest, WiredCircuit, type Held, type Memory, type Settled} from './wired-circuit.ts';

/** A rule made ready for running: its load, its condition over bit sets, the return rail of its circuit. */
export interface RuleToRun {
  readonly rule: Rule;
  readonly load: Load;
  readonly isOn: (closed: number) => boolean;
  /** The same, asked of many combinations at once. */
  readonly isOnIn: CubeQuestion;
  /** Inputs that its condition names. */
  readonly inputs: readonly HookupInput[];
  /** The rails of the circuit that the load lies in. */
  readonly rails: readonly [string, string];
}

/** A task with a student's wires, ready to be settled in any combination of its switches. */
export class HookupRun {
  readonly task: HookupTask;
  readonly wires: readonly HookupWire[];
  readonly circuit: WiredCircuit;
  readonly rules: readonly RuleToRun[];
  /** Every switch closed. */
  readonly every: number;
  private readonly order: readonly string[];
  private idle: IdleSwitches | undefined;

  constructor(task: HookupTask, wires: readonly HookupWire[]) {
    this.task = task;
    this.wires = wires;
    this.circuit = new WiredCircuit(hookedUnit(task, wires));
    this.order = task.inputs.map(({id}) => id);
    this.every = 2 ** this.order.length - 1;
    const loads = loadsOf(task.parts);
    this.rules = task.rules.map((rule) => {
      const named = inputsOf(rule.when);
      const load = loads.get(rule.load)!;
      return {
        rule,
        load,
        isOn: compileCondition(rule.when, this.order),
        isOnIn: compileForCubes(rule.when, this.order),
        inputs: task.inputs.filter(({id}) => named.includes(id)),
        rails: circuitOfLoad(task, load).rails,
      };
    });
  }

  bitOf(input: string): number {
    return 1 << this.order.indexOf(input);
  }

  maskOf(inputs: readonly string[]): number {
    return inputs.reduce((mask, id) => mask | this.bitOf(id), 0);
  }

  /** Ids of the inputs that are closed in a combination. */
  closedIn(mask: number): string[] {
    return this.order.filter((_, i) => mask & (1 << i));
  }

  /** The circuit settled in a combination. Good until the next one is settled. */
  settle(mask: number, before?: Memory, held?: Held): Settled {
    return this.circuit.settle(this.positions(mask), before, held);
  }

  positions(mask: number): Map<string, boolean> {
    return new Map(this.task.inputs.map(({contact}, i) => [contact, (mask & (1 << i)) !== 0]));
  }

  /** The same, and which switches it depended on. */
  settleWithCare(mask: number): Settled {
    this.idle ??= new IdleSwitches(
      this.circuit.plan,
      this.task.inputs.map(({contact}) => contact),
    );
    return this.circuit.settle(this.positions(mask), atRest, {}, this.idle);
  }

  /**
   * The combinations to look into for amps: everything closed, each load on with as few and with as many closed as its
   * rule allows, each switch alone open.
   */
  samples(): number[] {
    const samples = new Set([this.every]);
    for (const {isOnIn, inputs} of this.rules) {
      const bits = inputs.map(({id}) => this.bitOf(id));
      for (const first of ['open', 'closed'] as const) {
        const mask = findIn(isOnIn, {mask: 0, care: 0}, bits, first);
        if (mask !== undefined) samples.add(mask);
      }
    }
    for (const id of this.order) samples.add(this.every & ~this.bitOf(id));
    return [...samples];
  }
}

/** Magnitude of the volts between two placed terminals. */
export function voltsAcross(settled: Settled, a: string, b: string): number {
  const {re, im} = settled.solution.voltsBetween(a, b);
  return Math.hypot(re, im);
}

/** Share of its rated volts that a load has; a motor that does not turn and a coil that chatters have what they have. */
export const fractionOf = (settled: Settled, load: Load): number =>
  voltsAcross(settled, load.a, load.b) / load.ratedVolts;

/** Whether a load works: enough volts, its armature still, its rotor turning forward. */
export function works(settled: Settled, {load, rule}: RuleToRun): boolean {
  if (fractionOf(settled, load) < rule.least) return false;
  if (load.is === 'coil') return !settled.chattering.has(load.id);
  if (load.is === 'motor') return (settled.memory.turning.get(`${load.part.id}.motor`) ?? 0) > 0;
  return true;
}

/** Magnitude of the amps through a load. */
export const ampsThrough = (settled: Settled, id: string): number => {
  const {re, im} = settled.solution.amps(id);
  return Math.hypot(re, im);
};
