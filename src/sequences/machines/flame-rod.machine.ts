import {setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {flameRod} from '../../parts/flame-rod.ts';
import {defineBehaviour} from '../part-behaviour.ts';

interface Rod {
  readonly senses: string;
}

/** Half of the burners alight is a flame to the rod. */
const alight = 0.5;
/** Less alternating volts on the rod than this leave nothing to rectify (common practice, no source). */
const rectifiesFromVolts = 15;

/**
 * A flame that stands between rod and burner passes current one way better than the other: with alternating volts on
 * the rod it rectifies them, and without it nothing conducts.
 */
export const flameRodMachine = setup({
  types: {
    context: {} as Rod,
    input: {} as Rod,
    events: {} as {type: 'flame.rectified'} | {type: 'flame.stopped'},
  },
}).createMachine({
  id: 'flame rod',
  context: ({input}) => input,
  initial: 'insulating',
  states: {
    insulating: {on: {'flame.rectified': 'rectifying'}},
    rectifying: {on: {'flame.stopped': 'insulating'}},
  },
});

export const flameRodBehaviour = defineBehaviour<typeof flameRodMachine>({
  machine: flameRodMachine,
  input: (part) => ({senses: dataOf<typeof flameRod>(part).senses}),
  sense: ({context, value}, look, part) => {
    const burns = (look.plant(context.senses) ?? 0) >= alight;
    const rectifies = burns && look.volts(`${part.id}.ROD`, `${part.id}.BNR`) >= rectifiesFromVolts;
    if (rectifies === (value === 'rectifying')) return undefined;
    return {type: rectifies ? 'flame.rectified' : 'flame.stopped'};
  },
  watches: ({context}) => [
    {value: context.senses, setPoint: alight, on: 'rise'},
    // just below, for at the set point itself it still burns
    {value: context.senses, setPoint: alight - 0.01, on: 'fall'},
  ],
  states: (snapshot, part) => ({
    [`${part.id}.flame`]: snapshot.value === 'rectifying' ? {on: true} : {on: false, open: true},
  }),
  observe: ({context}, look, part) => {
    const burns = (look.plant(context.senses) ?? 0) >= alight;
    return [
      {
        part: part.id,
        is: burns ? 'lit' : 'off',
        sense: 'seen',
        text: burns ? 'The burners are lit.' : 'The burners are not lit.',
        behindCover: true,
      },
    ];
  },
});
