import {assign, setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import type {delayTimer} from '../../parts/delay-timer.ts';
import {defineBehaviour} from '../part-behaviour.ts';

/** Volts at IN that wake the timer, and those at which it gives up (common practice, no source). */
const wakesAtVolts = 15;
const givesUpAtVolts = 10;
/** A dip shorter than this it does not feel; a control fuse blows within it (common practice, no source). */
const ridesThroughMs = 500;

interface TimerContext {
  readonly delayMs: number;
  readonly dueAtMs: number | undefined;
}
type TimerEvent =
  | {type: 'call.came'; atMs: number}
  | {type: 'call.sagged'; atMs: number}
  | {type: 'call.went'; atMs: number}
  | {type: 'time.reached'; atMs: number};

/**
 * Anti-short-cycle timer, delay on break: it passes a call at once when it is rested, and after each loss of the
 * call it will not pass the next until the delay has run, so that pressures can come together.
 */
export const delayTimerMachine = setup({
  types: {context: {} as TimerContext, input: {} as {delayMs: number}, events: {} as TimerEvent},
}).createMachine({
  id: 'delay timer',
  context: ({input}) => ({delayMs: input.delayMs, dueAtMs: undefined}),
  initial: 'rested',
  states: {
    rested: {entry: assign({dueAtMs: undefined}), on: {'call.came': 'passing'}},
    passing: {
      entry: assign({dueAtMs: undefined}),
      on: {
        'call.sagged': {
          target: 'riding',
          actions: assign({dueAtMs: ({event}) => event.atMs + ridesThroughMs}),
        },
      },
    },
    riding: {
      on: {
        'call.came': 'passing',
        'time.reached': {
          target: 'lockedOut',
          actions: assign({dueAtMs: ({context, event}) => event.atMs + context.delayMs}),
        },
      },
    },
    lockedOut: {on: {'call.came': 'waiting', 'time.reached': 'rested'}},
    waiting: {on: {'call.went': 'lockedOut', 'time.reached': 'passing'}},
  },
});

export const delayTimerBehaviour = defineBehaviour<typeof delayTimerMachine>({
  machine: delayTimerMachine,
  input: (part) => ({
    delayMs: Math.round(dataOf<typeof delayTimer>(part).delayOnBreakSeconds * 1000),
  }),
  sense: (snapshot, look, part) => {
    const volts = look.voltsIn(`${part.id}.supply`);
    const {value} = snapshot;
    if (volts >= wakesAtVolts)
      return value === 'passing' || value === 'waiting'
        ? undefined
        : {type: 'call.came', atMs: look.atMs};
    if (volts >= givesUpAtVolts) return undefined;
    if (value === 'passing') return {type: 'call.sagged', atMs: look.atMs};
    return value === 'waiting' ? {type: 'call.went', atMs: look.atMs} : undefined;
  },
  dueAtMs: (snapshot) => snapshot.context.dueAtMs,
  states: (snapshot, part) => ({
    [`${part.id}.out`]: {closed: snapshot.value === 'passing' || snapshot.value === 'riding'},
  }),
});
