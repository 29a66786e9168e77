import {assign, setup} from 'xstate';
import {thermostat} from '../../parts/thermostat.ts';
import {defineBehaviour, type PlantWatch} from '../part-behaviour.ts';

interface Settings {
  readonly senses: string;
  readonly differentialDegF: number;
  readonly auxiliaryBelowDegF: number;
  readonly blankBelowVolts: number;
}
interface ThermostatContext extends Settings {
  readonly mode: string;
  readonly fan: string;
  readonly setPointDegF: number;
}
type ThermostatEvent =
  | {type: 'supply.lost'}
  | {type: 'supply.restored'}
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

/**
 * A room thermostat of a heat pump: calls when the room has strayed from the set point by the differential, lets
 * go at the set point; in heating it adds auxiliary heat when the room falls far behind. Without its 24 volts it
 * is blank and every call opens.
 */
export const thermostatMachine = setup({
  types: {context: {} as ThermostatContext, input: {} as Settings, events: {} as ThermostatEvent},
}).createMachine({
  id: 'thermostat',
  context: ({input}) => ({...input, mode: 'off', fan: 'auto', setPointDegF: 72}),
  initial: 'blank',
  on: {
    'mode.chosen': {actions: assign({mode: ({event}) => event.mode})},
    'fan.chosen': {actions: assign({fan: ({event}) => event.fan})},
    'setPoint.chosen': {actions: assign({setPointDegF: ({event}) => event.degF})},
  },
  states: {
    blank: {on: {'supply.restored': 'lit'}},
    lit: {
      initial: 'satisfied',
      on: {
        'supply.lost': 'blank',
        // another mode starts from no call at all
        'mode.chosen': {
          target: '.satisfied',
          actions: assign({mode: ({event}) => event.mode}),
        },
      },
      states: {
        satisfied: {on: {'room.warmed': 'cooling', 'room.cooled': 'heating'}},
        cooling: {on: {'room.satisfied': 'satisfied'}},
        heating: {on: {'room.satisfied': 'satisfied', 'room.fellBehind': 'auxiliary'}},
        auxiliary: {on: {'room.satisfied': 'satisfied', 'room.nearlySatisfied': 'heating'}},
      },
    },
  },
});

type Call = 'blank' | 'satisfied' | 'cooling' | 'heating' | 'auxiliary';

function callOf(value: 'blank' | {lit?: string | undefined}): Call {
  return value === 'blank' ? 'blank' : (value.lit as Call);
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
      return [satisfied('fall')];
    case 'heating':
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

const calls: Readonly<Record<Call, readonly string[]>> = {
  blank: [],
  satisfied: [],
  cooling: ['Y', 'G', 'O'],
  heating: ['Y', 'G'],
  auxiliary: ['Y', 'G', 'W2'],
};

const modeTitles: Readonly<Record<string, string>> = {off: 'Off', cool: 'Cool', heat: 'Heat'};

export const thermostatBehaviour = defineBehaviour<typeof thermostatMachine>({
  machine: thermostatMachine,
  input: (part) => thermostat.data.parse(part.data),
  sense: (snapshot, look, part) => {
    const c = snapshot.context;
    const call = callOf(snapshot.value);
    const volts = look.voltsIn(`${part.id}.supply`);
    if (call === 'blank')
      return volts >= c.blankBelowVolts * restoredAbove ? {type: 'supply.restored'} : undefined;
    if (volts < c.blankBelowVolts) return {type: 'supply.lost'};
    const room = look.plant(c.senses);
    if (room === undefined) return undefined;
    const crossed = crossings(c, call).find(({setPoint, on}) =>
      on === 'rise' ? room >= setPoint : room <= setPoint,
    );
    return crossed && {type: crossed.event};
  },
  handle: (_snapshot, control, value) => {
    if (control === 'mode') return {type: 'mode.chosen', mode: String(value)};
    if (control === 'fan') return {type: 'fan.chosen', fan: String(value)};
    return {type: 'setPoint.chosen', degF: Number(value)};
  },
  watches: (snapshot) => crossings(snapshot.context, callOf(snapshot.value)),
  states: (snapshot, part) => {
    const call = callOf(snapshot.value);
    const fanOn = call !== 'blank' && snapshot.context.fan === 'on';
    return Object.fromEntries(
      ['Y', 'G', 'O', 'W2'].map((terminal) => [
        `${part.id}.${terminal}`,
        {closed: calls[call].includes(terminal) || (terminal === 'G' && fanOn)},
      ]),
    );
  },
  observe: (snapshot, look, {id, title}) => {
    const {mode, setPointDegF, senses} = snapshot.context;
    if (snapshot.value === 'blank')
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
