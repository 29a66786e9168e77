import {setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {solenoid} from '../../parts/solenoid.ts';
import type {MagnetCoilData} from '../../parts/magnet-coil.ts';
import {armatureEvent, type ArmatureEvent} from './armature.ts';
import {defineBehaviour} from '../part-behaviour.ts';

/** A plunger that a spring returns: the coil draws it in and the valve shifts. */
export const solenoidMachine = setup({
  types: {
    context: {} as {coil: MagnetCoilData},
    input: {} as MagnetCoilData,
    events: {} as ArmatureEvent,
  },
}).createMachine({
  id: 'solenoid',
  context: ({input}) => ({coil: input}),
  initial: 'returned',
  states: {
    returned: {on: {'coil.pulled': 'shifted', 'armature.chattered': 'chattering'}},
    shifted: {on: {'coil.released': 'returned', 'armature.chattered': 'chattering'}},
    chattering: {on: {'coil.pulled': 'shifted', 'coil.released': 'returned'}},
  },
});

const positionOf = {returned: 'open', shifted: 'sealed', chattering: 'chattering'} as const;

export const solenoidBehaviour = defineBehaviour<typeof solenoidMachine>({
  machine: solenoidMachine,
  input: (part) => dataOf<typeof solenoid>(part).coil,
  sense: (snapshot, look, part) =>
    armatureEvent(part.id, snapshot.context.coil, positionOf[snapshot.value], look),
  chattered: {type: 'armature.chattered'},
  states: (snapshot, part) => ({[`${part.id}.coil`]: {sealed: snapshot.value === 'shifted'}}),
  observe: (snapshot, _look, part) => {
    const {id, title} = part;
    if (snapshot.value === 'shifted')
      return [
        {
          part: id,
          is: 'shifted',
          sense: 'heard',
          text: `${title} ${id} clicked over.`,
          behindCover: false,
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
    return [];
  },
});
