import {setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {fusibleLink} from '../../parts/fusible-link.ts';
import {defineBehaviour} from '../part-behaviour.ts';

interface FusibleLink {
  readonly senses: string;
  readonly opensAtDegF: number;
}

/** A slug of low-melting alloy holds a contact: at its temperature it melts, once and for good. */
export const fusibleLinkMachine = setup({
  types: {
    context: {} as FusibleLink,
    input: {} as FusibleLink,
    events: {} as {type: 'alloy.melted'},
  },
}).createMachine({
  id: 'fusible link',
  context: ({input}) => input,
  initial: 'whole',
  states: {whole: {on: {'alloy.melted': 'melted'}}, melted: {}},
});

export const fusibleLinkBehaviour = defineBehaviour<typeof fusibleLinkMachine>({
  machine: fusibleLinkMachine,
  input: (part) => dataOf<typeof fusibleLink>(part),
  sense: ({context, value}, look) =>
    value === 'whole' && (look.plant(context.senses) ?? -Infinity) >= context.opensAtDegF
      ? {type: 'alloy.melted'}
      : undefined,
  watches: ({context, value}) =>
    value === 'whole' ? [{value: context.senses, setPoint: context.opensAtDegF, on: 'rise'}] : [],
  states: (snapshot, part) => ({[`${part.id}.link`]: {closed: snapshot.value === 'whole'}}),
  burnt: (snapshot) => snapshot.value === 'melted',
});
