import {assign, setup} from 'xstate';
import {signalLoadOhms, signalVolts} from '../../parts/damper-signal.ts';
import type {economiser, EconomiserData} from '../../parts/economiser.ts';
import {dataOf} from '../../parts/part-kind.ts';
import type {Look} from '../look.ts';
import {defineBehaviour} from '../part-behaviour.ts';
import {readSensor} from './defrost-board.machine.ts';

interface ControlContext {
  readonly settings: EconomiserData;
  /** Percent that the damper is asked to open. */
  readonly percent: number;
}
type ControlEvent =
  | {type: 'power.came'}
  | {type: 'power.went'}
  | {type: 'air.suits'}
  | {type: 'air.isTooWarm'}
  | {type: 'sensor.failed'}
  | {type: 'damper.asked'; percent: number};

/** Supply volts that wake it, and at which it gives up (common practice, no source). */
const wakesAtVolts = 17;
const givesUpAtVolts = 14;
/** Volts that count as a call (common practice, no source). */
const callVolts = 12;

/**
 * While the air outside is cool enough the first call opens the damper and reaches no compressor, and the second starts
 * the first compressor; otherwise calls pass as they come and the damper keeps its minimum.
 */
export const economiserMachine = setup({
  types: {context: {} as ControlContext, input: {} as EconomiserData, events: {} as ControlEvent},
}).createMachine({
  id: 'economiser',
  context: ({input}) => ({settings: input, percent: 0}),
  initial: 'dark',
  on: {
    'power.went': '.dark',
    'damper.asked': {actions: assign({percent: ({event}) => event.percent})},
  },
  states: {
    dark: {entry: assign({percent: 0}), on: {'power.came': 'mechanical'}},
    mechanical: {on: {'air.suits': 'free', 'sensor.failed': 'blind'}},
    free: {on: {'air.isTooWarm': 'mechanical', 'sensor.failed': 'blind'}},
    // a broken sensor is taken for warm air, so that there is cooling at all
    blind: {on: {'air.suits': 'free', 'air.isTooWarm': 'mechanical'}},
  },
});

/**
 * Enthalpy of moist air at sea level, Btu per pound of dry air: 0.240·t + W(1061 + 0.444·t), W = 0.622·p/(14.696 − p)
 * (ASHRAE Handbook Fundamentals, Psychrometrics); saturation pressure by the Magnus formula (WMO-No. 8).
 */
export function enthalpyBtuPerPound(degF: number, humidityFraction: number): number {
  const celsius = ((degF - 32) * 5) / 9;
  const psi = 0.0886 * Math.exp((17.62 * celsius) / (243.12 + celsius)) * humidityFraction;
  const ratio = (0.622 * psi) / (14.696 - psi);
  return 0.24 * degF + ratio * (1061 + 0.444 * degF);
}

type Air = 'air.suits' | 'air.isTooWarm' | 'sensor.failed';

/** What its sensor makes of the air outside; between the two set points it stays as it is. */
function judgeAir(settings: EconomiserData, look: Look, part: string): Air | undefined {
  const {logic} = look.behaviour(part);
  if (logic === 'always') return 'air.suits';
  if (logic === 'never') return 'air.isTooWarm';
  const sensed = readSensor(Math.abs(look.dcVolts(`${part}.S1`, `${part}.S2`)));
  if (typeof sensed === 'string') return 'sensor.failed';
  const {changeover, setPointDegF, differentialDegF, setPointBtuPerPound} = settings;
  if (sensed.degF >= setPointDegF + differentialDegF) return 'air.isTooWarm';
  if (changeover === 'enthalpy') {
    const humidity = look.plant('outdoorHumidityFraction') ?? 0.5;
    // a fifth of a Btu for each degree of the differential, the same heat in dry air
    const heat = enthalpyBtuPerPound(sensed.degF, humidity);
    if (heat >= setPointBtuPerPound + 0.24 * differentialDegF) return 'air.isTooWarm';
    if (heat > setPointBtuPerPound) return undefined;
  }
  return sensed.degF <= setPointDegF ? 'air.suits' : undefined;
}

export const economiserBehaviour = defineBehaviour<typeof economiserMachine>({
  machine: economiserMachine,
  input: (part) => dataOf<typeof economiser>(part),
  sense: ({value, context}, look, {id}) => {
    const volts = look.voltsIn(`${id}.supply`);
    const {settings, percent} = context;
    if (value === 'dark')
      return volts >= wakesAtVolts && look.behaviour(id).logic !== 'dead'
        ? {type: 'power.came'}
        : undefined;
    if (volts < givesUpAtVolts) return {type: 'power.went'};
    const air = judgeAir(settings, look, id);
    const told = {'air.suits': 'free', 'air.isTooWarm': 'mechanical', 'sensor.failed': 'blind'};
    if (air && told[air] !== value) return {type: air};
    const called = (input: string): boolean => look.voltsIn(`${id}.${input}-input`) >= callVolts;
    const asked =
      value === 'free' && called('Y1') ? 100 : called('G') ? settings.minimumPercent : 0;
    return asked === percent ? undefined : {type: 'damper.asked', percent: asked};
  },
  watches: ({value, context}) => {
    // its own sensor follows the air outside, so it must look when that crosses a set point
    const {setPointDegF, differentialDegF} = context.settings;
    if (value === 'dark') return [];
    return value === 'free'
      ? [{value: 'outdoorDegF', setPoint: setPointDegF + differentialDegF, on: 'rise'}]
      : [{value: 'outdoorDegF', setPoint: setPointDegF, on: 'fall'}];
  },
  states: ({value, context}, {id}) => {
    const free = value === 'free';
    const on = value !== 'dark';
    const {shut, open} = signalVolts;
    const volts = shut + ((open - shut) * context.percent) / 100;
    return {
      [`${id}.first`]: {closed: !free},
      [`${id}.second`]: {closed: !free},
      [`${id}.bumped`]: {closed: free},
      [`${id}.sensor-pull-up`]: {on},
      [`${id}.signal-source`]: {on},
      // the divider: 10 V over it and the load
      [`${id}.signal`]: {ohms: Math.max(1, signalLoadOhms * (open / volts - 1))},
    };
  },
  observe: ({value, context}, _look, {id, title}) => {
    const lamp = {
      dark: undefined,
      free: 'steady: outdoor air cools',
      mechanical: 'slow flashing: compressors cool',
      blind: 'two flashes: outdoor sensor',
    }[value];
    return [
      {
        part: id,
        is: lamp === undefined ? 'blank' : 'lit',
        sense: 'seen',
        text:
          lamp === undefined
            ? `The lamp of ${title} ${id} is dark.`
            : `The lamp of ${title} ${id}: ${lamp}, damper asked for ${context.percent} %.`,
        display: lamp === undefined ? 'dark' : `${lamp}, damper ${context.percent} %`,
        behindCover: true,
      },
    ];
  },
});
