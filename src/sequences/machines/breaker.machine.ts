import {assign, setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {breaker} from '../../parts/breaker.ts';
import type {ElementState} from '../../parts/element.ts';
import {
  cold,
  follow,
  hasChanged,
  opensAtMs,
  type Overload,
  type TimeCurrentCurve,
} from '../time-current-curve.ts';
import type {Look} from '../look.ts';
import {defineBehaviour} from '../part-behaviour.ts';

/**
 * Thermal-magnetic trip. UL 489 asks for a trip within an hour at 135 % (to 50 A) and within two minutes at 200 %
 * (to 30 A); these points lie at about half of that, as breakers in service do. Beyond 200 % and the magnetic
 * trip at ten times: common practice, no source.
 */
export const breakerCurve: TimeCurrentCurve = {
  points: [
    [1.15, 10800],
    [1.35, 1800],
    [2, 60],
    [3, 20],
    [5, 6],
    [8, 2],
  ],
  atOnce: 10,
  coolingSeconds: 120,
};

interface Breaker {
  readonly amps: number;
  readonly poles: number;
}
type BreakerContext = Breaker & {readonly overload: Overload};
type BreakerEvent =
  | {type: 'current.changed'; multiple: number; atMs: number}
  | {type: 'current.surged'}
  | {type: 'time.reached'; atMs: number}
  | {type: 'handle.moved'; to: string; atMs: number};

/** A latch that a bimetal or a magnet trips; tripped, its handle must go fully off before it goes on. */
export const breakerMachine = setup({
  types: {context: {} as BreakerContext, input: {} as Breaker, events: {} as BreakerEvent},
  guards: {
    toOff: ({event}) => event.type === 'handle.moved' && event.to === 'off',
    toOn: ({event}) => event.type === 'handle.moved' && event.to === 'on',
  },
}).createMachine({
  id: 'breaker',
  context: ({input}) => ({...input, overload: cold}),
  initial: 'on',
  on: {
    'current.changed': {
      actions: assign({
        overload: ({context, event}) =>
          follow(breakerCurve, context.overload, event.multiple, event.atMs),
      }),
    },
  },
  states: {
    on: {
      on: {
        // the magnet: no time at all
        'current.surged': 'tripped',
        // the bimetal; it starts cooling from hot
        'time.reached': {
          target: 'tripped',
          actions: assign({
            overload: ({context, event}) => follow(breakerCurve, context.overload, 0, event.atMs),
          }),
        },
        'handle.moved': {guard: 'toOff', target: 'off'},
      },
    },
    off: {on: {'handle.moved': {guard: 'toOn', target: 'on'}}},
    tripped: {on: {'handle.moved': {guard: 'toOff', target: 'off'}}},
  },
});

export const breakerBehaviour = defineBehaviour<typeof breakerMachine>({
  machine: breakerMachine,
  input: (part) => {
    const {amps, poles} = dataOf<typeof breaker>(part);
    return {amps, poles};
  },
  sense: (snapshot, look, part) =>
    snapshot.value === 'on' && multiple(snapshot.context, look, part.id) >= breakerCurve.atOnce
      ? {type: 'current.surged'}
      : undefined,
  feel: (snapshot, look, part) => {
    const now = multiple(snapshot.context, look, part.id);
    return hasChanged(breakerCurve, snapshot.context.overload, now)
      ? {type: 'current.changed', multiple: now, atMs: look.atMs}
      : undefined;
  },
  handle: (_snapshot, _control, value, look) => ({
    type: 'handle.moved',
    to: String(value),
    atMs: look.atMs,
  }),
  dueAtMs: (snapshot) =>
    snapshot.value === 'on' ? opensAtMs(breakerCurve, snapshot.context.overload) : undefined,
  states: (snapshot, part) => {
    const states: Record<string, ElementState> = {};
    for (let pole = 1; pole <= snapshot.context.poles; pole++)
      states[`${part.id}.pole${pole}`] = {closed: snapshot.value === 'on'};
    return states;
  },
  positionOf: (snapshot) => snapshot.value,
  observe: (snapshot, _look, {id, title}) =>
    snapshot.value === 'tripped'
      ? [
          {
            part: id,
            is: 'tripped',
            sense: 'seen',
            text: `${title} ${id} has tripped.`,
            behindCover: false,
          },
        ]
      : [],
});

/** Either pole trips both: a common trip. */
function multiple({amps, poles}: Breaker, look: Look, part: string): number {
  let most = 0;
  for (let pole = 1; pole <= poles; pole++) most = Math.max(most, look.amps(`${part}.pole${pole}`));
  return most / amps;
}
