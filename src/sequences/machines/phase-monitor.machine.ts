import {assign, setup} from 'xstate';
import {sequenceSets} from '../../circuits/three-phase-motor.ts';
import {dataOf} from '../../parts/part-kind.ts';
import type {phaseMonitor, PhaseMonitorData} from '../../parts/phase-monitor.ts';
import type {Look} from '../look.ts';
import {defineBehaviour} from '../part-behaviour.ts';

/** What is wrong with a supply, the worst first. */
export type PhaseTrouble = 'lost' | 'reversed' | 'imbalance' | 'low' | 'high';

interface MonitorContext {
  readonly settings: PhaseMonitorData;
  /** What it saw last; what it tripped on while it is tripped. */
  readonly trouble: PhaseTrouble | undefined;
  readonly dueAtMs: number | undefined;
}
type MonitorEvent =
  | {type: 'power.came'; trouble: PhaseTrouble | undefined; atMs: number}
  | {type: 'power.went'}
  | {type: 'supply.wrong'; trouble: PhaseTrouble; atMs: number}
  | {type: 'supply.right'; atMs: number}
  | {type: 'time.reached'; atMs: number};

/** Below this share of rated volts on every pair its electronics are dead (common practice, no source). */
const deadFraction = 0.45;
/** Backward set against forward: a third line that a running motor makes still shows this much (measured on the model). */
const lostSequenceFraction = 0.2;

const secondsToMs = (seconds: number): number => Math.round(seconds * 1000);

/**
 * It pulls its relay in when three phases have been right for the restart delay, and lets go when one has been lost
 * or turned for a moment, or when balance or volts have been out for the trip delay.
 */
export const phaseMonitorMachine = setup({
  types: {
    context: {} as MonitorContext,
    input: {} as PhaseMonitorData,
    events: {} as MonitorEvent,
  },
  guards: {
    isRight: ({event}) => event.type === 'power.came' && event.trouble === undefined,
    // at time 0 the unit has long been standing there with its power on
    longRight: ({event}) =>
      event.type === 'power.came' && event.trouble === undefined && event.atMs === 0,
  },
  actions: {
    startDelay: assign(({context, event}) => ({
      trouble: undefined,
      dueAtMs:
        ('atMs' in event ? event.atMs : 0) + secondsToMs(context.settings.restartDelaySeconds),
    })),
    startTrip: assign(({context, event}) => {
      if (event.type !== 'supply.wrong') return {};
      const {fastTripSeconds, tripDelaySeconds} = context.settings;
      const quick = event.trouble === 'lost' || event.trouble === 'reversed';
      return {
        trouble: event.trouble,
        dueAtMs: event.atMs + secondsToMs(quick ? fastTripSeconds : tripDelaySeconds),
      };
    }),
    takeTrouble: assign(({event}) => ('trouble' in event ? {trouble: event.trouble} : {})),
    rest: assign({dueAtMs: undefined}),
    forget: assign({trouble: undefined, dueAtMs: undefined}),
  },
}).createMachine({
  id: 'phase monitor',
  context: ({input}) => ({settings: input, trouble: undefined, dueAtMs: undefined}),
  initial: 'dark',
  on: {'power.went': '.dark'},
  states: {
    dark: {
      entry: 'forget',
      on: {
        'power.came': [
          {guard: 'longRight', target: 'made'},
          {guard: 'isRight', target: 'waiting', actions: 'startDelay'},
          {target: 'tripped', actions: 'takeTrouble'},
        ],
      },
    },
    waiting: {
      on: {
        'time.reached': 'made',
        'supply.wrong': {target: 'tripped', actions: 'takeTrouble'},
      },
    },
    made: {
      entry: 'forget',
      on: {'supply.wrong': {target: 'tripping', actions: 'startTrip'}},
    },
    tripping: {
      on: {
        'time.reached': 'tripped',
        'supply.right': 'made',
        // one trouble may turn into a worse one meanwhile
        'supply.wrong': {actions: 'startTrip'},
      },
    },
    tripped: {
      entry: 'rest',
      on: {
        'supply.right': {target: 'waiting', actions: 'startDelay'},
        'supply.wrong': {actions: 'takeTrouble'},
      },
    },
  },
});

/** Judges three line-to-line volts; undefined when nothing is wrong with them. */
export function phaseTrouble(
  pairs: readonly {readonly re: number; readonly im: number}[],
  {ratedVolts, imbalancePercent, lowPercent, highPercent}: PhaseMonitorData,
): PhaseTrouble | undefined {
  const volts = pairs.map(({re, im}) => Math.hypot(re, im));
  const mean = (volts[0]! + volts[1]! + volts[2]!) / 3;
  const sets = sequenceSets(pairs);
  const forward = Math.hypot(sets.forward.re, sets.forward.im);
  const backward = Math.hypot(sets.backward.re, sets.backward.im);
  const least = Math.min(forward, backward);
  const most = Math.max(forward, backward);
  if (least > lostSequenceFraction * most) return 'lost';
  if (backward > forward) return 'reversed';
  const worst = Math.max(...volts.map((each) => Math.abs(each - mean)));
  if (worst > (imbalancePercent / 100) * mean) return 'imbalance';
  if (Math.min(...volts) < (lowPercent / 100) * ratedVolts) return 'low';
  if (Math.max(...volts) > (highPercent / 100) * ratedVolts) return 'high';
  return undefined;
}

/** What its settings make of the supply now; none, `off`, when there is too little to feed it. */
function judge(
  settings: PhaseMonitorData,
  look: Look,
  part: string,
): PhaseTrouble | 'off' | undefined {
  const pairs = (
    [
      ['L1', 'L2'],
      ['L2', 'L3'],
      ['L3', 'L1'],
    ] as const
  ).map(([a, b]) => look.phasor(`${part}.${a}`, `${part}.${b}`));
  const most = Math.max(...pairs.map(({re, im}) => Math.hypot(re, im)));
  const {logic} = look.behaviour(part);
  if (most < deadFraction * settings.ratedVolts || logic === 'dead') return 'off';
  return phaseTrouble(pairs, logic === 'too-fine' ? {...settings, imbalancePercent: 0} : settings);
}

export const phaseMonitorBehaviour = defineBehaviour<typeof phaseMonitorMachine>({
  machine: phaseMonitorMachine,
  input: (part) => dataOf<typeof phaseMonitor>(part),
  sense: ({value, context}, look, part) => {
    const found = judge(context.settings, look, part.id);
    const {atMs} = look;
    if (found === 'off') return value === 'dark' ? undefined : {type: 'power.went'};
    if (value === 'dark') return {type: 'power.came', trouble: found, atMs};
    if (found === undefined)
      return value === 'tripping' || value === 'tripped' ? {type: 'supply.right', atMs} : undefined;
    // a trouble that it knows is no news
    if ((value === 'tripping' || value === 'tripped') && found === context.trouble)
      return undefined;
    return {type: 'supply.wrong', trouble: found, atMs};
  },
  dueAtMs: ({context}) => context.dueAtMs,
  states: ({value}, part) => {
    const made = value === 'made' || value === 'tripping';
    return {[`${part.id}.ok`]: {closed: made}, [`${part.id}.tripped`]: {closed: !made}};
  },
  observe: ({value, context}, _look, {id, title}) => {
    const lamp = lampOf(value, context.trouble);
    return [
      {
        part: id,
        is: lamp === undefined ? 'blank' : 'lit',
        sense: 'seen',
        text:
          lamp === undefined
            ? `The lamp of ${title} ${id} is dark.`
            : `The lamp of ${title} ${id}: ${lamp}.`,
        display: lamp ?? 'dark',
        behindCover: true,
      },
    ];
  },
});

const flashes: Readonly<Record<PhaseTrouble, string>> = {
  lost: 'two flashes: phase missing',
  reversed: 'three flashes: phases in the wrong order',
  imbalance: 'four flashes: volts out of balance',
  low: 'five flashes: volts low',
  high: 'five flashes: volts high',
};

/** The monitor's lamp. A code of our own, as its label would explain it. */
function lampOf(value: string, trouble: PhaseTrouble | undefined): string | undefined {
  if (value === 'dark') return undefined;
  if (value === 'waiting') return 'slow flashing: waiting to pull in';
  return value === 'tripped' && trouble ? flashes[trouble] : 'steady: phases right';
}
