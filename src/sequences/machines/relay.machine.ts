import {assign, setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {relay} from '../../parts/relay.ts';
import type {MagnetCoilData} from '../../parts/magnet-coil.ts';
import type {ElementState} from '../../parts/element.ts';
import {armatureEvent, buzzes, type ArmatureEvent} from './armature.ts';
import {defineBehaviour} from '../part-behaviour.ts';

interface Relay {
  readonly coil: MagnetCoilData;
  readonly contacts: readonly {readonly id: string; readonly form: 'NO' | 'NC'}[];
  readonly onDelayMs: number;
  readonly offDelayMs: number;
}
type RelayContext = Relay & {readonly dueAtMs: number | undefined};
type RelayEvent = ArmatureEvent | {type: 'time.reached'; atMs: number};

/**
 * A coil moves normally open and normally closed contacts together. A time-delay relay makes them late after its
 * coil pulls, or holds them for a while after it lets go (a blower that runs on).
 */
export const relayMachine = setup({
  types: {context: {} as RelayContext, input: {} as Relay, events: {} as RelayEvent},
  guards: {
    makesLate: ({context}) => context.onDelayMs > 0,
    holdsOn: ({context}) => context.offDelayMs > 0,
  },
}).createMachine({
  id: 'relay',
  context: ({input}) => ({...input, dueAtMs: undefined}),
  initial: 'open',
  states: {
    open: {
      entry: assign({dueAtMs: undefined}),
      on: {
        'coil.pulled': [
          {
            guard: 'makesLate',
            target: 'making',
            actions: assign({dueAtMs: ({context, event}) => event.atMs + context.onDelayMs}),
          },
          {target: 'sealed'},
        ],
        'armature.chattered': 'chattering',
      },
    },
    // armature in, contacts not yet
    making: {
      on: {'time.reached': 'sealed', 'coil.released': 'open', 'armature.chattered': 'chattering'},
    },
    sealed: {
      entry: assign({dueAtMs: undefined}),
      on: {
        'coil.released': [
          {
            guard: 'holdsOn',
            target: 'holding',
            actions: assign({dueAtMs: ({context, event}) => event.atMs + context.offDelayMs}),
          },
          {target: 'open'},
        ],
        'armature.chattered': 'chattering',
      },
    },
    // armature out, contacts still held by the delay
    holding: {on: {'time.reached': 'open', 'coil.pulled': 'sealed'}},
    chattering: {
      entry: assign({dueAtMs: undefined}),
      on: {'coil.pulled': 'sealed', 'coil.released': 'open'},
    },
  },
});

export const relayBehaviour = defineBehaviour<typeof relayMachine>({
  machine: relayMachine,
  input: (part) => {
    const data = dataOf<typeof relay>(part);
    return {
      coil: data.coil,
      contacts: data.contacts,
      onDelayMs: Math.round(data.onDelaySeconds * 1000),
      offDelayMs: Math.round(data.offDelaySeconds * 1000),
    };
  },
  sense: (snapshot, look, part) =>
    armatureEvent(part.id, snapshot.context.coil, positionOf(snapshot.value), look),
  dueAtMs: (snapshot) => snapshot.context.dueAtMs,
  chattered: {type: 'armature.chattered'},
  states: (snapshot, part) => {
    const moved = snapshot.value === 'sealed' || snapshot.value === 'holding';
    const states: Record<string, ElementState> = {
      [`${part.id}.coil`]: {sealed: isPulled(snapshot.value)},
    };
    for (const contact of snapshot.context.contacts)
      states[`${part.id}.${contact.id}`] = {closed: moved === (contact.form === 'NO')};
    return states;
  },
  observe: (snapshot, look, part) => {
    const {id, title} = part;
    if (snapshot.value === 'sealed' || snapshot.value === 'holding')
      return [
        {
          part: id,
          is: 'pulled-in',
          sense: 'seen',
          text: `${title} ${id} is pulled in.`,
          behindCover: true,
        },
      ];
    if (snapshot.value === 'chattering')
      return [
        {
          part: id,
          is: 'chattering',
          sense: 'heard',
          text: `${title} ${id} chatters.`,
          behindCover: false,
        },
      ];
    if (buzzes(id, snapshot.context.coil, isPulled(snapshot.value), look))
      return [
        {
          part: id,
          is: 'humming',
          sense: 'heard',
          text: `${title} ${id} buzzes but does not pull in.`,
          behindCover: true,
        },
      ];
    return [
      {
        part: id,
        is: 'off',
        sense: 'seen',
        text: `${title} ${id} is not pulled in.`,
        behindCover: true,
      },
    ];
  },
});

const isPulled = (value: string): boolean => value === 'sealed' || value === 'making';

const positionOf = (value: string): 'open' | 'sealed' | 'chattering' =>
  value === 'chattering' ? 'chattering' : isPulled(value) ? 'sealed' : 'open';
