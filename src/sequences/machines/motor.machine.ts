import {assign, setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {pscMotor} from '../../parts/psc-motor.ts';
import type {threePhaseMotor} from '../../parts/three-phase-motor.ts';
import type {MotorDrives, MotorOverload} from '../../parts/motor-overload.ts';
import {reachesAtMs, valueAt, type Course} from '../../plant/first-order.ts';
import type {Look} from '../look.ts';
import type {Observation} from '../operating-unit.ts';
import type {Part} from '../../content/unit.ts';
import {defineBehaviour} from '../part-behaviour.ts';

interface MotorContext {
  readonly drives: MotorDrives;
  readonly overload: MotorOverload;
  /** Share of synchronous speed, negative when it turns backwards. */
  readonly speed: number;
  readonly amps: number;
  readonly ambientDegF: number;
  /** Temperature of the overload; none until it has first been felt. */
  readonly heat: Course | undefined;
}
type MotorEvent =
  | {type: 'rotor.turned'; speed: number}
  | {type: 'rotor.stalled'}
  | {type: 'rotor.stopped'}
  | {type: 'current.changed'; amps: number; ambientDegF: number; atMs: number}
  | {type: 'time.reached'; atMs: number};

/**
 * The rotor stands, turns, or stalls and hums; which of them the torques decide. The overload in the common is a
 * disc that heats with the square of the current and snaps open, then closes again when it has cooled.
 */
export const motorMachine = setup({
  types: {
    context: {} as MotorContext,
    input: {} as {readonly drives: MotorDrives; readonly overload: MotorOverload},
    events: {} as MotorEvent,
  },
  actions: {
    standStill: assign({speed: 0}),
    takeSpeed: assign({speed: ({event}) => (event.type === 'rotor.turned' ? event.speed : 0)}),
    takeCurrent: assign(({context, event}) =>
      event.type === 'current.changed'
        ? heated(context, event.amps, event.ambientDegF, event.atMs)
        : {},
    ),
    keepHeat: assign(({context, event}) =>
      event.type === 'time.reached' && context.heat
        ? {heat: {...context.heat, start: valueAt(context.heat, event.atMs), startMs: event.atMs}}
        : {},
    ),
  },
}).createMachine({
  id: 'motor',
  context: ({input}) => ({...input, speed: 0, amps: 0, ambientDegF: 75, heat: undefined}),
  type: 'parallel',
  states: {
    rotor: {
      initial: 'standing',
      on: {
        'rotor.turned': {target: '.turning', actions: 'takeSpeed'},
        'rotor.stalled': {target: '.stalled', actions: 'standStill'},
        'rotor.stopped': {target: '.standing', actions: 'standStill'},
      },
      states: {standing: {}, turning: {}, stalled: {}},
    },
    overload: {
      initial: 'closed',
      on: {'current.changed': {actions: 'takeCurrent'}},
      states: {
        closed: {on: {'time.reached': {target: 'open', actions: 'keepHeat'}}},
        open: {on: {'time.reached': {target: 'closed', actions: 'keepHeat'}}},
      },
    },
  },
});

/** First-order heating to ambient + rise at rated·(I/rated)²; cooling is slower, for the shell must cool too. */
function heated(
  context: MotorContext,
  amps: number,
  ambientDegF: number,
  atMs: number,
): Partial<MotorContext> {
  const {ratedAmps, riseDegFAtRated, timeConstantMinutes, coolingTimeConstantMinutes} =
    context.overload;
  const start = context.heat ? valueAt(context.heat, atMs) : ambientDegF;
  const target = ambientDegF + riseDegFAtRated * (amps / ratedAmps) ** 2;
  const minutes = amps < 0.02 * ratedAmps ? coolingTimeConstantMinutes : timeConstantMinutes;
  return {amps, ambientDegF, heat: {startMs: atMs, start, target, tauMs: minutes * 60_000}};
}

const ambientOf = (drives: MotorDrives, look: Look): number =>
  look.plant(drives === 'blower' || drives === 'inducer' ? 'roomDegF' : 'outdoorDegF') ?? 75;

/** The contacts of a motor's overload, each with the amps that heat it. */
export function overloadContacts(part: Part): readonly string[] {
  return part.kind === 'three-phase-motor'
    ? [1, 2, 3].map((phase) => `${part.id}.overload${phase}`)
    : [`${part.id}.overload`];
}

/** Amps that an overload feels: of three phases, those of the lead that draws most. */
export function overloadAmps(part: Part, look: Pick<Look, 'amps'>): number {
  return Math.max(...overloadContacts(part).map((contact) => look.amps(contact)));
}

export const motorBehaviour = defineBehaviour<typeof motorMachine>({
  machine: motorMachine,
  input: (part) => {
    const {drives, overload} = dataOf<typeof pscMotor | typeof threePhaseMotor>(part);
    return {drives, overload};
  },
  feel: (snapshot, look, part) => {
    const {amps, heat, drives, ambientDegF, overload} = snapshot.context;
    const now = overloadAmps(part, look);
    const ambient = ambientOf(drives, look);
    // only a change worth half a percent is told, so a steady motor costs one comparison
    const changed =
      heat === undefined ||
      Math.abs(now - amps) > Math.max(0.005 * amps, 0.005 * overload.ratedAmps) ||
      Math.abs(ambient - ambientDegF) > 2;
    return changed
      ? {type: 'current.changed', amps: now, ambientDegF: ambient, atMs: look.atMs}
      : undefined;
  },
  dueAtMs: ({context, value}) => {
    const {heat, overload} = context;
    if (!heat) return undefined;
    return value.overload === 'closed'
      ? reachesAtMs(heat, overload.tripDegF, 'rise', heat.startMs)
      : reachesAtMs(heat, overload.resetDegF, 'fall', heat.startMs);
  },
  states: (snapshot, part) => {
    const closed = snapshot.value.overload === 'closed';
    return {
      [`${part.id}.motor`]: {speed: snapshot.context.speed},
      ...Object.fromEntries(overloadContacts(part).map((contact) => [contact, {closed}])),
    };
  },
  observe: (snapshot, _look, part) => [
    motorObservation(part, snapshot.context, snapshot.value.rotor),
  ],
});

function motorObservation(part: Part, {drives, speed}: MotorContext, rotor: string): Observation {
  const {id, title} = part;
  // a fan is seen through its guard; a compressor and a blower are heard
  const sense = drives === 'fan' ? 'seen' : 'heard';
  const say = (is: string, text: string): Observation => ({
    part: id,
    is,
    sense,
    text,
    behindCover: false,
  });
  if (rotor === 'stalled')
    return {...say('humming', `${title} hums and does not turn.`), sense: 'heard'};
  if (rotor === 'standing')
    return say('off', drives === 'fan' ? `${title} is not turning.` : `${title} is silent.`);
  // what a compressor does inside its shell is only heard
  if (speed < 0)
    return drives === 'compressor'
      ? say('noisy', `${title} is loud and rattles.`)
      : say('backwards', `${title} runs backwards.`);
  return speed < 0.75
    ? say('slow', `${title} turns, but slowly.`)
    : say('running', `${title} is running.`);
}

/**
 * Temperature of a motor's windings, °F: that of the overload, which lies in them and is heated as they are, by the
 * square of the current. None until it has first been felt.
 */
export function windingDegF(state: unknown, atMs: number): number | undefined {
  const {heat} = (state as {context: MotorContext}).context;
  return heat && valueAt(heat, atMs);
}

/** Speed of a motor's rotor from its machine's state, for the plant and the torque balance. */
export function speedOf(state: unknown): number {
  return (state as {context: MotorContext}).context.speed;
}
