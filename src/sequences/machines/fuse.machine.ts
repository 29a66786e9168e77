import {assign, setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {fuse} from '../../parts/fuse.ts';
import {
  cold,
  follow,
  hasChanged,
  opensAtMs,
  type Overload,
  type TimeCurrentCurve,
} from '../time-current-curve.ts';
import {defineBehaviour} from '../part-behaviour.ts';

/**
 * Blade fuse: the middles (geometric) of the opening-time windows of ISO 8820-3, from memory: 110 % at least
 * 100 h, 135 % 0.75–600 s, 200 % 0.15–5 s, 350 % 0.04–0.5 s, 600 % 0.02–0.1 s.
 */
export const fuseCurve: TimeCurrentCurve = {
  points: [
    [1.1, 360000],
    [1.35, 21],
    [2, 0.87],
    [3.5, 0.14],
    [6, 0.045],
  ],
  // a few milliseconds are at once: nothing else in a unit acts within them
  atOnce: 20,
  coolingSeconds: 10,
};

type FuseContext = {readonly amps: number; readonly overload: Overload};
type FuseEvent =
  | {type: 'current.changed'; multiple: number; atMs: number}
  | {type: 'current.surged'}
  | {type: 'time.reached'; atMs: number};

/** A link that melts, and stays so until somebody puts in a new one. */
export const fuseMachine = setup({
  types: {context: {} as FuseContext, input: {} as {amps: number}, events: {} as FuseEvent},
}).createMachine({
  id: 'fuse',
  context: ({input}) => ({amps: input.amps, overload: cold}),
  initial: 'whole',
  states: {
    whole: {
      on: {
        'current.changed': {
          actions: assign({
            overload: ({context, event}) =>
              follow(fuseCurve, context.overload, event.multiple, event.atMs),
          }),
        },
        'current.surged': 'blown',
        'time.reached': 'blown',
      },
    },
    blown: {},
  },
});

export const fuseBehaviour = defineBehaviour<typeof fuseMachine>({
  machine: fuseMachine,
  input: (part) => ({amps: dataOf<typeof fuse>(part).amps}),
  sense: (snapshot, look, part) =>
    snapshot.value === 'whole' &&
    look.amps(`${part.id}.link`) >= fuseCurve.atOnce * snapshot.context.amps
      ? {type: 'current.surged'}
      : undefined,
  feel: (snapshot, look, part) => {
    if (snapshot.value !== 'whole') return undefined;
    const multiple = look.amps(`${part.id}.link`) / snapshot.context.amps;
    return hasChanged(fuseCurve, snapshot.context.overload, multiple)
      ? {type: 'current.changed', multiple, atMs: look.atMs}
      : undefined;
  },
  dueAtMs: (snapshot) =>
    snapshot.value === 'whole' ? opensAtMs(fuseCurve, snapshot.context.overload) : undefined,
  states: (snapshot, part) => ({[`${part.id}.link`]: {closed: snapshot.value === 'whole'}}),
  burnt: (snapshot) => snapshot.value === 'blown',
});
