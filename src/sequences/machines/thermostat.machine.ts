import {assign, setup} from 'xstate';
import {dataOf} from '../../parts/part-kind.ts';
import {thermostatCalls} from '../../parts/thermostat-calls.ts';
import type {thermostat, ThermostatData} from '../../parts/thermostat.ts';
import {defineBehaviour, type PlantWatch} from '../part-behaviour.ts';

interface Settings {
  readonly equipment: ThermostatData['equipment'];
  readonly senses: string;
  readonly differentialDegF: number;
  readonly auxiliaryBelowDegF: number;
  readonly secondStageAboveDegF: number;
  readonly blankBelowVolts: number;
}
interface ThermostatContext extends Settings {
  readonly mode: string;
  readonly fan: string;
  readonly setPointDegF: number;
  /** When its own capacitor is empty, or when it has started up. */
  readonly dueAtMs: number | undefined;
}
type ThermostatEvent =
  | {type: 'supply.sagged'; atMs: number}
  | {type: 'supply.recovered'}
  | {type: 'supply.lost'}
  | {type: 'supply.restored'; atMs: number}
  | {type: 'time.reached'; atMs: number}
  | {type: 'room.warmed'}
  | {type: 'room.cooled'}
  | {type: 'room.satisfied'}
  | {type: 'room.nearlySatisfied'}
  | {type: 'room.fellBehind'}
  | {type: 'mode.chosen'; mode: string}
  | {type: 'fan.chosen'; fan: string}
  | {type: 'setPoint.chosen'; degF: number};

/** It lights again only a little above where it went blank, so that its own load does not make it blink. */
const restoredAbove = 1.05;
/** Its own capacitor carries it over a dip, long enough for a control fuse to blow first (common practice, no source). */
const ridesThroughMs = 1500;
/** From power to the first call (common practice, no source). */
const startsUpMs = 10_000;

/**
 * A room thermostat: calls when the room has strayed from the set point by the differential, lets
 * go at the set point; of a heat pump it adds auxiliary heat when the room falls far behind. Without its 24 volts it
 * is blank and every call opens.
 */
export const thermostatMachine = setup({
  types: {context: {} as ThermostatContext, input: {} as Settings, events: {} as ThermostatEvent},
  guards: {
    // at time 0 the unit has long been standing there with its power on
    longOn: ({event}) => event.type === 'supply.restored' && event.atMs === 0,
  },
}).createMachine({
  id: 'thermostat',
  context: ({input}) => ({
    ...input,
    mode: 'off',
    fan: 'auto',
    setPointDegF: 72,
    dueAtMs: undefined,
  }),
  initial: 'blank',
  on: {
    'mode.chosen': {actions: assign({mode: ({event}) => event.mode})},
    'fan.chosen': {actions: assign({fan: ({event}) => event.fan})},
    'setPoint.chosen': {actions: assign({setPointDegF: ({event}) => event.degF})},
  },
  states: {
    blank: {
      entry: assign({dueAtMs: undefined}),
      on: {
        'supply.restored': [
          {guard: 'longOn', target: 'lit'},
          {
            target: 'starting',
            actions: assign({dueAtMs: ({event}) => event.atMs + startsUpMs}),
          },
        ],
      },
    },
    starting: {on: {'supply.lost': 'blank', 'time.reached': 'lit'}},
    lit: {
      entry: assign({dueAtMs: undefined}),
      initial: 'satisfied',
      on: {
        'supply.sagged': {
          actions: assign({dueAtMs: ({event}) => event.atMs + ridesThroughMs}),
        },
        'supply.recovered': {actions: assign({dueAtMs: undefined})},
        'time.reached': 'blank',
        // another mode starts from no call at all
        'mode.chosen': {
          target: '.satisfied',
          actions: assign({mode: ({event}) => event.mode}),
        },
      },
      states: {
        satisfied: {on: {'room.warmed': 'cooling', 'room.cooled': 'heating'}},
        cooling: {on: {'room.satisfied': 'satisfied', 'room.fellBehind': 'secondStage'}},
        secondStage: {on: {'room.satisfied': 'satisfied', 'room.nearlySatisfied': 'cooling'}},
        heating: {on: {'room.satisfied': 'satisfied', 'room.fellBehind': 'auxiliary'}},
        auxiliary: {on: {'room.satisfied': 'satisfied', 'room.nearlySatisfied': 'heating'}},
      },
    },
  },
});

type Call = 'blank' | 'satisfied' | 'cooling' | 'secondStage' | 'heating' | 'auxiliary';

function callOf(value: string | {lit?: string | undefined}): Call {
  return typeof value === 'string' ? 'blank' : (value.lit as Call);
}

interface Crossing extends PlantWatch {
  readonly event: ThermostatEvent['type'] & `room.${string}`;
}

/** Room temperatures that the thermostat waits for in its present state, the most urgent first. */
function crossings(c: ThermostatContext, call: Call): Crossing[] {
  const {senses: value, setPointDegF: setPoint} = c;
  const auxiliaryAt = setPoint - c.auxiliaryBelowDegF;
  const satisfied = (on: 'rise' | 'fall'): Crossing => ({
    value,
    setPoint,
    on,
    event: 'room.satisfied',
  });
  switch (call) {
    case 'blank':
      return [];
    case 'satisfied':
      if (c.mode === 'cool')
        return [{value, setPoint: setPoint + c.differentialDegF, on: 'rise', event: 'room.warmed'}];
      if (c.mode === 'heat')
        return [{value, setPoint: setPoint - c.differentialDegF, on: 'fall', event: 'room.cooled'}];
      return [];
    case 'cooling':
      if (c.equipment !== 'two-stage-cooling') return [satisfied('fall')];
      return [
        satisfied('fall'),
        {
          value,
          setPoint: setPoint + c.secondStageAboveDegF,
          on: 'rise',
          event: 'room.fellBehind',
        },
      ];
    case 'secondStage':
      return [
        satisfied('fall'),
        {
          value,
          setPoint: Math.max(setPoint, setPoint + c.secondStageAboveDegF - c.differentialDegF),
          on: 'fall',
          event: 'room.nearlySatisfied',
        },
      ];
    case 'heating':
      if (c.equipment !== 'heat-pump') return [satisfied('rise')];
      return [
        satisfied('rise'),
        {value, setPoint: auxiliaryAt, on: 'fall', event: 'room.fellBehind'},
      ];
    case 'auxiliary':
      return [
        satisfied('rise'),
        {
          value,
          setPoint: Math.min(setPoint, auxiliaryAt + c.differentialDegF),
          on: 'rise',
          event: 'room.nearlySatisfied',
        },
      ];
  }
}

/**
 * Contacts closed by each call. A heat pump's valve is energised in cooling (O), so a lost O means heating; a furnace
 * runs its own blower when it heats, so W calls alone.
 */
const heatPumpCalls: Readonly<Record<Call, readonly string[]>> = {
  blank: [],
  satisfied: [],
  cooling: ['Y', 'G', 'O'],
  secondStage: ['Y', 'G', 'O'],
  heating: ['Y', 'G'],
  auxiliary: ['Y', 'G', 'W2'],
};
const furnaceCalls: Readonly<Record<Call, readonly string[]>> = {
  ...heatPumpCalls,
  cooling: ['Y', 'G'],
  heating: ['W'],
};
const twoStageCalls: Readonly<Record<Call, readonly string[]>> = {
  ...furnaceCalls,
  cooling: ['Y1', 'G'],
  secondStage: ['Y1', 'Y2', 'G'],
};
const callsOf: Readonly<
  Record<ThermostatData['equipment'], Readonly<Record<Call, readonly string[]>>>
> = {
  'heat-pump': heatPumpCalls,
  furnace: furnaceCalls,
  'furnace-cooling': furnaceCalls,
  'two-stage-cooling': twoStageCalls,
};

const modeTitles: Readonly<Record<string, string>> = {off: 'Off', cool: 'Cool', heat: 'Heat'};

export const thermostatBehaviour = defineBehaviour<typeof thermostatMachine>({
  machine: thermostatMachine,
  input: (part) => dataOf<typeof thermostat>(part),
  sense: (snapshot, look, part) => {
    const c = snapshot.context;
    const call = callOf(snapshot.value);
    const volts = look.voltsIn(`${part.id}.supply`);
    const restored = volts >= c.blankBelowVolts * restoredAbove;
    if (snapshot.value === 'blank')
      return restored ? {type: 'supply.restored', atMs: look.atMs} : undefined;
    const lost = volts < c.blankBelowVolts;
    if (snapshot.value === 'starting') return lost ? {type: 'supply.lost'} : undefined;
    // lit: its capacitor empties from the first moment of a dip, and is full again after it
    if (lost && c.dueAtMs === undefined) return {type: 'supply.sagged', atMs: look.atMs};
    if (restored && c.dueAtMs !== undefined) return {type: 'supply.recovered'};
    const room = look.plant(c.senses);
    if (room === undefined) return undefined;
    const crossed = crossings(c, call).find(({setPoint, on}) =>
      on === 'rise' ? room >= setPoint : room <= setPoint,
    );
    return crossed && {type: crossed.event};
  },
  handle: ({context}, control, value) => {
    // the same mode again is no new choice: it must not interrupt a call
    if (control === 'mode')
      return value === context.mode ? undefined : {type: 'mode.chosen', mode: String(value)};
    if (control === 'fan') return {type: 'fan.chosen', fan: String(value)};
    return {type: 'setPoint.chosen', degF: Number(value)};
  },
  dueAtMs: (snapshot) => snapshot.context.dueAtMs,
  watches: (snapshot) => crossings(snapshot.context, callOf(snapshot.value)),
  states: (snapshot, part) => {
    const call = callOf(snapshot.value);
    const {equipment, fan} = snapshot.context;
    const fanOn = call !== 'blank' && fan === 'on';
    const calls = callsOf[equipment];
    return Object.fromEntries(
      thermostatCalls[equipment].map((terminal) => [
        `${part.id}.${terminal}`,
        {closed: calls[call].includes(terminal) || (terminal === 'G' && fanOn)},
      ]),
    );
  },
  observe: (snapshot, look, {id, title}) => {
    const {mode, setPointDegF, senses} = snapshot.context;
    if (typeof snapshot.value === 'string')
      return [
        {part: id, is: 'blank', sense: 'seen', text: `${title} is blank.`, behindCover: false},
      ];
    const room = look.plant(senses);
    const shown = [
      `${modeTitles[mode] ?? mode} ${room === undefined ? '--' : Math.round(room)} °F`,
      `set ${setPointDegF} °F`,
    ].join(' · ');
    return [
      {
        part: id,
        is: 'display',
        sense: 'seen',
        text: `${title} shows “${shown}”.`,
        display: shown,
        behindCover: false,
      },
    ];
  },
});
