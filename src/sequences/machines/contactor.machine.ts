import {setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {contactor} from '../../parts/contactor.ts';
import type {MagnetCoilData} from '../../parts/magnet-coil.ts';
import type {ElementState} from '../../parts/element.ts';
import {armatureEvent, buzzes, type ArmatureEvent} from './armature.ts';
import {defineBehaviour} from '../part-behaviour.ts';

interface Contactor {
  readonly coil: MagnetCoilData;
  readonly poles: number;
}

/** A spring holds the poles open; the coil pulls them in above its pull-in volts and lets go below drop-out. */
export const contactorMachine = setup({
  types: {context: {} as Contactor, input: {} as Contactor, events: {} as ArmatureEvent},
}).createMachine({
  id: 'contactor',
  context: ({input}) => input,
  initial: 'open',
  states: {
    open: {on: {'coil.pulled': 'sealed', 'armature.chattered': 'chattering'}},
    sealed: {on: {'coil.released': 'open', 'armature.chattered': 'chattering'}},
    // neither open nor sealed for long: reckoned as open, as its load would find it
    chattering: {on: {'coil.pulled': 'sealed', 'coil.released': 'open'}},
  },
});

export const contactorBehaviour = defineBehaviour<typeof contactorMachine>({
  machine: contactorMachine,
  input: (part) => {
    const {coil, poles} = dataOf<typeof contactor>(part);
    return {coil, poles};
  },
  sense: (snapshot, look, part) =>
    armatureEvent(part.id, snapshot.context.coil, snapshot.value, look),
  chattered: {type: 'armature.chattered'},
  states: (snapshot, part) => {
    const sealed = snapshot.value === 'sealed';
    const states: Record<string, ElementState> = {[`${part.id}.coil`]: {sealed}};
    for (let pole = 1; pole <= snapshot.context.poles; pole++)
      states[`${part.id}.pole${pole}`] = {closed: sealed};
    return states;
  },
  observe: (snapshot, look, part) => {
    const {id, title} = part;
    if (snapshot.value === 'sealed')
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
    if (buzzes(id, snapshot.context.coil, false, look))
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
