import {assign, setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {gasValve} from '../../parts/gas-valve.ts';
import type {MagnetCoilData} from '../../parts/magnet-coil.ts';
import {armatureEvent, type ArmatureEvent} from './armature.ts';
import {defineBehaviour} from '../part-behaviour.ts';

interface Valve {
  readonly coil: MagnetCoilData;
  readonly knobOn: boolean;
}

/** A coil lifts both seats against their springs; a knob shuts the gas whatever the coil does. */
export const gasValveMachine = setup({
  types: {
    context: {} as Valve,
    input: {} as MagnetCoilData,
    events: {} as ArmatureEvent | {type: 'knob.turned'; on: boolean},
  },
}).createMachine({
  id: 'gas valve',
  context: ({input}) => ({coil: input, knobOn: true}),
  initial: 'seated',
  on: {'knob.turned': {actions: assign({knobOn: ({event}) => event.on})}},
  states: {
    seated: {on: {'coil.pulled': 'lifted', 'armature.chattered': 'chattering'}},
    lifted: {on: {'coil.released': 'seated', 'armature.chattered': 'chattering'}},
    chattering: {on: {'coil.pulled': 'lifted', 'coil.released': 'seated'}},
  },
});

const positionOf = {seated: 'open', lifted: 'sealed', chattering: 'chattering'} as const;

export const gasValveBehaviour = defineBehaviour<typeof gasValveMachine>({
  machine: gasValveMachine,
  input: (part) => dataOf<typeof gasValve>(part).coil,
  sense: (snapshot, look, part) =>
    armatureEvent(part.id, snapshot.context.coil, positionOf[snapshot.value], look),
  handle: (_snapshot, _control, value) => ({type: 'knob.turned', on: value === 'on'}),
  chattered: {type: 'armature.chattered'},
  states: (snapshot, part) => ({[`${part.id}.coil`]: {sealed: snapshot.value === 'lifted'}}),
  observe: (snapshot, _look, {id, title}) => {
    if (snapshot.value === 'seated') return [];
    const chatters = snapshot.value === 'chattering';
    return [
      {
        part: id,
        is: chatters ? 'chattering' : 'shifted',
        sense: 'heard',
        text: chatters ? `${title} ${id} chatters.` : `${title} ${id} clicked over.`,
        behindCover: true,
      },
    ];
  },
});

/** Whether gas can pass, from the machine's state. */
export function passesGas(state: unknown): boolean {
  const {value, context} = state as {value: string; context: Valve};
  return value === 'lifted' && context.knobOn;
}
