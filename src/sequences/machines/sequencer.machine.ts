import {assign, setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {sequencer, SequencerData} from '../../parts/sequencer.ts';
import {isBeyond, reachesAtMs, valueAt, type Course} from '../../plant/first-order.ts';
import type {ElementState} from '../../parts/element.ts';
import {defineBehaviour} from '../part-behaviour.ts';

type Contact = SequencerData['contacts'][number];
interface Bimetal {
  readonly ratedVolts: number;
  readonly riseDegF: number;
  readonly tauMs: number;
  readonly contacts: readonly Contact[];
}
interface BimetalContext extends Bimetal {
  /** Volts that act in the heater, as last told. */
  readonly volts: number;
  /** Rise of the bimetal over the air around it. */
  readonly rise: Course;
  readonly closed: readonly string[];
}
type BimetalEvent =
  {type: 'heat.changed'; volts: number; atMs: number} | {type: 'time.reached'; atMs: number};

/**
 * A heater warms bimetal discs, first order, toward a rise that goes with the square of its volts; each disc snaps at
 * its own temperature. So contacts close one after another, and open one after another in the other order.
 */
export const sequencerMachine = setup({
  types: {context: {} as BimetalContext, input: {} as Bimetal, events: {} as BimetalEvent},
}).createMachine({
  id: 'sequencer',
  context: ({input}) => ({
    ...input,
    volts: 0,
    rise: {startMs: 0, start: 0, target: 0, tauMs: input.tauMs},
    closed: [],
  }),
  initial: 'warming',
  states: {
    warming: {
      on: {
        'heat.changed': {
          actions: assign(({context, event}) => ({
            volts: event.volts,
            rise: {
              startMs: event.atMs,
              start: valueAt(context.rise, event.atMs),
              target: context.riseDegF * (event.volts / context.ratedVolts) ** 2,
              tauMs: context.tauMs,
            },
          })),
        },
        'time.reached': {
          actions: assign({closed: ({context, event}) => snapped(context, event.atMs)}),
        },
      },
    },
  },
});

/** Contacts closed at a moment: a disc between its two temperatures stays as it was. */
function snapped({rise, contacts, closed}: BimetalContext, atMs: number): string[] {
  const now = valueAt(rise, atMs);
  return contacts
    .filter((contact) =>
      closed.includes(contact.id)
        ? !isBeyond(now, contact.opensAtRiseDegF, 'fall')
        : isBeyond(now, contact.closesAtRiseDegF, 'rise'),
    )
    .map(({id}) => id);
}

/** When the next disc snaps on the present course. */
function nextSnapMs({rise, contacts, closed}: BimetalContext): number | undefined {
  const times = contacts.map((contact) =>
    closed.includes(contact.id)
      ? reachesAtMs(rise, contact.opensAtRiseDegF, 'fall', rise.startMs)
      : reachesAtMs(rise, contact.closesAtRiseDegF, 'rise', rise.startMs),
  );
  const first = Math.min(...times.map((at) => at ?? Infinity));
  return first === Infinity ? undefined : first;
}

/** A smaller change of the heater's volts moves nothing worth telling. */
const worthTellingVolts = 0.5;

export const sequencerBehaviour = defineBehaviour<typeof sequencerMachine>({
  machine: sequencerMachine,
  input: (part) => {
    const data = dataOf<typeof sequencer>(part);
    return {
      ratedVolts: data.volts,
      riseDegF: data.riseDegF,
      tauMs: Math.round(data.timeConstantSeconds * 1000),
      contacts: data.contacts,
    };
  },
  feel: ({context}, look, part) => {
    const volts = look.voltsIn(`${part.id}.heater`);
    return Math.abs(volts - context.volts) > worthTellingVolts
      ? {type: 'heat.changed', volts, atMs: look.atMs}
      : undefined;
  },
  dueAtMs: ({context}) => nextSnapMs(context),
  states: ({context}, part) => {
    const states: Record<string, ElementState> = {};
    for (const {id} of context.contacts)
      states[`${part.id}.${id}`] = {closed: context.closed.includes(id)};
    return states;
  },
});
