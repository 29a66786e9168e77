import {assign, setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {transformer} from '../../parts/transformer.ts';
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
 * How long the windings of a small control transformer stand an overload: a quarter of an hour at twice, two minutes
 * at six times, three quarters of a minute dead shorted (common practice, no source).
 */
export const windingCurve: TimeCurrentCurve = {
  points: [
    [1.35, 7200],
    [2, 900],
    [3.5, 200],
    [6, 120],
    [10, 45],
  ],
  atOnce: 100,
  coolingSeconds: 900,
};

interface Windings {
  readonly secondaryAmps: number;
  /** Local id of the fine primary winding that burns through first. */
  readonly burns: string;
}
type WindingContext = Windings & {readonly overload: Overload};
type WindingEvent =
  {type: 'current.changed'; multiple: number; atMs: number} | {type: 'time.reached'; atMs: number};

/** Copper in varnish: overloaded long enough it burns through, and the fine primary wire goes first. */
export const transformerMachine = setup({
  types: {context: {} as WindingContext, input: {} as Windings, events: {} as WindingEvent},
}).createMachine({
  id: 'transformer',
  context: ({input}) => ({...input, overload: cold}),
  initial: 'sound',
  states: {
    sound: {
      on: {
        'current.changed': {
          actions: assign({
            overload: ({context, event}) =>
              follow(windingCurve, context.overload, event.multiple, event.atMs),
          }),
        },
        'time.reached': 'burnt',
      },
    },
    burnt: {},
  },
});

export const transformerBehaviour = defineBehaviour<typeof transformerMachine>({
  machine: transformerMachine,
  input: (part) => {
    const data = dataOf<typeof transformer>(part);
    return {
      secondaryAmps: data.va / data.secondaryVolts,
      burns: data.taps.length === 1 ? 'primary' : `primary-${data.taps[0]!.terminal}`,
    };
  },
  feel: (snapshot, look, part) => {
    if (snapshot.value !== 'sound') return undefined;
    const multiple = look.amps(`${part.id}.secondary`) / snapshot.context.secondaryAmps;
    return hasChanged(windingCurve, snapshot.context.overload, multiple)
      ? {type: 'current.changed', multiple, atMs: look.atMs}
      : undefined;
  },
  dueAtMs: (snapshot) =>
    snapshot.value === 'sound' ? opensAtMs(windingCurve, snapshot.context.overload) : undefined,
  states: (snapshot, part) =>
    snapshot.value === 'burnt' ? {[`${part.id}.${snapshot.context.burns}`]: {open: true}} : {},
  observe: (snapshot, _look, {id, title}) =>
    snapshot.value === 'burnt'
      ? [
          {
            part: id,
            is: 'burnt',
            sense: 'seen',
            text: `${title} ${id} is brown and smells of burnt varnish.`,
            behindCover: true,
          },
        ]
      : [],
  burnt: (snapshot) => snapshot.value === 'burnt',
});
