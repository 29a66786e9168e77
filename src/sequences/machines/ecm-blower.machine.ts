import {assign, setup} from 'xstate';
import {ecmStandbyWatts} from '../../parts/ecm-standby.ts';
import type {ecmBlower, EcmBlowerData} from '../../parts/ecm-blower.ts';
import {dataOf} from '../../parts/part-kind.ts';
import type {Look} from '../look.ts';
import {defineBehaviour} from '../part-behaviour.ts';

interface BlowerContext {
  readonly settings: EcmBlowerData;
  /** Share of full torque asked for by the taps. */
  readonly torque: number;
  /** Share of full speed. */
  readonly speed: number;
  readonly dueAtMs: number | undefined;
}
type BlowerEvent =
  | {type: 'power.came'}
  | {type: 'power.went'}
  | {type: 'call.came'; torque: number; speed: number; atMs: number}
  | {type: 'call.went'}
  | {type: 'call.changed'; torque: number; speed: number}
  | {type: 'time.reached'; atMs: number};

/** Share of rated line volts below which the module sleeps (common practice, no source). */
const leastLineFraction = 0.65;
/** Volts at a tap that count as a call, and that no longer do (common practice, no source). */
const callVolts = 14;
const noCallVolts = 9;

/**
 * The module sleeps without line volts; with them it waits for 24 V on a tap, runs the wheel up softly and then holds
 * the torque of that tap whatever the duct does, so its speed rises when air is held back.
 */
export const ecmBlowerMachine = setup({
  types: {context: {} as BlowerContext, input: {} as EcmBlowerData, events: {} as BlowerEvent},
  guards: {startsSoftly: ({context}) => context.settings.softStartSeconds > 0},
  actions: {
    stand: assign({torque: 0, speed: 0, dueAtMs: undefined}),
    take: assign(({event}) =>
      'torque' in event ? {torque: event.torque, speed: event.speed} : {},
    ),
  },
}).createMachine({
  id: 'blower',
  context: ({input}) => ({settings: input, torque: 0, speed: 0, dueAtMs: undefined}),
  initial: 'asleep',
  on: {'power.went': '.asleep'},
  states: {
    asleep: {entry: 'stand', on: {'power.came': 'standing'}},
    standing: {
      entry: 'stand',
      on: {
        'call.came': {
          target: 'starting',
          actions: assign({
            dueAtMs: ({context, event}) =>
              event.atMs + Math.round(context.settings.softStartSeconds * 1000),
          }),
        },
      },
    },
    starting: {on: {'call.went': 'standing', 'time.reached': 'turning'}},
    turning: {
      entry: assign({dueAtMs: undefined}),
      on: {'call.went': 'standing', 'call.changed': {actions: 'take'}},
    },
  },
});

/** The strongest tap that has its 24 volts; a tap in use keeps it a little lower down. */
function torqueAsked({settings, torque}: BlowerContext, look: Look, part: string): number {
  return Math.max(
    0,
    ...settings.taps
      .filter(({terminal, torquePercent}) => {
        const held = torque > 0 && torquePercent / 100 <= torque;
        return look.voltsIn(`${part}.tap-${terminal}`) >= (held ? noCallVolts : callVolts);
      })
      .map(({torquePercent}) => torquePercent / 100),
  );
}

/**
 * Speed of a wheel at a torque: the torque of a blower wheel grows with the square of its speed and with the air that
 * it moves (fan laws; a third is left with the air shut off, common practice). In hundredths, so that a filter that
 * clogs slowly is not told at every look.
 */
function wheelSpeed(torque: number, look: Look): number {
  const air = Math.min(1, Math.max(0, look.plant('indoorAirflowFraction') ?? 1));
  return Math.round(Math.min(1.15, Math.sqrt(torque / (0.35 + 0.65 * air))) * 100) / 100;
}

export const ecmBlowerBehaviour = defineBehaviour<typeof ecmBlowerMachine>({
  machine: ecmBlowerMachine,
  input: (part) => dataOf<typeof ecmBlower>(part),
  sense: (snapshot, look, part) => {
    const {value, context} = snapshot;
    const {module} = look.behaviour(part.id);
    const line = look.voltsIn(`${part.id}.line`);
    const powered = module !== 'dead' && line >= leastLineFraction * context.settings.volts;
    if (!powered) return value === 'asleep' ? undefined : {type: 'power.went'};
    if (value === 'asleep') return {type: 'power.came'};
    const torque = torqueAsked(context, look, part.id);
    if (torque === 0) return value === 'standing' ? undefined : {type: 'call.went'};
    const speed = module === 'rocks' ? 0 : wheelSpeed(torque, look);
    if (value === 'standing') return {type: 'call.came', torque, speed, atMs: look.atMs};
    return value === 'turning' && (torque !== context.torque || speed !== context.speed)
      ? {type: 'call.changed', torque, speed}
      : undefined;
  },
  dueAtMs: ({context}) => context.dueAtMs,
  states: ({context}, {id}) => {
    const {watts, volts} = context.settings;
    // torque times speed is power; a module that rocks its rotor takes a tenth
    const share = context.speed > 0 ? context.torque * context.speed : context.torque * 0.1;
    return {[`${id}.line`]: {ohms: volts ** 2 / (ecmStandbyWatts + watts * share)}};
  },
  observe: ({value, context}, _look, {id, title}) => {
    const say = (is: string, text: string) =>
      [{part: id, is, sense: 'heard' as const, text, behindCover: false}] as const;
    if (value === 'turning' && context.speed > 0) return say('running', `${title} is running.`);
    return value === 'turning'
      ? say('humming', `${title} twitches to and fro and does not start.`)
      : say('off', `${title} is silent.`);
  },
});

/** Speed of the wheel as a share of full speed, for the plant. */
export function ecmSpeedOf(state: unknown): number {
  const {value, context} = state as {value: string; context: BlowerContext};
  return value === 'turning' ? context.speed : 0;
}
