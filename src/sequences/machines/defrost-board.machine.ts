import {assign, setup} from 'xstate';
import type {defrostBoard} from '../../parts/defrost-board.ts';
import {dataOf} from '../../parts/part-kind.ts';
import {thermistorDegF} from '../../parts/thermistor-curve.ts';
import type {Look} from '../look.ts';
import {defineBehaviour} from '../part-behaviour.ts';

interface Settings {
  readonly intervalMs: number;
  readonly maximumMs: number;
  readonly initiateDegF: number;
  readonly terminateDegF: number;
  readonly ambientLimitDegF: number;
  readonly blankBelowVolts: number;
}
interface BoardContext extends Settings {
  /** Compressor run time counted in earlier calls since the last look at the coil. */
  readonly countedMs: number;
  readonly sinceMs: number;
  readonly dueAtMs: number | undefined;
  /** End of the longest defrost allowed. */
  readonly endsAtMs: number;
  /** How long the board rides through the present dip of its supply or its call; undefined without a dip. */
  readonly dipEndsAtMs: number | undefined;
}
type BoardEvent =
  | {type: 'supply.restored'}
  | {type: 'dip.began'; atMs: number}
  | {type: 'dip.passed'}
  | {type: 'call.came'; atMs: number; atOnce: boolean}
  | {
      type: 'time.reached';
      atMs: number;
      coil: SensorReading;
      ambient: SensorReading;
      logic: string;
      powered: boolean;
      called: boolean;
    };

/** What the board makes of a sensor: a temperature, or why there is none. */
type SensorReading = {readonly degF: number} | 'open' | 'shorted';

/** Between looks at the coil while a defrost runs. */
const pollMs = 5000;
/** Volts at Y that count as a call, and that no longer do (common practice, no source). */
const callVolts = 14;
const noCallVolts = 9;
/** A shorter dip it does not feel; a control fuse blows within it (common practice, no source). */
const ridesThroughMs = 1000;

/**
 * Counts compressor run time; when the interval is full it looks at the coil, and if that is cold enough to be
 * frosted it runs the unit in cooling with the outdoor fan held off and auxiliary heat on, until the coil is warm
 * or the longest time is up.
 */
export const defrostBoardMachine = setup({
  types: {context: {} as BoardContext, input: {} as Settings, events: {} as BoardEvent},
  guards: {
    isFrosted: ({context, event}) =>
      event.type === 'time.reached' &&
      event.logic !== 'never-defrosts' &&
      isAtMost(event.coil, context.initiateDegF) &&
      isAtMost(event.ambient, context.ambientLimitDegF),
    isDone: ({context, event}) =>
      event.type === 'time.reached' &&
      event.logic !== 'stuck-in-defrost' &&
      (event.atMs >= context.endsAtMs ||
        typeof event.coil === 'string' ||
        event.coil.degF >= context.terminateDegF),
    // a dip that has lasted: what was lost is judged now, at its end
    hasGoneDark: ({context, event}) =>
      dipIsOver(context, event) && 'powered' in event && !event.powered,
    hasLostCall: ({context, event}) =>
      dipIsOver(context, event) && 'called' in event && !event.called,
    atOnce: ({event}) => event.type === 'call.came' && event.atOnce,
  },
  actions: {
    startCounting: assign(({context, event}) => {
      const atMs = 'atMs' in event ? event.atMs : 0;
      return {sinceMs: atMs, dueAtMs: atMs + context.intervalMs - context.countedMs};
    }),
    forgetCount: assign({countedMs: 0}),
    startDefrost: assign(({context, event}) => {
      const atMs = 'atMs' in event ? event.atMs : 0;
      return {countedMs: 0, endsAtMs: atMs + context.maximumMs, dueAtMs: atMs + pollMs};
    }),
    lookAgain: assign({dueAtMs: ({event}) => ('atMs' in event ? event.atMs + pollMs : undefined)}),
  },
}).createMachine({
  id: 'board',
  context: ({input}) => ({
    ...input,
    countedMs: 0,
    sinceMs: 0,
    dueAtMs: undefined,
    endsAtMs: 0,
    dipEndsAtMs: undefined,
  }),
  initial: 'dark',
  on: {
    'dip.began': {actions: assign({dipEndsAtMs: ({event}) => event.atMs + ridesThroughMs})},
    'dip.passed': {actions: assign({dipEndsAtMs: undefined})},
  },
  states: {
    dark: {
      entry: assign({dueAtMs: undefined, dipEndsAtMs: undefined, countedMs: 0}),
      on: {'supply.restored': 'waiting'},
    },
    waiting: {
      entry: assign({dueAtMs: undefined, dipEndsAtMs: undefined}),
      on: {
        'call.came': [
          {guard: 'atOnce', target: 'defrosting', actions: 'startDefrost'},
          {target: 'counting', actions: 'startCounting'},
        ],
        'time.reached': {guard: 'hasGoneDark', target: 'dark'},
      },
    },
    counting: {
      on: {
        'time.reached': [
          {guard: 'hasGoneDark', target: 'dark'},
          {
            guard: 'hasLostCall',
            target: 'waiting',
            actions: assign({
              countedMs: ({context, event}) => context.countedMs + event.atMs - context.sinceMs,
            }),
          },
          {guard: 'isFrosted', target: 'defrosting', actions: 'startDefrost'},
          {actions: ['forgetCount', 'startCounting']},
        ],
      },
    },
    defrosting: {
      on: {
        'time.reached': [
          {guard: 'hasGoneDark', target: 'dark'},
          {guard: 'hasLostCall', target: 'waiting'},
          {guard: 'isDone', target: 'counting', actions: 'startCounting'},
          {actions: 'lookAgain'},
        ],
      },
    },
  },
});

function dipIsOver({dipEndsAtMs}: BoardContext, event: BoardEvent): boolean {
  return dipEndsAtMs !== undefined && 'atMs' in event && event.atMs >= dipEndsAtMs;
}

const isAtMost = (reading: SensorReading, degF: number): boolean =>
  typeof reading !== 'string' && reading.degF <= degF;

/** Beta of the usual 10 kΩ sensor curve at its cold end, where a defrost board works (-4 to 77 °F). */
const sensorBetaKelvin = 3827;

/** Temperature from the volts that a sensor leaves of the board's 5 V behind 10 kΩ. */
export function readSensor(volts: number): SensorReading {
  if (volts > 4.93) return 'open';
  if (volts < 0.05) return 'shorted';
  return {degF: thermistorDegF((10000 * volts) / (5 - volts), 10000, sensorBetaKelvin)};
}

const coil = (look: Look, part: string): SensorReading =>
  readSensor(Math.abs(look.dcVolts(`${part}.S1`, `${part}.S2`)));
const ambient = (look: Look, part: string): SensorReading =>
  readSensor(Math.abs(look.dcVolts(`${part}.A1`, `${part}.A2`)));

const isPowered = ({blankBelowVolts}: Settings, look: Look, part: string): boolean =>
  look.voltsIn(`${part}.supply`) >= blankBelowVolts;
const isCalled = (look: Look, part: string): boolean =>
  look.voltsIn(`${part}.y-input`) >= noCallVolts;

const isDead = (look: Look, part: string): boolean => look.behaviour(part).logic === 'dead';

export const defrostBoardBehaviour = defineBehaviour<typeof defrostBoardMachine>({
  machine: defrostBoardMachine,
  input: (part) => {
    const data = dataOf<typeof defrostBoard>(part);
    return {
      intervalMs: Math.round(data.intervalMinutes * 60_000),
      maximumMs: Math.round(data.maximumMinutes * 60_000),
      initiateDegF: data.initiateDegF,
      terminateDegF: data.terminateDegF,
      ambientLimitDegF: data.ambientLimitDegF,
      blankBelowVolts: data.blankBelowVolts,
    };
  },
  sense: (snapshot, look, part) => {
    const {value, context} = snapshot;
    if (value === 'dark')
      return look.voltsIn(`${part.id}.supply`) >= context.blankBelowVolts * 1.05 &&
        !isDead(look, part.id)
        ? {type: 'supply.restored'}
        : undefined;
    const dips =
      !isPowered(context, look, part.id) || (value !== 'waiting' && !isCalled(look, part.id));
    if (dips !== (context.dipEndsAtMs !== undefined))
      return dips ? {type: 'dip.began', atMs: look.atMs} : {type: 'dip.passed'};
    return value === 'waiting' && !dips && look.voltsIn(`${part.id}.y-input`) >= callVolts
      ? {
          type: 'call.came',
          atMs: look.atMs,
          atOnce: look.behaviour(part.id).logic === 'stuck-in-defrost',
        }
      : undefined;
  },
  onTime: (snapshot, look, part) => ({
    type: 'time.reached',
    atMs: look.atMs,
    coil: coil(look, part.id),
    ambient: ambient(look, part.id),
    logic: String(look.behaviour(part.id).logic ?? ''),
    powered: isPowered(snapshot.context, look, part.id),
    called: isCalled(look, part.id),
  }),
  dueAtMs: ({context: {dueAtMs, dipEndsAtMs}}) =>
    dueAtMs === undefined || dipEndsAtMs === undefined
      ? (dueAtMs ?? dipEndsAtMs)
      : Math.min(dueAtMs, dipEndsAtMs),
  states: (snapshot, part) => {
    const defrosting = snapshot.value === 'defrosting';
    const on = snapshot.value !== 'dark';
    const {id} = part;
    return {
      [`${id}.cooling`]: {closed: !defrosting},
      [`${id}.defrost`]: {closed: defrosting},
      [`${id}.auxiliary`]: {closed: defrosting},
      [`${id}.fan`]: {closed: !defrosting},
      [`${id}.coil-pull-up`]: {on},
      [`${id}.ambient-pull-up`]: {on},
    };
  },
  observe: (snapshot, look, {id, title}) => {
    const lamp = lampOf(snapshot.value, coil, ambient, look, id);
    return lamp === undefined
      ? [
          {
            part: id,
            is: 'blank',
            sense: 'seen',
            text: `The lamp of ${title} ${id} is dark.`,
            display: 'dark',
            behindCover: true,
          },
        ]
      : [
          {
            part: id,
            is: 'lit',
            sense: 'seen',
            text: `The lamp of ${title} ${id}: ${lamp}.`,
            display: lamp,
            behindCover: true,
          },
        ];
  },
});

/** The board's lamp. A code of our own, as its label would explain it. */
function lampOf(
  value: string,
  coilOf: typeof coil,
  ambientOf: typeof ambient,
  look: Look,
  id: string,
): string | undefined {
  if (value === 'dark') return undefined;
  const coilReading = coilOf(look, id);
  if (typeof coilReading === 'string') return `two flashes: coil sensor ${coilReading}`;
  const ambientReading = ambientOf(look, id);
  if (typeof ambientReading === 'string') return `three flashes: ambient sensor ${ambientReading}`;
  if (value === 'defrosting') return 'fast flashing: defrost';
  return value === 'counting' ? 'steady: compressor call' : 'slow flashing: standing by';
}
