import {setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {disconnect} from '../../parts/disconnect.ts';
import type {ElementState} from '../../parts/element.ts';
import {defineBehaviour} from '../part-behaviour.ts';

interface HandSwitch {
  readonly contacts: readonly string[];
  readonly startsClosed: boolean;
}
type HandSwitchEvent = {type: 'lever.closed'} | {type: 'lever.opened'};

/** A lever that stays where a hand puts it: a toggle switch, a disconnect; a door switch that a door or a hand holds. */
export const handSwitchMachine = setup({
  types: {context: {} as HandSwitch, input: {} as HandSwitch, events: {} as HandSwitchEvent},
}).createMachine({
  id: 'hand switch',
  context: ({input}) => input,
  initial: 'placed',
  states: {
    placed: {
      always: [{guard: ({context}) => context.startsClosed, target: 'closed'}, {target: 'open'}],
    },
    closed: {on: {'lever.opened': 'open'}},
    open: {on: {'lever.closed': 'closed'}},
  },
});

export const handSwitchBehaviour = defineBehaviour<typeof handSwitchMachine>({
  machine: handSwitchMachine,
  input: (part) =>
    part.kind === 'disconnect'
      ? {
          contacts: Array.from(
            {length: dataOf<typeof disconnect>(part).poles},
            (_, i) => `pole${i + 1}`,
          ),
          startsClosed: true,
        }
      : {contacts: ['contact'], startsClosed: part.kind === 'door-switch'},
  handle: (_snapshot, _control, value) =>
    value === 'closed' || value === 'on' ? {type: 'lever.closed'} : {type: 'lever.opened'},
  states: (snapshot, part) => {
    const states: Record<string, ElementState> = {};
    for (const contact of snapshot.context.contacts)
      states[`${part.id}.${contact}`] = {closed: snapshot.value === 'closed'};
    return states;
  },
});
