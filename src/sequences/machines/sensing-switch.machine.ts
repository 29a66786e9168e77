import {setup} from 'xstate';
import type {SensingData} from '../../parts/sensing-switches.ts';
import {sensingSwitch, type SensingSwitch} from '../../parts/set-points.ts';
import {defineBehaviour} from '../part-behaviour.ts';
import type {Part} from '../../content/unit.ts';

type SensingEvent =
  {type: 'cutOut.reached'} | {type: 'cutIn.reached'} | {type: 'button.pressed'; ready: boolean};

/**
 * A snap-action contact worked by pressure, temperature or a float: opens at cut-out, closes again at cut-in, or
 * by its button once the cut-in is reached.
 */
export const sensingSwitchMachine = setup({
  types: {context: {} as SensingSwitch, input: {} as SensingSwitch, events: {} as SensingEvent},
  guards: {
    resetsItself: ({context}) => context.reset === 'auto',
    ready: ({event}) => event.type === 'button.pressed' && event.ready,
  },
}).createMachine({
  id: 'sensing switch',
  context: ({input}) => input,
  initial: 'closed',
  states: {
    closed: {on: {'cutOut.reached': 'open'}},
    open: {
      on: {
        'cutIn.reached': {guard: 'resetsItself', target: 'closed'},
        'button.pressed': {guard: 'ready', target: 'closed'},
      },
    },
  },
});

/** The data of all three kinds, as the unit's loader has checked it. */
function settings({data}: Part): SensingSwitch {
  return sensingSwitch(data as SensingData);
}

export const sensingSwitchBehaviour = defineBehaviour<typeof sensingSwitchMachine>({
  machine: sensingSwitchMachine,
  input: settings,
  sense: (snapshot, look) => {
    const {context, value} = snapshot;
    const reading = look.plant(context.senses);
    if (reading === undefined) return undefined;
    const rising = context.opensOn === 'rise';
    if (value === 'closed')
      return (rising ? reading >= context.cutOut : reading <= context.cutOut)
        ? {type: 'cutOut.reached'}
        : undefined;
    return context.reset === 'auto' && isReady(context, reading)
      ? {type: 'cutIn.reached'}
      : undefined;
  },
  handle: (snapshot, _control, _value, look) => {
    const reading = look.plant(snapshot.context.senses);
    return {
      type: 'button.pressed',
      ready: reading === undefined || isReady(snapshot.context, reading),
    };
  },
  watches: ({context, value}) =>
    value === 'closed'
      ? [{value: context.senses, setPoint: context.cutOut, on: context.opensOn}]
      : context.reset === 'auto'
        ? [
            {
              value: context.senses,
              setPoint: context.cutIn,
              on: context.opensOn === 'rise' ? 'fall' : 'rise',
            },
          ]
        : [],
  states: (snapshot, part) => ({[`${part.id}.contact`]: {closed: snapshot.value === 'closed'}}),
});

const isReady = ({opensOn, cutIn}: SensingSwitch, reading: number): boolean =>
  opensOn === 'rise' ? reading <= cutIn : reading >= cutIn;
